package unit

import (
	"math"
	"strconv"
	"strings"
)

// None stands where there is no number.
const None = "–"

// Format writes a number given in the base unit as a person reads it: in the unit named by symbol, which
// follows after a narrow no-break space (none before ° and %'s own habit is kept: 80 %).
// NaN is a dash. See Figures for digits.
func Format(base float64, symbol string, digits int) string {
	s := Figures(base/Scale(symbol), digits)
	switch {
	case s == None || symbol == "":
		return s
	case symbol == "°":
		return s + symbol
	}
	return s + "\u202f" + symbol
}

// Figures writes x with that many significant digits, without trailing zeros. Digits before the point
// are never rounded away: 12345 with three digits is 12345. Very large and very small numbers have an
// exponent. There is no minus zero.
func Figures(x float64, digits int) string {
	digits = min(max(digits, 1), 17)
	switch {
	case math.IsNaN(x):
		return None
	case math.IsInf(x, 1):
		return "∞"
	case math.IsInf(x, -1):
		return "−∞"
	case x == 0:
		return "0"
	}
	e := exponent(x, digits)
	if e < -5 || e >= 15 {
		mantissa, power, _ := strings.Cut(strconv.FormatFloat(x, 'e', digits-1, 64), "e")
		power = strings.TrimPrefix(power, "+")
		n, _ := strconv.Atoi(power)
		return sign(trimZeros(mantissa) + "e" + strconv.Itoa(n))
	}
	return sign(trimZeros(strconv.FormatFloat(x, 'f', max(0, digits-1-e), 64)))
}

// exponent is the power of ten of x once rounded to that many digits.
func exponent(x float64, digits int) int {
	_, power, _ := strings.Cut(strconv.FormatFloat(x, 'e', digits-1, 64), "e")
	n, _ := strconv.Atoi(power)
	return n
}

func trimZeros(s string) string {
	if !strings.Contains(s, ".") {
		return s
	}
	return strings.TrimRight(strings.TrimRight(s, "0"), ".")
}

// sign writes a real minus sign, which Parse reads too.
func sign(s string) string { return strings.ReplaceAll(s, "-", "−") }
