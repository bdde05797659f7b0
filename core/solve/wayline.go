package solve

import "math"

// The passes of one step over the lines, as for the pulls.

// wayLine is a line on the way.
type wayLine struct {
	a                  [6]float64
	lo, hi, ht         float64
	hasLo, hasHi       bool
	u, d, rx           float64
	sl, zl, sh, zh     float64 // slacks and duals of the two bounds
	pl, ph, wl, wh     float64 // residuals, z/s
	ol, oh             float64 // right-hand sides of dz + z/s ds
	dsl, dzl, dsh, dzh float64
	inv, q, m          float64 // 1/(wl + wh + Q), right-hand side, column of t
}

// layLine lays out a line at the shortest forces and opens t for it.
func (s *Solver) layLine(i int) {
	n := &s.way
	o, q := &s.lines[i], &n.lines[i]
	*q = wayLine{a: s.col[i], lo: o.lo, hi: o.hi, ht: o.ht, hasLo: o.hasLo > 0, hasHi: o.hasHi > 0}
	q.u = dot6(&q.a, &s.b)
	if q.hasLo {
		n.degree++
	}
	if q.hasHi {
		n.degree++
		if q.ht > 0 {
			n.t = max(n.t, (q.u+spare-q.hi)/q.ht)
		}
	}
}

// start moves its slacks inside and returns its share of t's own row, hᵀ s⁻¹.
func (q *wayLine) start(t float64) float64 {
	if q.hasLo {
		q.sl = max(q.u-q.lo, spare)
		q.zl = 1 / q.sl
	}
	if q.hasHi {
		q.sh = max(q.hi+float64(q.ht*t)-q.u, spare)
		q.zh = 1 / q.sh
	}
	return float64(q.ht * q.zh)
}

// measureLines is measure for the lines.
func (n *way) measureLines() {
	y := &n.y
	for i := range n.lines {
		o := &n.lines[i]
		rx := -dot6(&o.a, y) - o.zl + o.zh
		h := 1e-12
		if n.quad {
			rx += o.u
			h = 1
		}
		o.rx = rx
		q, both := -rx, 0.0
		o.m = 0
		if o.hasLo {
			o.pl = o.u - o.lo - o.sl
			o.wl = o.zl / o.sl
			o.ol = -o.zl - float64(o.wl*o.pl)
			h += o.wl
			q += o.ol
			n.p = larger(n.p, math.Abs(o.pl))
			n.mu += float64(o.sl * o.zl)
			n.gap += float64(o.pl * o.zl)
		}
		if o.hasHi {
			o.ph = o.hi + float64(o.ht*n.t) - o.u - o.sh
			o.wh = o.zh / o.sh
			o.oh = -o.zh - float64(o.wh*o.ph)
			both = float64(h*o.wh) * float64(o.ht*o.ht)
			h += o.wh
			q -= o.oh
			o.m = -float64(o.wh * o.ht)
			n.p = larger(n.p, math.Abs(o.ph))
			n.mu += float64(o.sh * o.zh)
			n.gap += float64(o.ph * o.zh)
			n.rt -= float64(o.ht * o.zh)
			n.r.f += float64(o.ht * o.oh)
		}
		n.gap += float64(o.u * rx)
		n.rx = larger(n.rx, math.Abs(rx))
		n.pay += math.Abs(rx)
		o.inv = 1 / h
		n.eta += float64(both * o.inv)
		m := float64(o.m * o.inv)
		at := 0
		for k := range 6 {
			c := o.a[k]
			n.ry[k] += float64(c * o.u)
			n.q[k] -= float64(c * m)
			c *= o.inv
			for l := 0; l <= k; l++ {
				n.s[at] += float64(c * o.a[l])
				at++
			}
		}
		n.lineSide(o, q)
	}
}

// lineSide adds a line's part of the small right-hand side.
func (n *way) lineSide(o *wayLine, q float64) {
	o.q = q
	q *= o.inv
	n.r.f -= float64(o.m * q)
	for k := range 6 {
		n.r.g[k] -= float64(o.a[k] * q)
	}
}

// correctLines is correct for the lines.
func (n *way) correctLines(part, aim float64) {
	for i := range n.lines {
		o := &n.lines[i]
		q := -part * o.rx
		if o.hasLo {
			o.ol = (aim-float64(o.dsl*o.dzl))/o.sl - o.zl - float64(part*float64(o.wl*o.pl))
			q += o.ol
		}
		if o.hasHi {
			o.oh = (aim-float64(o.dsh*o.dzh))/o.sh - o.zh - float64(part*float64(o.wh*o.ph))
			q -= o.oh
			n.r.f += float64(o.ht * o.oh)
		}
		n.lineSide(o, q)
	}
}

// strideLines is stride for the lines.
func (n *way) strideLines(part, primal, dual float64) (float64, float64) {
	for i := range n.lines {
		o := &n.lines[i]
		o.d = (o.q + dot6(&o.a, &n.dy) - float64(o.m*n.dt)) * o.inv
		if o.hasLo {
			o.dsl = o.d + float64(part*o.pl)
			o.dzl = o.ol - float64(o.wl*o.d)
			primal, dual = least(primal, o.sl, o.dsl), least(dual, o.zl, o.dzl)
		}
		if o.hasHi {
			d := float64(o.ht*n.dt) - o.d
			o.dsh = d + float64(part*o.ph)
			o.dzh = o.oh - float64(o.wh*d)
			primal, dual = least(primal, o.sh, o.dsh), least(dual, o.zh, o.dzh)
		}
	}
	return primal, dual
}

// least is α, or the α at which l + α d is 0.
func least(alpha, l, d float64) float64 {
	if l+float64(alpha*d) < 0 {
		return -l / d
	}
	return alpha
}

// moveLines takes the steps of the lines.
func (n *way) moveLines(primal, dual float64) {
	for i := range n.lines {
		o := &n.lines[i]
		o.u += float64(primal * o.d)
		o.sl += float64(primal * o.dsl)
		o.zl += float64(dual * o.dzl)
		o.sh += float64(primal * o.dsh)
		o.zh += float64(dual * o.dzh)
	}
}
