package scatter

import (
	"math"
	"testing"

	"cohoist/core/plan"
)

// brute is the worst of all corners.
func brute(s *Study) float64 {
	r := newRunner(s.model)
	worst := math.Inf(-1)
	for signs := range 1 << len(s.Errors) {
		for d, e := range s.Errors {
			r.x[e.at] = Cut * e.SD * float64(2*(signs>>d&1)-1)
		}
		t, _ := r.ask()
		worst = math.Max(worst, t)
	}
	return worst
}

// The worst corner found is the worst of all: small cases by brute force, up to 2¹³ corners; 1e-9 is the
// solver's accuracy.
func TestWorstIsWorst(t *testing.T) {
	still := func(e plan.Errors) func(*plan.Plan) {
		e.Wind, e.WindTo = 0, 0
		return only(e)
	}
	blown := func(p *plan.Plan) {
		blow(p)
		p.Errors = plan.Errors{PayloadMass: 0.02, COM: 0.01, Thrust: 0.03, Density: 0.01, Wind: 0.5, WindTo: 8}
	}
	off := plan.Errors{PayloadMass: 0.02, COM: 0.01, Thrust: 0.03, Density: 0.01}
	places := plan.Errors{PayloadMass: 0.03, Attach: 0.01}
	for _, c := range []struct {
		name   string
		change func(*plan.Plan)
	}{
		{"beam-pair", still(off)}, {"beam-pair", still(plan.Errors{PayloadMass: 0.02, COM: 0.01, Thrust: 0.03, Attach: 0.01})},
		{"sensor-plate", still(off)}, {"crate-ring", still(off)}, {"lattice-panel", still(off)}, {"lattice-panel", blown},
		{"mixed-team", blown}, {"handrail-beam", still(off)}, {"handrail-beam", still(places)}, {"sensor-plate", still(places)},
	} {
		s := study(t, given(t, c.name, c.change), 100)
		if len(s.Errors) > 13 {
			t.Fatalf("%s: %d errors", c.name, len(s.Errors))
		}
		w, want := s.Worst(), brute(s)
		if short := want - w.T; short > 1e-9 || short < -1e-9 && s.Plan.Site.Wind == 0 { // winds are asked between corners, too
			t.Errorf("%s: worst corner found %v, there is %v", c.name, w.T, want)
		}
		if c.change(&s.Plan); s.Plan.Errors.Attach == 0 && !math.IsNaN(w.Bound) && !(w.Bound >= want-1e-9) {
			t.Errorf("%s: bound %v below the worst corner %v", c.name, w.Bound, want)
		}
		t.Logf("%s: %d errors, as planned %.6f, worst %.6f, bound %.6f, %d solves", c.name, len(s.Errors), s.Nominal, w.T, w.Bound, w.Solves)
	}
}

// No sample is worse than the worst corner found, on all examples and on windy ones, and where there is a
// bound and attachments are sure none is above it.
func TestSamplesBelowWorst(t *testing.T) {
	for _, name := range []string{"beam-pair", "crate-ring", "lattice-panel", "deck-of-eight", "mixed-team"} {
		s := study(t, given(t, name, func(p *plan.Plan) { p.Errors.Attach = 0 }), 400)
		w := s.Worst()
		for i, v := range s.Run(0, s.N).T {
			if v > w.T+1e-9 || v > w.Bound+1e-9 {
				t.Errorf("%s: sample %d has %v, worst corner %v, bound %v", name, i, v, w.T, w.Bound)
			}
		}
		t.Logf("%s: %d errors, as planned %.6f, worst %.6f (%v), bound %.6f, %d solves", name, len(s.Errors), s.Nominal, w.T, w.Why, w.Bound, w.Solves)
	}
}
