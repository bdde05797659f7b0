package report_test

import (
	"math"
	"testing"

	"cohoist/core/check"
	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/vec"
)

// Cables lean apart when the vehicles would come too near, and the answer says so. By hand: two
// cables of 2 m in one point, vehicles 1 m apart by the plan, leant apart by the same angle; with
// d the distance reached, the angle has sin γ = d/2/2 and each cable pulls m g/2 upwards.
func TestLeanApart(t *testing.T) {
	p := at(ring(2, plan.Cable), vec.V3{}, vec.V3{})
	p.Limits.Separation = 1
	r := report.Build(p)
	d := r.Vehicles[0].Position.Sub(r.Vehicles[1].Position).Norm()
	if d < 1/0.9 || d > 1.2 {
		t.Fatalf("the vehicles are %g m apart; %s", d, r.Sentence)
	}
	for _, v := range r.Vehicles {
		if math.Abs(math.Sin(v.CableAngle*math.Pi/180)-d/4) > 1e-3 {
			t.Errorf("the cable of %s leans %g°, want sin γ = %g", v.ID, v.CableAngle, d/4)
		}
		if math.Abs(v.Force[2]-2*9.80665) > 1e-3 {
			t.Errorf("%s pulls up with %g N", v.ID, v.Force[2])
		}
	}
	if row(t, r, "separation").Status != check.OK || len(r.Notes) == 0 {
		t.Errorf("%+v, notes %v", row(t, r, "separation"), r.Notes)
	}
	if r.Team.DualBound > r.Team.Utilisation || r.Team.Residual > 1e-9 {
		t.Errorf("bound %g above %g, residual %g", r.Team.DualBound, r.Team.Utilisation, r.Team.Residual)
	}
}

// The examples keep their separation, or say that they cannot.
func TestExamplesKeepApart(t *testing.T) {
	for _, e := range example.All {
		p, _ := example.Plan(e.Name)
		r := report.Build(p)
		if math.IsNaN(r.Team.Utilisation) {
			continue
		}
		for i, a := range r.Vehicles {
			for j, b := range r.Vehicles[:i] {
				if p.Team[i].Hold.Kind == plan.Rigid && p.Team[j].Hold.Kind == plan.Rigid {
					continue
				}
				if d := a.Position.Sub(b.Position).Norm(); d < p.Limits.Separation && row(t, r, "separation").Status != check.Fail {
					t.Errorf("%s: %s and %s are %g m apart", e.Name, a.ID, b.ID, d)
				}
			}
		}
		if r.Team.Utilisation > 1.05*r.Team.DualBound {
			t.Errorf("%s: leaning apart costs more than a twentieth: %g over %g", e.Name, r.Team.Utilisation, r.Team.DualBound)
		}
	}
}

// What cannot be kept apart is said: short cables within a narrow cone.
func TestCannotLeanApart(t *testing.T) {
	p := at(ring(2, plan.Cable), vec.V3{}, vec.V3{})
	p.Limits.Separation, p.Limits.Cone = 3, 10
	p.Payload.Solids[0].Mass = 2
	r := report.Build(p)
	if r.Verdict != report.Fails || r.Governing != "separation" || math.IsNaN(r.Team.Utilisation) {
		t.Errorf("%s by %s: %s", r.Verdict, r.Governing, r.Sentence)
	}
}
