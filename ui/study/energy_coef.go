package study

import (
	"math"

	"cohoist/core/bench"
	"cohoist/core/energy"
	"cohoist/core/plan"
	"cohoist/core/unit"
	"cohoist/ui/format"
)

// Places in the form of a propeller's coefficients.
const (
	coefThrust = iota
	coefPower
	coefDiameter
	coefSpeed
)

// coefForm is the form of a class, whose settings belong to its name.
func coefForm(t *Turn, class string) []Choice {
	key := "coef." + digest([]string{class}) + "."
	across := "twice the radius"
	if r := t.Plan.Vehicles[class].RotorRadius; r > 0 {
		across = unit.Figures(2*r/unit.Scale(t.Units.Length), 3)
	}
	return []Choice{
		{Name: key + "ct", Label: "C_T, of thrust", Help: "Thrust over ρ n² D⁴, n in revolutions a second, standing still.", Until: "not said", Low: 1e-4, High: 1},
		{Name: key + "cp", Label: "C_P, of power", Help: "Power at the shaft over ρ n³ D⁵, standing still.", Until: "not said", Low: 1e-5, High: 1},
		{Name: key + "d", Label: "Diameter", Until: across, Unit: t.Units.Length, Low: 1e-3, High: 100},
		{Name: key + "n", Label: "Highest speed", Help: "With it the largest thrust of a rotor follows.", Until: "not said", Unit: "rpm", Low: 1, High: 2e4},
	}
}

// coefficients is what a propeller's coefficients say of a class.
type coefficients struct {
	Class  string
	place  int
	Units  format.Units
	prop   energy.Propeller
	Fault  string
	before plan.Class
}

// coefOf reads the form of a class.
func coefOf(t *Turn, class string, place int) *coefficients {
	form, nan := coefForm(t, class), math.NaN()
	c := &coefficients{Class: class, place: place, Units: t.Units, before: t.Plan.Vehicles[class]}
	fine := true
	read := func(k int, until float64) float64 {
		x, ok := t.number(form[k], until)
		fine = fine && ok
		return x
	}
	c.prop.Coefficients = bench.Coefficients{Thrust: read(coefThrust, nan), Power: read(coefPower, nan)}
	c.prop.Diameter, c.prop.Speed = read(coefDiameter, 2*c.before.RotorRadius), read(coefSpeed, nan)
	fm := c.prop.FigureOfMerit()
	switch {
	case !fine:
		c.Fault = "A number above is none."
	case math.IsNaN(c.prop.Thrust) && math.IsNaN(c.prop.Power):
		c.Fault = "none"
	case math.IsNaN(fm):
		c.Fault = "Both C_T and C_P are wanted."
	case math.IsNaN(c.prop.Diameter):
		c.Fault = "The diameter is wanted, as the class has no rotor radius."
	case fm > 1:
		c.Fault = "With these the figure of merit would be " + amount(fm, "") + ", above 1: less power than momentum theory needs. C_T and C_P are those of n in revolutions a second and the diameter, standing still."
	}
	return c
}

// given tells that something was typed.
func (c *coefficients) given() bool { return c.Fault != "none" }

// says is what the coefficients mean for the class.
func (c *coefficients) says() string {
	if c.Fault != "" {
		return c.Fault
	}
	k := c.prop.Class(c.before)
	text := "Figure of merit " + amount(k.FigureOfMerit, "") + ", torque per thrust " + c.Units.Small(k.TorquePerThrust) + ", rotor radius " + c.Units.Small(k.RotorRadius)
	if !math.IsNaN(c.prop.Speed) {
		_, power := c.prop.At(c.prop.Diameter, c.prop.Speed, standardDensity)
		text += ", and at the highest speed " + c.Units.Show(format.Force, k.RotorThrustMax) + " of thrust with " + watts(power) + " at the shaft, in standard air"
	}
	return text + "."
}

func (c *coefficients) steps() []energy.Step {
	if c.Fault != "" {
		return nil
	}
	return c.prop.Working()
}

// useSays names what the button writes into the plan.
func (c *coefficients) useSays() string {
	if math.IsNaN(c.prop.Speed) {
		return "Use these three for " + c.Class
	}
	return "Use these four for " + c.Class
}
