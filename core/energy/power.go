package energy

import (
	"math"

	"cohoist/core/air"
	"cohoist/core/momentum"
)

// standard is the density of static tests and of a plan's thrusts, kg/m³.
const standard = air.SeaLevelDensity

// Rotor is one rotor with its drive. NaN: not known.
type Rotor struct {
	Area            float64 // of its disc, m²
	FigureOfMerit   float64
	DriveEfficiency float64
	table           func(thrust float64) (w float64, ok bool) // electric power in hover, in standard air; nil: none
}

// Shaft is the power at the shaft for a thrust in a flow, W, (18.5).
func (r *Rotor) Shaft(thrust, rho, inPlane, through float64) float64 {
	return momentum.Shaft(thrust, r.Area, r.FigureOfMerit, rho, inPlane, through)
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
