package mass

import (
	"errors"
	"fmt"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// mesh is the mass properties of a closed mesh of mass m and even density, (2.10): the sum over its
// triangles of the signed tetrahedra that they make with the middle of the mesh's box.
func mesh(b *plan.Mesh, m float64) (Properties, error) {
	if b == nil {
		return Properties{}, errors.New("a mesh needs vertices_m and triangles")
	}
	if err := CheckMesh(*b); err != nil {
		return Properties{}, err
	}
	origin := middle(b.Vertices)
	var volume float64
	var first vec.V3  // ∫ x dV
	var second vec.M3 // ∫ x xᵀ dV
	for _, t := range b.Triangles {
		p, q, r := b.Vertices[t[0]].Sub(origin), b.Vertices[t[1]].Sub(origin), b.Vertices[t[2]].Sub(origin)
		v := p.Dot(q.Cross(r)) / 6
		s := p.Add(q).Add(r)
		volume += v
		first = first.Add(s.Scale(v / 4))
		for i := range 3 {
			for j := range 3 { // ∫ x_i x_j dV = V/20 (Σ p_i p_j + s_i s_j)
				sum := float64(p[i]*p[j]) + float64(q[i]*q[j]) + float64(r[i]*r[j]) + float64(s[i]*s[j])
				second[i][j] += v / 20 * sum
			}
		}
	}
	size := extent(b.Vertices)
	if volume < 0 {
		a, c := b.Triangles[0][0], b.Triangles[0][1]
		return Properties{}, fmt.Errorf("the mesh is inside out: %s of triangle 0 runs the wrong way round; turn every triangle round", edgeName(*b, a, c))
	}
	if !(volume > flat*size[0]*size[1]*size[2]) {
		return Properties{}, errors.New("the mesh encloses no volume; use a plate or a rod for a body without thickness")
	}
	c := first.Scale(1 / volume)
	p := Properties{Mass: m, COM: origin.Add(c)}
	for i := range 3 {
		for j := range 3 {
			second[i][j] = (second[i][j]/volume - float64(c[i]*c[j])) * m
		}
	}
	trace := second[0][0] + second[1][1] + second[2][2]
	for i := range 3 {
		for j := range 3 {
			p.Inertia[i][j] = -second[i][j]
		}
		p.Inertia[i][i] += trace
	}
	return p, nil
}

// flat is the part of its box that a mesh must fill to count as a body: far above rounding, far
// below any real part.
const flat = 1e-12

func middle(v []vec.V3) vec.V3 {
	lo, hi := bounds(v)
	return lo.Add(hi).Scale(0.5)
}

func extent(v []vec.V3) vec.V3 {
	lo, hi := bounds(v)
	return hi.Sub(lo)
}

func bounds(v []vec.V3) (lo, hi vec.V3) {
	lo, hi = v[0], v[0]
	for _, p := range v {
		for i := range 3 {
			lo[i], hi[i] = min(lo[i], p[i]), max(hi[i], p[i])
		}
	}
	return lo, hi
}

// edgeName names an edge by its vertices, from 0, and where they are.
func edgeName(m plan.Mesh, a, b int) string {
	p, q := m.Vertices[a], m.Vertices[b]
	return fmt.Sprintf("edge %d–%d from (%g, %g, %g) to (%g, %g, %g)", a, b, p[0], p[1], p[2], q[0], q[1], q[2])
}
