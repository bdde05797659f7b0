// Package chart draws series of numbers as small charts in SVG: lines over an axis, bars with a limit,
// and a single bar for a table. It knows nothing of lifts: titles, names and texts are the caller's.
package chart

import (
	"math"
	"strconv"

	"cohoist/ui/figure"
)

// Axis says what an axis shows and how.
type Axis struct {
	Title string
	Log   bool // equal ratios are equally far apart; values must be positive
	Zero  bool // starts at zero, on a linear axis
	Whole bool // ticks at whole numbers only
	Comma bool // decimal comma
}

// scale maps values to the screen.
type scale struct {
	axis   Axis
	lo, hi float64 // of the values, rounded out
	a, b   float64 // where they lie on the screen
	ticks  []float64
}

// newScale fits an axis to values, from a to b on the screen, with about n ticks. ok is false when
// there is nothing to show.
func newScale(x Axis, values []float64, a, b float64, n int) (s scale, ok bool) {
	s = scale{axis: x, lo: math.Inf(1), hi: math.Inf(-1), a: a, b: b}
	for _, v := range values {
		if x.shows(v) {
			s.lo, s.hi = math.Min(s.lo, v), math.Max(s.hi, v)
		}
	}
	if s.lo > s.hi {
		return s, false
	}
	if x.Log {
		s.logTicks()
		return s, true
	}
	if x.Zero {
		s.lo, s.hi = math.Min(s.lo, 0), math.Max(s.hi, 0)
	}
	if s.hi-s.lo <= 1e-12*math.Max(math.Abs(s.hi), math.Abs(s.lo)) {
		s.lo, s.hi = s.lo-math.Max(math.Abs(s.lo)/2, 0.5), s.hi+math.Max(math.Abs(s.hi)/2, 0.5)
		if x.Zero && s.lo < 0 && s.hi > 0 {
			s.lo = 0
		}
	}
	step := figure.Round125((s.hi - s.lo) / float64(n) * 1.999)
	if x.Whole {
		step = math.Max(math.Round(step), 1)
	}
	first, last := math.Floor(s.lo/step+1e-9), math.Ceil(s.hi/step-1e-9)
	s.lo, s.hi = first*step, last*step
	for k := first; k <= last; k++ {
		s.ticks = append(s.ticks, k*step)
	}
	return s, true
}

func (s *scale) logTicks() {
	if s.hi <= s.lo*1.0001 {
		s.lo, s.hi = s.lo/2, s.hi*2
	}
	few := s.hi/s.lo > 100 // only powers of ten then
	for e := math.Floor(math.Log10(s.lo)); e <= math.Ceil(math.Log10(s.hi)); e++ {
		for _, k := range [...]float64{1, 2, 5} {
			v := k * math.Pow(10, e)
			if v < s.lo*(1-1e-9) || v > s.hi*(1+1e-9) || few && k > 1 {
				continue
			}
			s.ticks = append(s.ticks, v)
		}
	}
}

// shows says that a value has a place on the axis.
func (x Axis) shows(v float64) bool { return math.Abs(v) <= 1e15 && (!x.Log || v > 1e-15) }

// at is the place of a value on the screen.
func (s scale) at(v float64) float64 {
	t := (v - s.lo) / (s.hi - s.lo)
	if s.axis.Log {
		t = math.Log(v/s.lo) / math.Log(s.hi/s.lo)
	}
	return s.a + t*(s.b-s.a)
}

// label writes a tick in as few figures as tell it.
func (s scale) label(v float64) string { return number(v, s.axis.Comma) }

func number(v float64, comma bool) string {
	t := strconv.FormatFloat(v, 'g', 4, 64)
	if f, err := strconv.ParseFloat(t, 64); err == nil {
		t = strconv.FormatFloat(f, 'f', -1, 64)
	}
	b := []byte(t)
	for i := range b {
		if b[i] == '.' && comma {
			b[i] = ','
		}
	}
	if len(b) > 0 && b[0] == '-' {
		return "−" + string(b[1:])
	}
	return string(b)
}
