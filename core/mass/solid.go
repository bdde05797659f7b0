package mass

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// solid gives one part of the payload, in payload axes.
func solid(s plan.Solid) (Properties, error) {
	p, err := own(s)
	if err != nil {
		return p, err
	}
	const deg = math.Pi / 180
	r := vec.Euler(s.Turn[0]*deg, s.Turn[1]*deg, s.Turn[2]*deg) // Rz Ry Rx
	p.COM = s.At.Add(r.Mul(p.COM))
	if s.Turn != (vec.V3{}) {
		p.Inertia = r.MulM(p.Inertia).MulM(r.T())
	}
	return p, nil
}

// own gives a solid in its own axes, about its own origin.
func own(s plan.Solid) (Properties, error) {
	m := s.Mass
	switch s.Shape {
	case plan.Box:
		return block(m, side(s, 0), side(s, 1), side(s, 2)), nil // (2.3)
	case plan.Plate:
		return block(m, side(s, 0), side(s, 1), 0), nil // (2.4)
	case plan.Rod:
		return block(m, s.Length, 0, 0), nil // (2.5)
	case plan.Tube:
		along, across := round(m, s.Length, s.OuterRadius, s.InnerRadius) // (2.6)
		return Properties{Mass: m, Inertia: vec.Diag(vec.V3{along, across, across})}, nil
	case plan.Cylinder:
		along, across := round(m, s.Length, s.OuterRadius, 0) // (2.7)
		return Properties{Mass: m, Inertia: vec.Diag(vec.V3{across, across, along})}, nil
	case plan.MeshBody:
		return mesh(s.Mesh, m)
	}
	return Properties{Mass: m}, nil // a point, (2.8)
}

// side is a length of a box or plate; NaN when the plan leaves it out, which it may when everything
// that follows from it has been measured.
func side(s plan.Solid, i int) float64 {
	if i < len(s.Size) {
		return s.Size[i]
	}
	return math.NaN()
}

// block is the box of sides a, b, c along x, y, z, (2.3).
func block(m, a, b, c float64) Properties {
	xx, yy, zz := float64(a*a), float64(b*b), float64(c*c)
	return Properties{Mass: m, Inertia: vec.Diag(vec.V3{m * (yy + zz) / 12, m * (zz + xx) / 12, m * (xx + yy) / 12})}
}

// round is the inertia of a tube about its axis and across it, (2.6).
func round(m, length, outer, inner float64) (along, across float64) {
	rr := float64(outer*outer) + float64(inner*inner)
	return m * rr / 2, m * (float64(3*rr) + float64(length*length)) / 12
}
