package energy

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/share"
)

// Working is how a team of vehicles just large enough comes about, with what (18.29) was asked of.
func (s Size) Working(c plan.Class, payload, limit, rho float64, r Regime) []Step {
	if !(s.Size < math.Inf(1)) {
		return nil
	}
	var w working
	n, g := float64(s.Vehicles), GrowthOf(r)
	one := Scaled(c, s.Size, r)
	rotors := float64(c.Rotors)
	w.add("lambda", s.Size, "1", "THEORY (18.29): where lift and weight below are alike", "%v", s.Size)
	w.add("m_1", one.Mass, "kg", "THEORY (18.28)", "%v*pow(lambda, %v)", c.Mass, g.Mass)
	w.add("T", rotors*one.RotorThrustMax*rho/standard, "N", "THEORY (18.28), (4.3)", "%v*%v*pow(lambda, %v)*%v/%v", rotors, c.RotorThrustMax, g.Thrust, rho, standard)
	w.add("lift", limit*rotors*one.RotorThrustMax*rho/standard, "N", "THEORY (18.29)", "%v*T", limit)
	w.add("weight", (payload/n+one.Mass)*share.Gravity, "N", "THEORY (18.29)", "(%v/%v + m_1)*%v", payload, n, share.Gravity)
	w.add("M", s.Mass, "kg", "all of them", "%v*m_1", n)
	if !math.IsNaN(s.Power) {
		w.add("A", math.Pi*one.RotorRadius*one.RotorRadius, "m²", "THEORY (18.28)", "pi*pow(%v*lambda, 2)", c.RotorRadius)
		w.add("u", (payload/n+one.Mass)*share.Gravity/rotors, "N", "of a rotor", "weight/%v", rotors)
		w.add("P", s.Power, "W", "THEORY (18.2), (18.3)", "%v*(%v*u*sqrt(u/(2*%v*A))/(%v*%v) + %v)", n, rotors, rho, c.FigureOfMerit, c.DriveEfficiency, c.Avionics)
	}
	w.add("a", s.Angular, "1", "THEORY (18.28)", "pow(lambda, %v)", g.Angular)
	return w
}

// Largest is the most payload (kg) that one vehicle of a class made larger or smaller at will can carry; +Inf: any. THEORY (18.29).
func Largest(c plan.Class, limit, rho float64, r Regime) float64 {
	lift := limit * rho / standard * float64(c.Rotors) * c.RotorThrustMax / share.Gravity
	switch {
	case r != Froude:
		return 4 * lift * lift * lift / (27 * c.Mass * c.Mass) // (18.29)
	case lift > c.Mass:
		return math.Inf(1)
	}
	return 0
}
