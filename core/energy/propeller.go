package energy

import (
	"math"

	"cohoist/core/bench"
	"cohoist/core/plan"
)

// Propeller is a rotor known by its coefficients. NaN: not given.
type Propeller struct {
	bench.Coefficients
	Diameter float64 // m
	Speed    float64 // rad/s, the highest
}

// Class is a class with what the propeller says of it: figure of merit, torque per thrust and radius, and with a speed the largest
// thrust of a rotor in standard air, (19.3) to (19.7).
func (p Propeller) Class(c plan.Class) plan.Class {
	_, torque := p.Lumped(p.Diameter, standard)
	c.FigureOfMerit, c.TorquePerThrust, c.RotorRadius = p.FigureOfMerit(), torque, p.Diameter/2
	if thrust, _ := p.At(p.Diameter, p.Speed, standard); !math.IsNaN(thrust) {
		c.RotorThrustMax = thrust
	}
	return c
}

// Working is how what Class takes over comes about.
func (p Propeller) Working() []Step {
	var w working
	c := p.Class(plan.BlankClass())
	w.add("C_T", p.Thrust, "1", given, "%v", p.Thrust)
	w.add("C_P", p.Power, "1", given, "%v", p.Power)
	w.add("D", p.Diameter, "m", given, "%v", p.Diameter)
	w.add("FM", c.FigureOfMerit, "1", "THEORY (19.5)", "sqrt(2/pi)*C_T*sqrt(C_T)/C_P")
	w.add("kappa", c.TorquePerThrust, "m", "THEORY (19.7)", "C_P*D/(2*pi*C_T)")
	if math.IsNaN(p.Speed) {
		return w
	}
	thrust, power := p.At(p.Diameter, p.Speed, standard)
	w.add("n", p.Speed/(2*math.Pi), "1/s", given+", the highest speed", "%v/(2*pi)", p.Speed)
	w.add("T", thrust, "N", "THEORY (19.3), in standard air", "C_T*%v*n*n*pow(D, 4)", standard)
	w.add("P_s", power, "W", "THEORY (19.4), at the shaft", "C_P*%v*pow(n, 3)*pow(D, 5)", standard)
	return w
}
