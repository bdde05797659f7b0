package pattern

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// Extent is the box that holds the payload's solids, payload frame, m. A payload without width gets
// a little, so that a ring is a ring.
func Extent(p plan.Payload) (lo, hi vec.V3) {
	lo = vec.V3{math.Inf(1), math.Inf(1), math.Inf(1)}
	hi = lo.Scale(-1)
	for _, s := range p.Solids {
		at, turn := given(s.At), given(s.Turn)
		r := vec.Euler(rad(turn[0]), rad(turn[1]), rad(turn[2]))
		for _, c := range corners(s) {
			q := at.Add(r.Mul(c))
			for i := range 3 {
				if !math.IsNaN(q[i]) {
					lo[i], hi[i] = math.Min(lo[i], q[i]), math.Max(hi[i], q[i])
				}
			}
		}
	}
	long := 0.0
	for i := range 3 {
		if !(hi[i] >= lo[i]) {
			lo[i], hi[i] = 0, 0
		}
		long = math.Max(long, hi[i]-lo[i])
	}
	if long == 0 {
		long = 0.4
		lo[0], hi[0] = lo[0]-long/2, hi[0]+long/2
	}
	for i := range 2 {
		if least := long / 10; hi[i]-lo[i] < least {
			mid := (hi[i] + lo[i]) / 2
			lo[i], hi[i] = mid-least/2, mid+least/2
		}
	}
	return lo, hi
}

// given is a vector with nothing left out: what the plan leaves out is 0, as plan.Assume has it.
func given(v vec.V3) vec.V3 {
	for i := range v {
		if math.IsNaN(v[i]) {
			v[i] = 0
		}
	}
	return v
}

func rad(deg float64) float64 { return deg * math.Pi / 180 }

// corners are points of a solid, own axes, whose box holds it.
func corners(s plan.Solid) []vec.V3 {
	var h vec.V3
	switch s.Shape {
	case plan.Box, plan.Plate:
		for i := range min(3, len(s.Size)) {
			h[i] = s.Size[i] / 2
		}
	case plan.Rod:
		h[0] = s.Length / 2
	case plan.Tube:
		h = vec.V3{s.Length / 2, s.OuterRadius, s.OuterRadius}
	case plan.Cylinder:
		h = vec.V3{s.OuterRadius, s.OuterRadius, s.Length / 2}
	case plan.MeshBody:
		if s.Mesh != nil {
			return s.Mesh.Vertices
		}
	}
	var out []vec.V3
	for i := range 8 {
		out = append(out, vec.V3{h[0] * float64(i&1*2-1), h[1] * float64(i>>1&1*2-1), h[2] * float64(i>>2*2-1)})
	}
	return out
}
