package study

import (
	"cmp"
	"math"
	"slices"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// form is the corners of each solid of a payload, payload frame, m: enough for its outline from any side.
type form [][]vec.V3

// corners of a round solid's rim.
const rim = 24

// formOf is the form of a payload; solids without dimensions are left out.
func formOf(p plan.Payload) form {
	var f form
	for _, s := range p.Solids {
		turn, center := s.Turn, s.At
		for k := range 3 { // left out: none
			if math.IsNaN(turn[k]) {
				turn[k] = 0
			}
			if math.IsNaN(center[k]) {
				center[k] = 0
			}
		}
		r := vec.Euler(turn[0]*math.Pi/180, turn[1]*math.Pi/180, turn[2]*math.Pi/180)
		var points []vec.V3
		for _, q := range corners(s) {
			if at := r.Mul(q).Add(center); !math.IsNaN(at.Norm()) {
				points = append(points, at)
			}
		}
		if len(points) > 0 {
			f = append(f, points)
		}
	}
	return f
}

// framed is the form with a frame that joins places where they stand off it.
func (f form) framed(at ...vec.V3) form { return append(f[:len(f):len(f)], at) }

// corners of a solid in its own frame.
func corners(s plan.Solid) []vec.V3 {
	switch s.Shape {
	case plan.Box, plan.Plate:
		var h vec.V3
		for k := range min(3, len(s.Size)) {
			h[k] = s.Size[k] / 2
		}
		return block(h)
	case plan.Rod:
		return []vec.V3{{-s.Length / 2}, {s.Length / 2}}
	case plan.Tube:
		var out []vec.V3
		for _, q := range drum(s.Length, s.OuterRadius) {
			out = append(out, vec.V3{q[2], q[0], q[1]})
		}
		return out
	case plan.Cylinder:
		return drum(s.Length, s.OuterRadius)
	case plan.MeshBody:
		if s.Mesh != nil {
			return extremes(s.Mesh.Vertices)
		}
	}
	return []vec.V3{{}}
}

func block(h vec.V3) []vec.V3 {
	var out []vec.V3
	for i := range 8 {
		p := h
		for k := range 3 {
			if i>>k&1 == 0 {
				p[k] = -p[k]
			}
		}
		out = append(out, p)
	}
	return out
}

func drum(length, radius float64) []vec.V3 {
	var out []vec.V3
	for i := range rim {
		s, c := math.Sincos(2 * math.Pi * float64(i) / rim)
		out = append(out, vec.V3{radius * c, radius * s, -length / 2}, vec.V3{radius * c, radius * s, length / 2})
	}
	return out
}

// extremes are the points that lie farthest in some direction; of a fine mesh these are few.
func extremes(points []vec.V3) []vec.V3 {
	if len(points) <= 64 {
		return points
	}
	seen := map[int]bool{}
	var out []vec.V3
	const golden = 2.399963229728653 // radians; turns by it spread directions evenly over a sphere
	for i := range 200 {
		z := 1 - (2*float64(i)+1)/200
		s, c := math.Sincos(golden * float64(i))
		flat := math.Sqrt(1 - z*z)
		d, far := vec.V3{flat * c, flat * s, z}, 0
		for k, p := range points {
			if d.Dot(p) > d.Dot(points[far]) {
				far = k
			}
		}
		if !seen[far] {
			seen[far] = true
			out = append(out, points[far])
		}
	}
	return out
}

// each is every corner.
func (f form) each(do func(vec.V3)) {
	for _, s := range f {
		for _, p := range s {
			do(p)
		}
	}
}

// dot is a point of a picture.
type dot [2]float64

// around is the convex outline of points, in order (Andrew's monotone chain).
func around(points []dot) []dot {
	p := slices.Clone(points)
	slices.SortFunc(p, func(a, b dot) int { return cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(a[1], b[1])) })
	half := func(p []dot) []dot {
		var out []dot
		for _, q := range p {
			for n := len(out); n > 1 && bend(out[n-2], out[n-1], q) <= 0; n = len(out) {
				out = out[:n-1]
			}
			out = append(out, q)
		}
		return out
	}
	low := half(p)
	slices.Reverse(p)
	high := half(p)
	return append(low[:len(low)-1], high[:len(high)-1]...)
}

// bend is positive where a → b → c turns anticlockwise.
func bend(a, b, c dot) float64 {
	return (b[0]-a[0])*(c[1]-a[1]) - (b[1]-a[1])*(c[0]-a[0])
}
