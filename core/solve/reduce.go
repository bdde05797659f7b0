package solve

import (
	"math"

	"cohoist/core/vec"
)

// reducePull finds what is left of a pull, (6.20), and lays it out.
func (s *Solver) reducePull(q *Pull, i int, t float64, tied bool) {
	d, o := &s.rest, &s.pulls[i]
	f := vec.V3{o.f[0], o.f[1], o.f[2]}.Scale(o.unit / s.tau)
	d.kind[i], d.at[i], d.dir[i], d.line[s.nl+i] = free, f, vec.V3{}, -1
	from := len(d.cones)
	if tied {
		whole, flats, one := false, 0, 0
		at, first := o.c0, s.first[i]
		for j := range q.Cones {
			if !s.used[first+j] {
				continue
			}
			c := &s.cones[at]
			at++
			if c.tight {
				if c.flat {
					flats++
					one = j
				} else {
					whole = true
				}
			}
		}
		half := o.tight
		switch {
		case whole || flats > 1:
			d.kind[i] = held
			return
		case flats == 1:
			d.kind[i] = held
			if !half {
				s.onRay(q, i, t, one, f)
			}
			return
		case half:
			s.onLevel(q, i, t, f)
			return
		}
	}
	for j := range q.Cones {
		d.cones = append(d.cones, q.Cones[j].at(t))
	}
	d.p.Pulls = append(d.p.Pulls, Pull{At: q.At, MinZ: q.MinZ, Cones: d.cones[from:len(d.cones):len(d.cones)]})
}

// at is the cone with t put in.
func (k Cone) at(t float64) Cone {
	return Cone{Flat: k.Flat, B: k.B.Add(k.D.Scale(t)), Z: k.Z, C: k.C + float64(k.T*t)}
}

// slackAt is (Z F_z + C; F + B) of a cone without t.
func (k Cone) slackAt(f vec.V3) four {
	v := four{float64(k.Z*f[2]) + k.C, f[0] + k.B[0], f[1] + k.B[1], f[2] + k.B[2]}
	if k.Flat {
		v.z = 0
	}
	return v
}

// onRay keeps F on the flat cone q.Cones[one]: F = P + v N with P ⟂ N, within the other bounds.
func (s *Solver) onRay(q *Pull, i int, t float64, one int, f vec.V3) {
	d := &s.rest
	d.kind[i] = held
	k := q.Cones[one].at(t)
	v := k.slackAt(f)
	h := math.Hypot(v.x, v.y)
	if !(h > 1e-9*f.Norm()) {
		return // at the tip
	}
	if c := s.col[s.nl+3*i:]; s.cornered { // the dual points the same way, and alike for all where it is the same
		x, y := dot6(&c[0], &s.y), dot6(&c[1], &s.y)
		if m := math.Hypot(x, y); math.Hypot(float64(h*x)-float64(m*v.x), float64(h*y)-float64(m*v.y)) <= 1e-6*h*m {
			x, y = h*x/m, h*y/m
			f, v.x, v.y = f.Add(vec.V3{x - v.x, y - v.y, 0}), x, y
		}
	}
	n := vec.V3{k.Z * v.x / h, k.Z * v.y / h, 1}.Unit()
	at := f.Dot(n)
	lo, hi := math.Inf(-1), math.Inf(1)
	if !math.IsInf(q.MinZ, -1) {
		lo = at + (q.MinZ-f[2])/n[2]
	}
	if k.Z > 0 {
		lo = max(lo, at-(float64(k.Z*f[2])+k.C)/float64(k.Z*n[2]))
	}
	for j := range q.Cones {
		if j == one || math.IsInf(q.Cones[j].C, 1) {
			continue
		}
		c := q.Cones[j].at(t)
		l := c.slackAt(f)
		g := four{float64(c.Z * n[2]), n[0], n[1], n[2]}
		if c.Flat {
			g.z = 0
		}
		hi = min(hi, at+ahead(l, g))
		lo = max(lo, at-ahead(l, g.scale(-1)))
	}
	lo, hi = min(lo, at), max(hi, at)
	d.kind[i], d.dir[i], d.at[i] = ray, n, f.Sub(n.Scale(at))
	d.line[s.nl+i] = len(d.p.Lines)
	m := q.At.Cross(n)
	d.p.Lines = append(d.p.Lines, Line{Column: Wrench{n[0], n[1], n[2], m[0], m[1], m[2]}, Lo: lo, Hi: hi})
}

// ahead is the largest α with l + α d in the cone, for an l that is in it, perhaps on its edge and off by
// rounding: there a way may still lead inside.
func ahead(l, d four) float64 {
	C := max(0, l.det())
	A := float64(d.a*d.a) - float64(d.x*d.x) - float64(d.y*d.y) - float64(d.z*d.z)
	B := float64(l.a*d.a) - float64(l.x*d.x) - float64(l.y*d.y) - float64(l.z*d.z)
	disc := float64(B*B) - float64(A*C)
	along := math.Abs(A) <= 1e-9*float64(d.a*d.a) && math.Abs(B) <= 1e-9*math.Abs(float64(l.a*d.a)) // the edge itself
	if B >= 0 && A >= 0 || disc < 0 || along {
		return math.Inf(1)
	}
	root := math.Sqrt(disc)
	switch {
	case B > 0:
		return -(B + root) / A
	case C == 0:
		return 0
	}
	return C / (root - B)
}

// onLevel keeps F_z at MinZ: every cone becomes a circle for F_x, F_y.
func (s *Solver) onLevel(q *Pull, i int, t float64, f vec.V3) {
	d := &s.rest
	from := len(d.cones)
	for j := range q.Cones {
		k := q.Cones[j].at(t)
		r := float64(k.Z*q.MinZ) + k.C
		if !k.Flat {
			z := q.MinZ + k.B[2]
			r = math.Sqrt(max(0, float64((r-z)*(r+z))))
		}
		if !(r > 0) {
			d.kind[i], d.cones = held, d.cones[:from]
			return
		}
		d.cones = append(d.cones, Cone{Flat: true, B: vec.V3{k.B[0], k.B[1], 0}, C: r})
	}
	d.kind[i], d.at[i] = flat, vec.V3{0, 0, q.MinZ}
	d.p.Pulls = append(d.p.Pulls, Pull{At: q.At, MinZ: math.Inf(-1), Cones: d.cones[from:len(d.cones):len(d.cones)], level: true})
}
