package solve

import (
	"math"

	"cohoist/core/vec"
)

// Solver solves Programs one after the other and keeps its room between them, so that a solve of a
// size seen before allocates nothing. It is not for use by several goroutines at once.
type Solver struct {
	p       *Program
	nl, np  int
	goal    float64
	t0      float64 // unit of t
	opening bool    // t opens bounds
	arm     float64 // m, length scale of the moments
	force   float64 // N, scale of the wanted wrench and the forces in it
	lines   []line
	pulls   []pull
	cones   []cone
	col     [][6]float64 // wrench of every variable, first as given, then in the rows of the rank, (6.8)
	tcol    [6]float64   // the same of t: −WrenchT
	rank    rank
	b       [6]float64 // wanted wrench in those rows

	idle bool // t is in no bound and no balance
	quad bool // objective ½Σx² with t held, instead of goal·t
	t    float64
	y    [6]float64
	tau  float64
	kap  float64
	step newton
	kept point
	way  way

	iterations int
	last       *Program
	lastT      float64
	out        output
	inner      *Solver // of stage two
	rest       reduced
	tangents   []tangent
	tangentTT  float64
	walker     walker
	inside     bool   // by the interior method only
	whole      bool   // leave no cone out
	dropped    bool   // cones were left out that seemed far away
	used       []bool // every cone of the program: it is in cones
	first      []int  // the first of every pull in used
	cornered   bool   // the last answer is one of the corners of its face: from walk, or pinned
	sole       bool   // no other forces are as good as the last answer's
	stopped    bool   // by rounding, before the method got as far as it should
	fresh      bool   // the point is Solve's answer, not yet pinned
}

// NewSolver makes a Solver.
func NewSolver() *Solver { return &Solver{} }

// output is the room of a Result.
type output struct {
	u, lo, hi, pz []float64
	f             []vec.V3
	cones         []Dual
}

func room[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n, n+n/2)
	}
	return s[:n]
}

// line is a Line in its own unit of force: u ≥ lo τ and u ≤ hi τ + ht t.
type line struct {
	unit       float64
	lo, hi, ht float64
	hasLo      float64 // 1, or 0 when there is no such bound
	hasHi      float64
	u          float64
	sl, zl     float64
	sh, zh     float64
	isl, ish   float64 // 1/s
	rx, pl, ph float64 // residuals, (6.10)
	wl, wh     float64 // z/s
	ih         float64 // 1/(wl + wh + Q)
	el, eh     float64 // right-hand sides W⁻² q
	u1         float64 // the column of τ
	sl1, zl1   float64
	sh1, zh1   float64
	u2, l2, h2 float64 // the rest: u, duals
	dsl, dzl   float64
	atLo, atHi bool    // tight
	zero, with float64 // step of pin at dt = 0, per dt
	dsh, dzh   float64
	du         float64
}

// pull is a Pull in its own unit of force.
type pull struct {
	unit   float64
	c0, c1 int  // its cones
	half   bool // F_z ≥ minZ τ
	tight  bool // F_z = minZ
	level  bool // F_z is left out: it stays 0
	minZ   float64
	pay    float64 // the bound that pays for a dual residual, in its unit
	reg    float64 // added to the diagonal, for directions that nothing bounds
	f      [3]float64
	s, z   float64 // of the half-line
	w, p   float64
	sw     float64 // √w
	perm   [3]int  // which of x y z each column of R is
	len    [3]float64
	o      float64
	ds, dz float64
	one    float64
	rx     [3]float64
	ex     [4]four     // orthonormal rows of the half-line (a) and of the diagonal (x, y, z)
	r      [10]float64 // R by rows: xx xy xz xt yy yz yt zz zt tt, (6.12)
	v      [6][3]float64
	k1, k2 [3]float64
	e, e1  [3]float64 // R⁻ᵀ of the dual residual, as a right-hand side
	half1  float64    // slack of the half-line in the column of τ
	a1, a2 float64    // what is left of the half-line's right-hand side
	f1, f2 [3]float64
	d      [3]float64
}

// readable looks at the program's numbers: false when one is not finite that must be.
func (s *Solver) readable(p *Program) bool {
	sum := p.Goal
	for i := range 6 {
		sum += p.Wrench[i]*0 + p.WrenchT[i]*0
	}
	for i := range p.Lines {
		l := &p.Lines[i]
		for _, v := range l.Column {
			sum += v * 0
		}
		sum += l.HiT * 0
		if !(l.Lo < math.Inf(1)) || !(l.Hi > math.Inf(-1)) {
			return false
		}
	}
	for i := range p.Pulls {
		q := &p.Pulls[i]
		sum += q.At[0]*0 + q.At[1]*0 + q.At[2]*0
		if !(q.MinZ < math.Inf(1)) {
			return false
		}
		for j := range q.Cones {
			c := &q.Cones[j]
			for a := range 3 {
				sum += c.B[a]*0 + c.D[a]*0
			}
			sum += c.Z*0 + c.T*0
			if !(c.C > math.Inf(-1)) {
				return false
			}
		}
	}
	return sum == p.Goal && p.Goal*p.Goal == 1 // NaN and Inf times 0 are NaN
}

// load lays a program out in units of its own size, (6.7). It returns what is wrong, or "".
func (s *Solver) load(p *Program) string {
	s.p, s.nl, s.np = p, len(p.Lines), len(p.Pulls)
	s.last = nil
	if !s.readable(p) {
		return "a number of the program is not finite, or its goal is neither 1 nor −1"
	}
	s.goal = p.Goal
	s.lines = room(s.lines, s.nl)
	s.pulls = room(s.pulls, s.np)
	n := 0
	for i := range p.Pulls {
		n += len(p.Pulls[i].Cones)
	}
	s.cones = room(s.cones, n)[:0]
	s.used, s.first, s.dropped = room(s.used, n)[:0], room(s.first, s.np), false
	s.col = room(s.col, s.nl+3*s.np)
	s.units()
	if s.quad {
		s.oneUnit()
		s.t0 = 1
	}
	for i := range p.Lines {
		s.loadLine(i)
	}
	for i := range p.Pulls {
		s.loadPull(i)
	}
	for i := range 6 {
		s.tcol[i] = -p.WrenchT[i] * s.t0 * lightly
	}
	if s.quad {
		s.tcol = [6]float64{}
	}
	s.rank.find(s.col, &s.tcol, p.Wrench)
	s.b = s.rank.b
	s.unitOfT()
	s.idle = s.tcol == [6]float64{}
	for i := range s.lines {
		s.idle = s.idle && s.lines[i].ht == 0
	}
	for i := range s.cones {
		s.idle = s.idle && s.cones[i].g == four{}
	}
	return ""
}

func (s *Solver) loadLine(i int) {
	l, o := &s.p.Lines[i], &s.lines[i]
	f := o.unit
	o.lo, o.hi, o.ht, o.hasLo, o.hasHi = 0, 0, 0, 0, 0 // the rest is set before it is used
	for k := range 6 {
		s.col[i][k] = l.Column[k] * f
	}
	if !math.IsInf(l.Lo, -1) {
		o.lo, o.hasLo = l.Lo/f, 1
	}
	if !math.IsInf(l.Hi, 1) {
		o.hi, o.ht, o.hasHi = l.Hi/f, l.HiT/f*s.t0, 1
	}
}

func (s *Solver) loadPull(i int) {
	q, o := &s.p.Pulls[i], &s.pulls[i]
	f := o.unit
	o.c0, o.level, o.minZ, o.pay = len(s.cones), q.level, 0, 0 // the rest is set before it is used
	v := s.nl + 3*i
	s.col[v] = [6]float64{f, 0, 0, 0, q.At[2] * f, -q.At[1] * f}
	s.col[v+1] = [6]float64{0, f, 0, -q.At[2] * f, 0, q.At[0] * f}
	s.col[v+2] = [6]float64{0, 0, f, q.At[1] * f, -q.At[0] * f, 0}
	s.first[i] = len(s.used)
	o.half = !math.IsInf(q.MinZ, -1) && !q.level
	if q.level {
		s.col[v+2] = [6]float64{}
	}
	if o.half {
		o.minZ = q.MinZ / f
	}
	bounded := false
	for j := range q.Cones {
		k := &q.Cones[j]
		use := !math.IsInf(k.C, 1) && !s.far(q, j)
		s.used = append(s.used, use)
		if !use {
			continue
		}
		bounded = bounded || !k.Flat || k.Z != 0
		tf := s.t0 / f
		s.cones = s.cones[:len(s.cones)+1]
		c := &s.cones[len(s.cones)-1]
		c.flat, c.zc = k.Flat, k.Z
		c.h = four{k.C / f, k.B[0] / f, k.B[1] / f, k.B[2] / f}
		c.g = four{k.T * tf, k.D[0] * tf, k.D[1] * tf, k.D[2] * tf}
		if k.Flat {
			c.h.z, c.g.z = 0, 0
		}
		if v := c.h.a + c.g.a; !k.Flat && k.Z == 0 && (o.pay == 0 || v < o.pay) {
			o.pay = v
		}
	}
	o.c1 = len(s.cones)
	o.reg = 1e-30
	if !bounded && !s.quad {
		o.reg = 1e-7
	}
}
