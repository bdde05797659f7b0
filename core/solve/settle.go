package solve

import (
	"math"

	"cohoist/core/vec"
)

// The answers of stage one at the best t form a face that has no inside. Bounds with a clearly
// positive dual hold there with equality, by complementarity, which leaves of a Pull
//
//	nothing: a bound on |F|, or two others
//	a ray: one flat cone; F = P + v N
//	a level plane: the half-line; F_z = MinZ
//	all of it.
//
// What is left has an inside again and one shortest answer, (6.20).

// surely is how many times its slack a dual must be to count as positive.
const surely = 100

// tieSlack is how far t may be let out, relative, when what is left has no inside after all.
const tieSlack = 1e-9

// reduced is the program of what is left.
type reduced struct {
	p     Program
	cones []Cone
	kind  []kind   // of every Pull
	line  []int    // index in p.Lines of every Line, −1: held; then of every ray
	at    []vec.V3 // held F, or P of a ray, or (0, 0, MinZ)
	dir   []vec.V3 // N of a ray
	u     []float64
}

type kind uint8

const (
	free kind = iota
	held
	ray
	flat
)

// Settle finds, with t held, the forces of least ½Σu² + ½Σ|F|² that balance within the bounds. Right
// after a Solve of the same, unchanged Program with its T, the duals of that answer are used.
// Bounds hold to 1e-9 of their size.
func (s *Solver) Settle(p *Program, t float64) Result {
	if s.last != p {
		if r := s.Solve(p); r.Status != Optimal {
			return r
		}
	}
	near := provable * max(math.Abs(t), s.t0)
	slack := p.Goal * (t - s.lastT)
	if slack < -near {
		return s.nothing(Infeasible, "")
	}
	s.iterations = 0
	if slack > near { // all bounds have room
		r := s.nothing(s.shortest(p, t, false))
		return s.expanded(r, t)
	}
	same := math.Abs(t-s.lastT) <= 1e-12*math.Abs(t)
	if same && s.cornered {
		if r, ok := s.settleCorner(p, t); ok {
			return r
		}
	} else if same && !s.dropped {
		if r := s.settleHere(p, t); r.Status == Optimal {
			return r
		}
	}
	return s.settleAmid(p, t)
}

// settleAmid is Settle from the interior method's point, which lies amid all best answers and their
// duals, as a corner does not.
func (s *Solver) settleAmid(p *Program, t float64) Result {
	s.inside = true
	r := s.Solve(p)
	s.inside = false
	if r.Status != Optimal {
		return r
	}
	return s.settleHere(p, t)
}

// settleHere is Settle from the present point.
func (s *Solver) settleHere(p *Program, t float64) Result {
	s.iterations = 0
	if s.fresh {
		s.tight(surely)
		s.pin(false)
		s.fresh = false
	}
	st, why := s.shortest(p, t, true)
	if st != Optimal {
		st, why = s.shortest(p, t+p.Goal*tieSlack*max(math.Abs(t), s.t0), true)
	}
	return s.expanded(s.nothing(st, why), t)
}

// expanded is a result with its forces.
func (s *Solver) expanded(r Result, t float64) Result {
	r.Iterations = s.iterations
	if r.Status == Optimal {
		s.expand(&r, t)
	}
	return r
}

// shortest reduces the program and finds its shortest answer in s.inner.
func (s *Solver) shortest(p *Program, t float64, tied bool) (Status, string) {
	s.reduce(p, t, tied)
	if s.inner == nil {
		s.inner = NewSolver()
	}
	in := s.inner
	in.stopped = false
	in.quad, in.iterations = true, 0
	in.t = 0
	if why := in.load(&s.rest.p); why != "" {
		return Unsolved, why
	}
	in.tau, in.t = 1, 0
	in.leastNorm()
	if in.within() {
		return Optimal, ""
	}
	st, why := in.embed()
	s.iterations = in.iterations
	return st, why
}

// within tells whether the forces of in keep every bound.
func (s *Solver) within() bool {
	for i := range s.lines {
		o := &s.lines[i]
		if o.hasLo > 0 && o.u < o.lo || o.hasHi > 0 && o.u > o.hi {
			return false
		}
	}
	for i := range s.pulls {
		o := &s.pulls[i]
		if o.half && o.f[2] < o.minZ {
			return false
		}
		for j := o.c0; j < o.c1; j++ {
			c := &s.cones[j]
			v := c.value(o.f[0], o.f[1], o.f[2], 0).axpy(1, c.h)
			if !(v.a >= 0 && v.det() >= 0) {
				return false
			}
		}
	}
	return true
}

// reduce lays out the program of what is left at t.
func (s *Solver) reduce(p *Program, t float64, tied bool) {
	d := &s.rest
	d.p.Lines, d.p.Pulls, d.cones = d.p.Lines[:0], d.p.Pulls[:0], d.cones[:0]
	d.kind, d.at, d.dir = room(d.kind, s.np), room(d.at, s.np), room(d.dir, s.np)
	d.line, d.u = room(d.line, s.nl+s.np), room(d.u, s.nl)
	d.p.Goal = 1
	w := p.Wrench
	for k := range 6 {
		w[k] += float64(t * p.WrenchT[k])
	}
	n := 0
	for i := range p.Pulls {
		n += len(p.Pulls[i].Cones)
	}
	d.cones = room(d.cones, n)[:0]
	for i := range p.Lines {
		l, o := &p.Lines[i], &s.lines[i]
		hi := l.Hi + float64(l.HiT*t)
		d.line[i] = -1
		switch {
		case tied && o.atHi:
			d.u[i] = hi
		case tied && o.atLo:
			d.u[i] = l.Lo
		default:
			d.line[i] = len(d.p.Lines)
			d.p.Lines = append(d.p.Lines, Line{Column: l.Column, Lo: l.Lo, Hi: hi})
			continue
		}
		for k := range 6 {
			w[k] -= float64(l.Column[k] * d.u[i])
		}
	}
	for i := range p.Pulls {
		s.reducePull(&p.Pulls[i], i, t, tied)
		if d.kind[i] == free {
			continue
		}
		a := d.at[i]
		m := p.Pulls[i].At.Cross(a)
		for k := range 3 {
			w[k] -= a[k]
			w[k+3] -= m[k]
		}
	}
	d.p.Wrench = w
}

// expand puts the whole answer together and closes the balance to the last digit.
func (s *Solver) expand(r *Result, t float64) {
	d, in := &s.rest, s.inner
	unit := 1.0
	o := &s.out
	o.u, o.f = room(o.u, s.nl), room(o.f, s.np)
	for i := range o.u {
		o.u[i] = d.u[i]
		if k := d.line[i]; k >= 0 {
			o.u[i] = in.lines[k].u * in.lines[k].unit
		}
	}
	n := 0
	for i := range o.f {
		o.f[i] = d.at[i]
		switch d.kind[i] {
		case ray:
			l := &in.lines[d.line[s.nl+i]]
			o.f[i] = d.at[i].Add(d.dir[i].Scale(l.u * l.unit))
		case free, flat:
			unit = in.pulls[n].unit
			f := vec.V3(in.pulls[n].f).Scale(unit)
			if d.kind[i] == flat {
				f = f.Add(d.at[i])
			}
			o.f[i] = f
			n++
		}
	}
	r.U, r.F, r.T = o.u, o.f, t
	for range 2 {
		left := s.imbalance(r)
		b := s.rank.in(left)
		for i := range o.u {
			o.u[i] += float64(dot6(&s.col[i], &b) * s.lines[i].unit)
		}
		for i := range o.f {
			c := s.col[s.nl+3*i:]
			for k := range 3 {
				o.f[i][k] += float64(dot6(&c[k], &b) * s.pulls[i].unit)
			}
		}
	}
	r.Residual = s.residual(r)
}

// imbalance is what the forces leave of the balance at r.T.
func (s *Solver) imbalance(r *Result) (w Wrench) {
	p := s.p
	for k := range 6 {
		w[k] = p.Wrench[k] + float64(r.T*p.WrenchT[k])
		for i := range p.Lines {
			w[k] -= float64(p.Lines[i].Column[k] * r.U[i])
		}
	}
	for i := range p.Pulls {
		m := p.Pulls[i].At.Cross(r.F[i])
		for k := range 3 {
			w[k] -= r.F[i][k]
			w[k+3] -= m[k]
		}
	}
	return w
}
