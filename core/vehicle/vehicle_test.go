package vehicle

import (
	"math"
	"testing"

	"cohoist/core/mass"
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

// The estimate lies within a factor of two of vehicles whose inertia is published.
func TestEstimate(t *testing.T) {
	for _, c := range []struct {
		mass, arm float64
		want      vec.V3
		source    string
	}{
		{0.027, 0.0397, vec.V3{1.4e-5, 1.4e-5, 2.17e-5}, "utiasDSL/gym-pybullet-drones, assets/cf2x.urdf, which names arXiv 1608.05786 as its source"},
		{0.716, 0.17, vec.V3{0.00752, 0.00752, 0.01304}, "ethz-asl/rotors_simulator, hummingbird.xacro (after J. Wang et al., Novel Dynamic Inversion Architecture Design for Quadrocopter Control): body 0.68 kg and 0.007, 0.007, 0.012, and its four rotors of 9 g"},
		{1.48, 0.228, vec.V3{0.0176, 0.0176, 0.0362}, "JBannwarth/multirotor_model, UavQuadcopter460mm.m: measured with a trifilar pendulum"},
		{1.774, 0.295, vec.V3{0.0297598, 0.0298565, 0.058510}, "alibaniasad1999/bachelor-thesis, Code/QuadParameter.m"},
	} {
		v := New(plan.Class{Mass: c.mass, Rotors: 4, Arm: c.arm, RotorRadius: 0.1}, 1.225)
		if !v.InertiaEstimated {
			t.Error("not marked as an estimate")
		}
		for i, want := range c.want {
			if r := v.Inertia[i][i] / want; r < 0.5 || r > 2 {
				t.Errorf("%g kg: inertia %d is %.2f of the published one (%s)", c.mass, i, r, c.source)
			}
		}
	}
}

// By hand: 1 kg on arms of 1 m; 0.3 kg at the rotors, 0.7 kg in a cylinder of 0.5 m radius and 0.3 m
// height, 0.7 × (3 × 0.25 + 0.09)/12 = 0.049 across and 0.7 × 0.25/2 = 0.0875 about its axis.
func TestEstimateByHand(t *testing.T) {
	for _, c := range []struct {
		layout string
		n      int
		want   vec.V3
	}{
		{plan.Cross, 4, vec.V3{0.199, 0.199, 0.3875}}, {plan.Plus, 6, vec.V3{0.199, 0.199, 0.3875}}, {plan.Plus, 3, vec.V3{0.199, 0.199, 0.3875}},
		{plan.Plus, 2, vec.V3{0.049, 0.349, 0.3875}}, {plan.Cross, 2, vec.V3{0.349, 0.049, 0.3875}}, {plan.Plus, 1, vec.V3{0.049, 0.349, 0.3875}},
	} {
		v := New(plan.Class{Mass: 1, Rotors: c.n, Layout: c.layout, Arm: 1}, 1.225)
		for i, want := range c.want {
			if math.Abs(v.Inertia[i][i]-want) > 1e-15 {
				t.Errorf("%s of %d: inertia %d is %.17g, want %g", c.layout, c.n, i, v.Inertia[i][i], want)
			}
		}
		sum := vec.M3{} // a second route: the rotors as points, one by one
		for _, r := range v.Rotors {
			sum = sum.AddM(mass.Properties{Mass: 0.3 / float64(c.n), COM: r.At}.About(vec.V3{}))
		}
		for i := range 3 {
			for j := range 3 {
				want := sum[i][j] + vec.Diag(vec.V3{0.049, 0.049, 0.0875})[i][j]
				if math.Abs(v.Inertia[i][j]-want) > 1e-15 {
					t.Errorf("%s of %d: inertia[%d][%d] %g, point by point %g", c.layout, c.n, i, j, v.Inertia[i][j], want)
				}
			}
		}
	}
}

// Twice the size in every way has 32 times the inertia (fifth power of size: common practice, no
// source); the inertia of the class goes before the estimate.
func TestInertia(t *testing.T) {
	c := plan.Class{Mass: 0.5, Rotors: 4, Arm: 0.17, RotorRadius: 0.1}
	big := c
	big.Mass, big.Arm = 8*c.Mass, 2*c.Arm
	if r := New(big, 1.225).Inertia[2][2] / New(c, 1.225).Inertia[2][2]; math.Abs(r-32) > 1e-12 {
		t.Errorf("twice the size has %g times the inertia, want 32", r)
	}
	own := vec.V3{1, 2, 3}
	c.Inertia = &own
	if v := New(c, 1.225); v.Inertia != vec.Diag(own) || v.InertiaEstimated {
		t.Error("the measured inertia did not override")
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
