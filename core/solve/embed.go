package solve

import "math"

// The accuracy that the method aims at, relative, and the one it may fall back to when rounding
// stops it first; what falls back still has to prove its gap, see finish.
const (
	wanted     = 1e-10
	finest     = 1e-11 // for stage two
	acceptable = 1e-7
	iterations = 100
)

// point is a copy of the iterate, kept as the best so far.
type point struct {
	lines       []line
	pulls       []pull
	cones       []cone
	y           [6]float64
	t, tau, kap float64
}

func (s *Solver) save() {
	k := &s.kept
	k.lines = append(k.lines[:0], s.lines...)
	k.pulls = append(k.pulls[:0], s.pulls...)
	k.cones = append(k.cones[:0], s.cones...)
	k.y, k.t, k.tau, k.kap = s.y, s.t, s.tau, s.kap
}

func (s *Solver) restore() {
	k := &s.kept
	copy(s.lines, k.lines)
	copy(s.pulls, k.pulls)
	copy(s.cones, k.cones)
	s.y, s.t, s.tau, s.kap = k.y, k.t, k.tau, k.kap
}

// start is the point from which everything begins.
func (s *Solver) start() {
	s.y, s.tau, s.kap = [6]float64{}, 1, 1
	if s.quad {
		s.startNear()
		return
	}
	s.t = 0
	for i := range s.lines {
		o := &s.lines[i]
		o.u, o.sl, o.zl, o.sh, o.zh = 0, 1, o.hasLo, 1, o.hasHi
	}
	for i := range s.pulls {
		o := &s.pulls[i]
		o.f, o.s, o.z = [3]float64{}, 1, 1
		for j := o.c0; j < o.c1; j++ {
			c := &s.cones[j]
			k := max(1, c.h.a)
			c.s, c.z = four{a: k}, four{a: 1 / k}
		}
	}
}

// early is the quality at which the method first guesses which bounds are tight; 0: never.
func (s *Solver) early() float64 {
	if s.inside || s.quad || s.idle {
		return 0
	}
	return 1e-2
}

// quality of the point: what is left of primal and dual residuals and of the gap, relative.
func (s *Solver) quality() (primal, dual, gap float64) {
	a := &s.step.a
	i := 1 / s.tau
	primal = max(norm6(&a.ry)/max(1, norm6(&s.b)), a.p) * i
	dual = max(a.rx, math.Abs(a.rt)) * i
	if s.quad {
		return primal, dual, a.mu
	}
	// goal t − (bᵀy − hᵀz), with what the repair of the duals will add
	gap = (math.Abs(a.mix+a.mu)*i + a.pay) * i / max(1e-1, math.Abs(s.t)*i)
	return primal, dual, gap
}

// embed runs the homogeneous self-dual embedding (quad: the infeasible method with τ = 1) and says
// how it ended. The point stays in s.
func (s *Solver) embed() (Status, string) {
	switch s.approach() {
	case pinnedDown:
		return Optimal, ""
	case nowhere:
		s.start()
	}
	best, seen := math.Inf(1), 0
	early, wanted := s.early(), wanted
	if s.inside || s.quad {
		wanted = finest
	}
	s.stopped = false
	give := func(why string) (Status, string) {
		if best <= acceptable {
			s.stopped = true
			s.restore()
			s.residuals()
			s.factor()
			return Optimal, ""
		}
		return Unsolved, why
	}
	for n := 0; ; n++ {
		s.iterations++
		inside := s.residuals()
		a := &s.step.a
		if !(s.step.mu >= 0) || math.IsInf(s.step.mu, 0) {
			return give("the numbers are too far apart for the arithmetic")
		}
		primal, dual, gap := s.quality()
		worst := max(primal, max(dual, gap))
		if worst <= wanted && inside {
			if s.factor() {
				return Optimal, ""
			}
			return give("the balance is too nearly singular")
		}
		if !s.quad {
			if v := float64(s.goal*s.t) - (a.mix+a.mu)/s.tau; v > 0 && a.rx <= 1e-9*v && math.Abs(s.goal*s.tau-a.rt) <= 1e-9*v {
				return Infeasible, ""
			}
			if v := -s.goal * s.t; v > 0 && max(norm6(&a.ry), a.p) <= 1e-9*v && s.tau*1e6 < v {
				return Unbounded, ""
			}
		}
		if worst <= early && inside { // guess the tight bounds and jump to their answer
			early = worst * 1e-2
			s.tight(1)
			if s.pin(true) {
				s.pinDuals()
				s.cornered = true
				return Optimal, ""
			}
			best, seen = worst, n
			s.residuals()
		}
		if worst < best && inside {
			best, seen = worst, n
			if best <= acceptable {
				s.save()
			}
		} else if best <= acceptable && (n > seen+3 || worst > 1e3*best) {
			return give("")
		}
		if n >= iterations {
			return give("no answer after the allowed number of steps")
		}
		if !inside || !s.factor() {
			return give("the balance is too nearly singular")
		}
		alpha := s.direction(1, 0, false)
		sigma := (1 - alpha) * (1 - alpha) * (1 - alpha)
		alpha = s.direction(1-sigma, sigma*s.step.mu, true)
		if !(alpha > 1e-10) {
			return give("no step leads on")
		}
		s.move(min(1, 0.99*alpha))
	}
}

// startNear starts the quadratic program from the forces that ignore the bounds, (6.20): each bound
// that they keep with room has that room.
func (s *Solver) startNear() {
	s.leastNorm()
	for i := range s.lines {
		o := &s.lines[i]
		o.sl, o.zl, o.sh, o.zh = 1, o.hasLo, 1, o.hasHi
		if o.hasLo > 0 {
			o.sl = max(o.u-o.lo, 1)
		}
		if o.hasHi > 0 {
			o.sh = max(o.hi-o.u, 1)
		}
	}
	for i := range s.pulls {
		o := &s.pulls[i]
		o.s, o.z = 1, 1
		if o.half {
			o.s = max(o.f[2]-o.minZ, 1)
		}
		for j := o.c0; j < o.c1; j++ {
			c := &s.cones[j]
			v := c.value(o.f[0], o.f[1], o.f[2], 0).axpy(1, c.h)
			n := math.Sqrt(float64(v.x*v.x) + float64(v.y*v.y) + float64(v.z*v.z))
			v.a = max(v.a, n+1)
			c.s, c.z = v, four{a: 1}
		}
	}
}
