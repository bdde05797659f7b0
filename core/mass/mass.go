// Package mass gives the mass properties of a payload (THEORY chapter 2).
//
// Restriction: rigid solids of even density. Geometry: payload frame; the inertia is about the
// centre of mass, its off-diagonal entries are those of the tensor, J_xy = −∫ x′y′ dm.
// Calculation: closed forms (2.3) to (2.8) and signed tetrahedra for a mesh (2.10), joined by the
// parallel-axis theorem (2.2). Verification: closed and published cases in the tests.
package mass

import (
	"fmt"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// Properties are mass (kg), centre of mass (m) and inertia about it (kg m², payload axes).
type Properties struct {
	Mass    float64
	COM     vec.V3
	Inertia vec.M3
}

// Of adds up the solids of a payload and lets the measured values override them, (2.9). A size that
// the plan leaves out makes NaN of what follows from it and is not measured. The error names the
// solid and the edge where its mesh is open, inside out or degenerate.
func Of(p plan.Payload) (Properties, error) {
	parts := make([]Properties, len(p.Solids))
	for i, s := range p.Solids {
		part, err := solid(s)
		if err != nil {
			return Properties{}, fmt.Errorf("payload.solids[%d].mesh: %w", i, err)
		}
		parts[i] = part
	}
	all := Combine(parts)
	if p.COM != nil {
		all.COM = *p.COM // (2.9)
	}
	if p.Inertia != nil {
		all.Inertia = FromSix(*p.Inertia) // (2.9)
	}
	return all, nil
}

// Combine joins bodies, (2.1) and (2.2). Bodies without any mass have the first one's centre.
func Combine(parts []Properties) Properties {
	var all Properties
	if len(parts) == 0 {
		return all
	}
	var moment vec.V3
	for _, p := range parts {
		all.Mass += p.Mass
		moment = moment.Add(p.COM.Scale(p.Mass))
	}
	all.COM = parts[0].COM
	if all.Mass > 0 {
		for i := range 3 {
			all.COM[i] = moment[i] / all.Mass // (2.1); 1/m would overflow for a speck of dust
		}
	}
	for _, p := range parts {
		all.Inertia = all.Inertia.AddM(p.About(all.COM))
	}
	return all
}

// About is the inertia about another point, by the parallel-axis theorem (2.2), kg m².
func (p Properties) About(point vec.V3) vec.M3 {
	r := p.COM.Sub(point)
	out := p.Inertia
	rr := r.Dot(r)
	for i := range 3 {
		for j := range 3 {
			out[i][j] -= float64(p.Mass * float64(r[i]*r[j]))
		}
		out[i][i] += float64(p.Mass * rr)
	}
	return out
}

// Six lists the tensor as xx yy zz xy xz yz, kg m²; xy and so on are entries of the tensor, −∫ x′y′ dm.
func (p Properties) Six() [6]float64 {
	j := p.Inertia
	return [6]float64{j[0][0], j[1][1], j[2][2], j[0][1], j[0][2], j[1][2]}
}

// FromSix is the tensor of xx yy zz xy xz yz, entries of the tensor, kg m².
func FromSix(s [6]float64) vec.M3 {
	return vec.M3{{s[0], s[3], s[4]}, {s[3], s[1], s[5]}, {s[4], s[5], s[2]}}
}
