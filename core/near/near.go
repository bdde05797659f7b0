// Package near is what stands near rotors in hover: the ground, the payload below them, other vehicles (THEORY chapter 22).
//
// Restriction: hover in calm air, wakes of momentum theory that do not bend, the payload as the boxes around its solids. Each formula
// has a Range; beyond it the number is still told, for the check to say that the model does not reach there.
// Geometry: payload frame, z up. A wake goes the way of its rotor's thrust turned round.
// Calculation: (22.1) to (22.9). Verification: published rows, areas against grids, jets against sums, in the tests.
// References: THEORY chapter 22.
package near

import (
	"math"

	"cohoist/core/momentum"
)

// GroundRange is where Ground holds: for a single rotor; for several it is optimistic to unknown, and below half a radius it is kept off.
var GroundRange = momentum.Range{Of: "z/R", Low: 0.5, High: math.Inf(1), Source: "from memory"}

// Ground is the thrust at a height z (m) above the ground over that far from it, at the same power, of a rotor of radius R (m):
// 1/(1 − (R/4z)²), I. C. Cheeseman and W. E. Bennett, ARC R&M 3021, 1955 (from memory), (22.1). Below GroundRange it is that of the
// range's end, and ok is false.
func Ground(height, radius float64) (ratio float64, ok bool) {
	ok = GroundRange.Holds(height / radius)
	r := radius / (4 * math.Max(height, GroundRange.Low*radius))
	return 1 / (1 - r*r), ok // (22.1)
}

// DownloadRange is where a download by (22.2) holds: of fuselages up to a tenth.
var DownloadRange = momentum.Range{Of: "f/A", Low: 0, High: 0.1, Source: "1 to 4 % of weight is typical, over 10 % in single designs: heli-air.net 2016, vertical drag and download penalty"}

// Download is thrust over weight with a body in the wake that presses on it with a share f/A of the thrust: T = W/(1 − f/A), (22.2).
func Download(share float64) (ratio float64, ok bool) {
	return 1 / (1 - share), DownloadRange.Holds(share) // (22.2)
}

// WakeRange is how much of its thrust a vehicle may lose in the wakes of others: a mean flow says nothing of how it shakes.
var WakeRange = momentum.Range{Of: "thrust lost", Low: 0, High: 0.1, Source: "common practice, no source"}

// InWake is the thrust that a rotor has in air that comes down through it with a speed w (m/s), over that at rest, at the same power:
// the T for which (18.5) gives the power of the thrust at rest (N), with (18.4), (22.7). A figure of merit that is not known (NaN)
// counts as one without a profile's part, which loses most.
func InWake(thrust, area, merit, rho, w float64) (ratio float64) {
	if !(w > 0) || !(thrust > 0) {
		return 1
	}
	if math.IsNaN(merit) {
		merit = 1 / momentum.InducedFactor
	}
	have := momentum.Shaft(thrust, area, merit, rho, 0, 0)
	lo, hi := 0.0, 1.0
	for hi-lo > 1e-14 {
		mid := lo + (hi-lo)/2
		if mid == lo || mid == hi {
			break
		}
		if momentum.Shaft(mid*thrust, area, merit, rho, 0, w) > have {
			hi = mid
		} else {
			lo = mid
		}
	}
	return lo // (22.7)
}
