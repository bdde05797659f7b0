package example_test

import (
	"math"
	"testing"

	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/vec"
)

// Every example's report says what the example is there to show, and no two rotors meet.
func TestVerdicts(t *testing.T) {
	kinds := map[string]bool{}
	for _, e := range example.All {
		p, _ := example.Plan(e.Name)
		r := report.Build(p)
		if string(r.Verdict) != e.Verdict || r.Governing != e.Governing {
			t.Errorf("%s: %s by %s, meant to show %s by %s: %s", e.Name, r.Verdict, r.Governing, e.Verdict, e.Governing, r.Sentence)
		}
		kinds[e.Verdict] = true
		for i, a := range r.Vehicles {
			for j, b := range r.Vehicles[:i] {
				touch := reach(p, i) + reach(p, j)
				if d := vec.V3(a.Position).Sub(b.Position).Norm(); !(d > touch) {
					t.Errorf("%s: %s and %s are %.3f m apart, their rotors reach %.3f m", e.Name, a.ID, b.ID, d, touch)
				}
			}
		}
	}
	if len(kinds) != 3 {
		t.Errorf("the examples show %v; a reader should see lifts, thin and fails", kinds)
	}
}

func reach(p plan.Plan, i int) float64 {
	c := p.Vehicles[p.Team[i].Vehicle]
	return c.Arm + c.RotorRadius
}

// By hand, the thrust that the examples' verdicts rest on: vertical cables in still air, so each
// vehicle carries its own weight and its part of the payload's.
func TestByHand(t *testing.T) {
	const g = 9.80665
	for _, c := range []struct {
		name string
		want float64 // of the thrust
		tol  float64
		how  string
	}{
		{"beam-pair", (3.4 + 4.0/2) * g / 76, 1e-7, "two of 4 × 19 N"},
		{"deck-of-eight", (3.4 + 21.0/8) * g / 76, 1e-6, "eight of 4 × 19 N; the two bearers hang as far from the middle"},
		{"boathouse-panel", (3.4 + 7.0/4) * g / 76, 1e-7, "four of 4 × 19 N"},
		{"handrail-beam", (0.9 + 1.7/3) * g / 18.8, 1e-7, "three of 4 × 4.7 N"},
		{"sensor-plate", (0.075 + 0.1/4) * g / 1.48, 1e-7, "four of 4 × 0.37 N"},
		{"lattice-panel", (3.4 + 3.5/4) * g / 76, 1e-7, "four of 4 × 19 N"},
	} {
		p, _ := example.Plan(c.name)
		r := report.Build(p)
		// The constants of the standard atmosphere give 1.225 kg/m³ and 1.5e-8 of it at sea level.
		if got := r.Team.Utilisation; math.Abs(got-c.want) > c.tol {
			t.Errorf("%s: %.9f of the thrust, by hand %.9f (%s)", c.name, got, c.want, c.how)
		}
	}
}

// The handrail weighs what a tube of its size does in aluminium of 2 700 kg/m³ (common practice, no
// source), to the two figures in which its mass is given.
func TestHandrailMass(t *testing.T) {
	p, _ := example.Plan("handrail-beam")
	s := p.Payload.Solids[0]
	volume := math.Pi * (s.OuterRadius*s.OuterRadius - s.InnerRadius*s.InnerRadius) * s.Length
	if got := volume * 2700; math.Abs(got-s.Mass) > 0.05 || p.Payload.Beam.Material != "aluminium-6061-t6" {
		t.Errorf("a tube of %.3f kg of %s is given as %g kg", got, p.Payload.Beam.Material, s.Mass)
	}
}
