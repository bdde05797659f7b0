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

// The estimate lies within a factor of two of a measured small quadrotor: 0.5 kg, arm 0.17 m,
// 2.32e-3, 2.32e-3, 4.00e-3 kg m² (from memory, a much-used laboratory vehicle of the literature).
// It grows with the fifth power of size (common practice, no source).
func TestEstimate(t *testing.T) {
	c := plan.Class{Mass: 0.5, Rotors: 4, Arm: 0.17, RotorRadius: 0.1}
	v := New(c, 1.225)
	if !v.InertiaEstimated {
		t.Error("not marked as an estimate")
	}
	for i, want := range []float64{2.32e-3, 2.32e-3, 4.00e-3} {
		if r := v.Inertia[i][i] / want; r < 0.5 || r > 2 {
			t.Errorf("inertia %d is %.2f of the measured one", i, r)
		}
	}
	big := c
	big.Mass, big.Arm = 8*c.Mass, 2*c.Arm
	if r := New(big, 1.225).Inertia[2][2] / v.Inertia[2][2]; math.Abs(r-32) > 1e-12 {
		t.Errorf("twice the size has %g times the inertia, want 32", r)
	}
	own := vec.V3{1, 2, 3}
	c.Inertia = &own
	if v := New(c, 1.225); v.Inertia != vec.Diag(own) || v.InertiaEstimated {
		t.Error("the measured inertia did not override")
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
