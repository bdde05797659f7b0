package lost_test

import (
	"math"
	"strconv"
	"testing"

	"cohoist/core/lost"
	"cohoist/core/mass"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

const light = 1e-12 // kg, a vehicle that weighs nothing beside its load

// class has the given rotors, whose thrusts add up to thrust; without arm and torque its rotors push at one point.
func class(mass, thrust float64, rotors int, arm, torque float64) plan.Class {
	return plan.Class{Mass: mass, Rotors: rotors, Layout: plan.Cross, Arm: arm, RotorRadius: 0.05,
		RotorThrustMax: thrust / float64(rotors), TorquePerThrust: torque, TiltMax: 60}
}

func team(c plan.Class, members ...plan.Member) plan.Plan {
	for i := range members {
		members[i].ID = string(rune('A' + i))
		members[i].Vehicle = "v"
	}
	return plan.Plan{Vehicles: map[string]plan.Class{"v": c}, Team: members, Policy: plan.EvenEffort,
		Limits: plan.Limits{Utilisation: 1, Cone: 30}}
}

func on(kind string, x, y float64) plan.Member {
	return plan.Member{Attach: vec.V3{x, y, 0}, Hold: plan.Hold{Kind: kind, Length: 3, WorkingLoad: math.NaN()}}
}

func ring(c plan.Class, kind string, k int) plan.Plan {
	members := make([]plan.Member, k)
	for i := range members {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(k))
		members[i] = on(kind, cos, sin)
	}
	return team(c, members...)
}

func weighing(weight float64) mass.Properties { return mass.Properties{Mass: weight / share.Gravity} }

func model(p plan.Plan, payload mass.Properties) *share.Model {
	return share.New(p, payload, vec.V3{}, 1.225)
}

func study(p plan.Plan, payload mass.Properties) lost.Study {
	return lost.Of(model(p, payload), solve.NewSolver(), nil)
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) && !(math.IsInf(want, 1) && math.IsInf(got, 1)) {
		t.Errorf("%s = %.12g, want %.12g within %g", what, got, want, tol)
	}
}

// One vehicle drops out of a rigid ring of k with the load at its centre: references, section 8.3,
// derived there as a linear program. Exact, so within what the solver leaves, 1e-9.
func TestDropOut(t *testing.T) {
	rows := []struct {
		k           int
		after, more float64 // of the load; times what it was, as printed
	}{{3, math.Inf(1), math.Inf(1)}, {4, 1. / 2, 2}, {5, (5 + math.Sqrt(5)) / 20, 1.809}, {6, 1. / 4, 1.5}, {8, 1. / 6, 1.333}}
	for _, r := range rows {
		for _, kind := range []string{plan.Rigid, plan.Cable} {
			p := ring(class(light, 1, 4, 0, 0), kind, r.k)
			before := model(p, weighing(1)).Share(solve.NewSolver()).Even.T
			near(t, "before", before, 1/float64(r.k), 1e-9)
			for _, e := range study(p, weighing(1)).Entries[:r.k] {
				near(t, kind+" ring of "+strconv.Itoa(r.k)+" without "+e.Lost[0], e.Utilisation, r.after, 1e-9)
				near(t, "factor", e.Utilisation/before, r.more, 5e-4) // printed to three decimals
			}
		}
	}
}

// Three cables in a line, 1 m apart, with the load under the middle one, by hand. Without B the other two bear
// half the load each, and half of B when it hangs dead; without A
// all hangs from B, for C would tip it, and nothing holds A dead at the free end.
func TestThreeInLine(t *testing.T) {
	const w, own, thrust = 60.0, 2 * share.Gravity, 100.0
	for _, r := range []struct {
		rule     string
		withoutB float64 // N on each line
		withoutA float64 // utilisation
		peak     float64 // N
	}{
		{plan.CutAway, w / 2, (w + own) / thrust, w/3 + 2*(w/2-w/3)},
		{plan.DeadWeight, (w + own) / 2, math.Inf(1), w/3 + 2*((w+own)/2-w/3)},
	} {
		p := team(class(2, thrust, 4, 0.1, 0), on(plan.Cable, -1, 0), on(plan.Cable, 0, 0), on(plan.Cable, 1, 0))
		p.Limits.Lost = r.rule
		p.Team[0].Hold.WorkingLoad = 200
		s := study(p, weighing(w))
		b := s.Entries[1]
		near(t, r.rule+": without B", b.Utilisation, (r.withoutB+own)/thrust, 1e-9)
		if len(b.Lines) != 2 {
			t.Fatalf("%s: lines %+v", r.rule, b.Lines)
		}
		near(t, "before", b.Lines[0].Before, w/3, 1e-6) // ties are settled to 1e-7 of the thrust
		near(t, "after", b.Lines[0].After, r.withoutB, 1e-6)
		near(t, "peak", b.Lines[0].Peak, r.peak, 3e-6)
		near(t, "without A", s.Entries[0].Utilisation, r.withoutA, 1e-9) // dead it hangs where nobody is left to pull
		if s.Vehicles.Survives() != (r.rule == plan.CutAway) || s.Vehicles.Worst < 0 || s.Pairs.Fallen != 2 && r.rule == plan.CutAway {
			t.Errorf("%s: %+v %+v", r.rule, s.Vehicles, s.Pairs)
		}
	}
}

// A leant rigid team in wind takes another lean when a vehicle is lost, for its full-thrust axis turns. Second
// route: the plan in which that vehicle has next to no thrust; to 1e-6, for what it still gives.
func TestLeantInWind(t *testing.T) {
	const nothing = 1e-7 // N a rotor
	s := solve.NewSolver()
	p := ring(class(2, 80, 4, 0.2, 0.02), plan.Rigid, 6)
	for i := range p.Team {
		p.Team[i].Hold.Lean = [2]float64{4 * float64(i%3), -3 * float64(i%2)}
	}
	p.Site = plan.Site{Wind: 6, WindTo: 70}
	area := vec.V3{0.1, 0.2, 0.3}
	body := mass.Properties{Mass: 8, COM: vec.V3{0.05, 0.02, 0}}
	whole := share.New(p, body, area, 1.225)
	study := lost.Of(whole, s, nil)
	for i := range p.Team {
		q := p
		weak := p.Vehicles["v"]
		weak.RotorThrustMax = nothing
		q.Vehicles = map[string]plan.Class{"v": p.Vehicles["v"], "weak": weak}
		q.Team = append([]plan.Member(nil), p.Team...)
		q.Team[i].Vehicle = "weak"
		m := share.New(q, body, area, 1.225)
		if m.Lean.Sub(whole.Lean).Norm() < 1e-4 {
			t.Errorf("without %d the lean stays %v", i, m.Lean)
		}
		near(t, "without "+p.Team[i].ID, study.Entries[i].Utilisation, s.Solve(m.Even(0)).T, 1e-6)
	}
}
