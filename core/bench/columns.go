package bench

import (
	"strings"

	"cohoist/core/unit"
)

// Quantity is what a column holds.
type Quantity string

// The quantities.
const (
	Throttle Quantity = "throttle"
	Thrust   Quantity = "thrust"
	Power    Quantity = "power"
	Speed    Quantity = "speed"
	Voltage  Quantity = "voltage"
	Current  Quantity = "current" // with a voltage it gives the power where that has no column
)

// Quantities are all of them, in the order of a form.
var Quantities = []Quantity{Throttle, Thrust, Power, Speed, Voltage, Current}

// Column says where a quantity stands and in which unit.
type Column struct {
	Quantity Quantity
	Index    int    // of Sheet.Names
	Unit     string // one of Units; empty: not known
}

// unitRow is a unit of a quantity: its size in N, W, rad/s, V, A or 1, and how people write it.
type unitRow struct {
	name  string
	scale float64
	typed []string
}

// units are those of a quantity: a function, so that a program that reads no sheets has no table.
func units(q Quantity) []unitRow {
	switch q {
	case Throttle:
		return []unitRow{{"1", 1, []string{"ratio"}}, {"%", 0.01, []string{"percent", "pct"}}, {"us", 1e-3, []string{"µs", "μs"}}}
	case Thrust:
		return []unitRow{{"N", 1, []string{"newton"}}, {"gf", unit.Scale("gf"), []string{"g", "gram", "grams", "gr"}}, {"kgf", unit.Scale("kgf"), []string{"kg"}},
			{"lbf", unit.Scale("lbf"), []string{"lb", "lbs"}}, {"ozf", unit.Scale("lbf") / 16, []string{"oz"}}}
	case Power:
		return []unitRow{{"W", 1, []string{"watt", "watts"}}, {"kW", 1000, nil}}
	case Speed:
		return []unitRow{{"rad/s", 1, nil}, {"rpm", unit.Scale("rpm"), []string{"1/min", "r/min"}}, {"rev/s", 60 * unit.Scale("rpm"), []string{"hz", "1/s", "rps"}}}
	case Voltage:
		return []unitRow{{"V", 1, []string{"volt", "volts"}}, {"mV", 1e-3, nil}}
	case Current:
		return []unitRow{{"A", 1, []string{"amp", "amps", "ampere"}}, {"mA", 1e-3, nil}}
	}
	return nil
}

// Units are the units that a quantity may stand in, the one of the plan first.
func Units(q Quantity) []string {
	var out []string
	for _, u := range units(q) {
		out = append(out, u.name)
	}
	return out
}

// words that name a quantity, and words that make it another.
func words(q Quantity) (is, not []string) {
	switch q {
	case Throttle:
		return []string{"throttle", "pwm", "esc signal", "gas"}, nil
	case Thrust:
		return []string{"thrust", "lift", "pull"}, []string{"/w", "effic", "coeff"}
	case Power:
		return []string{"power", "watts"}, []string{"mech", "shaft", "prop", "effic", "coeff", "factor", "/w"}
	case Speed:
		return []string{"rpm", "speed", "rotation", "rev/", "rad/s"}, []string{"wind", "air"}
	case Voltage:
		return []string{"voltage", "volt"}, nil
	case Current:
		return []string{"current", "amps", "ampere"}, nil
	}
	return nil, nil
}

// Guess finds the columns of a sheet by their names, and their units by what stands in brackets, after a slash or
// as the name itself. What it does not find is left out, a unit it does not find empty; the person chooses.
func Guess(s Sheet) []Column {
	var out []Column
	taken := map[int]bool{}
	for _, q := range Quantities {
		for i, name := range s.Names {
			is, not := words(q)
			if low := strings.ToLower(name); !taken[i] && has(low, is) && !has(low, not) {
				taken[i] = true
				out = append(out, Column{q, i, s.unitOf(q, i)})
				break
			}
		}
	}
	return out
}

func has(name string, list []string) bool {
	for _, w := range list {
		if strings.Contains(name, w) {
			return true
		}
	}
	return false
}

// unitOf looks for the unit of a column: in its name, then in the first line below it when that holds no number.
func (s *Sheet) unitOf(q Quantity, column int) string {
	name := s.Names[column]
	tries := []string{}
	if i := strings.LastIndexAny(name, "([{"); i >= 0 {
		tries = append(tries, strings.Trim(name[i:], "()[]{} "))
	}
	if _, after, ok := strings.Cut(name, "/"); ok {
		tries = append(tries, after, name[strings.LastIndex(name[:len(name)-len(after)-1], " ")+1:])
	}
	for _, sep := range " _" {
		tries = append(tries, name[strings.LastIndex(name, string(sep))+1:])
	}
	if len(s.Cells) > 0 && !isNumber(s.Cells[0][column]) {
		tries = append(tries, strings.Trim(s.Cells[0][column], "()[]{} "))
	}
	for _, t := range tries {
		if u, ok := unitNamed(q, t); ok {
			return u.name
		}
	}
	if q == Power || q == Voltage || q == Current { // the trade has no other
		return units(q)[0].name
	}
	return ""
}

func unitNamed(q Quantity, typed string) (unitRow, bool) {
	for _, u := range units(q) {
		if typed == u.name || strings.EqualFold(typed, u.name) && u.name != "mV" {
			return u, true
		}
		for _, t := range u.typed {
			if strings.EqualFold(typed, t) {
				return u, true
			}
		}
	}
	return unitRow{}, false
}
