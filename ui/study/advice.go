package study

import (
	"strconv"
	"strings"

	"cohoist/core/advice"
	"cohoist/core/report"
	"cohoist/core/share"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// counsel is advice on a plan; wouldDo and moves share one and show the two halves of it.
type counsel struct {
	of    int // generation of the plan
	found advice.Advice
}

// get works the advice out, unless it is there. False: something newer came.
func (c *counsel) get(t *Turn) bool {
	if c.of == t.Gen {
		return true
	}
	if !t.Rested() {
		return false
	}
	a, whole := advice.Of(t.Plan, t.GoOn)
	if whole {
		c.of, c.found = t.Gen, a
	}
	return whole
}

// wouldDo is what would make it lift.
type wouldDo struct{ known *counsel }

func (w *wouldDo) See(t *Turn) {
	switch {
	case !troubled(t):
		t.Say(talk.WouldDo+"-gist", "Nothing has to change.")
	case w.known.of != t.Gen:
		t.Say(talk.WouldDo+"-gist", "Being worked out …")
	}
	if w.known.of == t.Gen && w.wanted(t) {
		w.show(t)
	}
}

// Rest works the advice out.
func (w *wouldDo) Rest(t *Turn) {
	if w.wanted(t) && w.known.get(t) {
		w.show(t)
	}
}

func (*wouldDo) wanted(t *Turn) bool { return troubled(t) || t.Opened(talk.WouldDo) }

func (w *wouldDo) show(t *Turn) {
	c := &Remedies{Advice: w.known.found, Troubled: troubled(t)}
	t.Say(talk.WouldDo+"-gist", c.gist())
	t.Show(talk.WouldDo, c)
}

// troubled tells that the lift fails, or nearly does.
func troubled(t *Turn) bool {
	return t.Report.Verdict == report.Fails || t.Report.Verdict == report.ThinLift
}

func (w *wouldDo) Do(t *Turn, what string) {
	i, err := strconv.Atoi(strings.TrimPrefix(what, "take "))
	if err == nil && w.known.of == t.Gen && i >= 0 && i < len(w.known.found.Remedies) {
		t.Take(w.known.found.Remedies[i].Plan.Clone(), talk.WouldDo)
	}
}

// moves is what moves the answer.
type moves struct{ known *counsel }

func (m *moves) See(t *Turn) {
	if t.Opened(talk.Moves) && m.known.of == t.Gen {
		t.Show(talk.Moves, &Movers{Advice: m.known.found})
	}
}

// Rest works the advice out.
func (m *moves) Rest(t *Turn) {
	if t.Opened(talk.Moves) && m.known.get(t) {
		m.See(t)
	}
}

func (*moves) Do(*Turn, string) {}

// most is how many numbers that move the answer are listed.
const most = 12

// mover is a number that moves the answer, and the vehicles of which the same holds.
type mover struct {
	advice.Move
	alike []string
}

func (m mover) sentence() string {
	if len(m.alike) == 0 {
		return format.Together(m.Sentence)
	}
	return format.Together(m.Sentence) + " The same for " + share.List(m.alike) + "."
}

// list is the strongest numbers; the centre of mass stands once, in its worst way in the plane, and
// vehicles that move it alike together.
func (c *Movers) list() []mover {
	var list []mover
	for _, m := range c.Advice.Moves {
		if m.ID == "payload.com_m.x" || m.ID == "payload.com_m.y" || m.Effect < 5e-5 {
			continue
		}
		if n := len(list) - 1; n >= 0 && m.Who != "" && alike(list[n].Move, m) {
			list[n].alike = append(list[n].alike, m.Who)
			continue
		}
		if len(list) == most {
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
func (c *Movers) part(m mover) string {
	list := c.list()
	if len(list) == 0 || !(list[0].Effect > 0) {
		return "0"
	}
	return strconv.FormatFloat(100*m.Effect/list[0].Effect, 'f', 1, 64)
}

func (c *Movers) lead() string {
	if len(c.list()) == 0 {
		return "There is no balance to move."
	}
	return "What a small change costs the hardest-working vehicle, in parts of its full thrust, the strongest first. Each was found by solving again both ways; where both cost, or one changes nothing, another vehicle becomes the hardest-working."
}

// gist stands beside the title: the first change that would do.
func (c *Remedies) gist() string {
	switch {
	case !c.Troubled:
		return "Nothing has to change."
	case len(c.Advice.Remedies) == 0:
		return "No single change that was tried makes it lift."
	}
	return format.Together(c.Advice.Remedies[0].Sentence)
}

// lead says how far the list can be trusted.
func (c *Remedies) lead() string {
	switch {
	case !c.Troubled:
		return "Nothing has to change: no check fails and none is thin."
	case len(c.Advice.Remedies) == 0:
		return "No single change that was tried makes it lift. Tried were a lighter payload, another centre of mass, stronger and more vehicles, less wind, longer and stronger lines, and the limits."
	}
	return "Each is one change, as small as will do, and was checked by a whole report. Changes of the lift come first; limits that the crew set itself come last, for relaxing them gives margin away and lifts nothing."
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
