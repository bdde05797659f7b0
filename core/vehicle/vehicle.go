// Package vehicle gives a multirotor as its rotors, mass and inertia (THEORY chapter 4).
//
// Restriction: rotors in one plane through the vehicle's centre of mass, all thrust along its own z.
// Geometry: own axes, x forward, y left, z up, origin at the centre of mass. Calculation: (4.1) to
// (4.6). Verification: closed cases in the tests; the estimated inertia against published ones.
package vehicle

import (
	"math"

	"cohoist/core/air"
	"cohoist/core/plan"
	"cohoist/core/vec"
)

// Rotor is one rotor in the vehicle's own axes.
type Rotor struct {
	At     vec.V3  // from the vehicle's centre, m
	Axis   vec.V3  // unit vector of its thrust
	Max    float64 // most thrust in the air of the day, N
	Torque float64 // spin times κ: moment about Axis for 1 N, m
}

// Vehicle is a class in the air of the day.
type Vehicle struct {
	Mass             float64 // kg
	Inertia          vec.M3  // about its centre, own axes, kg m², (4.4)
	InertiaEstimated bool    // by (4.5), because the class does not give it: an assumption to print
	Rotors           []Rotor
	ThrustMax        float64 // of all rotors, N
	DragArea         float64 // C_d A, m²
	TiltMax          float64 // radians
	Reach            float64 // arm and rotor radius, m
}

// New is a vehicle of class c in air of density rho (kg/m³), (4.1) to (4.3).
func New(c plan.Class, rho float64) Vehicle {
	v := Vehicle{Mass: c.Mass, DragArea: c.DragArea, TiltMax: c.TiltMax * math.Pi / 180, Reach: c.Arm + c.RotorRadius}
	n := float64(c.Rotors)
	first := math.Pi / n // cross
	if c.Layout == plan.Plus {
		first = 0
	}
	spin := 1.0
	for j := range c.Rotors {
		sin, cos := math.Sincos(first + 2*math.Pi*float64(j)/n)
		r := Rotor{At: vec.V3{c.Arm * cos, c.Arm * sin, 0}, Axis: vec.V3{0, 0, 1}} // (4.1)
		r.Max = c.RotorThrustMax * rho / air.SeaLevelDensity                       // (4.3)
		r.Torque = spin * c.TorquePerThrust                                        // (4.2)
		v.Rotors = append(v.Rotors, r)
		v.ThrustMax += r.Max
		spin = -spin
	}
	if c.Inertia != nil {
		v.Inertia = vec.Diag(*c.Inertia) // (4.4)
	} else {
		v.Inertia, v.InertiaEstimated = estimate(c, v.Rotors), true // (4.5)
	}
	return v
}

// Attitude turns the vehicle's own axes into the payload frame: yawed about its own axis, then
// leant by the rotation vector lean_deg, (4.6).
func Attitude(m plan.Member) vec.M3 {
	const deg = math.Pi / 180
	lean := vec.Rot(vec.V3{m.Hold.Lean[0] * deg, m.Hold.Lean[1] * deg, 0})
	return lean.MulM(vec.Rot(vec.V3{0, 0, m.Yaw * deg}))
}
