package solve

import "math"

// tight marks the bounds that hold with equality at the best t, by complementarity: their duals are
// at least clear times their slack, (6.20).
func (s *Solver) tight(clear float64) {
	for i := range s.lines {
		o := &s.lines[i]
		o.atHi = o.hasHi > 0 && o.zh > clear*o.sh
		o.atLo = !o.atHi && o.hasLo > 0 && o.zl > clear*o.sl
	}
	for i := range s.pulls {
		o := &s.pulls[i]
		o.tight = o.half && o.z > clear*o.s
		for j := o.c0; j < o.c1; j++ {
			c := &s.cones[j]
			n := math.Sqrt(float64(c.s.x*c.s.x) + float64(c.s.y*c.s.y) + float64(c.s.z*c.s.z))
			c.tight = c.z.a > clear*(c.s.a-n)
		}
	}
}

// leaning is the weight that keeps forces that no tight bound holds where they are, beside
// curvatures of about 1; repeated steps take its pull away.
const leaning = 1e-7

// tangent is the state of a pull on its tight bounds, (6.21).
type tangent struct {
	n          int           // tight bounds that count
	q          [3][3]float64 // orthonormal: first their normals, then the tangents
	l          [3][3]float64 // normals in terms of q
	mult       [3]float64
	who        [3]int // cone, −1 for the half-line
	tip        int    // cone that the force stands in the tip of: nothing moves; −1 none
	h          [6]float64
	hft        [3]float64
	u          [3][3]float64 // from n on: the tangents, conjugate, uᵀ (H + leaning) u = 1
	au         [3][6]float64 // their wrenches
	zero, with [3]float64    // step of F at dt = 0, and per dt
	r          [3]float64    // Aᵀ y
}

// mul3 is a symmetric matrix xx xy yy xz yz zz times a vector.
func mul3(m *[6]float64, v *[3]float64) [3]float64 {
	return [3]float64{
		float64(m[0]*v[0]) + float64(m[1]*v[1]) + float64(m[3]*v[2]),
		float64(m[1]*v[0]) + float64(m[2]*v[1]) + float64(m[4]*v[2]),
		float64(m[3]*v[0]) + float64(m[4]*v[1]) + float64(m[5]*v[2]),
	}
}

func dot3(a, b *[3]float64) float64 {
	return float64(a[0]*b[0]) + float64(a[1]*b[1]) + float64(a[2]*b[2])
}

// touch lays out a pull's tight bounds at its force f and at t; false when one has its tip there.
func (s *Solver) touch(i int, f *[3]float64, t float64) bool {
	o := &s.pulls[i]
	k := &s.tangents[i]
	if k.tip >= 0 {
		s.stand(o, k)
		return true
	}
	mult, who := k.mult, k.who
	count := k.n
	k.n, k.h, k.hft, k.zero, k.with = 0, [6]float64{}, [3]float64{}, [3]float64{}, [3]float64{}
	var c0, ct [3]float64
	htt := 0.0
	for j := range count {
		g, value, rate := [3]float64{0, 0, -1}, o.minZ-f[2], 0.0
		if who[j] >= 0 {
			c := &s.cones[who[j]]
			v := four{float64(c.zc*f[2]) + float64(c.g.a*t) + c.h.a, f[0] + float64(c.g.x*t) + c.h.x, f[1] + float64(c.g.y*t) + c.h.y, f[2] + float64(c.g.z*t) + c.h.z}
			if c.flat {
				v.z = 0
			}
			n := math.Sqrt(float64(v.x*v.x) + float64(v.y*v.y) + float64(v.z*v.z))
			if !(n > 1e-7) {
				if c.pointed() && math.Abs(v.a) <= 1e-7 {
					k.tip = who[j]
					s.stand(o, k)
					return true
				}
				return false
			}
			x, y, z := v.x/n, v.y/n, v.z/n
			g = [3]float64{x, y, z - c.zc}
			value = n - v.a
			rate = float64(x*c.g.x) + float64(y*c.g.y) + float64(z*c.g.z) - c.g.a
			m := mult[j] / n
			zz := m * (1 - float64(z*z))
			if c.flat {
				zz = 0
			}
			add := [6]float64{m * (1 - float64(x*x)), -m * float64(x*y), m * (1 - float64(y*y)), -m * float64(x*z), -m * float64(y*z), zz}
			for a := range 6 {
				k.h[a] += add[a]
			}
			if d := [3]float64{c.g.x, c.g.y, c.g.z}; d != [3]float64{} {
				e := mul3(&add, &d)
				htt += dot3(&d, &e)
				for a := range 3 {
					k.hft[a] += e[a]
				}
			}
		}
		long := math.Sqrt(dot3(&g, &g))
		k.l[k.n] = [3]float64{}
		for a := range k.n {
			k.l[k.n][a] = dot3(&g, &k.q[a])
			for b := range 3 {
				g[b] -= float64(k.l[k.n][a] * k.q[a][b])
			}
		}
		n := math.Sqrt(dot3(&g, &g))
		if !(n > 1e-5*long) { // says nothing new
			k.l[k.n] = [3]float64{}
			continue
		}
		k.l[k.n][k.n] = n
		k.q[k.n] = [3]float64{g[0] / n, g[1] / n, g[2] / n}
		k.mult[k.n], k.who[k.n], c0[k.n], ct[k.n] = mult[j], who[j], value, rate
		k.n++
	}
	k.complete()
	if count == 1 && k.n == 1 && who[0] >= 0 && s.cones[who[0]].round() {
		k.ball()
	} else {
		k.curve()
	}
	var b0, bt [3]float64
	for a := range k.n { // normals' steps: L β = −(c + c_t dt)
		b0[a], bt[a] = -c0[a], -ct[a]
		for b := range a {
			b0[a] -= float64(k.l[a][b] * b0[b])
			bt[a] -= float64(k.l[a][b] * bt[b])
		}
		b0[a] /= k.l[a][a]
		bt[a] /= k.l[a][a]
		for b := range 3 {
			k.zero[b] += float64(b0[a] * k.q[a][b])
			k.with[b] += float64(bt[a] * k.q[a][b])
		}
	}
	s.tangentTT += htt
	return true
}

// pointed tells that a cone stands on its tip, wherever t is.
func (c *cone) pointed() bool { return c.flat && c.zc > 0 && c.g == four{} }

// stand lays out a pull in the tip of a cone: three flat bounds that meet there.
func (s *Solver) stand(o *pull, k *tangent) {
	c := &s.cones[k.tip]
	unit := [3][3]float64{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}
	k.n, k.q, k.l = 3, unit, unit
	k.h, k.hft, k.with = [6]float64{}, [3]float64{}, [3]float64{}
	k.zero = [3]float64{-c.h.x - o.f[0], -c.h.y - o.f[1], -c.h.a/c.zc - o.f[2]}
}

// share splits the multipliers in a tip, the force's own gradient, into those of its cone and of the half-line.
func (k *tangent) share(c *cone, o *pull) (cone four, half float64) {
	m := &k.mult
	a := math.Sqrt(float64(m[0]*m[0]) + float64(m[1]*m[1]))
	half = -m[2] - float64(c.zc*a)
	if half > 0 && !(o.half && o.f[2] <= o.minZ+1e-9) {
		a, half = -m[2]/c.zc, 0
	}
	return four{a, -m[0], -m[1], 0}, half
}

// complete fills q up with tangents.
func (k *tangent) complete() {
	q := &k.q
	switch k.n {
	case 0:
		*q = [3][3]float64{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}
	case 1:
		n := &q[0] // across the axis that n is least along
		a := [3]float64{0, n[2], -n[1]}
		if x, y, z := math.Abs(n[0]), math.Abs(n[1]), math.Abs(n[2]); y < x && y <= z {
			a = [3]float64{-n[2], 0, n[0]}
		} else if z < x {
			a = [3]float64{n[1], -n[0], 0}
		}
		i := 1 / math.Sqrt(dot3(&a, &a))
		q[1] = [3]float64{a[0] * i, a[1] * i, a[2] * i}
		q[2] = cross3(&q[0], &q[1])
	case 2:
		q[2] = cross3(&q[0], &q[1])
	}
}

func cross3(a, b *[3]float64) [3]float64 {
	return [3]float64{
		float64(a[1]*b[2]) - float64(a[2]*b[1]),
		float64(a[2]*b[0]) - float64(a[0]*b[2]),
		float64(a[0]*b[1]) - float64(a[1]*b[0]),
	}
}

// round tells that a cone bounds |F + B| alone.
func (c *cone) round() bool { return !c.flat && c.zc == 0 }

// ball is curve on the one bound on |F + B|, which bends all ways alike.
func (k *tangent) ball() {
	bend := 0.5 * (k.h[0] + k.h[2] + k.h[5])
	n := 1 / math.Sqrt(larger(bend, 0)+leaning)
	for m := 1; m < 3; m++ {
		k.u[m] = [3]float64{n * k.q[m][0], n * k.q[m][1], n * k.q[m][2]}
	}
}

// curve makes the tangents conjugate one after the other, uᵀ (H + leaning) u = 1.
func (k *tangent) curve() {
	for m := k.n; m < 3; m++ {
		v := k.q[m]
		for a := k.n; a < m; a++ {
			u := &k.u[a]
			hv := mul3(&k.h, &v)
			d := dot3(u, &hv) + float64(leaning*dot3(u, &v))
			for b := range 3 {
				v[b] -= float64(d * u[b])
			}
		}
		hv := mul3(&k.h, &v)
		n := 1 / math.Sqrt(larger(dot3(&v, &hv), 0)+float64(leaning*dot3(&v, &v)))
		k.u[m] = [3]float64{n * v[0], n * v[1], n * v[2]}
	}
}
