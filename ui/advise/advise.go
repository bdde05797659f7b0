// Package advise is the part of the sheet that says what stands in the way of a lift, what would do,
// and what moves the answer. It shows what core/advice found and computes nothing.
package advise

import (
	"strconv"
	"strings"

	"cohoist/core/advice"
	"cohoist/core/report"
	"cohoist/core/share"
)

// shown is how many numbers that move the answer are listed.
const shown = 12

// remedies are the changes that would do, none while they are being worked out.
func (c *Section) remedies() []advice.Remedy {
	a, ok := c.Store.Advice()
	if !ok {
		return nil
	}
	return a.Remedies
}

func (c *Section) why() []string {
	a, ok := c.Store.Advice()
	if !ok {
		return nil
	}
	return a.Why
}

// mover is a number that moves the answer, and the vehicles of which the same holds.
type mover struct {
	advice.Move
	alike []string
}

func (m mover) sentence() string {
	if len(m.alike) == 0 {
		return together(m.Sentence)
	}
	return together(m.Sentence) + " The same for " + share.List(m.alike) + "."
}

// moves are the strongest numbers; the centre of mass stands once, in its worst way in the plane, and
// vehicles that move it alike together.
func (c *Section) moves() []mover {
	a, ok := c.Store.Advice()
	if !ok {
		return nil
	}
	var list []mover
	for _, m := range a.Moves {
		if m.ID == "payload.com_m.x" || m.ID == "payload.com_m.y" || m.Effect < 5e-5 {
			continue
		}
		if n := len(list) - 1; n >= 0 && m.Who != "" && alike(list[n].Move, m) {
			list[n].alike = append(list[n].alike, m.Who)
			continue
		}
		if len(list) == shown {
			break
		}
		list = append(list, mover{Move: m})
	}
	return list
}

// alike tells that two vehicles' numbers move the answer by as much, as it reads.
func alike(a, b advice.Move) bool {
	return a.ID == b.ID && strings.Replace(a.Sentence, a.Who, b.Who, 1) == b.Sentence
}

// part is the length of a move's bar, of 100 for the strongest.
func (c *Section) part(m mover) string {
	list := c.moves()
	if len(list) == 0 || !(list[0].Effect > 0) {
		return "0"
	}
	return strconv.FormatFloat(100*m.Effect/list[0].Effect, 'f', 1, 64)
}

// troubled tells that the lift fails or is thin.
func (c *Section) troubled() bool {
	v := c.Store.Report().Verdict
	return v == report.Fails || v == report.ThinLift
}

// gist stands beside the title: the first change that would do.
func (c *Section) gist() string {
	_, ok := c.Store.Advice()
	list := c.remedies()
	switch {
	case !c.troubled():
		return "Nothing has to change."
	case !ok:
		return "Being worked out …"
	case len(list) == 0:
		return "No single change that was tried makes it lift."
	}
	return together(list[0].Sentence)
}

// lead says how far the list can be trusted.
func (c *Section) lead() string {
	_, ok := c.Store.Advice()
	switch {
	case !ok:
		return "Being worked out …"
	case !c.troubled():
		return "Nothing has to change: no check fails and none is thin."
	case len(c.remedies()) == 0:
		return "No single change that was tried makes it lift. Tried were a lighter payload, another centre of mass, stronger and more vehicles, less wind, longer and stronger lines, and the limits."
	}
	return "Each is one change, as small as will do, and was checked by a whole report. Changes of the lift come first; limits that the crew set itself come last, for relaxing them gives margin away and lifts nothing."
}

func (c *Section) movesLead() string {
	_, ok := c.Store.Advice()
	switch {
	case !ok:
		return "Being worked out …"
	case len(c.moves()) == 0:
		return "There is no balance to move."
	}
	return "What a small change costs the hardest-working vehicle, in parts of its full thrust, the strongest first. Each was found by solving again both ways; where both cost, or one changes nothing, another vehicle becomes the hardest-working."
}

// then is the verdict of the plan with a remedy.
func then(r advice.Remedy) string {
	switch r.Verdict {
	case report.Lifts:
		return "Then it lifts."
	case report.ThinLift:
		return "Then it only just lifts."
	case report.OutsideModel:
		return "Then it is outside the model."
	}
	return "Then it still fails."
}

// together keeps a number and its percent sign on one line.
func together(s string) string { return strings.ReplaceAll(s, " %", "\u202f%") }

func (c *Section) toggle(id string) {
	c.Store.Toggle(id)
	c.Store.Advise()
}
