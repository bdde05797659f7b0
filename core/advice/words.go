package advice

import (
	"math"
	"strconv"
	"strings"

	"cohoist/core/vec"
)

// say is a move in words, the dearer way first.
func (v *Move) say() string {
	up := !(v.Up < v.Down) || math.IsNaN(v.Down)
	first, second := v.Up, v.Down
	if !up {
		first, second = v.Down, v.Up
	}
	what := v.name(up)
	switch {
	case v.Lost && math.IsNaN(v.Up) && math.IsNaN(v.Down):
		return what + " leaves no balance, either way: the load tips until it hangs."
	case v.Lost && math.IsNaN(v.Up):
		return v.name(true) + " leaves no balance; the other way " + cost(v.Down) + "."
	case v.Lost:
		return v.name(false) + " leaves no balance; the other way " + cost(v.Up) + "."
	case v.Effect < 5e-5:
		return what + " hardly moves the answer."
	case math.IsNaN(second):
		return what + " " + cost(first) + "."
	}
	return what + " " + cost(first) + "; the other way " + cost(second) + "."
}

// cost is a change of utilisation in words.
func cost(x float64) string {
	switch s := short(math.Abs(100 * x)); {
	case s == "0":
		return "changes nothing"
	case x > 0:
		return "costs " + s + " % of thrust"
	default:
		return "frees " + s + " % of thrust"
	}
}

// name is the step of a move, up or down, as the subject of a sentence.
func (v *Move) name(up bool) string {
	size := amount(v.Step, v.Unit)
	more, less := "more", "less"
	if !up {
		more, less = less, more
	}
	_, axis, _ := strings.Cut(v.ID, "_m.")
	sign := "+"
	if !up {
		sign = "−"
	}
	switch {
	case v.ID == "payload.mass_kg":
		return size + " " + more + " payload"
	case v.ID == "payload.com_m":
		return size + " of centre of mass " + toward(v.Toward)
	case strings.HasPrefix(v.ID, "payload.com_m."):
		return size + " of centre of mass along " + sign + axis
	case strings.HasPrefix(v.ID, "team.attach_m."):
		return size + " of " + v.Who + "'s attachment along " + sign + axis
	case v.ID == "vehicles.rotor_thrust_max_n":
		return size + " " + more + " thrust of " + v.Who
	case v.ID == "vehicles.mass_kg":
		return size + " " + more + " mass of " + v.Who
	case v.ID == "site.wind_m_s":
		return size + " " + more + " wind"
	case v.ID == "site.altitude_m":
		return size + " " + map[bool]string{true: "higher up", false: "lower down"}[up]
	}
	return size + " " + map[bool]string{true: "warmer", false: "colder"}[up] + " air"
}

// toward puts a direction into a sentence: towards A, to between A and B.
func toward(name string) string {
	switch {
	case strings.HasPrefix(name, "between "):
		return "to " + name
	case strings.HasPrefix(name, "along "):
		return name
	}
	return "towards " + name
}

// amount writes a number with its unit as a crew would: centimetres, grams.
func amount(x float64, unit string) string {
	switch {
	case unit == "m" && x < 0.00995:
		return short(1000*x) + " mm"
	case unit == "m" && x < 0.9995:
		return short(100*x) + " cm"
	case unit == "kg" && x < 0.9995:
		return short(1000*x) + " g"
	}
	return short(x) + " " + unit
}

func point(p vec.V3) string { return "(" + short(p[0]) + ", " + short(p[1]) + ", " + short(p[2]) + ")" }

// short writes three figures, and nothing smaller than a thousandth.
func short(x float64) string {
	if math.Abs(x) < 0.0005 {
		return "0"
	}
	scale := math.Pow(10, math.Max(0, math.Min(3, 2-math.Floor(math.Log10(math.Abs(x))))))
	return strings.Replace(strconv.FormatFloat(math.Round(x*scale)/scale, 'f', -1, 64), "-", "−", 1)
}
