package mass

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

func tetra(turn bool) *plan.Mesh {
	m := &plan.Mesh{Vertices: []vec.V3{{0, 0, 0}, {5, 0, 0}, {0, 4, 0}, {0, 0, 3}}, Triangles: [][3]int{{0, 3, 2}, {3, 0, 1}, {2, 1, 0}, {1, 2, 3}}}
	if turn {
		for i, t := range m.Triangles {
			m.Triangles[i] = [3]int{t[1], t[0], t[2]}
		}
	}
	return m
}

func cube(a float64) *plan.Mesh {
	m := &plan.Mesh{}
	for i := range 8 {
		m.Vertices = append(m.Vertices, vec.V3{a * float64(i&1), a * float64(i>>1&1), a * float64(i>>2)})
	}
	for _, q := range [][4]int{{0, 2, 3, 1}, {4, 5, 7, 6}, {0, 1, 5, 4}, {2, 6, 7, 3}, {0, 4, 6, 2}, {1, 3, 7, 5}} {
		m.Triangles = append(m.Triangles, [3]int{q[0], q[1], q[2]}, [3]int{q[0], q[2], q[3]})
	}
	return m
}

// icosahedron has its vertices on the unit sphere: (0, ±1, ±φ) and its turns.
func icosahedron() *plan.Mesh {
	phi := (1 + math.Sqrt(5)) / 2
	k := 1 / math.Hypot(1, phi)
	m := &plan.Mesh{}
	for _, a := range []float64{1, -1} {
		for _, b := range []float64{phi, -phi} {
			m.Vertices = append(m.Vertices, vec.V3{0, a, b}.Scale(k), vec.V3{a, b, 0}.Scale(k), vec.V3{b, 0, a}.Scale(k))
		}
	}
	side := 2 * k
	for i := range 12 { // every three vertices a side apart are a face; turned so that it faces out
		for j := range i {
			for l := range j {
				p, q, r := m.Vertices[i], m.Vertices[j], m.Vertices[l]
				if math.Abs(p.Sub(q).Norm()-side) < 1e-9 && math.Abs(q.Sub(r).Norm()-side) < 1e-9 && math.Abs(r.Sub(p).Norm()-side) < 1e-9 {
					if q.Sub(p).Cross(r.Sub(p)).Dot(p) > 0 {
						m.Triangles = append(m.Triangles, [3]int{i, j, l})
					} else {
						m.Triangles = append(m.Triangles, [3]int{i, l, j})
					}
				}
			}
		}
	}
	return m
}

func moved(m *plan.Mesh, scale float64, by vec.V3) *plan.Mesh {
	out := &plan.Mesh{Triangles: m.Triangles}
	for _, v := range m.Vertices {
		out.Vertices = append(out.Vertices, v.Scale(scale).Add(by))
	}
	return out
}

func joined(a, b *plan.Mesh, turnB bool) *plan.Mesh {
	out := &plan.Mesh{Vertices: append(append([]vec.V3(nil), a.Vertices...), b.Vertices...), Triangles: append([][3]int(nil), a.Triangles...)}
	for _, t := range b.Triangles {
		n := len(a.Vertices)
		t = [3]int{t[0] + n, t[1] + n, t[2] + n}
		if turnB {
			t[0], t[1] = t[1], t[0]
		}
		out.Triangles = append(out.Triangles, t)
	}
	return out
}
