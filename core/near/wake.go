package near

import (
	"math"

	"cohoist/core/momentum"
	"cohoist/core/vec"
)

const (
	// Contraction is the radius of a rotor's far wake over its own, by momentum theory (heli-air.net 2016, fuselage download).
	Contraction = 1 / math.Sqrt2
	// Full is how far below a rotor its wake has contracted, over its radius (the same source).
	Full = 0.25
	// Merging is how far below a vehicle the wakes of its rotors are one turbulent jet, over its diameter: L. Bauersfeld et al.,
	// arXiv 2403.13321, 2024.
	Merging = 2.5
	// Spreading is half the opening of a round turbulent jet, radians: 11.8°, B. Cushman-Roisin, Environmental Fluid Mechanics (from memory).
	Spreading = 11.8 * math.Pi / 180
)

// Rotors are a vehicle's, as its wakes see them.
type Rotors struct {
	At     vec.V3   // its centre, payload frame, m
	Down   vec.V3   // unit vector in which its air goes
	Places []vec.V3 // of the rotors' hubs from its centre, m
	Radius float64  // of a rotor, m
	Reach  float64  // of the vehicle: arm and radius, m
}

// WakeSpeed is that of the far wake below a rotor that thrusts u (N), twice the induced velocity, m/s, (22.3).
func WakeSpeed(u, radius, rho float64) float64 {
	return 2 * momentum.Hover(math.Max(u, 0), math.Pi*radius*radius, rho) // (22.3)
}

// Merged is how far below a vehicle that reaches so far out its wakes are one jet, m.
func Merged(reach float64) float64 { return Merging * 2 * reach }

// Width is the radius at a depth of the wakes of a vehicle as one, m: contracted, then a jet that spreads, (17.6).
func Width(reach, radius, depth float64) float64 {
	return reach - (1-Contraction)*radius + math.Max(0, depth-Merged(reach))*math.Tan(Spreading) // (17.6)
}

// hit is where the air that leaves a point reaches a height, and how long its way is; ok is false when it never does.
func (v *Rotors) hit(from vec.V3, z float64) (at vec.V3, way float64, ok bool) {
	if drop := from[2] - z; drop > 0 && v.Down[2] < 0 {
		way = drop / -v.Down[2]
		return from.Add(v.Down.Scale(way)), way, true
	}
	return from, 0, false
}

// Flow is the mean speed of the air that the wakes of v send down through a rotor at a place, and its mean square, m/s: disc over disc
// above the depth of merging, (22.5); below, that of the jet at the hub, (22.6). Thrusts are of v's rotors, N.
func (v *Rotors) Flow(thrusts []float64, at vec.V3, radius, rho float64) (mean, square float64) {
	center, way, ok := v.hit(v.At, at[2])
	if !ok {
		return 0, 0
	}
	if way > Merged(v.Reach) {
		w := v.jet(thrusts, math.Hypot(at[0]-center[0], at[1]-center[1]), way, rho)
		return w, w * w
	}
	for j, place := range v.Places {
		to, _, ok := v.hit(v.At.Add(place), at[2])
		if !ok {
			continue
		}
		part := lens(math.Hypot(at[0]-to[0], at[1]-to[1]), radius, Contraction*v.Radius) / (math.Pi * radius * radius)
		w := WakeSpeed(thrusts[j], v.Radius, rho)
		mean += w * part // (22.5)
		square += w * w * part
	}
	return mean, square
}

// jet is the speed of the one jet of a vehicle at a distance from its axis, m/s: Gaussian, its momentum the vehicle's thrust, (22.6).
func (v *Rotors) jet(thrusts []float64, aside, way, rho float64) float64 {
	total := 0.0
	for _, u := range thrusts {
		total += math.Max(u, 0)
	}
	wide := Width(v.Reach, v.Radius, way)
	return math.Sqrt(4*total/(rho*math.Pi*wide*wide)) * math.Exp(-2*aside*aside/(wide*wide)) // (22.6)
}

// lens is the area that two discs share, m².
func lens(apart, a, b float64) float64 {
	switch {
	case apart >= a+b:
		return 0
	case apart <= math.Abs(a-b):
		r := math.Min(a, b)
		return math.Pi * r * r
	}
	x := (apart*apart + a*a - b*b) / (2 * apart)
	y := math.Sqrt(math.Max(0, a*a-x*x))
	return a*a*math.Atan2(y, x) + b*b*math.Atan2(y, apart-x) - apart*y
}
