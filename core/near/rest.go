package near

import (
	"math"

	"cohoist/core/vec"
)

// Rest looks for the fixed point of what is near by Anderson's mixing: of the last rounds, the mean of their outcomes whose changes
// cancel best, (22.9).
type Rest struct {
	counted         []Effect
	outcome, change [][]float64 // of the last rounds, the newest last
}

// memory is how many rounds are mixed, and Settled where it has come to rest: change of shares, ratios, places times shares in metres.
const (
	memory  = 5
	Settled = 1e-9
)

// Next takes what is near now, after it was counted as Next said last, and makes of it what to count next. It tells by how much at
// most it had changed: +Inf at first.
func (r *Rest) Next(now []Effect) (largest float64) {
	before := r.counted
	r.counted = now
	if before == nil {
		return math.Inf(1)
	}
	outcome := numbers(now, nil)
	next := append([]float64(nil), outcome...)
	change := append([]float64(nil), outcome...)
	less(change, numbers(before, nil), 1)
	for _, x := range change {
		largest = math.Max(largest, math.Abs(x))
	}
	left := append([]float64(nil), change...)
	var base, moved [][]float64 // differences made orthogonal, and the outcomes' in the same measure
	for k := len(r.change) - 1; k >= 0 && k > len(r.change)-memory; k-- {
		d, o := append([]float64(nil), change...), append([]float64(nil), outcome...)
		less(d, r.change[k], 1)
		less(o, r.outcome[k], 1)
		whole := inner(d, d)
		for n := range base {
			f := inner(d, base[n]) / inner(base[n], base[n])
			less(d, base[n], f)
			less(o, moved[n], f)
		}
		if size := inner(d, d); size > 1e-8*whole {
			f := inner(left, d) / size
			less(left, d, f)
			less(next, o, f)
			base, moved = append(base, d), append(moved, o)
		}
	}
	r.outcome, r.change = append(r.outcome, outcome), append(r.change, change)
	if largest > Settled {
		numbers(now, next)
	}
	return largest
}

// less takes f times b from a.
func less(a, b []float64, f float64) {
	for i := range a {
		a[i] -= float64(f * b[i])
	}
}

func inner(a, b []float64) float64 {
	sum := 0.0
	for i := range a {
		sum += float64(a[i] * b[i])
	}
	return sum
}

// numbers are what is near as numbers of like size: ratios, and shares times places in metres. What is not nil is put in their place,
// within what they can be.
func numbers(list []Effect, put []float64) (out []float64) {
	one := func(at *float64, lo, hi float64) {
		if put != nil {
			*at = math.Max(lo, math.Min(hi, put[0]))
			put = put[1:]
		}
		out = append(out, *at)
	}
	scaled := func(v *vec.V3, by float64) {
		for k := range v {
			x := v[k] * by
			one(&x, math.Inf(-1), math.Inf(1))
			if by > 1e-9 {
				v[k] = x / by
			}
		}
	}
	for i := range list {
		e := &list[i]
		one(&e.Ground, 1, 4.0/3)
		for j := range e.Shadows {
			s := &e.Shadows[j]
			one(&s.Share, 0, Flat/2)
			scaled(&s.At, s.Share)
		}
		for j := range e.Lift {
			one(&e.Lift[j], 1e-3, 1)
		}
		if e.Lift != nil {
			scaled(&e.Push, 0.1)
		}
	}
	return out
}
