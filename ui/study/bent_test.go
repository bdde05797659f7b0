package study

import (
	"math"
	"strings"
	"testing"

	"cohoist/core/report"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// The handrail beam: three equal forces 0.9 m from the ends and in the middle, so that the moment over an
// outer hold is w 0.9²/2 (by hand), and the piece says so.
func TestTheHandrailBeam(t *testing.T) {
	p := newPage(talk.Live)
	plan := named(t, "handrail-beam")
	p.ask(plan, talk.Bent)
	p.settle()
	piece := p.pieces[talk.Bent]
	moment := 1.7 * 9.80665 / 6 * 0.9 * 0.9 / 2
	for _, want := range []string{format.SI.Show(format.Moment, -moment), "bm-svg", "Holding its place", "of 80\u202fMPa it may bear"} {
		if !strings.Contains(piece, want) {
			t.Errorf("the piece does not say %q", want)
		}
	}
	if n := strings.Count(piece, `class="bm-area`); n != 4 {
		t.Errorf("%d diagrams, want shear, moment, deflection and stress", n)
	}
	if p.values["f-payload-beam-material"] != "aluminium-6061-t6" || !strings.Contains(p.pieces[talk.Bent+"-form"], `id="f-payload-beam-material"`) {
		t.Errorf("the form's values are %v", p.values)
	}
}

// What the vehicles carry adds up to the load, whichever way they hold.
func TestCarriersAddUp(t *testing.T) {
	for _, name := range []string{"handrail-beam", "deck-of-eight", "crate-ring", "lattice-panel"} {
		plan := named(t, name)
		r := report.Build(plan)
		c := &Bent{Report: r, Plan: plan, Units: format.SI}
		if r.Held == nil {
			if len(c.carriers()) > 0 {
				t.Errorf("%s: carriers where balance alone says who carries", name)
			}
			continue
		}
		held, shared := 0.0, 0.0
		for i, v := range r.Vehicles {
			held += r.Held.Force[i]
			shared += v.Force[2]
		}
		if math.Abs(held-shared) > 1e-6*shared {
			t.Errorf("%s: holding places %g N, thrusts %g N", name, held, shared)
		}
		if len(c.carriers()) != len(plan.Team) {
			t.Errorf("%s: %d rows", name, len(c.carriers()))
		}
	}
}

// A payload that is no beam says how it becomes one, and its form still stands there.
func TestNoBeam(t *testing.T) {
	p := newPage(talk.Live)
	p.ask(named(t, "crate-ring"), talk.Bent)
	p.settle()
	if !strings.Contains(p.pieces[talk.Bent+"-gist"], "made of") || strings.Contains(p.pieces[talk.Bent], "bm-svg") || p.pieces[talk.Bent+"-form"] == "" {
		t.Errorf("pieces %v", p.pieces)
	}
}
