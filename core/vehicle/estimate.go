package vehicle

import (
	"cohoist/core/plan"
	"cohoist/core/vec"
)

// Shares of a multirotor's mass in the estimate of its inertia: motors, rotors, their
// controllers and the outer arms at the ends of the arms, the rest as a round body about the middle. Rule of thumb
// from the make-up of small multirotors: common practice, no source. The part at the rotors is chosen
// so that four published vehicles from 27 g to 1.8 kg lie evenly about the estimate, from 0.8 to 1.5 of it.
const (
	atRotors   = 0.4
	bodyRadius = 0.5 // of the arm
	bodyHeight = 0.3 // of the arm
)

// estimate is the inertia of a vehicle whose class does not give it, (4.5): point masses at the
// rotors and an upright cylinder in the middle.
func estimate(c plan.Class, rotors []Rotor) vec.M3 {
	motors, body := float64(atRotors*c.Mass), (1-atRotors)*c.Mass
	r, h := bodyRadius*c.Arm, bodyHeight*c.Arm
	ring := float64(motors * float64(c.Arm*c.Arm))
	x, y := ring/2, ring/2                // three rotors or more are even about x and y
	if n := len(rotors); 0 < n && n < 3 { // one or two lie on a line
		at := rotors[0].At
		x, y = motors*float64(at[1]*at[1]), motors*float64(at[0]*at[0])
	}
	flat := body * (float64(3*r*r) + float64(h*h)) / 12
	return vec.Diag(vec.V3{flat + x, flat + y, float64(body*r*r/2) + ring})
}

// Assumed has a sentence for each class that the team uses and whose inertia is an estimate, in the
// order of the team.
func Assumed(p plan.Plan) []string {
	var out []string
	said := map[string]bool{}
	for _, m := range p.Team {
		if c, ok := p.Vehicles[m.Vehicle]; ok && c.Inertia == nil && !said[m.Vehicle] {
			said[m.Vehicle] = true
			out = append(out, "Inertia of "+m.Vehicle+" left out: estimated from its mass and arm, which may be wrong by half.")
		}
	}
	return out
}
