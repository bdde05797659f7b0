package solve

// settleCorner is Settle from a corner of the face of best answers. Whatever the corner's duals are, all
// best answers keep the bounds with a positive one tight, so that the rest is the same;
// only it may have no inside, and then the method does not get far enough.
func (s *Solver) settleCorner(p *Program, t float64) (Result, bool) {
	s.iterations = 0
	if !s.sole {
		if !s.plain() {
			return Result{}, false
		}
		if st, _ := s.shortest(p, t, true); st != Optimal || s.inner.stopped {
			return Result{}, false
		}
	}
	r := s.nothing(Optimal, "")
	r.Iterations = s.iterations
	if s.sole {
		r.T, r.U, r.F = t, s.out.u, s.out.f
		r.Residual = s.residual(&r)
		return r, true
	}
	s.expand(&r, t)
	ok := r.Residual <= 1e-12
	for i := range p.Pulls { // closing the balance may have moved a force
		ok = ok && p.Pulls[i].keeps(r.F[i], t, 1e-9*s.pulls[i].unit)
	}
	return r, ok
}

// The duals of a corner, times the number of vehicles, that count as positive and as zero.
const (
	positive = 1e-7
	zero     = 1e-11
)

// plain marks the bounds with a positive dual as tight; false when one is neither positive nor zero.
func (s *Solver) plain() bool {
	ok, k := true, float64(s.nl+s.np)
	mark := func(z float64) bool {
		z *= k
		ok = ok && (z >= positive || z <= zero)
		return z >= positive
	}
	for i := range s.lines {
		o := &s.lines[i]
		o.atHi, o.atLo = mark(o.zh), mark(o.zl)
	}
	for i := range s.pulls {
		o := &s.pulls[i]
		o.tight = mark(o.z)
		for j := o.c0; j < o.c1; j++ {
			s.cones[j].tight = mark(s.cones[j].z.a)
		}
	}
	return ok
}
