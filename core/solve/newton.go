package solve

// sums collects what one pass over the blocks adds up.
type sums struct {
	ry    [6]float64 // A x + a t − b τ
	rt    float64    // goal τ − aᵀy − gᵀz
	mu    float64
	mix   float64     // pᵀz + xᵀrx + t rt + yᵀry
	pay   float64     // what the dual residual costs a bound
	rx, p float64     // largest dual and cone residuals
	s     [21]float64 // A H⁻¹ Aᵀ, lower triangle by rows
	q     [6]float64
	eta   float64
}

// side is a right-hand side of the small system.
type side struct {
	g [6]float64
	f float64
}

// newton is the state of one iteration.
type newton struct {
	a          sums
	k          small
	y1, y2     [6]float64
	t1, t2     float64
	dy         [6]float64
	dt         float64
	dtau, dkap float64
	pivot      float64
	r4         float64
	part       float64 // of the residuals that the step takes away
	mu         float64
}

// residuals measures the point and scales the cones, (6.9), (6.10). It is false when a cone's
// point left the cone by rounding.
func (s *Solver) residuals() bool {
	a := &s.step.a
	*a = sums{rt: s.goal*s.tau - dot6(&s.tcol, &s.y)}
	for k := range 6 {
		a.ry[k] = float64(s.tcol[k]*s.t) - float64(s.b[k]*s.tau)
	}
	s.lineResidual(a)
	ok := true
	for i := range s.pulls {
		ok = s.pullResidual(i, a) && ok
	}
	a.mix += dot6(&a.ry, &s.y) + float64(s.t*a.rt)
	s.step.r4 = -(a.mix+a.mu)/s.tau - s.kap // goal t − bᵀy + hᵀz, without taking large from large
	if s.quad {
		a.rt = 0
		s.step.mu = a.mu / float64(max(1, s.degree()))
	} else {
		s.step.mu = (a.mu + float64(s.tau*s.kap)) / float64(s.degree()+1)
	}
	return ok
}

// degree counts the complementary pairs.
func (s *Solver) degree() int {
	n := len(s.cones)
	for i := range s.lines {
		n += int(s.lines[i].hasLo + s.lines[i].hasHi)
	}
	for i := range s.pulls {
		if s.pulls[i].half {
			n++
		}
	}
	return n
}

// factor eliminates every block and factors what is left, with the column of τ and the predictor.
func (s *Solver) factor() bool {
	n := &s.step
	a := &n.a
	var one side
	for again := range 2 {
		a.s, a.q, a.eta = [21]float64{}, s.tcol, 0
		one = side{f: -2*s.goal + a.rt/s.tau}
		if s.idle {
			one.f = 0
		}
		for k := range 6 {
			one.g[k] = -a.ry[k] / s.tau
		}
		s.lineFactor(a, &one)
		for i := range s.pulls {
			if again == 0 {
				s.pullFactor(i)
			}
			s.pulls[i].reduce(a)
			if !s.quad {
				s.pullConstant(i, &one)
			}
		}
		if !n.k.factor(&a.s, &a.q, a.eta, s.rank.r, s.quad || s.idle) {
			return false
		}
		if !n.k.weak || again > 0 {
			break
		}
		s.rebase()
	}
	if s.quad {
		return true
	}
	n.y1, n.t1 = n.k.solve(&one.g, one.f) // less the point itself
	n.pivot = s.kap/s.tau + s.lineFirst(&n.y1, n.t1)
	for i := range s.pulls {
		n.pivot += s.pullFirst(i, &n.y1, n.t1)
	}
	for k := range 6 {
		n.y1[k] -= s.y[k] / s.tau
	}
	n.t1 += s.t / s.tau
	return n.pivot > 0
}

// direction finds a step that takes away part of the residuals and aims at σμ, and returns the
// longest α ≤ 1 it may be taken by, (6.15), (6.16).
func (s *Solver) direction(part, aim float64, correct bool) float64 {
	n := &s.step
	n.part = part
	r := side{f: -part * n.a.rt}
	for k := range 6 {
		r.g[k] = -part * n.a.ry[k]
	}
	s.lineSide(part, aim, correct, &r)
	for i := range s.pulls {
		s.pullSide(i, part, aim, correct, &r)
	}
	if s.quad || s.idle {
		r.f = 0
	}
	n.y2, n.t2 = n.k.solve(&r.g, r.f)
	sz := s.lineSecond(part, &n.y2, n.t2)
	for i := range s.pulls {
		sz += s.pullSecond(i, part, &n.y2, n.t2)
	}
	sz += dot6(&n.a.ry, &n.y2) - float64(part*float64(s.t*n.a.rt))
	most := 1.0
	dk := 0.0
	dtau := 0.0
	if !s.quad {
		dk = -float64(s.tau * s.kap)
		if correct {
			dk += aim - float64(n.dtau*n.dkap)
		}
		dtau = (-part*n.r4 + (dk+sz)/s.tau + float64(s.goal*n.t2)) / n.pivot
		n.dkap = (dk - float64(s.kap*dtau)) / s.tau
		most = max(most, max(-dtau/s.tau, -n.dkap/s.kap))
	}
	n.dtau = dtau
	for k := range 6 {
		n.dy[k] = n.y2[k] + float64(dtau*n.y1[k])
	}
	n.dt = n.t2 + float64(dtau*n.t1)
	most = max(most, s.lineStep(part, dtau, n.t2))
	for i := range s.pulls {
		most = max(most, s.pullStep(i, part, dtau))
	}
	return 1 / most
}

func (s *Solver) move(a float64) {
	n := &s.step
	s.lineMove(a)
	for i := range s.pulls {
		s.pullMove(i, a)
	}
	for k := range 6 {
		s.y[k] += float64(a * n.dy[k])
	}
	s.t += float64(a * n.dt)
	if !s.quad {
		s.tau += float64(a * n.dtau)
		s.kap += float64(a * n.dkap)
	}
}
