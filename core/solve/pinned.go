package solve

import "math"

// verdict is what pinned found.
type verdict uint8

const (
	lost verdict = iota
	mended
	kept
)

// pinned tells whether the point that Newton found is the optimum: no other bound is broken and no
// multiplier is negative. With mend a broken bound becomes tight and a negative one is let go.
func (s *Solver) pinned(mend bool, tol float64) verdict {
	least := tol / float64(s.nl+s.np)
	bad := 0
	for i := range s.lines {
		o := &s.lines[i]
		d := dot6(&s.col[i], &s.y)
		switch {
		case o.hasLo > 0 && o.u < o.lo-tol:
			o.atLo = true
			bad++
		case o.hasHi > 0 && o.u > o.hi+float64(o.ht*s.t)+tol:
			o.atHi = true
			bad++
		case o.atHi && d < -least || o.atLo && d > least:
			o.atHi, o.atLo = false, false
			bad++
		}
	}
	for i := range s.pulls {
		o, k := &s.pulls[i], &s.tangents[i]
		for j := o.c0; k.tip >= 0 && j < o.c1; j++ {
			s.cones[j].tight = j == k.tip
		}
		if k.tip >= 0 {
			_, half := k.share(&s.cones[k.tip], o)
			if o.tight = half >= -least; !o.tight {
				bad++
			}
		}
		for a := range k.n {
			if k.tip >= 0 {
				break
			}
			ok := k.mult[a] > -least
			if !ok {
				bad++
			}
			if k.who[a] < 0 {
				o.tight, o.z = ok, k.mult[a]
			} else {
				c := &s.cones[k.who[a]]
				c.tight, c.z.a = ok, k.mult[a]
			}
		}
		if o.half && o.f[2] < o.minZ-tol && !o.tight {
			o.tight, o.z = true, 0
			bad++
		}
		for j := o.c0; j < o.c1; j++ {
			c := &s.cones[j]
			v := four{float64(c.zc*o.f[2]) + float64(c.g.a*s.t) + c.h.a, o.f[0] + float64(c.g.x*s.t) + c.h.x, o.f[1] + float64(c.g.y*s.t) + c.h.y, 0}
			if !c.flat {
				v.z = o.f[2] + float64(c.g.z*s.t) + c.h.z
			}
			edge := v.a + float64(tol*larger(v.a, 1))
			if edge >= 0 && float64(edge*edge) >= float64(v.x*v.x)+float64(v.y*v.y)+float64(v.z*v.z) {
				continue
			}
			bad++
			if c.tight || !(v.a > 0) {
				return lost
			}
			c.tight, c.z.a = true, 0
		}
	}
	switch {
	case bad == 0:
		return kept
	case mend && !math.IsNaN(s.t):
		return mended
	}
	return lost
}

// pinDuals writes the multipliers of pin out as duals of the bounds.
func (s *Solver) pinDuals() {
	for i := range s.lines {
		o := &s.lines[i]
		d := dot6(&s.col[i], &s.y)
		o.zh, o.zl = max(0, d), max(0, -d)
	}
	for i := range s.pulls {
		o, k := &s.pulls[i], &s.tangents[i]
		o.z = 0
		for j := o.c0; j < o.c1; j++ {
			s.cones[j].z = four{}
		}
		if k.tip >= 0 {
			c := &s.cones[k.tip]
			c.z, o.z = k.share(c, o)
			c.z.a, o.z = max(0, c.z.a), max(0, o.z)
			continue
		}
		for a := range k.n {
			m := max(0, k.mult[a])
			if k.who[a] < 0 {
				o.z = m
				continue
			}
			c := &s.cones[k.who[a]]
			v := c.value(o.f[0], o.f[1], o.f[2], s.t).axpy(1, c.h)
			n := m / math.Sqrt(float64(v.x*v.x)+float64(v.y*v.y)+float64(v.z*v.z))
			c.z = four{m, -n * v.x, -n * v.y, -n * v.z}
		}
	}
}
