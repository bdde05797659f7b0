package study

import (
	"math"

	"cohoist/core/formation"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// flies is how far apart the vehicles fly.
type flies struct {
	of     int    // the plan that was asked about
	way    string // how they may keep apart
	wanted int    // a large team's plan that somebody asked to be worked out
	model  *share.Model
	found  formation.Formation
	free   formation.Formation // without regard to separation
}

// Ways to keep apart.
const (
	beside = ""
	above  = "above"
)

func wayChoice() Choice {
	return Choice{Name: "way", Label: "They keep apart", Words: []Word{{beside, "sideways"}, {above, "or by height"}},
		Help: "By height, one may fly above another, and mostly in its wake."}
}

func (s *flies) See(t *Turn) {
	if t.Opened(talk.Formation) {
		t.form("How they keep apart", []Choice{wayChoice()}, flyForm(t.Plan, t.Units))
	}
	if s.fresh(t) {
		s.tell(t)
		return
	}
	t.Say(talk.Formation+"-gist", talk.Of(talk.Formation).Closed)
	if t.Opened(talk.Formation) {
		t.Show(talk.Formation, &Fly{Large: len(t.Plan.Team) > usual, Waiting: true})
	}
}

// Rest looks for a formation; a large team's takes too long to be looked for unasked.
func (s *flies) Rest(t *Turn) {
	if s.fresh(t) || !t.Opened(talk.Formation) || len(t.Plan.Team) > usual && s.wanted != t.Gen || !t.Rested() {
		return
	}
	s.model, s.of = t.model(), 0
	way := t.word(wayChoice())
	if s.model != nil {
		find := formation.Find
		if way == above {
			find = formation.Stack
		}
		s.found = find(s.model, solve.NewSolver(), t.GoOn)
		loose := *s.model
		loose.Plan.Limits.Separation = 0
		s.free = formation.Find(&loose, solve.NewSolver(), t.GoOn)
		if s.found.Stopped || s.free.Stopped {
			return
		}
	}
	s.of, s.way = t.Gen, way
	s.tell(t)
}

func (s *flies) Do(t *Turn, what string) {
	if what == "find" {
		s.wanted = t.Gen
	}
}

func (s *flies) fresh(t *Turn) bool { return s.of == t.Gen && s.way == t.word(wayChoice()) }

func (s *flies) tell(t *Turn) {
	c := &Fly{Units: t.Units, Plan: t.Plan, Sheet: t.Report.Team.Utilisation, model: s.model, found: s.found, free: s.free}
	t.Say(talk.Formation+"-gist", c.gist())
	if t.Opened(talk.Formation) {
		t.Show(talk.Formation, c)
	}
}

// flyForm is the limits that decide.
func flyForm(p plan.Plan, u format.Units) Group {
	full, _ := plan.Assume(p)
	return Group{Name: "What must be kept", Open: true, Entries: []Entry{
		{Path: "limits.separation_m", Until: u.Bare(format.Length, full.Limits.Separation)},
		{Path: "limits.cone_deg", Until: u.Bare(format.Angle, full.Limits.Cone)}}}
}

// flier is a row of the table of places.
type flier struct{ ID, At, High, Lean, Pull, Works, Nearest string }

func (c *Fly) fliers() []flier {
	var out []flier
	for i, p := range c.found.Parts {
		r := flier{ID: c.model.Craft[i].ID, At: c.Units.Bare(format.Length, p.Position[0]) + ", " + c.Units.Show(format.Length, p.Position[1]),
			High: c.Units.Show(format.Length, p.Position[2]), Works: percent(p.Utilisation, 3), Lean: "rigid", Pull: "–"}
		if !c.model.Craft[i].Rigid {
			r.Lean, r.Pull = inDegrees(p.CableAngle), c.Units.Show(format.Force, p.Tension)
		}
		if j, d := c.nearest(i); j >= 0 {
			r.Nearest = c.Units.Small(d) + " to " + c.model.Craft[j].ID
		}
		out = append(out, r)
	}
	return out
}

// nearest is the vehicle next to one, seen from above, and how far apart they are; −1 when there is none of which
// one is on a cable.
func (c *Fly) nearest(i int) (at int, far float64) {
	at, far = -1, math.Inf(1)
	for j, q := range c.found.Parts {
		if j == i || c.model.Craft[i].Rigid && c.model.Craft[j].Rigid {
			continue
		}
		d := q.Position.Sub(c.found.Parts[i].Position)
		if l := math.Hypot(d[0], d[1]); l < far*(1-1e-9) {
			at, far = j, l
		}
	}
	return at, far
}
