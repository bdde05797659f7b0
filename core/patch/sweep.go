package patch

import (
	"math"

	"cohoist/core/solve"
	"cohoist/core/vec"
)

// fine is the part of the patch's size at which its edge counts as found; rough that of a round edge, which has no end of
// corners, once it has been asked for in so many places.
const (
	fine   = 1e-8
	rough  = 5e-4
	enough = 24
)

// sweep asks for the edge: from the best place towards the corner of Outer that is farthest beyond
// Inner, until none is, (14.4).
func (q *question) sweep(out *Patch) {
	switch way, dims := q.ways(); dims {
	case 0:
		out.Note = "the team can hold it in one place only"
		out.Inner, out.Outer = []XY{out.Best}, []XY{out.Best}
		return
	case 1:
		out.Note = "the team can hold it on one line only"
		for _, d := range [2]XY{way.scale(-1), way} {
			at, line, ok := q.shoot(out, d)
			if !ok {
				out.Status, out.Note = solve.Unsolved, "an end of the patch was not solved"
				return
			}
			out.Inner = append(out.Inner, at)
			out.Outer = append(out.Outer, out.Best.add(d.scale(line.h/line.n.dot(d))))
		}
		return
	}
	e := q.far
	out.Outer = []XY{{-e, -e}, {e, -e}, {e, e}, {-e, e}}
	out.Inner = []XY{out.Best}
	tried := map[XY]bool{}
	for out.Solves <= Most {
		v, gap := q.farthest(out, tried)
		if extent := size(out.Outer); gap <= fine*extent || gap <= rough*extent && out.Solves > enough {
			break
		}
		tried[v] = true
		d := v.sub(out.Best)
		at, line, ok := q.shoot(out, d.scale(1/d.norm()))
		if !ok {
			continue
		}
		line.h += line.n.dot(out.Best)
		out.Inner = hull(append(out.Inner, at))
		out.Outer = clip(out.Outer, line, 0)
	}
	out.Inner, out.Outer = tidy(out.Inner, fine*size(out.Inner)/10), hull(out.Outer)
}

// farthest is the corner of Outer, not tried yet, that is farthest beyond Inner.
func (q *question) farthest(out *Patch, tried map[XY]bool) (v XY, gap float64) {
	for _, c := range out.Outer {
		if tried[c] {
			continue
		}
		if g := beyond(out.Inner, c); g > gap {
			v, gap = c, g
		}
	}
	return v, gap
}

// size is the length of a polygon along x and y together, m.
func size(polygon []XY) float64 {
	lo, hi := XY{math.Inf(1), math.Inf(1)}, XY{math.Inf(-1), math.Inf(-1)}
	for _, c := range polygon {
		for k := range 2 {
			lo[k], hi[k] = math.Min(lo[k], c[k]), math.Max(hi[k], c[k])
		}
	}
	return hi[0] - lo[0] + hi[1] - lo[1]
}

// shoot finds the last place held from the best one in the unit direction d, and the line there that nothing
// held is beyond, measured from the best place, (14.3). Straight into a corner many bounds meet, which may be more than the
// solver's digits can tell apart; a direction beside it then does as well.
func (q *question) shoot(out *Patch, d XY) (at XY, line half, ok bool) {
	for _, beside := range [3]float64{0, 1e-9, 1e-6} {
		if at, line, ok = q.along(out, d.add(XY{-d[1], d[0]}.scale(beside))); ok {
			break
		}
	}
	return at, line, ok
}

// along is one try of shoot.
func (q *question) along(out *Patch, d XY) (at XY, line half, ok bool) {
	w := q.shift(out.Best)
	for i := range 6 {
		q.p.Wrench[i] = q.want[i] + w[i]
	}
	q.p.WrenchT = q.shift(d)
	r := q.s.Solve(q.p)
	out.Solves++
	if r.Status != solve.Optimal {
		return at, line, false
	}
	n := q.pull.Cross(vec.V3{r.Y[3], r.Y[4], r.Y[5]}) // (14.3)
	long := math.Hypot(n[0], n[1])
	if !(long > 0) {
		return at, line, false
	}
	return out.Best.add(d.scale(math.Max(0, r.T))), half{XY{n[0] / long, n[1] / long}, r.Bound / long}, true
}
