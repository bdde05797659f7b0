package solve

import "math"

// cross goes from y along x to the best break and takes its line into the base. It is false when
// there is no break left, or none that pays.
func (s *Solver) cross(y, x *[6]float64) bool {
	w := &s.walker
	w.breaks = w.breaks[:0]
	d, e, hi := w.d, w.e[:len(w.d)], w.hi[:len(w.d)]
	col := s.col[:len(d)]
	for j := range d {
		v := dot6(&col[j], x)
		e[j] = v
		if hi[j] == (v < 0) && v != 0 && !w.in[j] {
			at := -d[j] / v
			if at < 0 {
				at = 0
			}
			w.breaks = append(w.breaks, crossing{at, j})
		}
	}
	if len(w.breaks) == 0 {
		return false
	}
	heap(w.breaks)
	V, G := dot6(&w.v, y), dot6(&w.g, y)
	V1, G1 := dot6(&w.v, x), dot6(&w.g, x)
	if !(float64(V1*G)-float64(V*G1) > 0) {
		return false
	}
	from := 0.0
	h := w.breaks
	for len(h) > 0 {
		c := h[0]
		V += float64((c.at - from) * V1)
		G += float64((c.at - from) * G1)
		from = c.at
		if !(G > 0) {
			return false
		}
		o := &s.lines[c.j]
		a := math.Abs(e[c.j])
		V2, G2 := V1-float64((o.hi-o.lo)*a), G1+float64(s.goal*o.ht*a)
		if !(float64(V2*G)-float64(V*G2) > 0) || len(h) == 1 {
			break
		}
		V1, G1 = V2, G2
		s.count(c.j, -1)
		hi[c.j] = !hi[c.j]
		s.count(c.j, 1)
		h[0] = h[len(h)-1]
		h = h[:len(h)-1]
		down(h, 0)
	}
	stop := h[0]
	for k := range 6 {
		y[k] += float64(stop.at * x[k])
	}
	i := 1 / unit6(y)
	for j := range d {
		d[j] = (d[j] + float64(stop.at*e[j])) * i
	}
	if w.m == s.rank.r-1 || w.m == len(w.base) {
		return false
	}
	s.count(stop.j, -1)
	w.in[stop.j] = true
	d[stop.j] = 0
	w.base[w.m] = stop.j
	w.m++
	return true
}

// heap orders crossings so that the next one is the first.
func heap(h []crossing) {
	for i := len(h)/2 - 1; i >= 0; i-- {
		down(h, i)
	}
}

func down(h []crossing, i int) {
	for {
		k := 2*i + 1
		if k >= len(h) {
			return
		}
		if k+1 < len(h) && h[k+1].at < h[k].at {
			k++
		}
		if h[i].at <= h[k].at {
			return
		}
		h[i], h[k] = h[k], h[i]
		i = k
	}
}

// corner writes the answer out as a point of the method, with τ = 1: forces, t, y and duals.
func (s *Solver) corner(y *[6]float64, t float64, x *[6]float64) bool {
	w := &s.walker
	gamma := dot6(&w.g, y)
	u := *x
	for range 2 { // the last digits of forces and t
		g := s.balanceLeft(&u, t)
		dt := dot6(&g, y) / gamma * s.goal
		t += dt
		g = s.balanceLeft(&u, t)
		du := w.fit(&g)
		for k := range w.m {
			u[k] += du[k]
		}
		if !(norm6(&g) <= 1e-11*max(1, norm6(&s.b))) {
			return false
		}
	}
	s.t, s.tau, s.kap = t, 1, 0
	for k := range 6 {
		s.y[k] = y[k] / gamma
	}
	for j := range s.lines {
		o := &s.lines[j]
		hi := o.hi + float64(o.ht*t)
		if hi < o.lo { // t is held by a line's own two bounds, which (6.22) does not see
			return false
		}
		o.zl, o.zh = 0, 0
		if w.in[j] {
			continue
		}
		d := dot6(&s.col[j], &s.y)
		if w.hi[j] {
			o.u, o.zh = hi, max(0, d)
		} else {
			o.u, o.zl = o.lo, max(0, -d)
		}
	}
	for k := range w.m {
		s.lines[w.base[k]].u = u[k]
	}
	return true
}

// balanceLeft is what forces u of the base and the bounds at t leave of the balance.
func (s *Solver) balanceLeft(u *[6]float64, t float64) [6]float64 {
	w := &s.walker
	g := w.left(s.goal, t)
	for k := range w.m {
		a := &s.col[w.base[k]]
		for i := range 6 {
			g[i] -= float64(u[k] * a[i])
		}
	}
	return g
}
