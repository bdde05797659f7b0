package report

import (
	"math"

	"cohoist/core/agility"
	"cohoist/core/vec"
)

// The report before anything is computed: every number NaN, so that what a plan does not let us
// compute cannot be mistaken for a zero.

var nan = math.NaN()

var nan3 = vec.V3{nan, nan, nan}

var nan6 = [6]float64{nan, nan, nan, nan, nan, nan}

// Blank returns a report in which nothing is computed yet.
func Blank() Report {
	return Report{
		Format:  Format,
		Verdict: NeedsInput,
		Payload: Payload{Mass: nan, COM: nan3, Inertia: nan6, DragArea: nan3},
		Team: Team{Mass: nan, COM: nan3, Inertia: nan6, Utilisation: nan, LargestPayload: nan,
			DualBound: nan, Residual: nan, Lean: nan3, Density: nan, Power: nan, Hold: nan},
		Agility: Agility{Team: agility.Blank(), Solo: agility.Blank(), Ratio: agility.Blank()},
	}
}

func blankVehicle(id string) Vehicle {
	return Vehicle{ID: id, Force: nan3, Moment: nan3, Tension: nan, CableAngle: nan, Thrust: nan,
		ThrustVector: nan3, ThrustMax: nan, Utilisation: nan, Tilt: nan, RotorThrustMax: nan, Position: nan3, Download: nan3, DownloadAt: nan3}
}
