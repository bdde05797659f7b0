package store

import (
	"errors"
	"math"
	"slices"
	"strings"

	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/ui/format"
)

// valid says what is wrong with a plan, in a sentence for beside an input.
func valid(p plan.Plan) error {
	faults := plan.Validate(p)
	if len(faults) == 0 {
		return nil
	}
	return errors.New("It " + faults[0].Wrong + ". " + faults[0].Fix)
}

// read reads a plan from a text and says all that is wrong with it.
func read(t string) (plan.Plan, error) {
	p, faults := plan.Read([]byte(t))
	if len(faults) == 0 {
		return p, nil
	}
	lines := make([]string, 0, 4)
	for i, f := range faults {
		if i == 3 && len(faults) > 4 {
			lines = append(lines, "There are more faults like these.")
			break
		}
		lines = append(lines, f.String())
	}
	return p, errors.New(strings.Join(lines, " "))
}

func same(a, b plan.Plan) bool { return plan.Same(a, b) }
func text(p plan.Plan) string  { return string(plan.Compact(p)) }

// blankVehicle is a vehicle of which nothing is computed.
func blankVehicle(id string) report.Vehicle {
	nan := math.NaN()
	v := report.Vehicle{ID: id, Tension: nan, CableAngle: nan, Thrust: nan, ThrustMax: nan, Utilisation: nan, Tilt: nan, RotorThrustMax: nan}
	for i := range v.Force {
		v.Force[i], v.Moment[i], v.ThrustVector[i], v.Position[i] = nan, nan, nan, nan
	}
	return v
}

// known says whether the three units are ones that can be chosen.
func known(u []string) bool {
	return slices.Contains(format.Lengths, u[0]) && slices.Contains(format.Masses, u[1]) && slices.Contains(format.Forces, u[2])
}
