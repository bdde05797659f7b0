package study

import (
	"cohoist/core/patch"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/ui/drawing"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// stand is where the centre of mass may stand.
type stand struct {
	found  patch.Patch
	losses patch.Losses
	m      *share.Model
	lostOf int // generation of the plan that losses is of
}

func (p *stand) ask(m *share.Model, s *solve.Solver, _ func() bool) bool {
	p.found, p.m, p.lostOf = patch.Of(m, s), m, 0
	return true
}

func (*stand) form(t *Turn) {
	entries := []Entry{{Path: "limits.com_error_m", Until: t.Units.Bare(format.Length, 0.02)}}
	t.Show(talk.Patch+"-form", &PatchForm{Units: t.Units, Entries: entries})
	t.fill(entries)
	t.Value("patch-losses", t.Setting("losses", "false"))
}

func (p *stand) show(t *Turn) {
	c := &Patch{Patch: p.found, Plan: p.m.Plan, Cables: p.m.Cables, Outlines: drawing.Outlines(p.m.Plan.Payload.Solids), Units: t.Units}
	if t.Setting("losses", "false") == "true" && p.found.Status != solve.NotRun && len(t.Plan.Team) > 1 {
		if !p.lose(t) {
			return
		}
		c.Losses = &p.losses
	}
	t.Show(talk.Patch, c)
}

// lose finds what is left after any loss, unless it is there.
func (p *stand) lose(t *Turn) bool {
	if p.lostOf == t.Gen {
		return true
	}
	p.losses = patch.AnyLost(p.m, solve.NewSolver(), func(int, int) bool { return len(p.m.Craft) <= usual || t.GoOn() })
	if p.losses.Stopped {
		return false
	}
	p.lostOf = t.Gen
	return true
}

func (p *stand) gist(t *Turn) string {
	c := &Patch{Patch: p.found, Plan: p.m.Plan, Units: t.Units}
	f := p.found
	switch {
	case f.Status == solve.NotRun:
		return "The payload weighs nothing, so that it may stand anywhere."
	case f.Status == solve.Infeasible:
		return "Nowhere: " + f.Note + "."
	case f.Status != solve.Optimal:
		return "It was not found: " + f.Note + "."
	case f.Edge < 0:
		return "It stands " + c.length(-f.Edge) + " outside of where it may be."
	case len(f.Inner) == 1:
		return "In one place only: " + f.Note + "."
	case len(f.Inner) == 2:
		return "On a line of " + c.length(c.long(f)) + " only; it stands " + c.length(f.Edge) + " from the nearer end."
	}
	return "In a patch of " + c.size(f) + "; as planned it stands " + c.length(f.Edge) + " inside."
}
