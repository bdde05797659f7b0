package rehearse

import (
	"math"
	"testing"

	"cohoist/core/vec"
)

// Without air, ground and cuts the energy stays, to 1e-6 of what is in the lines and in motion; bodies that nothing holds
// keep their momentum but for their weight, and their angular momentum but for its moment, to rounding.
func TestConserved(t *testing.T) {
	for n, s := range scenes(t) {
		if s.Kind == "cut" {
			continue
		}
		w := s.world()
		before, p0, _ := w.Energy()
		mass, moment := 0.0, vec.V3{}
		for _, b := range s.Bodies {
			mass += b.Mass
		}
		_, _, spin := w.Energy()
		const h, span = 1.0 / 2400, 2.0
		size := 0.0
		for range int(span / h) {
			moment = moment.Add(weightMoment(w).Scale(h / 2))
			w.Step(h)
			moment = moment.Add(weightMoment(w).Scale(h / 2))
			moving, _, _ := w.Energy()
			for i, b := range s.Bodies {
				moving -= b.Mass * w.Gravity * w.Poses[i].At[2]
			}
			size = math.Max(size, moving)
		}
		after, p1, spin1 := w.Energy()
		if d := math.Abs(after - before); !(d <= 1e-6*size) {
			t.Errorf("scene %d, %s: energy changes by %g J of %g", n, s.Kind, d, size)
		}
		if s.Kind != "flown" {
			continue
		}
		p1[2] += mass * w.Gravity * span
		if d := p1.Sub(p0).Norm(); !(d <= 1e-10*mass) {
			t.Errorf("scene %d: momentum changes by %g", n, d)
		}
		if d := spin1.Sub(spin).Sub(moment).Norm(); !(d <= 1e-6*(1+spin.Norm())) { // the moment of the weights by trapezia
			t.Errorf("scene %d: angular momentum changes by %g of %g", n, d, spin.Norm())
		}
	}
}

// weightMoment is the moment of all weights about the origin, N m.
func weightMoment(w *World) (m vec.V3) {
	for i, b := range w.Bodies {
		m = m.Add(w.Poses[i].At.Cross(vec.V3{0, 0, -b.Mass * w.Gravity}))
	}
	return m
}

// Half the step changes places after 3 s by less than 1e-4 m.
func TestHalfStep(t *testing.T) {
	for n, s := range scenes(t) {
		a, b := s.world(), s.world()
		s.run(a, 3, 1.0/1200)
		s.run(b, 3, 1.0/2400)
		for i := range a.Poses {
			if d := a.Poses[i].At.Sub(b.Poses[i].At).Norm(); !(d <= 1e-4) {
				t.Errorf("scene %d, %s: body %d moves by %g m", n, s.Kind, i, d)
			}
		}
	}
}

// A weight on one line bobs with 2π√(m/k); by hand, from the undisturbed length: x = (m g/k)(1 − cos ωt).
func TestBob(t *testing.T) {
	const m, k, L = 2.0, 800.0, 1.5
	w := &World{Gravity: 10, Ground: math.Inf(-1), Bodies: []Body{{Mass: m}}, Poses: []Pose{{At: vec.V3{0, 0, -L}, Attitude: [4]float64{1}}},
		Lines: []Line{{A: -1, B: 0, Length: L, Stiffness: k}}}
	w.Ready()
	omega := math.Sqrt(k / m)
	for range 1000 {
		w.Step(1e-3)
	}
	want := -L - m*10/k*(1-math.Cos(omega))
	if got := w.Poses[0].At[2]; !(math.Abs(got-want) <= 1e-7) { // the line just goes slack at the top of every bob
		t.Errorf("height %.10g, want %.10g", got, want)
	}
}

// A box put down on the ground comes to rest there, with its weight on its feet; a foot's give is set by the weight.
func TestStands(t *testing.T) {
	w := &World{Gravity: 9.80665, Ground: 0, Bodies: []Body{{Mass: 5, Inertia: vec.Diag(vec.V3{0.2, 0.2, 0.3}),
		Feet: []vec.V3{{0.3, 0.2, -0.1}, {-0.3, 0.2, -0.1}, {-0.3, -0.2, -0.1}, {0.3, -0.2, -0.1}}}},
		Poses: []Pose{{At: vec.V3{0, 0, 0.12}, Attitude: [4]float64{1}, Velocity: vec.V3{0.3, 0, 0}}}}
	w.Ready()
	for range 6000 {
		w.Step(1e-3)
	}
	p := w.Poses[0]
	if !(math.Abs(p.At[2]-(0.1-sinking)) <= 1e-6 && p.Velocity.Norm() <= 1e-6 && p.At[0] > 0.001 && p.At[0] < 0.1) {
		t.Errorf("stands at %v with %v m/s", p.At, p.Velocity)
	}
}
