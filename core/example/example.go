// Package example has the plans that come with the sheet: a crew that maintains a tidal lighthouse,
// all data invented.
package example

import (
	"embed"

	"cohoist/core/plan"
)

// Example is a plan to open.
type Example struct {
	Name      string // file name without its ending
	Line      string // what it shows
	Verdict   string // that of its report
	Governing string // the check that decides it
}

// All lists the examples in the order in which they teach.
var All = []Example{
	{"beam-pair", "a beam on two cables: the smallest team lift", "lifts", "thrust"},
	{"sensor-plate", "a 0.1 kg plate gripped by four pocket vehicles", "lifts", "thrust"},
	{"crate-ring", "a crate on a ring of six in a light wind; cables splay to keep the vehicles apart", "lifts", "separation"},
	{"lattice-panel", "a rigid panel on four: strong, and slow to turn", "lifts", "separation"},
	{"mixed-team", "two classes and a load off centre: the share follows the thrust", "lifts", "thrust"},
	{"deck-of-eight", "eight vehicles above a deck grating: it only just lifts", "thin", "thrust"},
	{"boathouse-panel", "a panel turned by 90° on its way through a door, and how fast it may go", "lifts", "thrust"},
	{"landing-frame", "nine pieces for the same team in order: columns, beams on them, a deck", "thin", "thrust"},
	{"handrail-beam", "a slender 6 m beam on three, as near its limit as it may be", "thin", "thrust"},
	{"lens-too-heavy", "a lift that fails, and why", "fails", "thrust"},
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
