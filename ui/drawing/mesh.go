package drawing

import (
	"math"
	"sort"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// Triangles of a mesh that is still drawn edge by edge; a finer one is shown by its outline.
const meshDrawn = 6000

// Angles between two triangles below which they count as one curved surface, and as a blunt edge.
const (
	softAngle = 25 * math.Pi / 180
	fineAngle = 65 * math.Pi / 180
)

// meshBody makes the body of a mesh. A fine mesh keeps only the points that are outermost in one of
// many directions: its outline is then that of its convex hull, nearly.
func meshBody(m *plan.Mesh) (body, bool) {
	if m == nil || len(m.Vertices) == 0 {
		return body{}, false
	}
	for _, v := range m.Vertices {
		if !usable3(v) {
			return body{}, false
		}
	}
	if len(m.Triangles) == 0 || len(m.Triangles) > meshDrawn {
		return body{points: outermost(m.Vertices), hull: true}, true
	}
	b := body{points: m.Vertices}
	for _, t := range m.Triangles {
		for _, i := range t {
			if i < 0 || i >= len(m.Vertices) {
				return body{}, false
			}
		}
		b.faces = append(b.faces, face{at: []int{t[0], t[1], t[2]}})
	}
	normals := make([]vec.V3, len(b.faces))
	for i, f := range b.faces {
		normals[i] = newell(b.points, f.at).Unit()
	}
	b.edges = join(b.faces, func(f, g int) (soft, fine bool) {
		c := normals[f].Dot(normals[g])
		return c > math.Cos(softAngle), c > math.Cos(fineAngle)
	})
	return b, true
}

// outermost returns the points that lie farthest out in 200 directions spread evenly over a sphere.
func outermost(points []vec.V3) []vec.V3 {
	const n = 200
	golden := math.Pi * (3 - math.Sqrt(5))
	var out []vec.V3
	seen := map[int]bool{}
	for k := range n {
		z := 1 - 2*(float64(k)+0.5)/n
		r := math.Sqrt(1 - z*z)
		s, c := math.Sincos(golden * float64(k))
		d := vec.V3{r * c, r * s, z}
		best, at := math.Inf(-1), 0
		for i, p := range points {
			if h := d.Dot(p); h > best {
				best, at = h, i
			}
		}
		if !seen[at] {
			seen[at] = true
			out = append(out, points[at])
		}
	}
	return out
}

// outline returns the convex hull of screen points, in order (Andrew's monotone chain).
func outline(pts []Point) []Point {
	pts = append([]Point(nil), pts...)
	sort.Slice(pts, func(i, j int) bool {
		a, b := pts[i], pts[j]
		return a.X < b.X || a.X == b.X && a.Y < b.Y
	})
	if len(pts) < 3 {
		return pts
	}
	var h []Point
	for pass := range 2 {
		base := len(h)
		for i := range pts {
			p := pts[i]
			if pass == 1 {
				p = pts[len(pts)-1-i]
			}
			for len(h) >= base+2 && turnOf(h[len(h)-2], h[len(h)-1], p) <= 0 {
				h = h[:len(h)-1]
			}
			h = append(h, p)
		}
		h = h[:len(h)-1]
	}
	return h
}

func turnOf(a, b, c Point) float64 { return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X) }
