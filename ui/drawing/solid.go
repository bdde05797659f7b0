package drawing

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// A body is a solid as a polyhedron in the scene. Faces are convex polygons, anticlockwise seen
// from outside. An edge stands between two faces (the same one twice where only one decides).
type body struct {
	points []vec.V3
	faces  []face
	edges  []edge
	hull   bool // points only: too fine to draw edge by edge, shown by its outline
}

type face struct {
	at     []int
	normal vec.V3 // outwards, any length
	bore   bool   // faces a bore: hides nothing, is hidden by its tube
}

type edge struct {
	a, b int
	f, g int
	soft bool // between two parts of one curved surface: drawn only as an outline
	fine bool // a blunt edge of a mesh: drawn thin where it is seen and no outline
}

// Sides of the prism a round solid is drawn as.
const roundSides = 36

// newBody makes the polyhedron of a solid in payload axes, or ok = false when a dimension is missing.
func newBody(s plan.Solid) (b body, ok bool) {
	switch s.Shape {
	case plan.Box, plan.Plate:
		n := 3
		if s.Shape == plan.Plate {
			n = 2
		}
		if len(s.Size) < n {
			return b, false
		}
		var h vec.V3
		for i := range n {
			if !usable(s.Size[i]) || s.Size[i] <= 0 {
				return b, false
			}
			h[i] = s.Size[i] / 2
		}
		b = box(h)
	case plan.Rod:
		if !usable(s.Length) || s.Length <= 0 {
			return b, false
		}
		b.points = []vec.V3{{-s.Length / 2, 0, 0}, {s.Length / 2, 0, 0}}
		b.edges = []edge{{a: 0, b: 1, f: -1, g: -1}}
	case plan.Tube, plan.Cylinder:
		if !usable(s.Length) || !usable(s.OuterRadius) || s.Length <= 0 || s.OuterRadius <= 0 {
			return b, false
		}
		b = prism(s.Length, s.OuterRadius, s.InnerRadius)
		if s.Shape == plan.Tube { // its axis from z to x
			for i, p := range b.points {
				b.points[i] = vec.V3{p[2], p[0], p[1]}
			}
		}
	case plan.Point:
		b.points = []vec.V3{{}}
	case plan.MeshBody:
		if b, ok = meshBody(s.Mesh); !ok {
			return b, false
		}
	default:
		return b, false
	}
	return b, true
}

// placed returns the body moved and turned into the scene, normals computed there.
func (b body) placed(r vec.M3, at vec.V3) body {
	out := b
	out.points = make([]vec.V3, len(b.points))
	for i, p := range b.points {
		out.points[i] = r.Mul(p).Add(at)
	}
	out.faces = make([]face, len(b.faces))
	for i, f := range b.faces {
		f.normal = newell(out.points, f.at)
		out.faces[i] = f
	}
	return out
}

// newell returns the normal of a polygon by Newell's sum, twice its area long.
func newell(p []vec.V3, at []int) vec.V3 {
	var n vec.V3
	for i := range at {
		n = n.Add(p[at[i]].Cross(p[at[(i+1)%len(at)]]))
	}
	return n
}

func box(h vec.V3) body {
	if h[2] == 0 {
		return body{
			points: []vec.V3{{-h[0], -h[1], 0}, {h[0], -h[1], 0}, {h[0], h[1], 0}, {-h[0], h[1], 0}},
			faces:  []face{{at: []int{0, 1, 2, 3}}, {at: []int{3, 2, 1, 0}}},
			edges:  []edge{{a: 0, b: 1, g: 1}, {a: 1, b: 2, g: 1}, {a: 2, b: 3, g: 1}, {a: 3, b: 0, g: 1}},
		}
	}
	var b body
	for i := range 8 { // bits of i: x, y, z
		p := h
		for k := range 3 {
			if i>>k&1 == 0 {
				p[k] = -p[k]
			}
		}
		b.points = append(b.points, p)
	}
	for _, f := range [6][4]int{{0, 4, 6, 2}, {1, 3, 7, 5}, {0, 1, 5, 4}, {2, 6, 7, 3}, {0, 2, 3, 1}, {4, 5, 7, 6}} {
		b.faces = append(b.faces, face{at: f[:]})
	}
	b.edges = join(b.faces, nil)
	return b
}

// prism is a cylinder or tube about z, with its bore.
func prism(length, outer, inner float64) body {
	var b body
	n := roundSides
	ring := func(r, z float64) {
		for i := range n {
			s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
			b.points = append(b.points, vec.V3{r * c, r * s, z})
		}
	}
	ring(outer, -length/2)
	ring(outer, length/2)
	low, high := face{}, face{}
	for i := range n {
		low.at = append(low.at, n-1-i)
		high.at = append(high.at, n+i)
		j := (i + 1) % n
		b.faces = append(b.faces, face{at: []int{i, j, n + j, n + i}})
	}
	b.faces = append(b.faces, low, high)
	for i := range n {
		j, prev := (i+1)%n, (i+n-1)%n
		b.edges = append(b.edges, edge{i, j, i, n, false, false}, edge{n + i, n + j, i, n + 1, false, false}, edge{i, n + i, prev, i, true, false})
	}
	if usable(inner) && inner > 0 && inner < outer {
		b.bore(inner, length, ring)
	}
	return b
}

// bore adds the hole of a tube: rings seen with the end they lie in, and the outline inside.
func (b *body) bore(inner, length float64, ring func(r, z float64)) {
	n, first := roundSides, len(b.faces)
	ring(inner, -length/2)
	ring(inner, length/2)
	for i := range n {
		j := (i + 1) % n
		b.faces = append(b.faces, face{at: []int{3*n + i, 3*n + j, 2*n + j, 2*n + i}, bore: true})
	}
	for i := range n {
		j, prev := (i+1)%n, (i+n-1)%n
		b.edges = append(b.edges, edge{2*n + i, 2*n + j, n, n, false, false}, edge{3*n + i, 3*n + j, n + 1, n + 1, false, false},
			edge{2*n + i, 3*n + i, first + prev, first + i, true, false})
	}
}

// join finds the edges of closed faces. grade, when given, says whether the edge between two faces is
// soft or fine.
func join(faces []face, grade func(f, g int) (soft, fine bool)) []edge {
	var out []edge
	seen := map[[2]int]int{}
	for f := range faces {
		at := faces[f].at
		for i := range at {
			a, b := at[i], at[(i+1)%len(at)]
			key := [2]int{min(a, b), max(a, b)}
			if k, ok := seen[key]; ok {
				out[k].g = f
				continue
			}
			seen[key] = len(out)
			out = append(out, edge{a: a, b: b, f: f, g: f})
		}
	}
	for i := range out {
		if e := &out[i]; grade != nil && e.f != e.g {
			e.soft, e.fine = grade(e.f, e.g)
		}
	}
	return out
}

// usable says that a length can be drawn at all.
func usable(x float64) bool { return math.Abs(x) <= 1e7 } // false for NaN

func usable3(p vec.V3) bool { return usable(p[0]) && usable(p[1]) && usable(p[2]) }
