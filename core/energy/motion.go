package energy

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/vec"
)

// Instant is the team at one time of a motion, as core/way's Fly gives it.
type Instant struct {
	Time  float64      // s
	Parts []share.Part // of every vehicle, in the order of the team: Rotor, Thrust, Utilisation
	Wind  vec.V3       // velocity of the air as the team meets it, m/s, in the axes of Parts
}

// Spent is what a motion takes from the pack of one vehicle. NaN: not known, for want of what Study.Needs lists or outside a Range.
type Spent struct {
	Energy float64 // J
	Peak   float64 // W: the largest power
	Charge float64 // left at the end of the motion, or where the pack ends
	Ends   float64 // s: when the pack ends, on the clock of the motion; +Inf: it does not
	By     End     // what ends it
}

// taken is what a vehicle takes at one time.
type taken struct{ time, power, effort float64 }

// Along is what a motion takes from every vehicle, (18.30), (18.31). from are the charges at its beginning; nil: full. The turning of
// the body moves no air. With evenly spaced instants the error of the energy falls with the square of their number.
func (s *Study) Along(motion []Instant, from []float64) []Spent {
	out := make([]Spent, len(s.craft))
	for i := range s.craft {
		track := make([]taken, len(motion))
		for n, at := range motion {
			p := &at.Parts[i]
			track[n] = taken{at.Time, s.powerIn(at.Wind, i, p, 1), p.Utilisation}
		}
		out[i] = s.spend(i, track, chargeOf(from, i))
	}
	return out
}

func chargeOf(from []float64, i int) float64 {
	if from == nil {
		return 1
	}
	return from[i]
}

// Alone is what a level leg takes from vehicle i that flies it by itself with nothing attached, in the plan's wind, and how hard it
// works: thrust over thrust available. It leans until its thrust holds weight and drag, (18.32).
func (s *Study) Alone(i int, leg Leg, from float64) (spent Spent, utilisation float64) {
	c, k := &s.model.Craft[i], &s.craft[i]
	_, v := s.meets(leg)
	weight, drag := c.Vehicle.Mass*share.Gravity, s.model.Density/2*c.Vehicle.DragArea*v*v
	thrust, rotors := math.Hypot(weight, drag), float64(len(c.Rotors))
	power := k.avionics + rotors*k.rotor.Electric(thrust/rotors, s.Density, v*weight/thrust, v*drag/thrust) // (18.32)
	utilisation = thrust / c.Vehicle.ThrustMax
	now := taken{0, power, utilisation}
	end := now
	end.time = leg.Distance / leg.Speed
	return s.spend(i, []taken{now, end}, from), utilisation
}

// fine is how many steps of the rule a whole pack takes at least.
const fine = 64

// spend takes a track out of a pack.
func (s *Study) spend(i int, track []taken, q float64) Spent {
	k := &s.craft[i]
	out := Spent{Charge: q, Ends: math.Inf(1), Peak: math.Inf(-1)}
	for n, b := range track {
		out.Peak = math.Max(out.Peak, b.power)
		if n == 0 {
			continue
		}
		a := track[n-1]
		e := (a.power + b.power) / 2 * (b.time - a.time) // (18.30)
		out.Energy += e
		if !k.known || math.IsNaN(e) {
			out.Charge, out.Ends = math.NaN(), math.NaN()
			continue
		}
		steps := math.Ceil(fine * e / k.pack.Energy)
		for j := 0.0; j < steps && math.IsInf(out.Ends, 1); j++ {
			s.step(k, a.toward(b, j/steps), a.toward(b, (j+1)/steps), &out)
		}
	}
	return out
}

// toward is the track at a part f of the way between two instants, where powers are straight.
func (a taken) toward(b taken, f float64) taken {
	mix := func(x, y float64) float64 { return x + float64(f*(y-x)) }
	return taken{mix(a.time, b.time), mix(a.power, b.power), mix(a.effort, b.effort)}
}

// step takes one step of a track out of a pack, up to its end, which it finds by halving.
func (s *Study) step(k *craft, a, b taken, out *Spent) {
	spare := func(f float64) (gap, charge float64, by End) {
		at := a.toward(b, f)
		floor, by := k.pack.end(at.power, at.effort, k.voltage, s.model.Plan.Limits.Reserve)
		charge = k.pack.ramp(a.power, at.power, out.Charge, at.time-a.time)
		return charge - floor, charge, by
	}
	if gap, charge, _ := spare(1); gap > 0 {
		out.Charge = charge
		return
	}
	lo, hi := 0.0, 1.0
	for hi-lo > 1e-9 {
		mid := (lo + hi) / 2
		if gap, _, _ := spare(mid); gap > 0 { // NaN: it has collapsed
			lo = mid
		} else {
			hi = mid
		}
	}
	_, out.Charge, _ = spare(lo)
	_, _, out.By = spare(hi)
	out.Ends = a.toward(b, lo).time
}

// ramp is the charge left after a time (s) in which the power goes straight from one to another, W: by energy where the pack is that
// alone, else one step of the classical Runge–Kutta rule, (18.31). NaN: it does not last so long.
func (p *Pack) ramp(from, to, q, time float64) float64 {
	if p.simple() {
		return p.ChargeAt(p.Left(q) - (from+to)/2*time/p.Energy) // (18.17)
	}
	mid := (from + to) / 2
	a := p.rate(from, q)
	b := p.rate(mid, q-time/2*a)
	c := p.rate(mid, q-time/2*b)
	d := p.rate(to, q-time*c)
	return q - time/6*(a+2*b+2*c+d) // (18.14)
}
