package vehicle

import (
	"math"
	"strings"
	"testing"

	"cohoist/core/mass"
	"cohoist/core/plan"
	"cohoist/core/vec"
)

// The estimate lies within a factor of 1.6 of vehicles whose inertia is published.
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
			if r := v.Inertia[i][i] / want; r < 1/1.6 || r > 1.6 {
				t.Errorf("%g kg: inertia %d is %.2f of the published one (%s)", c.mass, i, r, c.source)
			}
		}
	}
}

// By hand: 1 kg on arms of 1 m; 0.4 kg at the rotors, 0.6 kg in a cylinder of 0.5 m radius and 0.3 m
// height, 0.6 × (3 × 0.25 + 0.09)/12 = 0.042 across and 0.6 × 0.25/2 = 0.075 about its axis.
func TestEstimateByHand(t *testing.T) {
	for _, c := range []struct {
		layout string
		n      int
		want   vec.V3
	}{
		{plan.Cross, 4, vec.V3{0.242, 0.242, 0.475}}, {plan.Plus, 6, vec.V3{0.242, 0.242, 0.475}}, {plan.Plus, 3, vec.V3{0.242, 0.242, 0.475}},
		{plan.Plus, 2, vec.V3{0.042, 0.442, 0.475}}, {plan.Cross, 2, vec.V3{0.442, 0.042, 0.475}}, {plan.Plus, 1, vec.V3{0.042, 0.442, 0.475}},
	} {
		v := New(plan.Class{Mass: 1, Rotors: c.n, Layout: c.layout, Arm: 1}, 1.225)
		for i, want := range c.want {
			if math.Abs(v.Inertia[i][i]-want) > 1e-15 {
				t.Errorf("%s of %d: inertia %d is %.17g, want %g", c.layout, c.n, i, v.Inertia[i][i], want)
			}
		}
		sum := vec.M3{} // a second route: the rotors as points, one by one
		for _, r := range v.Rotors {
			sum = sum.AddM(mass.Properties{Mass: 0.4 / float64(c.n), COM: r.At}.About(vec.V3{}))
		}
		for i := range 3 {
			for j := range 3 {
				want := sum[i][j] + vec.Diag(vec.V3{0.042, 0.042, 0.075})[i][j]
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

// The sheet says once for each class that its inertia is an estimate.
func TestAssumed(t *testing.T) {
	own := vec.V3{1, 2, 3}
	p := plan.Plan{Vehicles: map[string]plan.Class{"a": {}, "b": {Inertia: &own}, "unused": {}},
		Team: []plan.Member{{Vehicle: "b"}, {Vehicle: "a"}, {Vehicle: "a"}, {Vehicle: "no such class"}}}
	if got := Assumed(p); len(got) != 1 || !strings.HasPrefix(got[0], "Inertia of a left out: estimated") {
		t.Errorf("%q", got)
	}
}
