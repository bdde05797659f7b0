package rehearse

import (
	"math"
	"testing"

	"cohoist/core/vec"
)

// free is the body of a rigid team without air, weight and control.
func free(t *testing.T, n int) *World {
	t.Helper()
	m, a := ring(t, n, 6, nil)
	w := rehearsal(t, m, Hover(m, a.Parts, 1), Options{}).World
	w.Density, w.Gravity, w.Bodies[0].push, w.Bodies[0].target = 0, 0, Push{}, Push{}
	return w
}

// Nothing turns a ring of six about an axis off its own: its spin goes round in the body with (J₃ − J₁)/J₁ ω₃, and its angular
// momentum stays, both by Euler's equations for a body of revolution.
func TestTorqueFree(t *testing.T) {
	w := free(t, 6)
	j := w.Bodies[0].Inertia
	if d := math.Abs(j[0][0] - j[1][1]); !(d <= 1e-12*j[0][0]) {
		t.Fatalf("not a body of revolution: %v", j)
	}
	const across, about = 0.9, 1.7
	w.Poses[0].Spin = vec.V3{across, 0, about}
	momentum := Matrix(w.Poses[0].Attitude).Mul(j.Mul(w.Poses[0].Spin))
	lambda := (j[2][2] - j[0][0]) / j[0][0] * about
	for k := range 6000 {
		w.Step(1.0 / 600)
		sin, cos := math.Sincos(lambda * float64(k+1) / 600)
		p := w.Poses[0]
		if d := p.Spin.Sub(vec.V3{across * cos, across * sin, about}).Norm(); !(d <= 1e-8) { // (h λ)⁴ a step
			t.Fatalf("after %d steps the spin is %g rad/s off", k+1, d)
		}
		if d := Matrix(p.Attitude).Mul(j.Mul(p.Spin)).Sub(momentum).Norm(); !(d <= 1e-8) {
			t.Fatalf("after %d steps the angular momentum is %g off", k+1, d)
		}
	}
}

// Rotors told at once to push and turn about z follow with their lag: v = F/m (t − τ + τ e^(−t/τ)), its integral the height; the
// same for the turn.
func TestDriven(t *testing.T) {
	w := free(t, 4)
	b := &w.Bodies[0]
	const force, moment, span, tau = 12.0, 2.5, 2.0, motorLag
	b.target = Push{vec.V3{0, 0, force}, vec.V3{0, 0, moment}}
	for range int(span * 600) {
		w.Step(1.0 / 600)
	}
	left := math.Exp(-span / tau)
	speed := span - tau*(1-left)
	far := span*span/2 - tau*span + tau*tau*(1-left)
	p := w.Poses[0]
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"speed", p.Velocity[2], force / b.Mass * speed}, {"height", p.At[2], force / b.Mass * far},
		{"spin", p.Spin[2], moment / b.Inertia[2][2] * speed},
		{"angle", 2 * math.Atan2(p.Attitude[3], p.Attitude[0]), moment / b.Inertia[2][2] * far},
	} {
		if !(math.Abs(c.got-c.want) <= 1e-8*c.want) { // (h/τ)⁴ of the lag's part
			t.Errorf("%s %.12g, want %.12g", c.name, c.got, c.want)
		}
	}
}

// A mixed team without air, damping and control keeps its energy, and its momentum but for its weight.
func TestMixedConserves(t *testing.T) {
	m, a := mixed(t)
	w := rehearsal(t, m, Hover(m, a.Parts, 1), Options{}).World
	w.Density = 0
	mass := 0.0
	for i := range w.Bodies {
		w.Bodies[i].push, w.Bodies[i].target = Push{}, Push{}
		w.Poses[i].Velocity = vec.V3{math.Sin(float64(3 * i)), math.Cos(float64(5 * i)), 0.2 * float64(i)}
		mass += w.Bodies[i].Mass
	}
	w.Poses[0].Spin = vec.V3{0.3, -0.5, 0.8}
	for k := range w.Lines {
		w.Lines[k].Damping = 0
	}
	before, p0, _ := w.Energy()
	const h, span = 1.0 / 4800, 1.5
	for range int(span / h) {
		w.Step(h)
	}
	after, p1, _ := w.Energy()
	p1[2] += mass * w.Gravity * span
	if size := mass * w.Gravity * span * span; !(math.Abs(after-before) <= 1e-6*size && p1.Sub(p0).Norm() <= 1e-9*mass) {
		t.Errorf("energy changes by %g J of %g, momentum by %v", after-before, size, p1.Sub(p0))
	}
}
