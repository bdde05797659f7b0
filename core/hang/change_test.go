package hang_test

import (
	"math"
	"testing"

	"cohoist/core/hang"
	"cohoist/core/mass"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// legs are four upright elastic lines from the corners of a rectangle, W = 100 N, half sides 1 and 0.5 m. Strain is 1e-6
// under W on one, so that the tilt of the load moves shares by as little.
func legs(com vec.V3) hang.Rig {
	rig := hang.Rig{Load: load(100/hang.Gravity, com)}
	for _, a := range []vec.V3{{1, 0.5, 0}, {1, -0.5, 0}, {-1, -0.5, 0}, {-1, 0.5, 0}} {
		rig.Lines = append(rig.Lines, hang.Line{Top: a.Add(vec.V3{0, 0, 2}), At: a, Length: 2, Stiffness: 100 / (1e-6 * 2)})
	}
	return rig
}

// Four legs: equal springs W/4 (1 + x c_x/a² + y c_y/b²), by hand; where that is negative the leg is slack and three share by
// moments. One vehicle a little high: ± k h/4 on the diagonals, by hand. One lost: two opposite legs carry all.
func TestFourLegs(t *testing.T) {
	for _, c := range []struct {
		name string
		rig  hang.Rig
		want [4]float64
	}{
		{"springs", legs(vec.V3{0.3, 0.1, 0}), [4]float64{37.5, 27.5, 12.5, 22.5}},
		{"one slack", legs(vec.V3{0.7, 0.3, 0}), [4]float64{65, 20, 0, 15}},
		{"one vehicle 0.4 µm high", legs(vec.V3{}).Displaced(0, vec.V3{0, 0, 0.4e-6}), [4]float64{30, 20, 30, 20}},
		{"one line 0.4 µm short", legs(vec.V3{}).Short(1, 0.4e-6), [4]float64{20, 30, 20, 30}},
		{"one vehicle 1 mm high", legs(vec.V3{}).Displaced(0, vec.V3{0, 0, 1e-3}), [4]float64{50, 0, 50, 0}},
		{"one lost", legs(vec.V3{0.3, 0.1, 0}).Without(2), [4]float64{25, 40, 0, 35}},
	} {
		s := rests(t, c.rig, hang.Level)
		for i, want := range c.want {
			near(t, c.name, s.Tension[i], want, 2e-3*map[bool]float64{true: 10, false: 1}[s.Tilt > 1e-5])
			if s.Slack[i] != (want == 0) {
				t.Errorf("%s: leg %d slack %v", c.name, i, s.Slack[i])
			}
		}
	}
}

// A rig does not change when one is made from it.
func TestChangesLeaveTheRig(t *testing.T) {
	rig := legs(vec.V3{})
	rig.Displaced(0, vec.V3{1, 1, 1})
	rig.Short(1, 0.5)
	rig.Without(2)
	for i, l := range rig.Lines {
		if l.Length != 2 || l.Stiffness != 5e7 || l.Top[2] != 2 {
			t.Errorf("line %d is now %+v", i, l)
		}
	}
	near(t, "stiffness × length", rig.Short(1, 0.5).Lines[1].Stiffness*1.5, 1e8, 1e-6)
}

// team is four vehicles on cables of 2.5 m about a plate of 6 kg with its mass off the middle, in wind.
func team(hold plan.Hold) *share.Model {
	class := plan.Class{Mass: 2, Rotors: 4, Layout: plan.Cross, Arm: 0.1, RotorRadius: 0.05, RotorThrustMax: 12, TorquePerThrust: 0.01, DragArea: 0.02, TiltMax: 40}
	p := plan.Plan{Vehicles: map[string]plan.Class{"v": class}, Policy: plan.EvenEffort, Site: plan.Site{Wind: 5, WindTo: 20},
		Limits: plan.Limits{Utilisation: 1, Cone: 30, TensionMin: 0.5, Separation: 1}}
	hold.Kind, hold.Length = plan.Cable, 2.5
	for i, a := range []vec.V3{{0.5, 0.3, 0.05}, {-0.5, 0.3, 0.05}, {-0.5, -0.3, 0.05}, {0.5, -0.3, 0.05}} {
		p.Team = append(p.Team, plan.Member{ID: string(rune('A' + i)), Vehicle: "v", Attach: a, Hold: hold})
	}
	return share.New(p, mass.Properties{Mass: 6, COM: vec.V3{0.1, 0.05, 0}, Inertia: vec.Diag(vec.V3{0.3, 0.6, 0.9})}, vec.V3{0.1, 0.1, 0.5}, 1.225)
}

// The planned state is an equilibrium of its own rig, with the answer's tensions, whatever the lines are made of.
func TestOfPlan(t *testing.T) {
	for _, hold := range []plan.Hold{{LineStiffness: 5000, WorkingLoad: math.NaN()}, {LineMaterial: "hmpe", WorkingLoad: 300}, {LineMaterial: "hmpe", WorkingLoad: math.NaN()}, {LineStiffness: math.NaN(), WorkingLoad: 300}} {
		m := team(hold)
		a := m.Share(solve.NewSolver())
		rig, ok := hang.Of(m, a.Parts)
		if !ok {
			t.Fatalf("no rig, status %v", a.Status)
		}
		s := rests(t, rig, hang.Pose{Origin: vec.V3{0.02, 0.01, 0.01}, Attitude: vec.Rot(vec.V3{0.02, 0.01, 0.02})})
		nearV(t, "origin", s.Pose.Origin, vec.V3{}, 1e-6)
		near(t, "tilt", s.Tilt, 0, 1e-6)
		for i, p := range a.Parts {
			near(t, "tension", s.Tension[i], p.Tension, 1e-5)
			near(t, "length", rig.Lines[i].Top.Sub(s.Pose.Place(rig.Lines[i].At)).Norm(), 2.5, 1e-6)
		}
	}
	rigid := team(plan.Hold{})
	rigid.Rigid = true
	if _, ok := hang.Of(rigid, nil); ok {
		t.Error("a rig of a rigid team")
	}
}

// The table of fibres and the plan's words are one list; E A by hand: 0.7 × 124/2.65 × 5 × 300 N.
func TestAxial(t *testing.T) {
	f, ok := plan.FieldAt("team[].hold.line_material")
	if !ok || len(f.Choices) != len(hang.Fibres) {
		t.Fatalf("words %v", f.Choices)
	}
	for i, fibre := range hang.Fibres {
		if f.Choices[i] != fibre.Name {
			t.Errorf("the plan says %q, the table %q", f.Choices[i], fibre.Name)
		}
	}
	near(t, "E A", hang.Axial(plan.Hold{LineMaterial: "hmpe", WorkingLoad: 300}), 49132.0755, 1e-3)
	near(t, "E A", hang.Axial(plan.Hold{LineMaterial: "hmpe", WorkingLoad: 300, LineStiffness: 1234}), 1234, 0)
}
