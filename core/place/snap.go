package place

import (
	"math"
	"math/rand/v2"

	"cohoist/core/vec"
)

// segments are the sides of the area, or the segments of the path.
func (r Region) segments() [][2]vec.V3 {
	points, closed := r.Path, r.Closed
	if len(r.Area) > 2 {
		points, closed = r.Area, true
	}
	var out [][2]vec.V3
	for i := 1; i < len(points); i++ {
		out = append(out, [2]vec.V3{points[i-1], points[i]})
	}
	if closed && len(points) > 2 {
		out = append(out, [2]vec.V3{points[len(points)-1], points[0]})
	}
	return out
}

// snap is the point of the region nearest to p, seen from above.
func (r Region) snap(p vec.V3) vec.V3 {
	if len(r.Area) > 2 && (Zone{Points: r.Area}).Contains(p) {
		p[2] = r.Area[0][2]
		return p
	}
	best, near := r.corners()[0], math.Inf(1)
	for _, s := range r.segments() {
		d := s[1].Sub(s[0])
		t := 0.0
		if n := float64(d[0]*d[0]) + float64(d[1]*d[1]); n > 0 {
			t = (float64((p[0]-s[0][0])*d[0]) + float64((p[1]-s[0][1])*d[1])) / n
		}
		q := s[0].Add(d.Scale(math.Min(math.Max(t, 0), 1)))
		if far := math.Hypot(p[0]-q[0], p[1]-q[1]); far < near {
			best, near = q, far
		}
	}
	return best
}

// length is that of the path or the outline, m.
func (r Region) length() float64 {
	sum := 0.0
	for _, s := range r.segments() {
		sum += s[1].Sub(s[0]).Norm()
	}
	return sum
}

// any draws a place of the region.
func (r Region) any(rng *rand.Rand) vec.V3 {
	if len(r.Area) > 2 {
		lo, hi := r.Area[0], r.Area[0]
		for _, p := range r.Area {
			for i := range 2 {
				lo[i], hi[i] = math.Min(lo[i], p[i]), math.Max(hi[i], p[i])
			}
		}
		for range 1000 {
			p := vec.V3{lo[0] + rng.Float64()*(hi[0]-lo[0]), lo[1] + rng.Float64()*(hi[1]-lo[1]), r.Area[0][2]}
			if (Zone{Points: r.Area}).Contains(p) {
				return p
			}
		}
		return r.Area[0]
	}
	along := rng.Float64() * r.length()
	for _, s := range r.segments() {
		if l := s[1].Sub(s[0]).Norm(); along > l {
			along -= l
		} else if l > 0 {
			return s[0].Add(s[1].Sub(s[0]).Scale(along / l))
		}
	}
	return r.corners()[0]
}

// pattern is about n holes of the region that no zone keeps out.
func (r Region) pattern(n int) []vec.V3 {
	var holes []vec.V3
	if len(r.Area) > 2 {
		lo, hi := r.Area[0], r.Area[0]
		for _, p := range r.Area {
			for i := range 2 {
				lo[i], hi[i] = math.Min(lo[i], p[i]), math.Max(hi[i], p[i])
			}
		}
		pitch := math.Sqrt((hi[0] - lo[0]) * (hi[1] - lo[1]) / float64(n))
		if !(pitch > 0) {
			return nil
		}
		return Outside(OnGrid(r.Area, pitch), r.KeepOut)
	}
	pitch := r.length() / float64(n)
	for _, s := range r.segments() {
		row := InRow(s[0], s[1], pitch)
		holes = append(holes, row...)
	}
	return Outside(holes, r.KeepOut)
}
