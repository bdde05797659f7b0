// Package class is the library of vehicle classes that comes with the sheet.
//
// All are invented. They follow the trade's orders of magnitude and no maker's vehicle: thrust about
// twice the weight, mass with the third power of size, and a torque per thrust κ = C_P D/(2π C_T)
// between 0.04 and 0.07 of the rotor's diameter D, the lower end of what static tests of small
// propellers give (UIUC Propeller Data Site, volumes 1 and 2: 0.064 D for a 10 inch propeller, 0.09 to
// 0.11 D for 5 inch ones of three blades). Less κ means less yaw, so that the sheet does not promise it.
// Small rotors have a low figure of merit (0.26 to 0.72 measured, the same site), small motors a low efficiency, and packs hold
// some 120 to 180 Wh for each of their kilograms, which are a fifth to a third of the vehicle's (common practice, no source).
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
			0.075, 4, plan.Cross, 0.065, 0.033, 0.37, 0.0045, nil, 0.004, 30).fed(0.45, 0.55, 1, 0.35, 2, 0.1),
		entry("bench-quad", "bench quad", "0.25 kg, for the laboratory; invented",
			0.25, 4, plan.Cross, 0.115, 0.064, 1.35, 0.0082, nil, 0.010, 30).fed(0.5, 0.65, 2, 0.85, 3, 0.05),
		entry("survey-quad", "survey quad", "0.9 kg, light field vehicle; invented",
			0.9, 4, plan.Cross, 0.19, 0.105, 4.7, 0.0125, nil, 0.025, 30).fed(0.58, 0.72, 5, 3.5, 4, 0.03),
		entry("field-quad", "field quad", "3.4 kg, the crew's usual vehicle; invented",
			3.4, 4, plan.Cross, 0.33, 0.19, 19, 0.016, &vec.V3{0.06, 0.06, 0.11}, 0.06, 30).fed(0.62, 0.78, 10, 9, 6, 0.02),
		entry("field-hex", "field hex", "4.6 kg, six rotors; invented",
			4.6, 6, plan.Plus, 0.40, 0.19, 17.5, 0.016, nil, 0.08, 30).fed(0.62, 0.78, 12, 12, 6, 0.015),
		entry("carrier-hex", "carrier hex", "6.8 kg, six large rotors; invented",
			6.8, 6, plan.Cross, 0.52, 0.25, 25, 0.028, nil, 0.11, 25).fed(0.65, 0.8, 15, 8, 12, 0.03),
		entry("heavy-octo", "heavy octo", "10 kg, eight rotors; invented",
			10, 8, plan.Cross, 0.68, 0.25, 28, 0.028, nil, 0.15, 25).fed(0.65, 0.8, 20, 12, 12, 0.02),
	}
}

func entry(name, title, line string, mass float64, rotors int, layout string, arm, radius, thrust, kappa float64, j *vec.V3, drag, tilt float64) Entry {
	c := plan.BlankClass()
	c.Mass, c.Rotors, c.Layout, c.Arm, c.RotorRadius = mass, rotors, layout, arm, radius
	c.RotorThrustMax, c.TorquePerThrust, c.Inertia, c.DragArea, c.TiltMax = thrust, kappa, j, drag, tilt
	return Entry{name, title, line, c}
}

// fed gives an entry what turns its rotors: figure of merit, efficiency of the drive, power of the avionics (W), and a pack by capacity (Ah),
// cells in series and internal resistance (Ω).
func (e Entry) fed(merit, drive, avionics, charge float64, cells int, resistance float64) Entry {
	c := &e.Class
	c.FigureOfMerit, c.DriveEfficiency, c.Avionics = merit, drive, avionics
	c.Battery.Charge, c.Battery.Cells, c.Battery.Resistance = charge, cells, resistance
	c.Battery.Usable, c.Battery.Peukert = 0.95, 1.03
	return e
}

// ThrustToWeight is the thrust of all rotors over the vehicle's weight, at sea level.
func ThrustToWeight(c plan.Class) float64 {
	return float64(c.Rotors) * c.RotorThrustMax / (c.Mass * 9.80665)
}

// TipGap is the space between the tips of neighbouring rotors of a class, m; negative: they overlap.
func TipGap(c plan.Class) float64 {
	return 2*c.Arm*math.Sin(math.Pi/float64(c.Rotors)) - 2*c.RotorRadius
}
