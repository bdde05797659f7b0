package solve

import "math"

// The system of a Pull in (F, t),
//
//	min |W⁻¹(G F + g t − q)|², (6.12)
//
// is turned into a triangle R by orthonormal columns, so that nothing is squared: near the answer
// the normal equations would lose every digit of t's own part.

// pullFactor makes R of a pull, (6.12), and V = R⁻ᵀ Aᵀ.
func (s *Solver) pullFactor(i int) {
	o := &s.pulls[i]
	cs := s.cones[o.c0:o.c1]
	reg := o.reg
	if s.quad {
		reg += 1
	}
	reg = math.Sqrt(reg)
	w := 0.0
	if o.half {
		w = o.sw
	}
	o.ex = [4]four{{0, reg, 0, 0}, {0, 0, reg, 0}, {w, 0, 0, reg}, {}}
	for j := range cs {
		c := &cs[j]
		u := c.w.inverse()
		e := c.ieta
		k := e / (1 + c.w.a)
		c.q[0] = four{float64(e * u.x), float64(k*float64(u.x*u.x)) + e, float64(k * float64(u.x*u.y)), float64(k * float64(u.x*u.z))}
		c.q[1] = four{float64(e * u.y), c.q[0].y, float64(k*float64(u.y*u.y)) + e, float64(k * float64(u.y*u.z))}
		var g four
		if !c.flat {
			g.z = 1
		}
		g.a = c.zc
		c.q[2] = u.wbar(g).scale(e)
		c.q[3] = u.wbar(c.g).scale(e)
	}
	o.order(cs)
	o.orthogonal(cs, 0)
	o.orderRest(cs)
	for k := 1; k < 4; k++ {
		o.orthogonal(cs, k)
	}
	r := &o.r
	c := s.col[s.nl+3*i : s.nl+3*i+3 : s.nl+3*i+3]
	ix, iy, iz := 1/r[0], 1/r[4], 1/r[7]
	cx, cy, cz := &c[o.perm[0]], &c[o.perm[1]], &c[o.perm[2]]
	for k := range 6 {
		vx := cx[k] * ix
		vy := (cy[k] - float64(r[1]*vx)) * iy
		vz := (cz[k] - float64(r[2]*vx) - float64(r[5]*vy)) * iz
		o.v[k] = [3]float64{vx, vy, vz}
	}
}

// order puts the longest of the columns x y z first, orderRest then the one with more left: so the
// triangle R falls off from row to row and solving with it loses nothing.
func (o *pull) order(cs []cone) {
	o.perm = [3]int{0, 1, 2}
	for k := range 3 {
		o.len[k] = o.ex[k].dot(o.ex[k])
		for j := range cs {
			o.len[k] += cs[j].q[k].dot(cs[j].q[k])
		}
	}
	if o.len[1] > o.len[0] {
		o.swap(cs, 0, 1)
	}
	if o.len[2] > o.len[0] {
		o.swap(cs, 0, 2)
	}
}

func (o *pull) orderRest(cs []cone) {
	var d [3]float64
	for k := 1; k < 3; k++ {
		d[k] = o.ex[0].dot(o.ex[k])
		for j := range cs {
			d[k] += cs[j].q[0].dot(cs[j].q[k])
		}
	}
	if o.len[2]-float64(d[2]*d[2]) > o.len[1]-float64(d[1]*d[1]) {
		o.swap(cs, 1, 2)
	}
}

func (o *pull) swap(cs []cone, a, b int) {
	o.perm[a], o.perm[b] = o.perm[b], o.perm[a]
	o.len[a], o.len[b] = o.len[b], o.len[a]
	o.ex[a], o.ex[b] = o.ex[b], o.ex[a]
	for j := range cs {
		q := &cs[j].q
		q[a], q[b] = q[b], q[a]
	}
}

// orthogonal takes column k's parts along the columns before it, twice when little is left, so that
// the columns stay orthogonal to the last digit, and makes it 1 long.
func (o *pull) orthogonal(cs []cone, k int) {
	e := o.ex[k]
	before := e.dot(e)
	for j := range cs {
		before += cs[j].q[k].dot(cs[j].q[k])
	}
	r := [4]*float64{&o.r[k], &o.r[3+k], &o.r[5+k], &o.r[6+k]}
	for i := range k {
		*r[i] = 0
	}
	var n float64
	for range 3 {
		for i := range k {
			p := &o.ex[i]
			d := e.dot(*p)
			for j := range cs {
				d += cs[j].q[k].dot(cs[j].q[i])
			}
			*r[i] += d
			e = e.axpy(-d, *p)
			for j := range cs {
				c := &cs[j]
				c.q[k] = c.q[k].axpy(-d, c.q[i])
			}
		}
		n = e.dot(e)
		for j := range cs {
			n += cs[j].q[k].dot(cs[j].q[k])
		}
		if k == 0 || n > 0.1*before || n == 0 {
			break
		}
		before = n
	}
	n = math.Sqrt(n)
	*r[k] = n
	if n > 0 {
		n = 1 / n
	}
	o.ex[k] = e.scale(n)
	for j := range cs {
		c := &cs[j]
		c.q[k] = c.q[k].scale(n)
	}
}

// reduce adds a pull's part to the small system, (6.14).
func (o *pull) reduce(a *sums) {
	r := &o.r
	m := 0
	for k := range 6 {
		vx, vy, vz := o.v[k][0], o.v[k][1], o.v[k][2]
		a.q[k] -= float64(vx*r[3]) + float64(vy*r[6]) + float64(vz*r[8])
		for l := 0; l <= k; l++ {
			u := &o.v[l]
			a.s[m] += float64(vx*u[0]) + float64(vy*u[1]) + float64(vz*u[2])
			m++
		}
	}
	a.eta += float64(r[9] * r[9])
}

// pullTurn takes from the right-hand side, ds and the half-line's, its part along the orthonormal
// columns of F, adds the pull's part of the small system's right-hand side and returns that part's
// coordinates with e added, and what is left of the half-line's, (6.14).
func (s *Solver) pullTurn(i int, half float64, e *[3]float64, a *side) (k [3]float64, left float64) {
	o := &s.pulls[i]
	cs := s.cones[o.c0:o.c1]
	h := four{a: half}
	var kx, ky, kz, kt float64
	kx = h.dot(o.ex[0])
	for j := range cs {
		kx += cs[j].ds.dot(cs[j].q[0])
	}
	h = h.axpy(-kx, o.ex[0])
	ky = h.dot(o.ex[1])
	for j := range cs {
		c := &cs[j]
		c.ds = c.ds.axpy(-kx, c.q[0])
		ky += c.ds.dot(c.q[1])
	}
	h = h.axpy(-ky, o.ex[1])
	kz = h.dot(o.ex[2])
	for j := range cs {
		c := &cs[j]
		c.ds = c.ds.axpy(-ky, c.q[1])
		kz += c.ds.dot(c.q[2])
	}
	h = h.axpy(-kz, o.ex[2])
	kt = h.dot(o.ex[3])
	for j := range cs {
		c := &cs[j]
		c.ds = c.ds.axpy(-kz, c.q[2])
		kt += c.ds.dot(c.q[3])
	}
	r := &o.r
	a.f += float64(r[9]*kt) - (float64(r[3]*e[0]) + float64(r[6]*e[1]) + float64(r[8]*e[2]))
	k = [3]float64{kx + e[0], ky + e[1], kz + e[2]}
	for m := range 6 {
		v := &o.v[m]
		a.g[m] -= float64(v[0]*k[0]) + float64(v[1]*k[1]) + float64(v[2]*k[2])
	}
	return k, h.a
}

// dual turns what pullTurn left of a right-hand side into W dz, (6.14): the coordinates e + V y are
// all that the columns of F add, so that nothing large is taken from its like.
func (c *cone) dual(left four, e *[4]float64) four {
	return left.axpy(-e[0], c.q[0]).axpy(-e[1], c.q[1]).axpy(-e[2], c.q[2]).axpy(-e[3], c.q[3])
}

// along is e + V y, and r_tt t.
func (o *pull) along(e *[3]float64, y *[6]float64, t float64) (m [4]float64) {
	a, b, c := e[0], e[1], e[2]
	for i := range 6 {
		v := &o.v[i]
		a += float64(v[0] * y[i])
		b += float64(v[1] * y[i])
		c += float64(v[2] * y[i])
	}
	return [4]float64{a, b, c, o.r[9] * t}
}

// back is F = R⁻¹ (k + V y − r_t t), (6.14).
func (o *pull) back(k [3]float64, y *[6]float64, t float64) [3]float64 {
	r := &o.r
	a, b, c := k[0]-float64(r[3]*t), k[1]-float64(r[6]*t), k[2]-float64(r[8]*t)
	for i := range 6 {
		v := &o.v[i]
		a += float64(v[0] * y[i])
		b += float64(v[1] * y[i])
		c += float64(v[2] * y[i])
	}
	z := c / r[7]
	y1 := (b - float64(r[5]*z)) / r[4]
	var f [3]float64
	f[o.perm[0]], f[o.perm[1]], f[o.perm[2]] = (a-float64(r[1]*y1)-float64(r[2]*z))/r[0], y1, z
	return f
}

// down sets e = k R⁻ᵀ rx.
func (o *pull) down(e *[3]float64, k float64) {
	r := &o.r
	e[0] = float64(k*o.rx[o.perm[0]]) / r[0]
	e[1] = (float64(k*o.rx[o.perm[1]]) - float64(r[1]*e[0])) / r[4]
	e[2] = (float64(k*o.rx[o.perm[2]]) - float64(r[2]*e[0]) - float64(r[5]*e[1])) / r[7]
}
