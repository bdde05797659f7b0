package solve

import (
	"math"

	"cohoist/core/vec"
)

// provable is the largest gap between T and its proven bound, relative, that still counts as solved.
const provable = 1e-7

// balanced is the largest residual that still counts as solved; rounding leaves 1e-15 or so.
const balanced = 1e-10

// sharp is the gap that a guess must prove to be taken: the interior method comes as far.
const sharp = 1e-9

// strayed is how far the duals of a force that nothing bounds may miss (6.4), relative.
const strayed = 1e-9

// Solve finds the smallest (Goal +1) or largest (−1) t, with its proof.
func (s *Solver) Solve(p *Program) Result {
	s.quad, s.iterations, s.cornered, s.sole = false, 0, false, false
	if why := s.load(p); why != "" {
		return s.nothing(Unsolved, why)
	}
	if s.rank.miss >= 0 {
		return s.missing()
	}
	if r := s.solved(); !s.dropped || r.Status == Optimal && s.keeps(&r) {
		return r
	}
	s.whole = true // a bound that seemed far away is not, or a proof of "no" should weigh them all
	r := s.Solve(p)
	s.whole = false
	return r
}

// solved is Solve for the program as it is laid out.
func (s *Solver) solved() Result {
	if !s.inside && s.straight() && s.walk() {
		r := s.nothing(Optimal, "")
		if s.optimum(&r, false); r.Status == Optimal && r.Residual <= 1e-12 {
			s.fresh, s.cornered = false, true
			return r
		}
	}
	if s.parallel() {
		r := s.nothing(Optimal, "")
		if s.optimum(&r, false); s.proved(&r) {
			s.fresh, s.cornered, s.sole = false, true, true
			return r
		}
	}
	if s.idle { // t is in nothing: all that is open is whether forces balance at all
		s.goal = 0
	}
	st, why := s.embed()
	if s.idle && st == Optimal {
		st = Unbounded
	}
	r := s.nothing(st, why)
	switch st {
	case Infeasible:
		s.certificate(&r)
	case Optimal:
		s.optimum(&r, !s.cornered)
		if s.cornered && !s.proved(&r) { // the guess was no good
			r.Status = Unsolved
		}
	}
	if r.Status == Unsolved && !s.inside { // without guesses, and by the embedding all the way
		s.inside = true
		r = s.Solve(s.p)
		s.inside = false
	}
	return r
}

// proved tells that a guess is as good as what the interior method finds.
func (s *Solver) proved(r *Result) bool {
	return r.Status == Optimal && r.Residual <= 1e-12 && math.Abs(r.T-r.Bound) <= sharp*max(math.Abs(r.T), 0.1*s.t0)
}

// nothing is a Result without numbers.
func (s *Solver) nothing(st Status, why string) Result {
	n := math.NaN()
	return Result{Status: st, Reason: why, T: n, Bound: n, Residual: n, Arm: s.arm, Iterations: s.iterations}
}

// missing is the answer when the wanted wrench has a part that no force of the team can give.
func (s *Solver) missing() Result {
	r := s.nothing(Infeasible, "")
	r.Y = s.rank.missing()
	s.duals(&r, 0)
	clear(r.LineLo) // what was laid out before may be anything
	clear(r.LineHi)
	clear(r.PullZ)
	clear(r.Cones)
	s.normal(&r)
	return r
}

// optimum fills in the forces, their residual and the proven bound.
func (s *Solver) optimum(r *Result, polish bool) {
	if polish {
		s.polish()
	}
	s.forces(r)
	r.T = s.t / s.tau * s.t0
	r.Residual = s.residual(r)
	r.Y = s.rank.out(&s.y)
	s.duals(r, s.t0/s.tau)
	for i := range r.Y {
		r.Y[i] *= s.t0 / s.tau
	}
	stray := s.repair(r, false)
	gamma, value := s.multiply(r)
	if !(gamma*s.goal > 0) || !(stray <= strayed) {
		*r = s.nothing(Unsolved, "the proof of the answer does not multiply out")
		return
	}
	s.scaleDuals(r, s.goal/gamma)
	r.Bound = s.goal * value / (gamma * s.goal)
	gap := s.goal * (r.T - r.Bound)
	if gap < 0 { // by rounding
		if s.p.WrenchT == (Wrench{}) {
			r.T = r.Bound
		} else { // the balance was closed at T
			r.Bound = r.T
		}
	}
	if !(r.Residual <= balanced) {
		*r = s.nothing(Unsolved, "the balance can't be closed to the last digits")
		return
	}
	if !(math.Abs(gap) <= provable*max(math.Abs(r.T), 0.1*s.t0)) {
		*r = s.nothing(Unsolved, "the answer and its proof lie too far apart")
		return
	}
	s.last, s.lastT, s.fresh = s.p, r.T, true
}

// certificate fills in the direction that runs out.
func (s *Solver) certificate(r *Result) {
	r.Y = s.rank.out(&s.y)
	s.duals(r, 1)
	stray := s.repair(r, true)
	gamma, value := s.multiply(r)
	for range 2 { // turn Y so that t drops out
		v := s.p.WrenchT
		for k := 3; k < 6; k++ {
			v[k] /= s.arm * s.arm
		}
		along := dot6((*[6]float64)(&v), (*[6]float64)(&s.p.WrenchT))
		if gamma == 0 || !(along > 0) {
			break
		}
		for k := range 6 {
			r.Y[k] += float64(v[k]*gamma) / along
		}
		stray = s.repair(r, true)
		gamma, value = s.multiply(r)
	}
	if !(value > 0) || !(stray <= strayed) || math.Abs(gamma)*1e5*s.t0 > value {
		*r = s.nothing(Unsolved, "no balance was found, nor a proof that there is none")
		return
	}
	s.normal(r)
}

// normal makes the certificate 1 long, moments counted by the arm.
func (s *Solver) normal(r *Result) {
	y := r.Y
	for i := 3; i < 6; i++ {
		y[i] *= s.arm
	}
	n := norm6((*[6]float64)(&y))
	if n > 0 {
		s.scaleDuals(r, 1/n)
	}
}

// polish closes the balance by the least move of the forces and t, weighed by their room.
func (s *Solver) polish() {
	n := &s.step
	for range 3 {
		var w Wrench
		for k := range 6 {
			w[k] = float64(s.b[k]*s.tau) - float64(s.tcol[k]*s.t)
		}
		for i := range s.lines {
			for k := range 6 {
				w[k] -= float64(s.col[i][k] * s.lines[i].u)
			}
		}
		for i := range s.pulls {
			c := s.col[s.nl+3*i:]
			for k := range 6 {
				f := &s.pulls[i].f
				w[k] -= float64(c[0][k]*f[0]) + float64(c[1][k]*f[1]) + float64(c[2][k]*f[2])
			}
		}
		y, t := n.k.solve((*[6]float64)(&w), 0)
		s.t += t
		for i := range s.lines {
			o := &s.lines[i]
			o.u += float64(o.ih * (dot6(&s.col[i], &y) + float64(o.wh*float64(o.ht*t))))
		}
		for i := range s.pulls {
			o := &s.pulls[i]
			d := o.back([3]float64{}, &y, t)
			for k := range 3 {
				o.f[k] += d[k]
			}
		}
	}
}

// forces writes out the point in newtons.
func (s *Solver) forces(r *Result) {
	o := &s.out
	o.u, o.f = room(o.u, s.nl), room(o.f, s.np)
	for i := range s.lines {
		o.u[i] = s.lines[i].u / s.tau * s.lines[i].unit
	}
	for i := range s.pulls {
		k := s.pulls[i].unit / s.tau
		f := &s.pulls[i].f
		o.f[i] = vec.V3{f[0] * k, f[1] * k, f[2] * k}
	}
	r.U, r.F = o.u, o.f
}

// little is the part of what a vehicle can give that an imbalance is measured by at least, so that
// the balance of nothing is not measured by rounding.
const little = 1e-3

// residual is the largest imbalance of the forces over the program's own force, and force × arm.
func (s *Solver) residual(r *Result) float64 {
	p := s.p
	var w, size [6]float64
	t := r.T
	if s.quad {
		t = s.t
	}
	for k := range 6 {
		v, x := p.Wrench[k], float64(t*p.WrenchT[k])
		w[k], size[k] = -v-x, max(math.Abs(v), math.Abs(x))
	}
	for i := range p.Lines {
		c, u := &p.Lines[i].Column, r.U[i]
		for k := range 6 {
			v := float64(c[k] * u)
			w[k] += v
			size[k] = larger(math.Abs(v), size[k])
		}
	}
	for i := range p.Pulls {
		m := p.Pulls[i].At.Cross(r.F[i])
		for k := range 3 {
			w[k] += r.F[i][k]
			w[k+3] += m[k]
			size[k] = larger(math.Abs(r.F[i][k]), size[k])
			size[k+3] = larger(math.Abs(m[k]), size[k+3])
		}
	}
	force := max(size3(size[0], size[1], size[2]), size3(size[3], size[4], size[5])/s.arm)
	for i := range s.lines {
		force = larger(little*s.lines[i].unit, force)
	}
	for i := range s.pulls {
		force = larger(little*s.pulls[i].unit, force)
	}
	if force == 0 {
		return 0
	}
	return max(size3(w[0], w[1], w[2]), size3(w[3], w[4], w[5])/s.arm) / force
}
