package figure

import (
	"math"
	"strconv"
)

// Append writes a coordinate: at most two decimals, no exponent, no minus zero.
func Append(b []byte, x float64) []byte {
	x = math.Round(x * 100)
	if !(math.Abs(x) < 1e15) {
		return append(b, '0')
	}
	n := int64(x)
	if n < 0 {
		b, n = append(b, '-'), -n
	}
	b = strconv.AppendInt(b, n/100, 10)
	switch c := n % 100; {
	case c == 0:
	case c%10 == 0:
		b = append(b, '.', byte('0'+c/10))
	default:
		b = append(b, '.', byte('0'+c/10), byte('0'+c%10))
	}
	return b
}

// Num is a coordinate as an attribute holds it.
func Num(x float64) string { return string(Append(nil, x)) }

// The R20 series of preferred numbers, ISO 3.
var r20 = [...]float64{1, 1.12, 1.25, 1.4, 1.6, 1.8, 2, 2.24, 2.5, 2.8, 3.15, 3.55, 4, 4.5, 5, 5.6, 6.3, 7.1, 8, 9, 10}

// Preferred returns the greatest number of the R20 series that is not above x.
func Preferred(x float64) float64 {
	e := math.Pow(10, math.Floor(math.Log10(x)))
	best := e
	for _, r := range r20 {
		if r*e <= x*(1+1e-12) {
			best = r * e
		}
	}
	return best
}

// Round125 returns the greatest of 1, 2, 5 times a power of ten that is not above x.
func Round125(x float64) float64 {
	e := math.Pow(10, math.Floor(math.Log10(x)))
	for _, r := range [...]float64{10, 5, 2} {
		if r*e <= x*(1+1e-12) {
			return r * e
		}
	}
	return e
}

// Finite says that x is a number.
func Finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
