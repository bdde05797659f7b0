// Package format turns SI numbers into what people read and type, in the units they chose.
package format

import (
	"math"
	"strconv"
	"strings"

	"cohoist/core/unit"
)

// Quantity is what a number measures.
type Quantity int

// Quantities. Length, mass and force follow the chosen units, the others have one unit.
const (
	Plain Quantity = iota
	Length
	Mass
	Force
	Angle
	Speed
	Altitude
	Kelvin
	Percent
	Inertia
	Area
	Moment
	TurnRate
	Acceleration
	Seconds
)

var fixed = map[Quantity]string{Angle: "°", Speed: "m/s", Altitude: "m", Kelvin: "K", Percent: "%", Inertia: "kg m²",
	Area: "m²", Moment: "N m", TurnRate: "rad/s²", Acceleration: "m/s²", Seconds: "s"}

// Units are the units a person chose to see.
type Units struct{ Length, Mass, Force string }

// SI is how a new visitor sees numbers.
var SI = Units{Length: "m", Mass: "kg", Force: "N"}

// The units to choose from.
var (
	Lengths = []string{"m", "cm", "mm", "ft", "in"}
	Masses  = []string{"kg", "g", "lb", "oz"}
	Forces  = []string{"N", "gf", "kgf", "lbf"}
)

// Unit is the unit in which a quantity is shown.
func (u Units) Unit(q Quantity) string {
	switch q {
	case Length:
		return u.Length
	case Mass:
		return u.Mass
	case Force:
		return u.Force
	}
	return fixed[q]
}

// Text is a number as it stands in an input: up to six figures, no unit; empty for a number left out.
func (u Units) Text(q Quantity, x float64) string {
	if math.IsNaN(x) {
		return ""
	}
	return unit.Figures(x/unit.Scale(u.Unit(q)), 6)
}

// Parse reads what was typed: a decimal comma is a point, a unit may follow the number. Nothing
// typed is a number left out, NaN.
func (u Units) Parse(q Quantity, raw string) (float64, error) {
	if strings.TrimSpace(raw) == "" {
		return math.NaN(), nil
	}
	return unit.Parse(raw, u.Unit(q))
}

// Show is a number for reading: three figures and its unit; a dash for what was not computed.
func (u Units) Show(q Quantity, x float64) string { return unit.Format(calm(x), u.Unit(q), 3) }

// Bare is Show without the unit.
func (u Units) Bare(q Quantity, x float64) string {
	return unit.Figures(calm(x)/unit.Scale(u.Unit(q)), 3)
}

// In shows a number whose SI unit the report names.
func (u Units) In(sign string, x float64) string {
	switch sign {
	case "N":
		return u.Show(Force, x)
	case "kg":
		return u.Show(Mass, x)
	case "m":
		return u.Small(x)
	case "Pa":
		return unit.Format(calm(x), "MPa", 3)
	case "1":
		sign = ""
	}
	return unit.Format(calm(x), sign, 3)
}

// Small is a length that may be a matter of millimetres.
func (u Units) Small(x float64) string {
	if u.Length == "m" && math.Abs(x) < 0.01 && x != 0 {
		u.Length = "mm"
	}
	return u.Show(Length, x)
}

// calm makes what is nothing but rounding a zero: sums of metres and newtons leave 1e-16.
func calm(x float64) float64 {
	if math.Abs(x) < 1e-12 {
		return 0
	}
	return x
}

// Share is a fraction as whole percent.
func Share(x float64) string {
	switch {
	case math.IsNaN(x):
		return unit.None
	case math.Abs(x) > 99.995:
		return "> 9999\u202f%"
	}
	return strings.Replace(strconv.Itoa(int(math.Round(100*x))), "-", "−", 1) + "\u202f%"
}

// Span is a time for reading, cut to whole seconds below ten minutes and to whole minutes above: 42 s, 7 min 30 s, 1 h 5 min.
func Span(s float64) string {
	whole := func(x float64, sign string) string { return strconv.Itoa(int(x)) + "\u202f" + sign }
	switch {
	case math.IsNaN(s):
		return unit.None
	case !(s < 360000):
		return "> 99\u202fh"
	case s < 60:
		return whole(s, "s")
	case s < 600:
		return whole(s/60, "min") + " " + whole(math.Mod(s, 60), "s")
	case s < 3600:
		return whole(s/60, "min")
	}
	return whole(s/3600, "h") + " " + whole(math.Mod(s, 3600)/60, "min")
}
