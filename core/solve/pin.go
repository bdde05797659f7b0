package solve

import "math"

// pins is the most Newton steps that pin takes, each of which doubles the digits.
const pins = 8

// settled is the step, in units of force, after which the next, its square, would be rounding.
const settled = 1e-6

// plainly is the step after which bounds that are broken by ten times as much are mended at once.
const plainly = 1e-2

// rounds is how often the set of tight bounds is mended before the guess is given up.
const rounds = 4

// pin finds the optimum on its tight bounds to the last digit, by Newton's method on the equations
// that they, the balance and the duals make, (6.21). An interior point sees a curved bound's
// forces only to the root of its gap. It tells whether it got there; forces, y and t are then moved
// in place, with τ = 1. With mend, bounds that turn out otherwise are added and let go.
func (s *Solver) pin(mend bool) bool {
	s.save()
	if s.guess(mend) {
		return true
	}
	s.restore()
	return false
}

// guess is pin without a way back.
func (s *Solver) guess(mend bool) bool {
	s.tangents = room(s.tangents, s.np)
	s.unhomogenise()
	s.collect()
	for range rounds {
		switch s.converge(mend) {
		case kept:
			return true
		case mended:
			s.collect()
			continue
		}
		break
	}
	return false
}

// converge repeats pinStep until nothing moves, or until a bound is clearly broken that can be mended.
func (s *Solver) converge(mend bool) verdict {
	last := math.Inf(1)
	looked := !mend
	for range pins {
		move := s.pinStep(mend)
		switch {
		case !(move < 1) || move > 0.5*last && move > settled:
			return lost
		case move <= settled:
			return s.pinned(mend, 1e-10)
		case !looked && move <= plainly:
			looked = true
			if v := s.pinned(true, 10*move); v != kept {
				return v
			}
		}
		last = move
	}
	return lost
}

// collect lists the tight bounds of every pull, three at most.
func (s *Solver) collect() {
	for i := range s.pulls {
		o, k := &s.pulls[i], &s.tangents[i]
		k.n, k.tip = 0, -1
		if o.tight {
			k.who[0], k.mult[0], k.n = -1, o.z, 1
			for j := o.c0; j < o.c1; j++ {
				if c := &s.cones[j]; c.pointed() && float64(c.zc*o.minZ)+c.h.a <= 1e-9 {
					k.tip = j
				}
			}
		}
		for j := o.c0; j < o.c1; j++ {
			if c := &s.cones[j]; c.tight && k.n < 3 {
				k.who[k.n], k.mult[k.n] = j, c.z.a
				k.n++
			}
		}
	}
}

// unhomogenise divides the point by τ.
func (s *Solver) unhomogenise() {
	k := 1 / s.tau
	for i := range s.lines {
		o := &s.lines[i]
		o.u, o.zl, o.zh = o.u*k, o.zl*k, o.zh*k
	}
	for i := range s.pulls {
		o := &s.pulls[i]
		o.z *= k
		for a := range 3 {
			o.f[a] *= k
		}
		for j := o.c0; j < o.c1; j++ {
			s.cones[j].z = s.cones[j].z.scale(k)
		}
	}
	for a := range 6 {
		s.y[a] *= k
	}
	s.t, s.tau, s.kap = s.t*k, 1, 0
}

// pinStep takes one Newton step and returns its size, of forces in their units and t, and with
// proof of y relative to itself; infinite when there is none.
func (s *Solver) pinStep(proof bool) float64 {
	n := &s.step
	a := &n.a
	a.s, a.eta = [21]float64{}, 0
	s.tangentTT = 0
	a.q = s.tcol
	r := side{f: dot6(&s.tcol, &s.y) - s.goal}
	for k := range 6 {
		r.g[k] = s.b[k] - float64(s.tcol[k]*s.t)
	}
	for i := range s.lines {
		s.pinLine(i, a, &r)
	}
	for i := range s.pulls {
		if !s.touch(i, &s.pulls[i].f, s.t) {
			return math.Inf(1)
		}
		s.pinPull(i, a, &r)
	}
	a.eta += s.tangentTT
	if !n.k.factor(&a.s, &a.q, a.eta, s.rank.r, false) {
		return math.Inf(1)
	}
	dy, dt := n.k.solve(&r.g, r.f)
	size := math.Abs(dt)
	if proof {
		size = max(size, norm6(&dy)/max(1e-300, norm6(&s.y)))
	}
	for i := range s.lines {
		o := &s.lines[i]
		du := o.zero + float64(o.with*dt) + float64(o.ih*dot6(&s.col[i], &dy))
		o.u += du
		size = max(size, math.Abs(du))
	}
	for i := range s.pulls {
		size = larger(s.pinMove(i, &dy, dt), size)
	}
	for k := range 6 {
		s.y[k] += dy[k]
	}
	s.t += dt
	return size
}

// pinLine: at a bound it goes with it, between its bounds it has all the room.
func (s *Solver) pinLine(i int, a *sums, r *side) {
	o, c := &s.lines[i], &s.col[i]
	o.ih = 0
	switch {
	case o.atHi:
		o.zero, o.with = o.hi+float64(o.ht*s.t)-o.u, o.ht
	case o.atLo:
		o.zero, o.with = o.lo-o.u, 0
	default:
		o.ih = 1 / leaning
		o.zero, o.with = dot6(c, &s.y)/leaning, 0
	}
	ay := dot6(c, &s.y)
	m := 0
	for k := range 6 {
		r.g[k] -= float64(c[k] * (o.u + o.zero))
		a.q[k] += float64(c[k] * o.with)
		v := c[k] * o.ih
		for l := 0; l <= k; l++ {
			a.s[m] += float64(v * c[l])
			m++
		}
	}
	r.f += float64(o.with * ay)
}

// pinPull adds a pull's part of the small system, (6.21).
func (s *Solver) pinPull(i int, a *sums, r *side) {
	o, k := &s.pulls[i], &s.tangents[i]
	c := s.col[s.nl+3*i : s.nl+3*i+3 : s.nl+3*i+3]
	cx, cy, cz := &c[0], &c[1], &c[2]
	k.r = [3]float64{dot6(cx, &s.y), dot6(cy, &s.y), dot6(cz, &s.y)}
	h0, ht := mul3(&k.h, &k.zero), mul3(&k.h, &k.with)
	for b := range 3 {
		h0[b] = k.r[b] - h0[b]
		ht[b] += k.hft[b]
	}
	for m := k.n; m < 3; m++ {
		u, v := &k.u[m], &k.au[m]
		d0, dt := dot3(u, &h0), dot3(u, &ht)
		for b := range 3 {
			k.zero[b] += float64(d0 * u[b])
			k.with[b] -= float64(dt * u[b])
		}
		for d := range 6 {
			v[d] = float64(cx[d]*u[0]) + float64(cy[d]*u[1]) + float64(cz[d]*u[2])
		}
		at := 0
		for d := range 6 {
			w := v[d]
			for l := 0; l <= d; l++ {
				a.s[at] += float64(w * v[l])
				at++
			}
		}
	}
	h0, ht = mul3(&k.h, &k.zero), mul3(&k.h, &k.with)
	for b := range 3 {
		h0[b] -= k.r[b]
	}
	a.eta += dot3(&k.with, &ht) + float64(2*dot3(&k.hft, &k.with))
	r.f -= dot3(&k.with, &h0) + dot3(&k.hft, &k.zero)
	f := [3]float64{o.f[0] + k.zero[0], o.f[1] + k.zero[1], o.f[2] + k.zero[2]}
	w := &k.with
	for d := range 6 {
		r.g[d] -= float64(cx[d]*f[0]) + float64(cy[d]*f[1]) + float64(cz[d]*f[2])
		a.q[d] += float64(cx[d]*w[0]) + float64(cy[d]*w[1]) + float64(cz[d]*w[2])
	}
}

// pinMove moves a pull and sets its multipliers anew.
func (s *Solver) pinMove(i int, dy *[6]float64, dt float64) float64 {
	o, k := &s.pulls[i], &s.tangents[i]
	d := k.zero
	for m := k.n; m < 3; m++ {
		u := &k.u[m]
		e := dot6(&k.au[m], dy)
		for b := range 3 {
			d[b] += float64(e * u[b])
		}
	}
	for b := range 3 {
		d[b] += float64(k.with[b] * dt)
		o.f[b] += d[b]
	}
	if k.n > 0 {
		c := s.col[s.nl+3*i : s.nl+3*i+3 : s.nl+3*i+3]
		left := [3]float64{dot6(&c[0], dy), dot6(&c[1], dy), dot6(&c[2], dy)}
		hd := mul3(&k.h, &d)
		for b := range 3 {
			left[b] += k.r[b] - hd[b] - float64(k.hft[b]*dt)
		}
		for a := k.n - 1; a >= 0; a-- { // Lᵀ m = qᵀ left
			v := dot3(&k.q[a], &left)
			for b := a + 1; b < k.n; b++ {
				v -= float64(k.l[b][a] * k.mult[b])
			}
			k.mult[a] = v / k.l[a][a]
		}
	}
	return longest(d[0], d[1], d[2])
}
