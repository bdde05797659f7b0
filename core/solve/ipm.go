package solve

import (
	"math"

	"cohoist/core/vec"
)

// gap is the accuracy that the interior-point method aims at, relative; good is what it may fall
// back to when rounding stops it first.
const (
	aim        = 1e-11
	good       = 2e-7
	iterations = 80
)

// value gives G x + g t of a cone.
func (c *soc) value(f []float64, t float64) four {
	o := four{float64(c.z0*f[2]) + float64(c.g[0]*t), f[0] + float64(c.g[1]*t), f[1] + float64(c.g[2]*t), f[2] + float64(c.g[3]*t)}
	if c.flat {
		o[3] = 0
	}
	return o
}

// back adds k Gᵀ a to the three forces and returns k g·a.
func (c *soc) back(a *four, k float64, f []float64) float64 {
	f[0] += float64(k * a[1])
	f[1] += float64(k * a[2])
	f[2] += k * float64(c.z0*a[0])
	if !c.flat {
		f[2] += float64(k * a[3])
	}
	return k * dot(&c.g, a)
}

func (s *Solver) pull(x []float64, i int) []float64 { v := s.nl + 3*i; return x[v : v+3 : v+3] }

// run is the method itself: homogeneous self-dual embedding for the linear goal, the plain
// infeasible method (τ = 1) for the quadratic one. It returns the status; the point stays in s.
func (s *Solver) run() (Status, string) {
	for i := range s.x {
		s.x[i] = 0
	}
	s.y, s.tau, s.ka = [6]float64{}, 1, 1
	if !s.fixt {
		s.t = 0
	}
	for k := range s.half {
		s.half[k].s, s.half[k].z = 1, 1
	}
	for k := range s.soc {
		s.soc[k].s, s.soc[k].z = four{1}, four{1}
	}
	cones := float64(len(s.half) + len(s.soc))
	s.embed = !s.fixt
	if s.fixt {
		s.ka = 0
	}
	nb := norm6(s.b)
	best, good := math.Inf(1), good
	if s.fixt {
		good = 1e-5
	}
	for s.iter = 0; ; s.iter++ {
		// residuals
		for j := range s.rx {
			s.rx[j] = float64(s.quad*s.x[j]) - dot6(&s.a[j], &s.y)
		}
		s.rt = float64(s.ct*s.tau) - dot6(&s.at, &s.y)
		for i := range s.r {
			s.ry[i] = float64(s.at[i]*s.t) - float64(s.b[i]*s.tau)
		}
		for j := range s.x {
			for i := range s.r {
				s.ry[i] += float64(s.a[j][i] * s.x[j])
			}
		}
		mu, rz, hz, nz := 0.0, 0.0, 0.0, 0.0
		for k := range s.half {
			h := &s.half[k]
			h.p = float64(h.h*s.tau) + float64(h.a*s.x[h.v]) + float64(h.g*s.t) - h.s
			s.rx[h.v] -= float64(h.a * h.z)
			s.rt -= float64(h.g * h.z)
			mu += float64(h.s * h.z)
			hz += float64(h.h * h.z)
			rz = math.Max(rz, math.Abs(h.p))
			nz = math.Max(nz, h.s)
		}
		for k := range s.soc {
			c := &s.soc[k]
			v := c.value(s.pull(s.x, c.pull), s.t)
			for i := range 4 {
				c.p[i] = float64(c.h[i]*s.tau) + v[i] - c.s[i]
				rz = math.Max(rz, math.Abs(c.p[i]))
			}
			s.rt += c.back(&c.z, -1, s.pull(s.rx, c.pull))
			mu += dot(&c.s, &c.z)
			hz += dot(&c.h, &c.z)
			nz = math.Max(nz, c.s[0])
		}
		r4 := float64(-s.ct*s.t) + dot6(&s.b, &s.y) - hz - s.ka
		nu := cones
		if s.embed {
			mu += float64(s.tau * s.ka)
			nu++
		}
		mu /= nu
		rxn := math.Abs(s.rt)
		if s.fixt {
			rxn = 0
		}
		for _, v := range s.rx {
			rxn = math.Max(rxn, math.Abs(v))
		}
		ryn := norm6(s.ry)
		if math.IsNaN(mu) || math.IsNaN(rxn) {
			return Unsolved, "the numbers of the plan are too far apart for the arithmetic"
		}
		// stop?
		primal := math.Max(ryn/math.Max(1, nb), rz/math.Max(1, nz/s.tau)) / s.tau
		dual := rxn / s.tau
		obj, bound := s.ct*s.t/s.tau, (dot6(&s.b, &s.y)-hz)/s.tau
		rel := math.Abs(obj-bound) / math.Max(1e-3, math.Max(math.Abs(obj), math.Abs(bound)))
		if s.fixt {
			rel = mu * nu / math.Max(1e-3, s.size())
		}
		worst := math.Max(primal, math.Max(dual, rel))
		if worst <= aim {
			return Optimal, ""
		}
		if s.embed {
			if by := dot6(&s.b, &s.y) - hz; by > 0 && math.Max(rxn, 0) <= 1e-10*by && s.tau < s.ka {
				return Infeasible, ""
			}
			if ct := -s.ct * s.t; ct > 0 && math.Max(ryn, rz) <= 1e-9*ct && s.tau < s.ka {
				return Unbounded, ""
			}
		}
		if best <= good && worst > 0.3*best {
			if worst > best {
				s.restore()
			}
			return Optimal, ""
		}
		if s.iter >= iterations {
			return Unsolved, "the solver did not come to an end"
		}
		if worst < best {
			best = worst
			s.save()
		}
		if s.embed && worst < 1e-3 && s.ka < 1e-3*s.tau {
			s.land()
			continue
		}
		for k := range s.soc {
			if !s.soc[k].scale() {
				if best <= good {
					s.restore()
					return Optimal, ""
				}
				return Unsolved, "a bound is met to the last digit before the answer is found"
			}
		}
		if !s.newton() {
			if best <= good {
				s.restore()
				return Optimal, ""
			}
			return Unsolved, "the balance is too nearly singular"
		}
		if s.embed {
			s.constant()
		}
		// predictor
		s.direction(1, 0, mu, r4, false)
		alpha := s.length(1)
		sigma := math.Pow(1-alpha, 3)
		s.direction(1-sigma, sigma, mu, r4, true)
		alpha = s.length(0.99)
		if alpha < 1e-9 {
			if best <= good {
				s.restore()
				return Optimal, ""
			}
			return Unsolved, "the solver makes no more progress"
		}
		s.move(alpha)
	}
}

func (s *Solver) size() float64 {
	sum := 0.0
	for _, v := range s.x {
		sum += float64(v * v)
	}
	return s.quad * sum / 2
}

// constant solves for the direction that τ asks for, (6.13).
func (s *Solver) constant() {
	f := s.f1
	for j := range f {
		f[j] = 0
	}
	ft := -s.ct
	for k := range s.half {
		h := &s.half[k]
		w := h.z / h.s * h.h
		f[h.v] -= float64(h.a * w)
		ft -= float64(h.g * w)
	}
	for k := range s.soc {
		c := &s.soc[k]
		w := c.divW2(&c.h)
		ft += c.back(&w, -1, s.pull(f, c.pull))
	}
	s.t1, s.y1 = s.refined(f, ft, s.b, s.x1)
}

// dxs etc.: the step in x, y, τ, κ stays in x2, t2, y2, dtau, dka.
var _ = vec.V3{}

// direction finds the Newton step that takes away part of the residuals and aims at σμ, (6.14).
func (s *Solver) direction(part, sigma, mu, r4 float64, correct bool) {
	f := s.f1
	for j := range f {
		f[j] = -part * s.rx[j]
	}
	ft := -part * s.rt
	for k := range s.half {
		h := &s.half[k]
		d := -h.s*h.z + sigma*mu
		if correct {
			d -= float64(h.ds * h.dz)
		}
		// rhs of G dx + h dτ + W² dz = q
		h.w2 = -part*h.p + d/h.z
		w := h.z / h.s * h.w2
		f[h.v] += float64(h.a * w)
		ft += float64(h.g * w)
	}
	for k := range s.soc {
		c := &s.soc[k]
		d := circ(&c.lam, &c.lam)
		for i := range d {
			d[i] = -d[i]
		}
		d[0] += sigma * mu
		if correct {
			a, b := c.divW(&c.ds), c.mulW(&c.dz)
			e := circ(&a, &b)
			for i := range d {
				d[i] -= e[i]
			}
		}
		o := c.over(&d)
		o = c.mulW(&o)
		for i := range o {
			o[i] -= part * c.p[i]
		}
		c.ds = o // kept for step below
		w := c.divW2(&o)
		ft += c.back(&w, 1, s.pull(f, c.pull))
	}
	var g [6]float64
	for i := range s.r {
		g[i] = -part * s.ry[i]
	}
	s.t2, s.y2 = s.refined(f, ft, g, s.x2)
	dtau := 0.0
	dk := -s.tau*s.ka + sigma*mu
	if correct {
		dk -= s.dtau * s.dka
	}
	if s.embed {
		num := -part*r4 + dk/s.tau + s.ct*s.t2 - dot6(&s.b, &s.y2)
		den := -s.ct*s.t1 + dot6(&s.b, &s.y1) + s.ka/s.tau
		for k := range s.half {
			h := &s.half[k]
			w := h.z / h.s
			num += h.h * w * (h.w2 - float64(h.a*s.x2[h.v]) - float64(h.g*s.t2))
			den -= h.h * w * (-h.h - float64(h.a*s.x1[h.v]) - float64(h.g*s.t1))
		}
		for k := range s.soc {
			c := &s.soc[k]
			v1, v2 := c.value(s.pull(s.x1, c.pull), s.t1), c.value(s.pull(s.x2, c.pull), s.t2)
			for i := range 4 {
				v1[i] = -c.h[i] - v1[i]
				v2[i] = c.ds[i] - v2[i]
			}
			v1, v2 = c.divW2(&v1), c.divW2(&v2)
			num += dot(&c.h, &v2)
			den -= dot(&c.h, &v1)
		}
		dtau = num / den
		for j := range s.x2 {
			s.x2[j] += float64(dtau * s.x1[j])
		}
		s.t2 += dtau * s.t1
		for i := range s.r {
			s.y2[i] += float64(dtau * s.y1[i])
		}
	}
	s.dtau, s.dka = dtau, (dk-float64(s.ka*dtau))/s.tau
	for k := range s.half {
		h := &s.half[k]
		gx := float64(h.a*s.x2[h.v]) + float64(h.g*s.t2) + float64(h.h*dtau)
		h.dz = h.z / h.s * (h.w2 - gx)
		h.ds = gx + part*h.p
	}
	for k := range s.soc {
		c := &s.soc[k]
		v := c.value(s.pull(s.x2, c.pull), s.t2)
		var o four
		for i := range 4 {
			v[i] += float64(c.h[i] * dtau)
			o[i] = c.ds[i] - v[i]
			c.ds[i] = v[i] + float64(part*c.p[i])
		}
		c.dz = c.divW2(&o)
	}
}

// length is how far the step may go, times back.
func (s *Solver) length(back float64) float64 {
	a := 1 / back
	for k := range s.half {
		h := &s.half[k]
		if h.ds < 0 {
			a = math.Min(a, -h.s/h.ds)
		}
		if h.dz < 0 {
			a = math.Min(a, -h.z/h.dz)
		}
	}
	for k := range s.soc {
		c := &s.soc[k]
		a = step(&c.s, &c.ds, a)
		a = step(&c.z, &c.dz, a)
	}
	if s.embed {
		if s.dtau < 0 {
			a = math.Min(a, -s.tau/s.dtau)
		}
		if s.dka < 0 {
			a = math.Min(a, -s.ka/s.dka)
		}
	}
	return math.Min(1, a*back)
}

func (s *Solver) move(a float64) {
	for j := range s.x {
		s.x[j] += float64(a * s.x2[j])
	}
	s.t += a * s.t2
	for i := range s.r {
		s.y[i] += float64(a * s.y2[i])
	}
	for k := range s.half {
		h := &s.half[k]
		h.s += a * h.ds
		h.z += a * h.dz
	}
	for k := range s.soc {
		c := &s.soc[k]
		for i := range 4 {
			c.s[i] += float64(a * c.ds[i])
			c.z[i] += float64(a * c.dz[i])
		}
	}
	if s.embed {
		s.tau += a * s.dtau
		s.ka += a * s.dka
	}
}

// land leaves the embedding once an answer is certain to be near: everything is divided by τ, which
// stays 1 from then on. The last digits are cleaner without its direction.
func (s *Solver) land() {
	k := 1 / s.tau
	for j := range s.x {
		s.x[j] *= k
	}
	s.t *= k
	for i := range s.y {
		s.y[i] *= k
	}
	for i := range s.half {
		s.half[i].s *= k
		s.half[i].z *= k
	}
	for i := range s.soc {
		for j := range 4 {
			s.soc[i].s[j] *= k
			s.soc[i].z[j] *= k
		}
	}
	s.tau, s.ka, s.embed = 1, 0, false
}

// save keeps the present point, the best so far.
func (s *Solver) save() {
	k := &s.kept
	k.x = append(k.x[:0], s.x...)
	k.half = append(k.half[:0], s.half...)
	k.soc = append(k.soc[:0], s.soc...)
	k.t, k.tau, k.ka, k.y = s.t, s.tau, s.ka, s.y
}

// restore goes back to it.
func (s *Solver) restore() {
	k := &s.kept
	copy(s.x, k.x)
	copy(s.half, k.half)
	copy(s.soc, k.soc)
	s.t, s.tau, s.ka, s.y = k.t, k.tau, k.ka, k.y
}
