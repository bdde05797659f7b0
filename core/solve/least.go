package solve

import "math"

// LeastSquares is the least ½Σu² + ½Σ|F|² under the balance at t = 0 alone, limits ignored: what a
// pseudo-inverse gives, (6.18). Without any balance it is Infeasible and Y is the direction that
// the team can't give.
func LeastSquares(p *Program) Result {
	s := NewSolver()
	s.quad = true
	if why := s.load(p); why != "" {
		return s.nothing(Unsolved, why)
	}
	if s.rank.miss >= 0 {
		return s.missing()
	}
	s.leastNorm()
	s.tau, s.t = 1, 0
	r := s.nothing(Optimal, "")
	s.forces(&r)
	r.Residual = s.residual(&r)
	return r
}

// leastNorm sets the forces to the shortest that balance: x = Qᵀ b, all in one unit, (6.18).
func (s *Solver) leastNorm() {
	for i := range s.lines {
		s.lines[i].u = dot6(&s.col[i], &s.b)
	}
	for i := range s.pulls {
		c := s.col[s.nl+3*i:]
		s.pulls[i].f = [3]float64{dot6(&c[0], &s.b), dot6(&c[1], &s.b), dot6(&c[2], &s.b)}
	}
}

// oneUnit gives every block the same unit of force, so that lengths mean the same in all.
func (s *Solver) oneUnit() {
	f := math.Inf(1)
	p := s.p
	for i := range p.Lines {
		f = min(f, s.lines[i].unit)
	}
	for i := range p.Pulls {
		f = min(f, s.pulls[i].unit)
	}
	if math.IsInf(f, 1) {
		f = 1
	}
	for i := range s.lines {
		s.lines[i].unit = f
	}
	for i := range s.pulls {
		s.pulls[i].unit = f
	}
}
