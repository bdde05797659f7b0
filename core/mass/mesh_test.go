package mass

import (
	"math"
	"strings"
	"testing"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// The published integrals of the tetrahedron of density 1: volume, first and second moments.
func TestIntegrals(t *testing.T) {
	v, first, second := integrals(*tetra(false), vec.V3{}, 1)
	want := [6]float64{25, 16, 9, 10, 7.5, 6} // xx yy zz xy xz yz
	got := Properties{Inertia: second}.Six()
	for i := range want {
		if math.Abs(got[i]-want[i]) > 1e-13 {
			t.Errorf("second moment %d: %.15g, want %g (%s)", i, got[i], want[i], mirtich)
		}
	}
	if math.Abs(v-10) > 1e-14 || first.Sub(vec.V3{12.5, 10, 7.5}).Norm() > 1e-14 {
		t.Errorf("volume %g, first moments %v, want 10 and 12.5, 10, 7.5 (%s)", v, first, mirtich)
	}
	if v, _, second := integrals(*moved(cube(20), 1, vec.V3{-10, -10, -10}), vec.V3{}, 1); math.Abs(v-8000) > 1e-9 || math.Abs(second[0][0]-266666.667) > 1e-3 {
		t.Errorf("cube: volume %g, ∫x² %.3f, want 8000 and 266666.667 (%s)", v, second[0][0], mirtich)
	}
	if v, _, _ := integrals(*icosahedron(), vec.V3{}, 1); math.Abs(v-2.536151) > 5e-7 {
		t.Errorf("icosahedron: volume %.7f, want 2.536151 (%s)", v, mirtich)
	}
}

// Laws: a body's size and place change its inertia by the square of the scale and not at all. Far from
// the origin the vertices themselves are rounded to 2e-16 of their distance, hence the tolerance.
func TestScale(t *testing.T) {
	one, _ := mesh(tetra(false), 1)
	for _, c := range []struct {
		scale float64
		by    vec.V3
		tol   float64
	}{{1e-120, vec.V3{}, 1e-14}, {1e120, vec.V3{}, 1e-14}, {1e-3, vec.V3{}, 1e-14}, {1, vec.V3{900, -900, 900}, 1e-12}} {
		p, err := mesh(moved(tetra(false), c.scale, c.by), 1)
		if err != nil {
			t.Fatal(err)
		}
		for i := range 3 {
			for j := range 3 {
				if got := p.Inertia[i][j] / c.scale / c.scale; math.Abs(got-one.Inertia[i][j]) > c.tol*one.Inertia[0][0] {
					t.Errorf("scale %g, moved %v: inertia[%d][%d] %.15g, want %.15g", c.scale, c.by, i, j, got, one.Inertia[i][j])
				}
			}
		}
	}
}

// A hollow is a shell seen from inside within another: the cube of 2 without the cube of 1 has 7/8 of
// the volume; m = 7, J = 8 × 4/6 − 1 × 1/6 = 31/6 by hand. Two bodies side by side count as one.
func TestShells(t *testing.T) {
	inner := moved(cube(1), 1, vec.V3{0.5, 0.5, 0.5})
	p, err := mesh(joined(cube(2), inner, true), 7)
	if err != nil || p.COM.Sub(vec.V3{1, 1, 1}).Norm() > 1e-14 || math.Abs(p.Inertia[0][0]-31.0/6) > 1e-13 {
		t.Errorf("hollow cube: %+v %v", p, err)
	}
	p, err = mesh(joined(cube(1), moved(cube(1), 1, vec.V3{2, 0, 0}), false), 2)
	if err != nil || math.Abs(p.Inertia[1][1]-(2./6+2)) > 1e-13 {
		t.Errorf("two cubes: %+v %v", p, err)
	}
}

// A second route: the mesh of a box has the inertia of the box.
func TestMeshOfBox(t *testing.T) {
	m := cube(1)
	for i, v := range m.Vertices {
		m.Vertices[i] = vec.V3{1.2 * (v[0] - 0.5), 0.3 * (v[1] - 0.5), 0.2 * (v[2] - 0.5)}
	}
	p, err := mesh(m, 2)
	for i, x := range block(2, 1.2, 0.3, 0.2).Six() {
		if err != nil || math.Abs(p.Six()[i]-x) > 1e-15 { // some ulps of sums over twelve triangles
			t.Errorf("inertia[%d] %g, of the box %g %v", i, p.Six()[i], x, err)
		}
	}
}

func TestBadMeshes(t *testing.T) {
	open := tetra(false)
	open.Triangles = open.Triangles[:3]
	hole := cube(1)
	hole.Triangles = hole.Triangles[1:]
	mixed := tetra(false)
	mixed.Triangles[0] = [3]int{3, 0, 2}
	flattened, twice := cube(1), cube(1)
	for i := range flattened.Vertices {
		flattened.Vertices[i][2] = 0
	}
	twice.Triangles[2] = [3]int{3, 3, 1}
	for _, c := range []struct {
		mesh *plan.Mesh
		want string
	}{
		{open, "the mesh is open: edge 3–2 from (0, 0, 3) to (0, 4, 0) of triangle 0 has no neighbour"},
		{&plan.Mesh{Vertices: []vec.V3{{}}}, "has no triangles"},
		{&plan.Mesh{Vertices: []vec.V3{{}, {1, 0, 0}, {0, 1, 0}}, Triangles: [][3]int{{0, 1, 2}, {2, 1, 0}}}, "encloses no volume, from edge 0–1"},
		{hole, "the mesh is open: edge 0–3 from (0, 0, 0) to (1, 1, 0) of triangle 0"},
		{mixed, "runs the same way in triangles 0 and 1"},
		{joined(cube(1), moved(cube(1), 1, vec.V3{2, 0, 0}), true), "inside out: edge 10–8 from (2, 1, 0) to (2, 0, 0) of triangle 12"},
		{moved(cube(1), 0, vec.V3{1, 1, 1}), "encloses no volume, from edge 0–2 from (1, 1, 1) to (1, 1, 1) on"},
		{flattened, "encloses no volume, from edge 0–2 from (0, 0, 0) to (0, 1, 0) on"},
		{twice, "triangle 2 uses vertex 3 twice"},
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

// Meshes of any connection give a sentence or an answer, never a panic.
func FuzzCheckMesh(f *testing.F) {
	f.Add([]byte{0, 3, 2, 3, 0, 1, 2, 1, 0, 1, 2, 3})
	f.Add([]byte{0, 1, 2, 2, 1, 0, 0, 1, 2, 2, 1, 0})
	f.Fuzz(func(t *testing.T, data []byte) {
		m := tetra(false)
		m.Triangles = nil
		for ; len(data) >= 3; data = data[3:] {
			m.Triangles = append(m.Triangles, [3]int{int(data[0]%6) - 1, int(data[1] % 5), int(data[2] % 5)})
		}
		if p, err := mesh(m, 1); err == nil && !(p.Inertia[0][0] > 0) {
			t.Errorf("%v: inertia %v", m.Triangles, p.Inertia)
		}
	})
}

// A mesh is taken again with every report, also while a finger drags something.
func BenchmarkMesh(b *testing.B) {
	m, n := &plan.Mesh{}, 100 // a tube bent to a ring: 2n² triangles
	for i := range n {
		for j := range n {
			u, v := 2*math.Pi*float64(i)/float64(n), 2*math.Pi*float64(j)/float64(n)
			r := 1 + 0.3*math.Cos(v)
			m.Vertices = append(m.Vertices, vec.V3{r * math.Cos(u), r * math.Sin(u), 0.3 * math.Sin(v)})
			p, q, s, w := i*n+j, (i+1)%n*n+j, (i+1)%n*n+(j+1)%n, i*n+(j+1)%n
			m.Triangles = append(m.Triangles, [3]int{p, q, s}, [3]int{p, s, w})
		}
	}
	for b.Loop() {
		if _, err := mesh(m, 1); err != nil {
			b.Fatal(err)
		}
	}
}
