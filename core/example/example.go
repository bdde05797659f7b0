// Package example has the plans that come with the sheet: a crew that maintains a tidal lighthouse,
// all data invented.
package example

import (
	"embed"

	"cohoist/core/plan"
)

// Example is a plan to open.
type Example struct {
	Name string // file name without its ending
	Line string // what it shows
}

// All lists the examples in the order in which they teach.
var All = []Example{
	{"beam-pair", "a beam on two cables: the smallest team lift"},
	{"sensor-plate", "a 0.1 kg plate gripped by four pocket vehicles"},
	{"crate-ring", "a crate on a ring of six in a light wind; cables splay to keep the vehicles apart"},
	{"lattice-panel", "a rigid panel on four: strong, and slow to turn"},
	{"mixed-team", "two classes and a load off centre: the share follows the thrust"},
	{"deck-of-eight", "eight vehicles under a deck section"},
	{"handrail-beam", "a slender 6 m beam on three"},
	{"lens-too-heavy", "a lift that fails, and why"},
}

//go:embed *.json
var files embed.FS

// JSON is the text of an example; nil when there is none of that name.
func JSON(name string) []byte {
	text, err := files.ReadFile(name + ".json")
	if err != nil {
		return nil
	}
	return text
}

// Plan reads an example.
func Plan(name string) (plan.Plan, plan.Faults) { return plan.Decode(JSON(name)) }
