package solve

import "math"

// Most of the way to the answer of a program with Pulls goes without the embedding: τ = 1, steps
// of their own for primal and dual, and normal equations, (6.24), at a third of the work a step. Far
// from the answer that is as good. Near it the normal equations lose t's own part; by then the
// tight bounds have mostly been guessed, or the embedding takes over from the point reached. Stage
// two, where t is held, goes all the way.

// wayCone is a cone on the way.
type wayCone struct {
	h, g   four
	s, z   four
	w      four // Nesterov–Todd point, determinant 1
	p, hp  four // residual h + G F + g t − s, and W⁻² of it
	o      four // right-hand side of dz + W⁻² (G dF + g dt)
	ds, dz four
	zc, fz float64 // Z; 1, or 0 when flat
	e2     float64 // 1/η²
	moves  bool    // g is not 0
}

// wayPull is a pull on the way. Its system in F is L D Lᵀ, L unit lower triangular.
type wayPull struct {
	c0, c1     int
	half       bool
	minZ, pay  float64
	s, z, p    float64 // of the half-line
	w          float64 // z/s
	ds, dz, o  float64
	f, rx, d   [3]float64
	q, m       [3]float64    // L⁻¹ of the right-hand side, and of the column of t
	lx, ly, lz float64       // L below its diagonal: yx, zx, zy
	ix, iy, iz float64       // D⁻¹
	a, v       [3][6]float64 // columns of the balance, and L⁻¹ of them
}

// way is the point and what one pass over the pulls adds up.
type way struct {
	quad   bool // ½Σx² with t held, instead of goal·t
	lines  []wayLine
	pulls  []wayPull
	cones  []wayCone
	y, dy  [6]float64
	t, dt  float64
	degree float64
	waySums
	k small
}

type waySums struct {
	ry    [6]float64 // A x + a t − b
	rt    float64    // σ − aᵀy − gᵀz
	rx, p float64    // largest dual and cone residuals
	gap   float64    // σ t − (bᵀy − hᵀz)
	mu    float64    // sᵀz
	pay   float64    // what the dual residual costs a bound
	s     [21]float64
	q     [6]float64
	eta   float64
	r     side
}

// The way ends where the normal equations do, or when it leads nowhere.
const (
	nearest = 1e-8 // quality
	strides = 30
)

// layWay lays out the program and the point from which everything begins: the shortest forces that
// balance, t so that they have room in the bounds that it opens, every slack moved inside, and the
// duals that put that point on the central path.
func (s *Solver) layWay() {
	n := &s.way
	n.lines, n.pulls, n.cones = room(n.lines, s.nl), room(n.pulls, s.np), room(n.cones, len(s.cones))
	n.quad, n.t, n.degree = s.quad, 0, 0
	for i := range s.lines {
		s.layLine(i)
	}
	for i := range s.pulls {
		o, q := &s.pulls[i], &n.pulls[i]
		*q = wayPull{c0: o.c0, c1: o.c1, half: o.half, minZ: o.minZ, pay: o.pay}
		copy(q.a[:], s.col[s.nl+3*i:])
		q.f = [3]float64{dot6(&q.a[0], &s.b), dot6(&q.a[1], &s.b), dot6(&q.a[2], &s.b)}
		if o.half {
			n.degree++
		}
		for j := o.c0; j < o.c1; j++ {
			c, to := &s.cones[j], &n.cones[j]
			*to = wayCone{h: c.h, g: c.g, zc: c.zc, moves: c.g != four{}}
			if !c.flat {
				to.fz = 1
			}
			n.degree++
			if c.g.a > 0 {
				v := c.value(q.f[0], q.f[1], q.f[2], 0).axpy(1, c.h)
				n.t = max(n.t, (math.Sqrt(float64(v.x*v.x)+float64(v.y*v.y)+float64(v.z*v.z))+spare-v.a)/c.g.a)
			}
		}
	}
	open := 0.0
	for i := range n.lines {
		open += n.lines[i].start(n.t)
	}
	for i := range n.pulls {
		q := &n.pulls[i]
		if q.half {
			q.s = max(q.f[2]-q.minZ, spare)
			q.z = 1 / q.s
		}
		for j := q.c0; j < q.c1; j++ {
			c := &n.cones[j]
			v := s.cones[j].value(q.f[0], q.f[1], q.f[2], n.t).axpy(1, c.h)
			v.a = max(v.a, math.Sqrt(float64(v.x*v.x)+float64(v.y*v.y)+float64(v.z*v.z))+spare)
			k := 1 / v.det()
			c.s, c.z = v, four{k * v.a, -k * v.x, -k * v.y, -k * v.z}
			open += c.g.dot(c.z)
		}
	}
	s.layDuals(open)
}

// layDuals puts the duals to scale, μ from t's own row or from the y that it asks for, and chooses the y that
// takes away what it can of the dual residual. With t held the shortest forces have theirs.
func (s *Solver) layDuals(open float64) {
	n := &s.way
	var push [6]float64 // A Gᵀ s⁻¹
	length := 0.0
	for i := range n.lines {
		q := &n.lines[i]
		x := q.zl - q.zh
		length += float64(x * x)
		for k := range 6 {
			push[k] += float64(q.a[k] * x)
		}
	}
	for i := range n.pulls {
		q := &n.pulls[i]
		x, y, z := 0.0, 0.0, q.z
		for j := q.c0; j < q.c1; j++ {
			c := &n.cones[j]
			x += c.z.x
			y += c.z.y
			z += float64(c.zc*c.z.a) + float64(c.fz*c.z.z)
		}
		length += float64(x*x) + float64(y*y) + float64(z*z)
		for k := range 6 {
			push[k] += float64(q.a[0][k]*x) + float64(q.a[1][k]*y) + float64(q.a[2][k]*z)
		}
	}
	mu := s.goal / (open - dot6(&s.tcol, &push))
	if !(mu > 0) || !s.opening {
		mu = 1 / (norm6(&s.tcol)*math.Sqrt(length) + math.Abs(open))
	}
	if n.quad {
		mu = 0.1
		push = s.b
		for k := range push {
			push[k] /= -mu
		}
	}
	for k := range 6 {
		n.y[k] = -mu * push[k]
	}
	for i := range n.lines {
		n.lines[i].zl *= mu
		n.lines[i].zh *= mu
	}
	for i := range n.pulls {
		n.pulls[i].z *= mu
	}
	for j := range n.cones {
		n.cones[j].z = n.cones[j].z.scale(mu)
	}
}

// spare is the least room of the starting point in its bounds, in units of force.
const spare = 0.03

// arrival is where the way ended.
type arrival uint8

const (
	nowhere    arrival = iota
	close              // the embedding can go on from the point
	pinnedDown         // the point is the answer: the tight bounds were guessed, or t is held
)

// approach goes the way, if the program has one.
func (s *Solver) approach() arrival {
	if s.np == 0 && !s.quad || s.idle && !s.quad || s.inside {
		return nowhere
	}
	n := &s.way
	s.layWay()
	early, enough := 2e-2*min(1, 4/float64(s.nl+s.np)), nearest
	if s.quad {
		early, enough = 0, finest
	}
	end := nowhere
	for range strides {
		s.iterations++
		if !n.measure(&s.tcol, &s.b, s.goal) {
			break
		}
		worst := n.quality(&s.b)
		if !(worst < 1e12) {
			break
		}
		if worst <= early {
			early = worst * 3e-2
			s.takeWay()
			s.likely()
			if s.guess(true) {
				s.pinDuals()
				s.cornered = true
				return pinnedDown
			}
		}
		if worst <= acceptable && !s.quad {
			s.takeWay()
			end = close
		}
		if worst <= enough {
			if !s.quad {
				break
			}
			s.takeWay()
			return pinnedDown
		}
		if !n.k.factor(&n.s, &n.q, n.eta, s.rank.r, s.quad) {
			break
		}
		n.dy, n.dt = n.k.solve(&n.r.g, n.r.f)
		primal, dual := n.stride(1)
		least := min(primal, dual)
		sigma := (1 - least) * (1 - least) * (1 - least)
		n.correct(1-sigma, sigma*n.mu/max(1, n.degree))
		n.dy, n.dt = n.k.solve(&n.r.g, n.r.f)
		primal, dual = n.stride(1 - sigma)
		primal, dual = min(1, 0.99*primal), min(1, 0.99*dual)
		if !(min(primal, dual) > 0.05) {
			break
		}
		n.move(primal, dual)
	}
	return end
}

// quality is what is left of residuals and gap, relative, as for the embedding.
func (n *way) quality(b *[6]float64) float64 {
	worst := max(norm6(&n.ry)/max(1, norm6(b)), n.p)
	worst = max(worst, max(n.rx, math.Abs(n.rt)))
	if n.quad {
		return max(worst, n.mu)
	}
	return max(worst, (math.Abs(n.gap)+n.pay)/max(1e-1, math.Abs(n.t)))
}

// takeWay takes over the point.
func (s *Solver) takeWay() {
	n := &s.way
	s.y, s.t, s.tau, s.kap = n.y, n.t, 1, n.mu/max(1, n.degree)
	for i := range s.lines {
		o, q := &s.lines[i], &n.lines[i]
		o.u, o.sl, o.zl, o.sh, o.zh = q.u, q.sl, q.zl, q.sh, q.zh
		if !q.hasLo {
			o.sl = 1
		}
		if !q.hasHi {
			o.sh = 1
		}
	}
	for i := range s.pulls {
		o, q := &s.pulls[i], &n.pulls[i]
		o.f, o.s, o.z = q.f, q.s, q.z
	}
	for j := range s.cones {
		s.cones[j].s, s.cones[j].z = n.cones[j].s, n.cones[j].z
	}
}
