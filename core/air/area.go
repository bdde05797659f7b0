package air

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// Published drag coefficients: Aeronautical Engineer's Data Book (C. Matthews), fig. 5.13(b), p. 95.
const (
	squarePlate = 1.17 // across the flow
	longPlate   = 1.98 // across the flow, endless
)

// row is a coefficient at a ratio of length to diameter.
type row struct{ ratio, cd float64 }

// Cylinders, the same figure. The endless cylinder across the flow has 1.20.
var (
	acrossRows = []row{{1, 0.63}, {2, 0.68}, {5, 0.74}, {10, 0.82}, {40, 0.98}, {math.Inf(1), 1.20}}
	alongRows  = []row{{0, squarePlate}, {1, 0.91}, {2, 0.85}, {4, 0.87}, {7, 0.99}}
)

// Area is the payload's C_d A for wind along its x, y and z, m²: the measured value, or the sum over
// its solids, nothing shielding anything, (3.5). Rods and points have no width and no drag.
func Area(p plan.Payload) vec.V3 {
	if p.DragArea != nil {
		return *p.DragArea
	}
	var sum vec.V3
	for _, s := range p.Solids {
		sum = sum.Add(turned(own(s), s))
	}
	return sum
}

// own is a solid's C_d A along its own axes.
func own(s plan.Solid) vec.V3 {
	switch s.Shape {
	case plan.Box:
		if len(s.Size) == 3 {
			x, y, z := s.Size[0], s.Size[1], s.Size[2]
			return vec.V3{face(y, z), face(x, z), face(x, y)}
		}
	case plan.Plate:
		if len(s.Size) == 2 {
			return vec.V3{0, 0, face(s.Size[0], s.Size[1])}
		}
	case plan.Tube:
		across, along := cylinder(s.Length, s.OuterRadius)
		return vec.V3{along, across, across}
	case plan.Cylinder:
		across, along := cylinder(s.Length, s.OuterRadius)
		return vec.V3{across, across, along}
	case plan.MeshBody:
		if s.Mesh != nil {
			return projected(*s.Mesh).Scale(squarePlate)
		}
	}
	return vec.V3{}
}

// face is C_d A of a rectangle across the flow: from the square to the endless plate, linear in the
// ratio of its sides, (3.6). The depth of the body behind it is left out: a cube has 1.05 to 1.07
// instead of 1.17 (published), an endless square prism 2.05 instead of 1.98 (Hoerner, from memory).
func face(a, b float64) float64 {
	long := math.Max(a, b)
	if !(long > 0) {
		return 0
	}
	return (longPlate - (longPlate-squarePlate)*math.Min(a, b)/long) * a * b
}

// cylinder is C_d A across and along the flow, (3.7).
func cylinder(length, radius float64) (across, along float64) {
	if !(length > 0 && radius > 0) {
		return 0, 0
	}
	ratio := length / (2 * radius)
	return inverse(acrossRows, ratio) * 2 * radius * length, linear(alongRows, ratio) * math.Pi * radius * radius
}

// linear reads a table between its rows, and its last row beyond.
func linear(rows []row, x float64) float64 {
	for i, r := range rows[1:] {
		if x <= r.ratio {
			p := rows[i]
			return p.cd + (r.cd-p.cd)*(x-p.ratio)/(r.ratio-p.ratio)
		}
	}
	return rows[len(rows)-1].cd
}

// inverse reads a table between its rows in diameter over length, so that its last row may be the
// endless body; a body shorter than the first row counts as the first.
func inverse(rows []row, x float64) float64 {
	x = 1 / math.Max(x, rows[0].ratio)
	for i, r := range rows[1:] {
		p := rows[i]
		if a, b := 1/p.ratio, 1/r.ratio; x >= b {
			return p.cd + (r.cd-p.cd)*(a-x)/(a-b)
		}
	}
	return rows[len(rows)-1].cd
}

// projected is the area of a closed mesh seen along x, y, z, exact for a convex one and too large
// for others: half the sum of its triangles' own.
func projected(m plan.Mesh) vec.V3 {
	var sum vec.V3
	for _, t := range m.Triangles {
		if min(t[0], t[1], t[2]) < 0 || max(t[0], t[1], t[2]) >= len(m.Vertices) {
			continue // core/mass refuses such a mesh in words
		}
		a := m.Vertices[t[0]]
		n := m.Vertices[t[1]].Sub(a).Cross(m.Vertices[t[2]].Sub(a))
		sum = sum.Add(vec.V3{math.Abs(n[0]), math.Abs(n[1]), math.Abs(n[2])})
	}
	return sum.Scale(0.25) // half of half the parallelograms
}

// turned is C_d A along payload axes of a turned solid: Σ |R_ji| A_i, which is exact for the
// projected area of a box, (3.8).
func turned(a vec.V3, s plan.Solid) vec.V3 {
	if s.Turn == (vec.V3{}) {
		return a
	}
	const deg = math.Pi / 180
	r := vec.Euler(s.Turn[0]*deg, s.Turn[1]*deg, s.Turn[2]*deg)
	var out vec.V3
	for j := range 3 {
		for i := range 3 {
			out[j] += float64(math.Abs(r[j][i]) * a[i])
		}
	}
	return out
}
