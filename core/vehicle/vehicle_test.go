package vehicle

import (
	"math"
	"testing"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

func quad(layout string, n int) plan.Class {
	return plan.Class{Mass: 2, Rotors: n, Layout: layout, Arm: 0.5, RotorRadius: 0.2, RotorThrustMax: 10, TorquePerThrust: 0.016, TiltMax: 30}
}

// By hand, (4.1): a plus has its first rotor ahead, a cross half a step to the left of it.
func TestRotors(t *testing.T) {
	s := 0.5 * math.Sqrt(0.5)
	for _, c := range []struct {
		layout string
		n      int
		want   []vec.V3
	}{
		{plan.Plus, 4, []vec.V3{{0.5, 0, 0}, {0, 0.5, 0}, {-0.5, 0, 0}, {0, -0.5, 0}}},
		{plan.Cross, 4, []vec.V3{{s, s, 0}, {-s, s, 0}, {-s, -s, 0}, {s, -s, 0}}},
		{plan.Plus, 3, []vec.V3{{0.5, 0, 0}, {-0.25, 0.25 * math.Sqrt(3), 0}, {-0.25, -0.25 * math.Sqrt(3), 0}}},
	} {
		v := New(quad(c.layout, c.n), 1.225)
		for j, r := range v.Rotors {
			if r.At.Sub(c.want[j]).Norm() > 1e-15 || r.Axis != (vec.V3{0, 0, 1}) {
				t.Errorf("%s of %d, rotor %d at %v, want %v", c.layout, c.n, j, r.At, c.want[j])
			}
			if want := 0.016 * float64(1-j%2*2); r.Torque != want {
				t.Errorf("rotor %d torque %g, want %g", j, r.Torque, want)
			}
		}
	}
}

// Thrust goes with density, (4.3): at 1 500 m and 20 K warm, ρ 0.987151, 4 × 10 N become 32.2335 N.
func TestThinAir(t *testing.T) {
	v := New(quad(plan.Cross, 4), 0.987151)
	if want := 40 * 0.987151 / 1.225; math.Abs(v.ThrustMax-want) > 1e-12 || math.Abs(want-32.2335) > 5e-5 {
		t.Errorf("thrust %.6f, want %.6f", v.ThrustMax, want)
	}
}

// A class without rotors, or with numbers left out, is a vehicle with NaN, not a panic: the plan's
// missing fields say what is wanted.
func TestLeftOut(t *testing.T) {
	v := New(plan.Class{Mass: math.NaN(), Arm: math.NaN(), RotorThrustMax: math.NaN()}, 1.225)
	if len(v.Rotors) != 0 || v.ThrustMax != 0 || !math.IsNaN(v.Inertia[2][2]) {
		t.Errorf("%+v", v)
	}
	if v := New(plan.Class{Mass: 1, Rotors: 2, RotorThrustMax: math.NaN()}, 1.225); !math.IsNaN(v.ThrustMax) {
		t.Errorf("unknown thrust counts as %g", v.ThrustMax)
	}
}

// Attitude, (4.6): a lean of 90° about x takes the thrust axis to −y whatever the yaw; yaw alone
// takes ahead to the left.
func TestAttitude(t *testing.T) {
	m := plan.Member{Yaw: 90, Hold: plan.Hold{Lean: [2]float64{90, 0}}}
	if z := Attitude(m).Mul(vec.V3{0, 0, 1}); z.Sub(vec.V3{0, -1, 0}).Norm() > 1e-15 {
		t.Errorf("thrust axis %v, want −y", z)
	}
	if x := Attitude(plan.Member{Yaw: 90}).Mul(vec.V3{1, 0, 0}); x.Sub(vec.V3{0, 1, 0}).Norm() > 1e-15 {
		t.Errorf("ahead %v, want +y", x)
	}
}

// A lean of 30° about y with a yaw of 90°: by hand, ahead is to the left as before the lean, which
// turns about that very axis, and the thrust axis leans forwards.
func TestLeanThenYaw(t *testing.T) {
	a := Attitude(plan.Member{Yaw: 90, Hold: plan.Hold{Lean: [2]float64{0, 30}}})
	if x := a.Mul(vec.V3{1, 0, 0}); x.Sub(vec.V3{0, 1, 0}).Norm() > 1e-15 {
		t.Errorf("ahead %v, want +y", x)
	}
	if z := a.Mul(vec.V3{0, 0, 1}); z.Sub(vec.V3{0.5, 0, math.Sqrt(0.75)}).Norm() > 1e-15 {
		t.Errorf("thrust axis %v, want 30° towards +x", z)
	}
}
