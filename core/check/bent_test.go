package check

import (
	"math"
	"testing"

	"cohoist/core/mass"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// long is an invented pole of 4 m, with a box of fittings off its axis, that three vehicles hold.
func long(kind string, wind float64) plan.Plan {
	p := plan.Blank()
	pole, box := plan.BlankSolid(), plan.BlankSolid()
	pole.Shape, pole.Length, pole.OuterRadius, pole.InnerRadius, pole.Mass = plan.Tube, 4, 0.04, 0.036, 3
	box.Shape, box.Mass, box.At = plan.Point, 1, vec.V3{0.7, 0.05, 0.1}
	p.Payload.Solids = []plan.Solid{pole, box}
	p.Payload.Beam.Material = "grp-e23"
	c := plan.BlankClass()
	c.Mass, c.Rotors, c.Arm, c.RotorRadius, c.RotorThrustMax, c.TorquePerThrust, c.DragArea = 3.4, 4, 0.33, 0.19, 19, 0.016, 0.06
	p.Vehicles = map[string]plan.Class{"field-quad": c}
	for i, x := range []float64{-1.6, 0.1, 1.7} {
		m := plan.BlankMember()
		m.ID, m.Vehicle, m.Attach = string(rune('A'+i)), "field-quad", vec.V3{x, 0, 0.06}
		if kind == plan.Rigid {
			m.Attach = vec.V3{x, 0.1 * float64(i-1), 0.15}
		}
		m.Hold.Kind, m.Hold.Length = kind, 3
		p.Team = append(p.Team, m)
	}
	p.Site.Wind, p.Site.WindTo = wind, 30
	q, _ := plan.Assume(p)
	return q
}

func facts(t *testing.T, p plan.Plan) Facts {
	t.Helper()
	payload, err := mass.Of(p.Payload)
	if err != nil {
		t.Fatal(err)
	}
	f := Facts{Plan: p, Model: share.New(p, payload, vec.V3{0.02, 0.3, 0.3}, 1.225), Solver: solve.NewSolver()}
	f.Answer = f.Model.Share(f.Solver)
	if f.Answer.Parts == nil {
		t.Fatalf("no share: %v", f.Answer.Status)
	}
	f.Bent = Bend(f)
	f.Held = Hold(f)
	return f
}

// Weight, drag and the team's forces hold a bar in balance, whether it leans on grips in the wind or hangs: forces
// and both bending moments vanish beyond its end. The only outside number is the solver's residual, 1e-9.
func TestTheBeamIsInBalance(t *testing.T) {
	com := vec.V3{0.2, 0.01, 0.02}
	for name, p := range map[string]plan.Plan{"grips in wind": long(plan.Rigid, 6), "grips": long(plan.Rigid, 0), "measured": long(plan.Rigid, 4)} {
		if name == "measured" {
			p.Payload.COM = &com
		}
		f := facts(t, p)
		w := f.Model.Weight()
		for i, x := range f.Bent.Diagram.Residual {
			if i != 3 && math.Abs(x) > 1e-8*w*4 { // 3 is torsion, which is not asked
				t.Errorf("%s: residual %d is %g", name, i, x)
			}
		}
		if o := bending(f); o.Status != NotRun || !(o.Demand > 0 && o.Demand < o.Capacity) {
			t.Errorf("%s: %+v", name, o)
		}
		if o := deflection(f); !(o.Demand > 0) {
			t.Errorf("%s: %+v", name, o)
		}
	}
}

// A beam that holds places: three stiff holds carry it as a continuous beam; springs as soft as nothing share
// evenly where balance lets them; a hold that would have to push is slack and said.
func TestHeldPlaces(t *testing.T) {
	p := long(plan.Cable, 0)
	p.Payload.Solids[1].At = vec.V3{0, 0, 0}
	for i, x := range []float64{-1.5, 0, 1.5} {
		p.Team[i].Attach = vec.V3{x, 0, 0.06}
	}
	f := facts(t, p)
	if o := idealShare(f); o.Status != NotApplicable || f.Held.Stated || !f.Held.Bends {
		t.Errorf("no stiffness given: %+v", o)
	}
	stiff := f.Held.Force[1]
	for i := range p.Team {
		p.Team[i].Hold.Stiffness = 1e-6
	}
	soft := facts(t, p).Held.Force
	if math.Abs(soft[0]-soft[1]) > 1e-6*soft[0] || !(stiff > 1.5*soft[1]) {
		t.Errorf("soft %v, the middle stiffly %g", soft, stiff)
	}
	for i := range p.Team {
		p.Team[i].Hold.Stiffness, p.Team[i].Hold.LengthError = 1e5, 0.05
	}
	f = facts(t, p)
	if o := idealShare(f); f.Held.Most[1] < 0.99*weight(f) || o.Where != "B" {
		t.Errorf("50 mm too short, the middle one lifts all: %v of %g, %+v", f.Held.Most, weight(f), o.Where)
	}
	p.Team[1].Attach[0], p.Team[2].Attach[0], p.Payload.Solids[1].At[0] = -1.2, 1.9, 0.35
	p.Payload.Solids[1].Mass = 4 // hangs between B and C and tips the end at A up
	for i := range p.Team {
		p.Team[i].Hold.Stiffness, p.Team[i].Hold.LengthError = 1e7, 0
	}
	f = facts(t, p)
	if !f.Held.Slack[0] || f.Held.Force[0] != 0 {
		t.Errorf("A does not go slack: %v", f.Held.Force)
	}
	p.Team = []plan.Member{p.Team[0], p.Team[2]}
	if Hold(facts(t, p)) != nil {
		t.Error("two holds leave nothing open")
	}
}
