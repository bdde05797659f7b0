package solve

import (
	"math"

	"cohoist/core/vec"
)

// duals writes out the duals of the bounds, times k, in the units of the program.
func (s *Solver) duals(r *Result, k float64) {
	o := &s.out
	o.lo, o.hi, o.pz = room(o.lo, s.nl), room(o.hi, s.nl), room(o.pz, s.np)
	n := 0
	for i := range s.p.Pulls {
		n += len(s.p.Pulls[i].Cones)
	}
	o.cones = room(o.cones, n)
	r.LineLo, r.LineHi, r.PullZ, r.Cones = o.lo, o.hi, o.pz, o.cones
	for i := range s.lines {
		l := &s.lines[i]
		r.LineLo[i], r.LineHi[i] = k*l.zl/l.unit, k*l.zh/l.unit
	}
	n = 0
	for i := range s.pulls {
		q := &s.pulls[i]
		u := k / q.unit
		r.PullZ[i] = 0
		if q.half {
			r.PullZ[i] = u * q.z
		}
		at := q.c0
		for range s.p.Pulls[i].Cones {
			r.Cones[n] = Dual{}
			if s.used[n] {
				z := &s.cones[at].z
				r.Cones[n] = Dual{u * z.a, vec.V3{u * z.x, u * z.y, u * z.z}}
				at++
			}
			n++
		}
	}
}

func (s *Solver) scaleDuals(r *Result, k float64) {
	for i := range r.Y {
		r.Y[i] *= k
	}
	for i := range r.LineLo {
		r.LineLo[i] *= k
		r.LineHi[i] *= k
	}
	for i := range r.PullZ {
		r.PullZ[i] *= k
	}
	for i := range r.Cones {
		r.Cones[i].A *= k
		r.Cones[i].V = r.Cones[i].V.Scale(k)
	}
}

// repair moves the duals of the bounds by what rounding left, so that (6.4) holds to the last
// digit: whatever Y is, the bound that comes out is then a proof. A Line's are in closed form; a
// Pull pays through a bound on |F|. With still, bounds that t opens are paid through last. It returns
// what could not be paid because nothing bounds that force, relative to Y.
func (s *Solver) repair(r *Result, still bool) (stray float64) {
	y := &r.Y
	size := max(size3(y[0], y[1], y[2]), s.arm*size3(y[3], y[4], y[5]))
	for i := range s.p.Lines {
		l := &s.p.Lines[i]
		d := dot6((*[6]float64)(&l.Column), (*[6]float64)(y))
		lo, hi := larger(r.LineLo[i], 0), larger(r.LineHi[i], 0)
		switch {
		case math.IsInf(l.Lo, -1) && math.IsInf(l.Hi, 1):
			lo, hi = 0, 0
		case math.IsInf(l.Lo, -1):
			lo, hi = 0, max(0, d)
		case math.IsInf(l.Hi, 1):
			lo, hi = max(0, -d), 0
		case d > 0: // d = hi − lo; both can be positive, when the bounds meet
			hi = lo + d
		default:
			lo = hi - d
		}
		r.LineLo[i], r.LineHi[i] = lo, hi
		if left := math.Abs(d + lo - hi); left > 0 {
			c := &l.Column
			stray = max(stray, left/(size*max(size3(c[0], c[1], c[2]), size3(c[3], c[4], c[5])/s.arm)))
		}
	}
	n := 0
	for i := range s.p.Pulls {
		q := &s.p.Pulls[i]
		c := r.Cones[n : n+len(q.Cones)]
		n += len(q.Cones)
		r.PullZ[i] = larger(r.PullZ[i], 0)
		d := vec.V3{y[0], y[1], y[2]}.Add(vec.V3{y[3], y[4], y[5]}.Cross(q.At))
		d[2] += r.PullZ[i]
		for j := range c {
			c[j].A = larger(length(c[j].V), c[j].A)
			d = d.Add(c[j].V)
			d[2] += float64(q.Cones[j].Z * c[j].A)
		}
		if still && s.payStill(q, &r.PullZ[i], c, &d) {
			continue
		}
		if !s.payMost(q, c, d) {
			stray = max(stray, size3(d[0], d[1], d[2])/size)
		}
	}
	return stray
}

// payMost takes away d through the tightest bound on |F|; false when there is none.
func (s *Solver) payMost(q *Pull, c []Dual, d vec.V3) bool {
	best, least := -1, math.Inf(1)
	t := max(0, s.t/s.tau*s.t0)
	for j := range c {
		if k := &q.Cones[j]; !k.Flat && k.Z == 0 {
			if v := k.C + float64(k.T*t); v < least {
				best, least = j, v
			}
		}
	}
	if best >= 0 {
		c[best].V = c[best].V.Sub(d)
		c[best].A = max(c[best].A, length(c[best].V))
	}
	return best >= 0
}

// payStill takes away d through bounds that t does not move: a bound on |F|, or a flat one for x
// and y and the half-line for z. It tells whether that was enough.
func (s *Solver) payStill(q *Pull, z *float64, c []Dual, d *vec.V3) bool {
	for j := range c {
		k := &q.Cones[j]
		if math.IsInf(k.C, 1) || k.T != 0 || k.D != (vec.V3{}) || k.Flat || k.Z != 0 {
			continue
		}
		c[j].V = c[j].V.Sub(*d)
		c[j].A = max(c[j].A, length(c[j].V))
		return true
	}
	for j := range c {
		k := &q.Cones[j]
		if math.IsInf(k.C, 1) || k.T != 0 || k.D != (vec.V3{}) || !k.Flat {
			continue
		}
		old := c[j].A
		v := c[j].V.Sub(vec.V3{d[0], d[1], 0})
		a := max(old, length(v))
		dz := d[2] + float64(k.Z*(a-old))
		if math.IsInf(q.MinZ, -1) || dz > *z {
			continue
		}
		c[j] = Dual{a, v}
		*z -= dz
		*d = vec.V3{}
		return true
	}
	return false
}

// multiply gives γ and the value of (6.5): γ t ≥ value for every answer.
func (s *Solver) multiply(r *Result) (gamma, value float64) {
	p := s.p
	for k := range 6 {
		gamma -= float64(r.Y[k] * p.WrenchT[k])
		value += float64(r.Y[k] * p.Wrench[k])
	}
	for i := range p.Lines {
		l := &p.Lines[i]
		if r.LineLo[i] > 0 {
			value += float64(l.Lo * r.LineLo[i])
		}
		if r.LineHi[i] > 0 {
			value -= float64(l.Hi * r.LineHi[i])
			gamma += float64(l.HiT * r.LineHi[i])
		}
	}
	n := 0
	for i := range p.Pulls {
		q := &p.Pulls[i]
		if r.PullZ[i] > 0 {
			value += float64(q.MinZ * r.PullZ[i])
		}
		for j := range q.Cones {
			c, k := &r.Cones[n], &q.Cones[j]
			n++
			if c.A > 0 {
				value -= float64(k.C*c.A) + k.B.Dot(c.V)
				gamma += float64(k.T*c.A) + k.D.Dot(c.V)
			}
		}
	}
	return gamma, value
}
