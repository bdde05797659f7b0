// Package root is the page.
//
// Stable ids, for tests and for links from one place of the page to another:
//
//	title, note                   the plan's own words
//	s-count s-class s-mass s-shape s-size-x|y|z|length|outer|inner s-hold s-cable s-policy
//	s-altitude s-temperature s-wind s-wind-to s-utilisation s-cone     words of the sentences
//	s-parts                       the payload of several parts, a button that opens its section
//	ID-fault                      the sentence about what is wrong in the input ID
//	verdict (class is-ok|thin|fail|needs|outside), verdict-line, verdict-word, verdict-sentence,
//	verdict-governing, fact-utilisation|payload|largest|mass|hold
//	check-ID (data-status)        a check's row; its summary opens the working
//	vehicle-I, vehicle-I-pick, vehicle-I-used                          the vehicles' table
//	would-do, moves               advice, to open: why, remedy-I (data-kind), remedy-I-take, move-I
//	agility-roll|pitch|yaw|climb|side|turn30-…|turn360-…               the agility table
//	payload, classes, team, site  sections to open, with payload-I-mass, payload-I-size-x, …,
//	class-I-mass, …, team-I-attach-x, …, site-wind, limits-cone, …; team-add, team-I-up|down|copy|remove,
//	pattern-KIND, payload-add, payload-I-remove, class-I-copy|remove
//	missing, cautions, assumptions, unknown
//	undo, redo, examples (examples-I), new, open, save, link, print, unit-length|mass|force
//	notice-KIND                   something to say: link, storage, file, edit, program, copied
//	boot                          the line shown until the program runs; hidden when it does
package root

import (
	"github.com/vugu/vugu"

	"cohoist/core/plan"
	"cohoist/ui/field"
	"cohoist/ui/format"
	"cohoist/ui/store"
)

// First is the plan a new visitor sees.
func First() plan.Plan { return store.First() }

// FirstView is the page as it stands before the program runs.
func FirstView() vugu.Builder { return &Root{Store: store.New(First(), store.Still())} }

func options(names []string) []field.Option {
	list := make([]field.Option, len(names))
	for i, n := range names {
		list[i] = field.Option{Value: n, Name: n}
	}
	return list
}

// The units to choose from.
var lengths, masses, forces = options(format.Lengths), options(format.Masses), options(format.Forces)
