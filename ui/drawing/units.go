package drawing

import (
	"math"
	"strconv"
	"strings"

	"cohoist/ui/figure"
)

// Unit is a display unit: its sign and its size in SI.
type Unit struct {
	Name string
	Size float64
}

// Units are those of the screen. A zero Unit means the SI one.
type Units struct {
	Length, Force Unit
	Comma         bool // decimal comma
}

func (u Units) length(m float64) string { return u.show(m, orUnit(u.Length, "m")) }
func (u Units) force(n float64) string  { return u.show(n, orUnit(u.Force, "N")) }

func orUnit(u Unit, si string) Unit {
	if u.Name == "" || !(u.Size > 0) || !figure.Finite(u.Size) {
		return Unit{si, 1}
	}
	return u
}

// show writes a value in three significant figures, or more where it is whole.
func (u Units) show(x float64, in Unit) string {
	x /= in.Size
	if !figure.Finite(x) {
		return "?"
	}
	if a := math.Abs(x); a >= 1000 {
		x = math.Round(x)
	} else if a >= 1e-6 {
		d := math.Pow(10, 2-math.Floor(math.Log10(a)))
		x = math.Round(x*d) / d
	} else {
		x = 0
	}
	return u.point(strconv.FormatFloat(x, 'f', -1, 64)) + "\u00a0" + in.Name
}

// place writes a coordinate to the millimetre, whatever its size.
func (u Units) place(m float64) string {
	in := orUnit(u.Length, "m")
	d := math.Pow(10, math.Max(0, math.Ceil(3+math.Log10(in.Size)-1e-9)))
	x := math.Round(m/in.Size*d) / d
	if x == 0 {
		x = 0
	}
	return u.point(strconv.FormatFloat(x, 'f', -1, 64)) + "\u00a0" + in.Name
}

func (u Units) point(s string) string {
	s = strings.Replace(s, "-", "−", 1)
	if u.Comma {
		s = strings.Replace(s, ".", ",", 1)
	}
	return s
}

func percent(x float64) string {
	if !figure.Finite(x) {
		return ""
	}
	return strconv.FormatFloat(math.Round(math.Min(x, 99.99)*100), 'f', -1, 64) + "\u00a0%"
}

func whole(n int) string { return strconv.Itoa(n) }
