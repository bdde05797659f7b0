package mass

import (
	"math"
	"strings"
	"testing"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

const mirtich = "B. Mirtich, Fast and Accurate Computation of Polyhedral Mass Properties, J. Graphics Tools 1(2), 1996, example input; result exact geometry"

func box(m, x, y, z float64) plan.Solid {
	return plan.Solid{Shape: plan.Box, Size: []float64{x, y, z}, Mass: m}
}

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

func TestBodies(t *testing.T) {
	tube := plan.Solid{Shape: plan.Tube, Length: 0.5, OuterRadius: 0.1, InnerRadius: 0.08, Mass: 3}
	round := plan.Solid{Shape: plan.Cylinder, Length: 0.5, OuterRadius: 0.1, Mass: 3}
	ball := func(x float64) plan.Solid { return plan.Solid{Shape: plan.Point, Mass: 0.3, At: vec.V3{x, 0, 0}} }
	bar := plan.Solid{Shape: plan.Rod, Length: 2, Mass: 4}
	for _, c := range []struct {
		name   string
		solids []plan.Solid
		mass   float64
		com    vec.V3
		six    [6]float64
		tol    float64
		source string
	}{
		{"box", []plan.Solid{box(2, 1.2, 0.3, 0.2)}, 2, vec.V3{}, [6]float64{0.0216667, 0.2466667, 0.255}, 5e-8, "closed form, m/12 of the squares; printed to 7 digits"},
		{"cylinder", []plan.Solid{round}, 3, vec.V3{}, [6]float64{0.07, 0.07, 0.015}, 1e-15, "closed form"},
		{"tube along x", []plan.Solid{tube}, 3, vec.V3{}, [6]float64{0.0246, 0.0748, 0.0748}, 1e-15, "closed form"},
		{"bar and two balls, about the middle", []plan.Solid{bar, ball(1), ball(-1)}, 4.6, vec.V3{}, [6]float64{0, 1.93333, 1.93333}, 5e-6,
			"a university physics problem, pearson.com/channels/physics/explore/rotational-inertia-energy/parallel-axis-theorem; printed to 5 decimals"},
		{"tetrahedron", []plan.Solid{{Shape: plan.MeshBody, Mesh: tetra(false), Mass: 10}}, 10, vec.V3{1.25, 1, 0.75},
			[6]float64{9.375, 12.75, 15.375, 2.5, 1.875, 1.5}, 1e-13, mirtich},
		{"cube of side 20", []plan.Solid{{Shape: plan.MeshBody, Mesh: cube(20), Mass: 8000, At: vec.V3{-10, -10, -10}}}, 8000, vec.V3{},
			[6]float64{533333.333333, 533333.333333, 533333.333333}, 1e-6, mirtich},
		{"icosahedron on the unit sphere", []plan.Solid{{Shape: plan.MeshBody, Mesh: icosahedron(), Mass: 2.536151}}, 2.536151, vec.V3{},
			[6]float64{0.7340704, 0.7340704, 0.7340704}, 1e-7, mirtich + "; 7 digits"},
		{"box turned by 90° about z", []plan.Solid{{Shape: plan.Box, Size: []float64{1.2, 0.3, 0.2}, Mass: 2, Turn: vec.V3{0, 0, 90}}}, 2, vec.V3{},
			[6]float64{0.2466667, 0.0216667, 0.255}, 5e-8, "the box above, x and y exchanged"},
		{"nothing with a mass", []plan.Solid{box(0, 1, 1, 1)}, 0, vec.V3{}, [6]float64{}, 0, "no mass, no inertia"},
	} {
		p, err := Of(plan.Payload{Solids: c.solids})
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if p.Mass != c.mass || p.COM.Sub(c.com).Norm() > 1e-14*20 {
			t.Errorf("%s: mass %g at %v, want %g at %v (%s)", c.name, p.Mass, p.COM, c.mass, c.com, c.source)
		}
		for i, x := range p.Six() {
			if math.Abs(x-c.six[i]) > c.tol+1e-15 {
				t.Errorf("%s: inertia[%d] = %.9g, want %.9g within %g (%s)", c.name, i, x, c.six[i], c.tol, c.source)
			}
		}
	}
}

// The bar and balls about one ball, and about an axis beside the bar: the same problem, parts b and c.
func TestParallelAxis(t *testing.T) {
	p, _ := Of(plan.Payload{Solids: []plan.Solid{{Shape: plan.Rod, Length: 2, Mass: 4}, {Shape: plan.Point, Mass: 0.3, At: vec.V3{1, 0, 0}}, {Shape: plan.Point, Mass: 0.3, At: vec.V3{-1, 0, 0}}}})
	if got := p.About(vec.V3{1, 0, 0})[2][2]; math.Abs(got-6.53333) > 5e-6 {
		t.Errorf("through a ball %.6f, want 6.53333 (printed to 5 decimals)", got)
	}
	if got := p.About(vec.V3{0, 0.5, 0})[0][0]; math.Abs(got-1.15) > 1e-12 {
		t.Errorf("beside the bar %.6f, want 1.15000", got)
	}
}

func TestOverrides(t *testing.T) {
	com, six := vec.V3{0.1, 0, 0}, [6]float64{1, 2, 3, 0.1, 0.2, 0.3}
	p, _ := Of(plan.Payload{Solids: []plan.Solid{box(2, 1, 1, 1)}, COM: &com, Inertia: &six})
	if p.COM != com || p.Six() != six {
		t.Errorf("measured values did not override: %v %v", p.COM, p.Six())
	}
}

func TestBadMeshes(t *testing.T) {
	open := tetra(false)
	open.Triangles = open.Triangles[:3]
	hole := cube(1)
	hole.Triangles = hole.Triangles[1:]
	mixed := tetra(false)
	mixed.Triangles[0] = [3]int{3, 0, 2}
	for _, c := range []struct {
		mesh *plan.Mesh
		want string
	}{
		{open, "3 triangles; a closed body needs at least 4"},
		{hole, "the mesh is open: edge 0–3 from (0, 0, 0) to (1, 1, 0) of triangle 0"},
		{mixed, "runs the same way in triangles 0 and 1"},
		{tetra(true), "inside out: edge 3–0 from (0, 0, 3) to (0, 0, 0)"},
		{&plan.Mesh{Vertices: []vec.V3{{}}, Triangles: [][3]int{{0, 1, 2}, {0, 2, 1}, {0, 0, 0}, {0, 0, 0}}}, "triangle 0 names vertex 1 of 1"},
		{nil, "needs vertices_m and triangles"},
	} {
		_, err := Of(plan.Payload{Solids: []plan.Solid{{Shape: plan.MeshBody, Mesh: c.mesh, Mass: 1}}})
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("got %v, want %q", err, c.want)
		}
	}
}
