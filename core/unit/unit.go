// Package unit reads and writes numbers in the units people use. Everything inside the program is SI; these
// conversions happen only where a person reads or types.
//
// A unit is named by its symbol ("kg", "ft", "lbf"), and the symbol tells what it measures. All
// factors are exact:
//
//   - foot 0.3048 m (so inch 0.0254 m), pound 0.45359237 kg, ounce a sixteenth of it: the international
//     yard and pound agreement of 1 July 1959 (National Bureau of Standards Circular 572, addendum of 22
//     January 1960, for yard and inch; Federal Register 24 FR 5348 for the pound, page from memory).
//   - kilogram-force 9.80665 N, by the standard acceleration of free fall, 9.80665 m/s² (3rd General Conference
//     on Weights and Measures, 1901; ISO 80000-3). A pound-force is a pound times that acceleration.
//   - degree π/180 rad. Angles are degrees in plans and reports, so here the degree is the base; a pack's energy
//     likewise is in watt-hours, its charge in ampere-hours.
package unit

import (
	"slices"
	"strings"
)

// Kind is what a number measures.
type Kind int

// The kinds. Text and Count are not measured; they are here for tables that list fields.
const (
	Ratio Kind = iota
	Length
	Mass
	Force
	Angle
	Torque
	Time
	Speed
	Area
	Inertia
	AngularAcceleration
	Acceleration
	TemperatureDifference
	Stress
	Stiffness
	SectionModulus
	SecondMoment
	Energy
	Charge
	Voltage
	Resistance
	Power
	AngularSpeed
	Count
	Text
)

var kindNames = [...]string{"ratio", "length", "mass", "force", "angle", "torque", "time", "speed", "area",
	"moment of inertia", "angular acceleration", "acceleration", "temperature difference", "stress",
	"stiffness", "section modulus", "second moment of area", "energy", "charge", "voltage", "resistance", "power", "angular speed", "whole number", "text"}

// String is the kind in words.
func (k Kind) String() string { return kindNames[k] }

// Unit is one unit.
type Unit struct {
	Symbol string   // as shown
	Kind   Kind     // what it measures
	Scale  float64  // base units in one of it; exact
	Typed  []string // other ways people type it
}

// StandardGravity is the standard acceleration of free fall in m/s², exact (ISO 80000-3).
const StandardGravity = 9.80665

const (
	foot  = 0.3048     // m, exact: agreement of 1959
	pound = 0.45359237 // kg, exact: agreement of 1959
)

// Units lists every unit, the base unit of a kind first.
var Units = []Unit{
	{"", Ratio, 1, nil},
	{"%", Ratio, 0.01, []string{"percent"}},
	{"m", Length, 1, []string{"metre", "metres", "meter", "meters"}},
	{"cm", Length, 0.01, nil},
	{"mm", Length, 0.001, nil},
	{"ft", Length, foot, []string{"'", "′", "foot", "feet"}},
	{"in", Length, foot / 12, []string{`"`, "″", "inch", "inches"}},
	{"kg", Mass, 1, []string{"kilogram", "kilograms"}},
	{"g", Mass, 0.001, []string{"gram", "grams"}},
	{"lb", Mass, pound, []string{"lbs", "pound", "pounds", "lbm"}},
	{"oz", Mass, pound / 16, []string{"ounce", "ounces"}},
	{"N", Force, 1, []string{"newton", "newtons"}},
	{"kN", Force, 1000, nil},
	{"gf", Force, StandardGravity / 1000, nil},
	{"kgf", Force, StandardGravity, nil},
	{"lbf", Force, pound * StandardGravity, nil},
	{"°", Angle, 1, []string{"deg", "degree", "degrees"}},
	{"rad", Angle, 57.29577951308232087679815481410517, nil}, // 180/π
	{"N m", Torque, 1, []string{"Nm", "N·m", "N*m"}},
	{"lbf ft", Torque, pound * StandardGravity * foot, []string{"lbf·ft", "ft lbf", "ft·lbf"}},
	{"s", Time, 1, []string{"sec", "second", "seconds"}},
	{"min", Time, 60, []string{"minute", "minutes"}},
	{"h", Time, 3600, []string{"hour", "hours"}},
	{"m/s", Speed, 1, []string{"mps"}},
	{"km/h", Speed, 1 / 3.6, []string{"kmh", "kph"}},
	{"kn", Speed, 1852.0 / 3600, []string{"kt", "knot", "knots"}}, // 1852 m/h exact: SI Brochure 9th edition
	{"mph", Speed, 5280 * foot / 3600, nil},
	{"m²", Area, 1, []string{"m2", "m^2"}},
	{"kg m²", Inertia, 1, []string{"kg m2", "kg·m²", "kg·m2", "kg m^2", "kgm2"}},
	{"rad/s²", AngularAcceleration, 1, []string{"rad/s2", "rad/s^2"}},
	{"m/s²", Acceleration, 1, []string{"m/s2", "m/s^2"}},
	{"K", TemperatureDifference, 1, []string{"°C", "kelvin"}},
	{"Pa", Stress, 1, []string{"N/m²", "N/m2"}},
	{"kPa", Stress, 1e3, nil},
	{"MPa", Stress, 1e6, []string{"N/mm²", "N/mm2"}},
	{"GPa", Stress, 1e9, []string{"kN/mm²", "kN/mm2"}},
	{"N/m", Stiffness, 1, nil},
	{"N/mm", Stiffness, 1e3, []string{"kN/m"}},
	{"m³", SectionModulus, 1, []string{"m3", "m^3"}},
	{"cm³", SectionModulus, 1e-6, []string{"cm3", "cm^3"}},
	{"mm³", SectionModulus, 1e-9, []string{"mm3", "mm^3"}},
	{"m⁴", SecondMoment, 1, []string{"m4", "m^4"}},
	{"cm⁴", SecondMoment, 1e-8, []string{"cm4", "cm^4"}},
	{"mm⁴", SecondMoment, 1e-12, []string{"mm4", "mm^4"}},
	{"Wh", Energy, 1, []string{"W h"}},
	{"kJ", Energy, 1 / 3.6, nil},
	{"Ah", Charge, 1, []string{"A h"}},
	{"mAh", Charge, 0.001, []string{"mA h"}},
	{"V", Voltage, 1, []string{"volt", "volts"}},
	{"Ω", Resistance, 1, []string{"ohm", "ohms"}},
	{"mΩ", Resistance, 0.001, []string{"mohm", "milliohm"}},
	{"W", Power, 1, []string{"watt", "watts"}},
	{"kW", Power, 1000, nil},
	{"rad/s", AngularSpeed, 1, nil},
	{"rpm", AngularSpeed, 0.10471975511965977461542144610932, []string{"r/min"}}, // 2π/60
}

// Scale returns how many base units are in one of the unit with this symbol; 1 for an unknown symbol.
func Scale(symbol string) float64 {
	if u, ok := find(symbol, Ratio); ok {
		return u.Scale
	}
	return 1
}

// KindOf returns what a unit measures.
func KindOf(symbol string) Kind {
	u, _ := find(symbol, Ratio)
	return u.Kind
}

// Of lists the units of a kind, the base unit first.
func Of(k Kind) []Unit {
	var out []Unit
	for _, u := range Units {
		if u.Kind == k {
			out = append(out, u)
		}
	}
	return out
}

// find looks a unit up by symbol or typed form: as it is written first, then whatever the case, since people
// type KG and Ft; first among the units of the kind wanted, so that KN is knots for a speed.
func find(typed string, want Kind) (Unit, bool) {
	same := func(a string) bool { return a == typed }
	folded := func(a string) bool { return strings.EqualFold(a, typed) }
	for _, try := range []struct {
		match func(string) bool
		any   bool // kind
	}{{same, true}, {folded, false}, {folded, true}} {
		for _, u := range Units {
			if (try.any || u.Kind == want) && (try.match(u.Symbol) || slices.ContainsFunc(u.Typed, try.match)) {
				return u, true
			}
		}
	}
	return Unit{}, false
}
