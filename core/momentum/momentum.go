// Package momentum is a rotor by momentum theory: induced velocity and power of a disc, at rest and in a flow (THEORY chapter 18).
//
// Restriction: one disc that others do not disturb, air that comes up through it with at most half the induced velocity of hover.
// Geometry: the flow has a part along the disc and one down through it. Calculation: (18.1) to (18.5). Verification: a printed rule, a
// climbing rotor, (18.4) put back, in the tests. References: THEORY chapter 18.
package momentum

import "math"

// Range is where a formula holds, as data. Source is the range's own, not the formula's.
type Range struct {
	Of        string // what lies between Low and High
	Low, High float64
	Source    string
}

// Holds tells whether x lies in the range, its ends with it, rounding let in.
func (r Range) Holds(x float64) bool {
	const rounding = 1e-12
	return x >= r.Low-rounding*math.Abs(r.Low) && x <= r.High+rounding*math.Abs(r.High)
}

// Ideal is the power that momentum theory asks for a thrust (N) from discs of an area (m²) at rest in air of a density
// (kg/m³): W, (18.2).
func Ideal(thrust, area, rho float64) float64 {
	return thrust * Hover(thrust, area, rho) // (18.2)
}

// Hover is the induced velocity through a disc at rest, m/s, (18.1).
func Hover(thrust, area, rho float64) float64 {
	return math.Sqrt(thrust / (2 * rho * area)) // (18.1)
}

// Descent is how fast air may come up through a disc, over the induced velocity in hover, before momentum theory ends: the vortex
// ring begins about there.
var Descent = Range{"v_n/v_h", -0.5, math.Inf(1), "from memory"}

// Induced is the induced velocity v (m/s) of a disc that has v_h in hover, in air that flows with inPlane along it and
// with through down through it, m/s: the root of v √(inPlane² + (through + v)²) = v_h², H. Glauert's hypothesis, (18.4). ok is
// false, and v NaN, outside Descent.
func Induced(hover, inPlane, through float64) (v float64, ok bool) {
	if !(hover > 0) || !Descent.Holds(through/hover) {
		return math.NaN(), hover == 0
	}
	x, z := inPlane/hover, through/hover
	floor := math.Max(0, -z) // above it f rises and is convex
	f := func(v float64) (f, slope float64) {
		s := z + v
		return float64(v*v*(float64(x*x)+float64(s*s))) - 1, 2*v*(float64(x*x)+float64(s*s)) + 2*v*v*s
	}
	if f0, _ := f(floor); f0 > 0 { // the disc blows up: more than one root, or none
		return math.NaN(), false
	}
	v = 1 + floor // f ≥ 0 there, so that Newton comes down to the root and never passes it
	for range 60 {
		y, slope := f(v)
		next := v - y/slope
		if !(next < v) {
			break
		}
		v = next
	}
	return v * hover, true
}

// InducedFactor is induced power over the ideal, k: 1.15, common practice, no source.
const InducedFactor = 1.15

// Shaft is the power at the shaft of a rotor with a disc of an area (m²) and a figure of merit, for a thrust (N) in a flow, W: induced,
// profile and climb, k T v + (1/FM − k) T v_h + T v_n, (18.5); T^(3/2)/√(2ρA)/FM at rest, (18.3). The profile's part stays that of
// hover, and a rotor better than 1/k has none. NaN: the flow is outside Descent.
func Shaft(thrust, area, merit, rho, inPlane, through float64) float64 {
	h := Hover(thrust, area, rho)
	v, ok := h, true
	switch {
	case thrust == 0:
		return 0
	case inPlane != 0 || through != 0:
		v, ok = Induced(h, inPlane, through)
	}
	if !ok {
		return math.NaN()
	}
	k := math.Min(InducedFactor, 1/merit)
	return thrust * (float64(k*v) + float64((1/merit-k)*h) + through) // (18.5)
}
