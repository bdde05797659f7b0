package rehearse

import (
	"math"
	"testing"

	"cohoist/core/vec"
)

// A vehicle knows of the others only where they are, and that counts only when they are too near.
func TestDecentralised(t *testing.T) {
	m, a := liftOf(t, "deck-of-eight")
	r := rehearsal(t, m, Hover(m, a.Parts, 1), Options{})
	want := func(others ...vec.V3) vec.V3 {
		p := r.crew[0].pilot
		p.place(&r.World.Poses[1], r.feel(0), others, r.aim(0), 1.2)
		return p.force
	}
	own := r.World.Poses[1].At
	alone := want()
	if got := want(own.Add(vec.V3{1.3, 0, 0}), own.Add(vec.V3{0, 0, 5})); got != alone {
		t.Errorf("others far off change the thrust from %v to %v", alone, got)
	}
	if got := want(own.Add(vec.V3{1, 0, 0})); !(got[0] < alone[0]-1e-3) {
		t.Errorf("one too near on the x side changes the thrust from %v to %v", alone, got)
	}
}

// Rotors within their bounds make the wanted push; beyond them, nothing is above its most or below nothing, and yaw
// takes no more than its part.
func TestMix(t *testing.T) {
	m, a := liftOf(t, "deck-of-eight")
	p := &rehearsal(t, m, Hover(m, a.Parts, 1), Options{}).crew[0].pilot
	most := p.vehicle.Vehicle.ThrustMax
	w := Push{vec.V3{0, 0, 0.5 * most}, vec.V3{0.4, -0.3, 0.05}}
	if got := p.mix(w); !(math.Abs(got.Force[2]-w.Force[2]) <= 1e-12*most && got.Moment.Sub(w.Moment).Norm() <= 1e-12) {
		t.Errorf("%+v for %+v", got, w)
	}
	if got := p.mix(Push{vec.V3{0, 0, 2 * most}, vec.V3{}}); !(math.Abs(got.Force[2]-most) <= 1e-12*most) {
		t.Errorf("thrust %g of %g", got.Force[2], most)
	}
	kappa := math.Abs(p.vehicle.Vehicle.Rotors[0].Torque)
	got := p.mix(Push{vec.V3{0, 0, 0.5 * most}, vec.V3{0.4, 0, 100}})
	if !(math.Abs(got.Moment[0]-0.4) <= 1e-12 && math.Abs(got.Moment[2]-yawShare*kappa*0.5*most) <= 1e-12) {
		t.Errorf("%+v with all yaw wanted", got)
	}
}

// The wanted thrust never leans beyond the vehicle's tilt, is never more than it has, and keeps height before place.
func TestLimit(t *testing.T) {
	m, a := liftOf(t, "deck-of-eight")
	p := &rehearsal(t, m, Hover(m, a.Parts, 1), Options{}).crew[0].pilot
	v := p.vehicle.Vehicle
	for _, f := range []vec.V3{{500, 0, 20}, {0, -30, 60}, {10, 10, 500}, {5, 0, -40}} {
		got := p.limit(f)
		if lean := math.Atan2(math.Hypot(got[0], got[1]), got[2]); !(lean <= v.TiltMax+1e-12 && got.Norm() <= v.ThrustMax*(1+1e-12)) {
			t.Errorf("%v for %v leans %g rad", got, f, lean)
		}
		if f[2] > 0 && f[2] < v.ThrustMax && got[2] != f[2] {
			t.Errorf("%v for %v gives height away", got, f)
		}
	}
}

// Gusts wander by a third of what the factor adds, three quarters of it across and half upwards, and the mean stays; sampled
// over 20 000 s with 2 s memory, so good to a few per cent.
func TestGusts(t *testing.T) {
	mean := vec.V3{3, 4, 0}
	g := newGusts(mean, 1.6, 20000, 7)
	along := mean.Unit()
	side := vec.V3{0, 0, 1}.Cross(along)
	var sum vec.V3
	var square [3]float64
	for _, o := range g.off {
		sum = sum.Add(o)
		for a, d := range []vec.V3{along, side, {0, 0, 1}} {
			square[a] += o.Dot(d) * o.Dot(d)
		}
	}
	n := float64(len(g.off))
	for a, want := range []float64{1, across, upwards} {
		if got := math.Sqrt(square[a] / n); !(math.Abs(got/want-1) <= 0.05) {
			t.Errorf("direction %d: standard deviation %g m/s, want %g", a, got, want)
		}
	}
	if got := sum.Norm() / n; !(got <= 0.1) {
		t.Errorf("the mean moves by %g m/s", got)
	}
	if got := newGusts(mean, 1, 10, 7).at(3.3); got != mean {
		t.Errorf("a wind without gusts blows with %v", got)
	}
}
