package solve

import (
	"math"

	"cohoist/core/vec"
)

// half is one linear inequality h τ + a x + g t ≥ 0 with a = +1 or −1 on one scalar variable.
type half struct {
	v    int     // variable
	a    float64 // ±1
	h, g float64
	s, z float64
	w2   float64 // s/z
	p    float64
	ds   float64
	dz   float64
}

// Solver solves Programs one after the other and keeps its room between them.
type Solver struct {
	p      *Program
	nl, np int
	// scales
	f0, l0, t0 float64
	// variables: lines, then pulls (3 each); t
	x       []float64
	t       float64
	y       [6]float64
	tau, ka float64
	// balance in r orthonormal rows
	r    int
	q    [6][6]float64 // rows: orthonormal basis of the range, scaled wrench axes
	a    [][6]float64  // column of every variable in the r rows
	at   [6]float64    // column of t
	b    [6]float64
	miss [6]float64 // part of the wrench outside the range, scaled axes
	half []half
	soc  []soc
	ct   float64
	quad float64 // weight of ½|x|² : stage two
	// blocks
	hl        []float64    // lines: H
	hlt       []float64    // lines: border with t
	hp        [][6]float64 // pulls: Cholesky factor of H, lower, packed
	hpt       [][3]float64
	htt       float64
	S         [6][6]float64 // Cholesky factor
	qt        [6]float64    // S⁻¹ column of t
	sq        [6]float64
	eta       float64
	e, ex     []float64
	x1        []float64
	t1        float64
	y1        [6]float64
	x2        []float64
	t2        float64
	y2        [6]float64
	f1        []float64
	ft        float64
	f2        [6]float64
	rx        []float64
	rt        float64
	ry        [6]float64
	u         []float64
	f         []vec.V3
	gx        four
	fixt      bool // t is held (stage two)
	embed     bool // τ and κ are free
	iter      int
	dtau, dka float64
	kept      struct {
		x          []float64
		half       []half
		soc        []soc
		t, tau, ka float64
		y          [6]float64
	}
}

// NewSolver makes a Solver.
func NewSolver() *Solver { return &Solver{} }

func resize[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n)
	}
	return s[:n]
}

// columns gives a wrench in scaled axes.
func (s *Solver) scaled(w Wrench) [6]float64 {
	return [6]float64{w[0], w[1], w[2], w[3] / s.l0, w[4] / s.l0, w[5] / s.l0}
}

// load lays out a program. It returns false when the numbers of the program are not finite.
func (s *Solver) load(p *Program) bool {
	s.p, s.nl, s.np = p, len(p.Lines), len(p.Pulls)
	n := s.nl + 3*s.np
	s.x, s.x1, s.x2, s.f1, s.rx = resize(s.x, n), resize(s.x1, n), resize(s.x2, n), resize(s.f1, n), resize(s.rx, n)
	s.e, s.ex = resize(s.e, n), resize(s.ex, n)
	s.a = resize(s.a, n)
	s.hl, s.hlt = resize(s.hl, s.nl), resize(s.hlt, s.nl)
	s.hp, s.hpt = resize(s.hp, s.np), resize(s.hpt, s.np)
	s.half, s.soc = s.half[:0], s.soc[:0]
	s.scales()
	if !(s.f0 > 0 && s.l0 > 0 && s.t0 > 0) || math.IsInf(s.f0, 0) || math.IsInf(s.l0, 0) {
		return false
	}
	cols := s.a
	for j, l := range p.Lines {
		cols[j] = s.scaled(l.Column)
		if !math.IsInf(l.Lo, -1) {
			s.half = append(s.half, half{v: j, a: 1, h: -l.Lo / s.f0})
		}
		if !math.IsInf(l.Hi, 1) {
			s.half = append(s.half, half{v: j, a: -1, h: l.Hi / s.f0, g: l.HiT * s.t0 / s.f0})
		}
	}
	for i, c := range p.Pulls {
		v := s.nl + 3*i
		r := c.At.Scale(1 / s.l0)
		cols[v] = [6]float64{1, 0, 0, 0, r[2], -r[1]}
		cols[v+1] = [6]float64{0, 1, 0, -r[2], 0, r[0]}
		cols[v+2] = [6]float64{0, 0, 1, r[1], -r[0], 0}
		if !math.IsInf(c.MinZ, -1) {
			s.half = append(s.half, half{v: v + 2, a: 1, h: -c.MinZ / s.f0})
		}
		for _, k := range c.Cones {
			o := soc{pull: i, flat: k.Flat, z0: k.Z}
			o.h = four{k.C / s.f0, k.B[0] / s.f0, k.B[1] / s.f0, k.B[2] / s.f0}
			tf := s.t0 / s.f0
			o.g = four{k.T * tf, k.D[0] * tf, k.D[1] * tf, k.D[2] * tf}
			if k.Flat {
				o.h[3], o.g[3] = 0, 0
			}
			s.soc = append(s.soc, o)
		}
	}
	s.ct = p.Goal
	w, wt := s.scaled(p.Wrench), s.scaled(p.WrenchT)
	for i := range 6 {
		w[i] /= s.f0
		wt[i] *= -s.t0 / s.f0
	}
	s.reduce(cols, wt, w)
	return true
}

// scales picks the units: the mean capacity for forces, the spread of the arms for lengths.
func (s *Solver) scales() {
	p := s.p
	var f, l float64
	for _, v := range p.Lines {
		f = math.Max(f, math.Max(math.Abs(finite(v.Hi)), math.Abs(v.HiT)))
		c := v.Column
		l = math.Max(l, math.Max(math.Abs(c[3]), math.Max(math.Abs(c[4]), math.Abs(c[5]))))
	}
	for _, v := range p.Pulls {
		l = math.Max(l, v.At.Norm())
		for _, c := range v.Cones {
			if !c.Flat {
				f = math.Max(f, math.Max(math.Abs(c.C), math.Abs(c.T)))
				break
			}
		}
	}
	wf := math.Max(math.Abs(p.Wrench[0]), math.Max(math.Abs(p.Wrench[1]), math.Abs(p.Wrench[2])))
	s.f0 = f
	if f == 0 {
		s.f0 = wf
	}
	if s.f0 == 0 {
		s.f0 = 1
	}
	s.l0 = l
	if l == 0 {
		s.l0 = 1
	}
	s.t0 = 1
	wt := s.scaled(p.WrenchT)
	m := 0.0
	for _, x := range wt {
		m = math.Max(m, math.Abs(x))
	}
	if m > 0 {
		s.t0 = s.f0 / m
	}
}

func finite(x float64) float64 {
	if math.IsInf(x, 0) {
		return 0
	}
	return x
}

// rank is the length, relative to the longest column, below which a direction of wrench counts as
// one that the team cannot give.
const rankTolerance = 1e-10

// reduce finds an orthonormal basis of the wrenches that the columns span, by Gram–Schmidt with
// pivoting, each vector made orthogonal twice, and turns columns, t and the wrench into it.
func (s *Solver) reduce(cols [][6]float64, t, w [6]float64) {
	s.r = 0
	scale := 0.0
	for _, c := range cols {
		scale = math.Max(scale, norm6(c))
	}
	scale = math.Max(scale, norm6(t))
	for s.r < 6 && scale > 0 {
		best, at := 0.0, [6]float64{}
		try := func(c [6]float64) {
			s.orthogonal(&c)
			if n := norm6(c); n > best {
				best, at = n, c
			}
		}
		for _, c := range cols {
			try(c)
		}
		try(t)
		if best <= rankTolerance*scale {
			break
		}
		s.orthogonal(&at)
		n := norm6(at)
		for i := range 6 {
			at[i] /= n
		}
		s.q[s.r] = at
		s.r++
	}
	s.miss = w
	s.orthogonal(&s.miss)
	s.orthogonal(&s.miss)
	s.b = s.turn(w)
	s.at = s.turn(t)
	for i := range cols {
		cols[i] = s.turn(cols[i])
	}
}

func (s *Solver) orthogonal(c *[6]float64) {
	for i := range s.r {
		d := dot6(&s.q[i], c)
		for k := range 6 {
			c[k] -= float64(d * s.q[i][k])
		}
	}
}

func (s *Solver) turn(c [6]float64) [6]float64 {
	var o [6]float64
	for i := range s.r {
		o[i] = dot6(&s.q[i], &c)
	}
	return o
}

func dot6(a, b *[6]float64) float64 {
	return float64(a[0]*b[0]) + float64(a[1]*b[1]) + float64(a[2]*b[2]) + float64(a[3]*b[3]) + float64(a[4]*b[4]) + float64(a[5]*b[5])
}

func norm6(c [6]float64) float64 { return math.Sqrt(dot6(&c, &c)) }
