package mass

import (
	"errors"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// mesh is the mass properties of a closed mesh of mass m and even density, (2.10): the sum over its
// triangles of the signed tetrahedra that they make with the middle of the mesh's box, in units of
// the box's longest side, so that neither a large nor a tiny body leaves the range of numbers.
func mesh(b *plan.Mesh, m float64) (Properties, error) {
	if b == nil {
		return Properties{}, errors.New("a mesh needs vertices_m and triangles")
	}
	if err := CheckMesh(*b); err != nil {
		return Properties{}, err
	}
	origin, long := frame(b.Vertices)
	v, first, second := integrals(*b, origin, long)
	c := first.Scale(1 / v)
	p := Properties{Mass: m, COM: origin.Add(c.Scale(long))}
	for i := range 3 {
		for j := range 3 {
			second[i][j] = (second[i][j]/v - float64(c[i]*c[j])) * m * long * long
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

// integrals are ∫ dV, ∫ x dV and ∫ x xᵀ dV of a mesh, x from origin in units of long, (2.10).
func integrals(b plan.Mesh, origin vec.V3, long float64) (volume float64, first vec.V3, second vec.M3) {
	for _, t := range b.Triangles {
		p, q, r := local(b.Vertices[t[0]], origin, long), local(b.Vertices[t[1]], origin, long), local(b.Vertices[t[2]], origin, long)
		v := p.Dot(q.Cross(r)) / 6
		s := p.Add(q).Add(r)
		volume += v
		first = first.Add(s.Scale(v / 4))
		for i := range 3 {
			for j := range 3 { // ∫ x_i x_j dV = V/20 (Σ p_i p_j + s_i s_j)
				sum := float64(p[i]*p[j]) + float64(q[i]*q[j]) + float64(r[i]*r[j]) + float64(s[i]*s[j])
				second[i][j] += float64(v / 20 * sum)
			}
		}
	}
	return volume, first, second
}

// local is a point from origin in units of long.
func local(p, origin vec.V3, long float64) vec.V3 {
	d := p.Sub(origin)
	return vec.V3{d[0] / long, d[1] / long, d[2] / long}
}

// frame is the middle of the points' box and its longest side, m.
func frame(v []vec.V3) (middle vec.V3, long float64) {
	lo, hi := bounds(v)
	d := hi.Sub(lo)
	return lo.Add(hi).Scale(0.5), max(d[0], d[1], d[2])
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
