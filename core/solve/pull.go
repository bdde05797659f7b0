package solve

import "math"

// The steps of one iteration on a Pull; its system in (F, t) is in triangle.go.

// pullResidual adds a pull's part to the residuals and finds its scaling, (6.10), (6.9).
func (s *Solver) pullResidual(i int, a *sums) bool {
	o := &s.pulls[i]
	c := s.col[s.nl+3*i : s.nl+3*i+3 : s.nl+3*i+3]
	x, y, z := o.f[0], o.f[1], o.f[2]
	rx, ry, rz := -dot6(&c[0], &s.y), -dot6(&c[1], &s.y), -dot6(&c[2], &s.y)
	if s.quad {
		rx, ry, rz = rx+x, ry+y, rz+z
	}
	for k := range 6 {
		a.ry[k] += float64(c[0][k]*x) + float64(c[1][k]*y) + float64(c[2][k]*z)
	}
	if o.half {
		o.p = z - float64(o.minZ*s.tau) - o.s
		rz -= o.z
		a.mix += float64(o.p * o.z)
		a.mu += float64(o.s * o.z)
		a.p = larger(a.p, math.Abs(o.p))
		o.w = o.z / o.s
		o.sw = math.Sqrt(o.w)
	}
	ok := true
	for j := o.c0; j < o.c1; j++ {
		k := &s.cones[j]
		v := k.value(x, y, z, s.t).axpy(s.tau, k.h)
		p := v.sub(k.s)
		a.p = larger(a.p, larger(longest(p.x, p.y, p.z), math.Abs(p.a)))
		rx -= k.z.x
		ry -= k.z.y
		rz -= float64(k.zc * k.z.a)
		if !k.flat {
			rz -= k.z.z
		}
		a.rt -= k.g.dot(k.z)
		a.mix += p.dot(k.z)
		a.mu += k.s.dot(k.z)
		ok = k.scaling() && ok
		k.res = p
		k.p = k.w.inverse().wbar(p).scale(k.ieta)
	}
	o.rx = [3]float64{rx, ry, rz}
	d := float64(x*rx) + float64(y*ry) + float64(z*rz)
	a.mix += d
	a.rx = larger(a.rx, longest(rx, ry, rz))
	a.pay += float64(o.pay * (math.Abs(rx) + math.Abs(ry) + math.Abs(rz)))
	return ok
}

// pullConstant is the right-hand side of the column of τ, less the point itself over τ, (6.16): what
// is left of it is small, while h itself is large beside a tight bound's room.
func (s *Solver) pullConstant(i int, a *side) {
	o := &s.pulls[i]
	itau := 1 / s.tau
	for j := o.c0; j < o.c1; j++ {
		c := &s.cones[j]
		c.ds = c.p.scale(-itau)
	}
	half := 0.0
	if o.half {
		half = -o.sw * o.p * itau
	}
	e := &o.e1
	o.down(e, itau)
	o.k1, o.a1 = s.pullTurn(i, half, e, a)
	for j := o.c0; j < o.c1; j++ {
		s.cones[j].one = s.cones[j].ds
	}
}

// pullSide is the right-hand side of a step that takes away part of the residuals and aims at σμ;
// correct takes the predictor's products into account, (6.15).
func (s *Solver) pullSide(i int, part, aim float64, correct bool, a *side) {
	o := &s.pulls[i]
	for j := o.c0; j < o.c1; j++ {
		c := &s.cones[j]
		if correct {
			d := circ(c.ds, c.dz).scale(-1)
			d.a += aim
			c.o = over(c.lam, d, c.det).sub(c.lam)
		} else {
			c.o = c.lam.scale(-1)
		}
		c.ds = c.o.axpy(-part, c.p)
	}
	half := 0.0
	if o.half {
		d := -float64(o.s * o.z)
		if correct {
			d += aim - float64(o.ds*o.dz)
		}
		o.o = d / o.s // W⁻² of the half-line's right-hand side
		half = (o.o - float64(part*float64(o.w*o.p))) / o.sw
	}
	e := &o.e
	o.down(e, -part)
	o.k2, o.a2 = s.pullTurn(i, half, e, a)
}

// pullFirst solves for the column of τ and adds its part of the pivot of τ, (6.16).
func (s *Solver) pullFirst(i int, y *[6]float64, t float64) (pivot float64) {
	o := &s.pulls[i]
	itau := 1 / s.tau
	o.f1 = o.back(o.k1, y, t)
	m := o.along(&o.e1, y, t)
	for j := o.c0; j < o.c1; j++ {
		c := &s.cones[j]
		c.one = c.lam.scale(itau).sub(c.dual(c.one, &m))
		pivot += c.one.dot(c.one)
	}
	if o.half {
		x := &o.ex
		o.one = float64(m[0]*x[0].a) + float64(m[1]*x[1].a) + float64(m[2]*x[2].a) + float64(m[3]*x[3].a) - o.a1 + math.Sqrt(o.s*o.z)*itau
		o.half1 = o.f1[2] + float64((o.s+o.p)*itau)
		pivot += float64(o.one * o.one)
	}
	for k := range 3 {
		o.f1[k] += float64(o.f[k] * itau)
	}
	return pivot
}

// pullSecond solves for the rest and returns (s + p)ᵀz₂ − part xᵀrx, (6.16).
func (s *Solver) pullSecond(i int, part float64, y *[6]float64, t float64) (sz float64) {
	o := &s.pulls[i]
	o.f2 = o.back(o.k2, y, t)
	m := o.along(&o.e, y, t)
	for j := o.c0; j < o.c1; j++ {
		c := &s.cones[j]
		c.dz = c.dual(c.ds, &m)
		sz += c.lam.axpy(1, c.p).dot(c.dz)
	}
	if o.half {
		x := &o.ex
		o.dz = o.a2 - (float64(m[0]*x[0].a) + float64(m[1]*x[1].a) + float64(m[2]*x[2].a) + float64(m[3]*x[3].a))
		sz += float64((math.Sqrt(o.s*o.z) + float64(o.sw*o.p)) * o.dz)
	}
	return sz - part*(float64(o.f[0]*o.rx[0])+float64(o.f[1]*o.rx[1])+float64(o.f[2]*o.rx[2]))
}

// pullStep puts the two together and returns 1/α of the longest step.
func (s *Solver) pullStep(i int, part, dtau float64) (most float64) {
	o := &s.pulls[i]
	for k := range 3 {
		o.d[k] = o.f2[k] + float64(dtau*o.f1[k])
	}
	for j := o.c0; j < o.c1; j++ {
		c := &s.cones[j]
		c.dz = c.dz.axpy(-dtau, c.one)
		c.ds = c.o.sub(c.dz)
		most = larger(most, larger(reachFrom(c.lam, c.ds, c.det), reachFrom(c.lam, c.dz, c.det)))
	}
	if o.half {
		o.dz = o.sw * (o.dz - float64(dtau*o.one))
		o.ds = o.f2[2] + float64(dtau*o.half1) + float64(part*o.p)
		most = larger(most, larger(-o.ds/o.s, -o.dz/o.z))
	}
	return most
}

func (s *Solver) pullMove(i int, a float64) {
	o, n := &s.pulls[i], &s.step
	for k := range 3 {
		o.f[k] += float64(a * o.d[k])
	}
	for j := o.c0; j < o.c1; j++ {
		c := &s.cones[j]
		// ds from F, t and τ, not by W from W⁻¹ ds: there and back costs digits
		ds := c.value(o.d[0], o.d[1], o.d[2], n.dt).axpy(n.dtau, c.h).axpy(n.part, c.res)
		c.s = c.s.axpy(a, ds)
		c.z = c.z.axpy(float64(a*c.ieta), c.w.inverse().wbar(c.dz))
	}
	if o.half {
		o.s += float64(a * o.ds)
		o.z += float64(a * o.dz)
	}
}
