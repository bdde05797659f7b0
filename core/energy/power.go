package energy

import (
	"math"

	"cohoist/core/air"
)

// standard is the density of static tests and of a plan's thrusts, kg/m³.
const standard = air.SeaLevelDensity

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

// Rotor is one rotor with its drive. NaN: not known.
type Rotor struct {
	Area            float64 // of its disc, m²
	FigureOfMerit   float64
	DriveEfficiency float64
	table           func(thrust float64) (w float64, ok bool) // electric power in hover, in standard air; nil: none
}

// Shaft is the power at the shaft for a thrust in a flow, W: induced, profile and climb,
// k T v + (1/FM − k) T v_h + T v_n, (18.5); T^(3/2)/√(2ρA)/FM at rest, (18.3). The profile's part stays that of hover, and a rotor
// better than 1/k has none.
func (r *Rotor) Shaft(thrust, rho, inPlane, through float64) float64 {
	h := Hover(thrust, r.Area, rho)
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
	k := math.Min(InducedFactor, 1/r.FigureOfMerit)
	return thrust * (float64(k*v) + float64((1/r.FigureOfMerit-k)*h) + through) // (18.5)
}

// Electric is the electric power for a thrust in a flow, W. With a static test it is the test's at rest, in air of
// another density that of the same coefficients, (18.6), and in a flow as much more as (18.5) says; else (18.5) over the
// efficiency of the drive. NaN: something is not known, the thrust is outside the test, or the flow outside Descent.
func (r *Rotor) Electric(thrust, rho, inPlane, through float64) float64 {
	still := inPlane == 0 && through == 0
	if r.table == nil {
		return r.Shaft(thrust, rho, inPlane, through) / r.DriveEfficiency
	}
	w, ok := r.table(thrust * standard / rho)
	if !ok {
		return math.NaN()
	}
	w *= rho / standard // (18.6)
	if still || thrust == 0 {
		return w
	}
	return w + (r.Shaft(thrust, rho, inPlane, through)-r.Shaft(thrust, rho, 0, 0))/r.DriveEfficiency
}
