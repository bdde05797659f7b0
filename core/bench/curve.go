package bench

import (
	"math"
	"sort"

	"cohoist/core/plan"
)

// curve is monotone wherever its points are: cubics with the slopes of F. N. Fritsch and J. Butland, (19.1). It is written out here, as
// a library's brings linear algebra into the page's program; the test lays both through the same points.
type curve struct{ x, y, slope []float64 }

// through is the curve of y over x; nil: fewer than two rows have both, or x does not rise from row to row.
func through(rows []plan.Bench, x, y func(plan.Bench) float64) *curve {
	c := &curve{}
	for _, r := range rows {
		if a, b := x(r), y(r); !math.IsNaN(a+b) && !math.IsInf(a+b, 0) {
			if n := len(c.x); n > 0 && a <= c.x[n-1] {
				return nil
			}
			c.x, c.y = append(c.x, a), append(c.y, b)
		}
	}
	if len(c.x) < 2 {
		return nil
	}
	c.slope = slopes(c.x, c.y)
	return c
}

// slopes are those at the points: inside the harmonic mean of the chords beside, weighted by their lengths, at an end that of the parabola
// through the three nearest points, kept from turning the curve.
func slopes(x, y []float64) []float64 {
	n := len(x) - 1
	step, chord := make([]float64, n), make([]float64, n)
	for i := range n {
		step[i] = x[i+1] - x[i]
		chord[i] = (y[i+1] - y[i]) / step[i]
	}
	out := make([]float64, n+1)
	if n == 1 {
		out[0], out[1] = chord[0], chord[0]
		return out
	}
	for i := 1; i < n; i++ {
		if a, b := chord[i-1], chord[i]; a*b > 0 {
			out[i] = 3 * (step[i-1] + step[i]) / ((2*step[i]+step[i-1])/a + (step[i]+2*step[i-1])/b) // (19.1)
		}
	}
	out[0] = atEnd(step[0], step[1], chord[0], chord[1])
	out[n] = atEnd(step[n-1], step[n-2], chord[n-1], chord[n-2])
	return out
}

// atEnd is the slope at an end beside a chord, with the next one behind it.
func atEnd(step, next, chord, behind float64) float64 {
	s := (float64((2*step+next)*chord) - float64(step*behind)) / (step + next)
	switch {
	case s*chord <= 0:
		return 0
	case chord*behind <= 0 && math.Abs(s) > 3*math.Abs(chord):
		return 3 * chord
	}
	return s
}

// at is the curve's value; false, and NaN, outside its points.
func (c *curve) at(x float64) (float64, bool) {
	if c == nil || !(x >= c.x[0] && x <= c.x[len(c.x)-1]) {
		return math.NaN(), false
	}
	i := max(sort.SearchFloat64s(c.x, x), 1) - 1
	h := c.x[i+1] - c.x[i]
	t := (x - c.x[i]) / h
	rise := c.y[i+1] - c.y[i]
	a, b := h*c.slope[i]-rise, rise-h*c.slope[i+1] // how far the slopes are from the chord's
	return c.y[i] + float64(t*rise) + float64(t*(1-t)*(float64((1-t)*a)+float64(t*b))), true
}
