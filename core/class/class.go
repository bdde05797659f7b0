// Package class is the library of vehicle classes that comes with the sheet.
//
// All are invented. They follow the trade's orders of magnitude and no maker's vehicle: thrust about
// twice the weight, mass with the third power of size, and a torque per thrust κ = C_P D/(2π C_T)
// between 0.04 and 0.07 of the rotor's diameter D, the lower end of what static tests of small
// propellers give (UIUC Propeller Data Site, volumes 1 and 2: 0.064 D for a 10 inch propeller, 0.09 to
// 0.11 D for 5 inch ones of three blades). Less κ means less yaw, so that the sheet does not promise it.
package class

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// Entry is a class with what it is for.
type Entry struct {
	Name  string // key in plan.Vehicles
	Title string // in words, singular
	Line  string
	Class plan.Class
}

// Library lists the classes from the lightest to the heaviest, each time anew.
func Library() []Entry {
	return []Entry{
		entry("pocket-quad", "pocket quad", "75 g, palm-sized, for sensors and thin plates; invented",
			0.075, 4, plan.Cross, 0.065, 0.033, 0.37, 0.0045, nil, 0.004, 30),
		entry("bench-quad", "bench quad", "0.25 kg, for the laboratory; invented",
			0.25, 4, plan.Cross, 0.115, 0.064, 1.35, 0.0082, nil, 0.010, 30),
		entry("survey-quad", "survey quad", "0.9 kg, light field vehicle; invented",
			0.9, 4, plan.Cross, 0.19, 0.105, 4.7, 0.0125, nil, 0.025, 30),
		entry("field-quad", "field quad", "3.4 kg, the crew's usual vehicle; invented",
			3.4, 4, plan.Cross, 0.33, 0.19, 19, 0.016, &vec.V3{0.06, 0.06, 0.11}, 0.06, 30),
		entry("field-hex", "field hex", "4.6 kg, six rotors; invented",
			4.6, 6, plan.Plus, 0.40, 0.19, 17.5, 0.016, nil, 0.08, 30),
		entry("carrier-hex", "carrier hex", "6.8 kg, six large rotors; invented",
			6.8, 6, plan.Cross, 0.52, 0.25, 25, 0.028, nil, 0.11, 25),
		entry("heavy-octo", "heavy octo", "10 kg, eight rotors; invented",
			10, 8, plan.Cross, 0.68, 0.25, 28, 0.028, nil, 0.15, 25),
	}
}

func entry(name, title, line string, mass float64, rotors int, layout string, arm, radius, thrust, kappa float64, j *vec.V3, drag, tilt float64) Entry {
	c := plan.BlankClass()
	c.Mass, c.Rotors, c.Layout, c.Arm, c.RotorRadius = mass, rotors, layout, arm, radius
	c.RotorThrustMax, c.TorquePerThrust, c.Inertia, c.DragArea, c.TiltMax = thrust, kappa, j, drag, tilt
	return Entry{name, title, line, c}
}

// ThrustToWeight is the thrust of all rotors over the vehicle's weight, at sea level.
func ThrustToWeight(c plan.Class) float64 {
	return float64(c.Rotors) * c.RotorThrustMax / (c.Mass * 9.80665)
}

// TipGap is the space between the tips of neighbouring rotors of a class, m; negative: they overlap.
func TipGap(c plan.Class) float64 {
	return 2*c.Arm*math.Sin(math.Pi/float64(c.Rotors)) - 2*c.RotorRadius
}
