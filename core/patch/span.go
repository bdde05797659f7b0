package patch

import (
	"math"

	"cohoist/core/solve"
	"cohoist/core/vec"
)

// ways tells in how many directions of the plane the team can answer a shift at all, and when there is
// one, which, (14.5): the columns of its forces span a space, and the rest of a shift outside of it must be nothing.
func (q *question) ways() (way XY, dims int) {
	arm := q.far
	scaled := func(w solve.Wrench) [6]float64 {
		return [6]float64{w[0], w[1], w[2], w[3] / arm, w[4] / arm, w[5] / arm}
	}
	var columns [][6]float64
	for i := range q.p.Lines {
		columns = append(columns, scaled(q.p.Lines[i].Column))
	}
	for i := range q.p.Pulls {
		a := q.p.Pulls[i].At
		for k := range 3 {
			var f vec.V3
			f[k] = 1
			m := a.Cross(f)
			columns = append(columns, scaled(solve.Wrench{f[0], f[1], f[2], m[0], m[1], m[2]}))
		}
	}
	rest := [2][6]float64{scaled(q.shift(XY{1, 0})), scaled(q.shift(XY{0, 1}))}
	long := math.Max(norm(rest[0]), norm(rest[1]))
	span(columns, &rest)
	xx, xy, yy := dot(rest[0], rest[0]), dot(rest[0], rest[1]), dot(rest[1], rest[1])
	// least and largest part left of a unit shift
	mean, half := (xx+yy)/2, math.Hypot((xx-yy)/2, xy)
	nothing := func(square float64) bool { return square <= spanned*spanned*long*long }
	switch {
	case nothing(mean + half):
		return XY{}, 2
	case nothing(mean - half):
		angle := (math.Atan2(2*xy, xx-yy) + math.Pi) / 2
		sin, cos := math.Sincos(angle)
		return XY{cos, sin}, 1
	}
	return XY{}, 0
}

// spanned is how much of a shift may be left outside the span, relative: rounding of columns.
const spanned = 1e-7

// span takes away from rest what lies in the span of columns, by Gram–Schmidt with the longest column first.
func span(columns [][6]float64, rest *[2][6]float64) {
	first := 0.0
	for range 6 {
		best, at := 0.0, -1
		for i, c := range columns {
			if n := norm(c); n > best {
				best, at = n, i
			}
		}
		if first = math.Max(first, best); best <= 1e-10*first || at < 0 {
			return
		}
		u := columns[at]
		for k := range u {
			u[k] /= best
		}
		for i := range columns {
			without(&columns[i], u)
		}
		without(&rest[0], u)
		without(&rest[1], u)
	}
}

// without takes away the part of a along the unit vector u, twice for the last digits.
func without(a *[6]float64, u [6]float64) {
	for range 2 {
		d := dot(*a, u)
		for k := range a {
			a[k] -= float64(d * u[k])
		}
	}
}

func dot(a, b [6]float64) (sum float64) {
	for k := range a {
		sum += float64(a[k] * b[k])
	}
	return sum
}

func norm(a [6]float64) float64 { return math.Sqrt(dot(a, a)) }
