package solve

import "math"

// refined solves the system of one Newton step and then takes away what rounding left of it.
func (s *Solver) refined(f []float64, ft float64, g [6]float64, x []float64) (t float64, y [6]float64) {
	t, y = s.solve(f, ft, g, x)
	e := s.e
	last := math.Inf(1)
	for range 4 {
		et, eg := s.leftOver(f, ft, g, x, t, y, e)
		size := math.Max(math.Abs(et), norm6(eg))
		for _, v := range e {
			size = math.Max(size, math.Abs(v))
		}
		if size < 1e-15 || !(size < 0.5*last) {
			break
		}
		last = size
		dt, dy := s.solve(e, et, eg, s.ex)
		t += dt
		for i := range s.r {
			y[i] += dy[i]
		}
		for j := range x {
			x[j] += s.ex[j]
		}
	}
	return t, y
}

// leftOver is the right-hand side minus the left, from the cones themselves.
func (s *Solver) leftOver(f []float64, ft float64, g [6]float64, x []float64, t float64, y [6]float64, e []float64) (et float64, eg [6]float64) {
	for j := range x {
		e[j] = f[j] - s.quad*x[j] + dot6(&s.a[j], &y)
		for i := range s.r {
			g[i] -= float64(s.a[j][i] * x[j])
		}
	}
	ft += dot6(&s.at, &y)
	for i := range s.r {
		g[i] -= float64(s.at[i] * t)
	}
	for k := range s.half {
		h := &s.half[k]
		w := h.z / h.s * (float64(h.a*x[h.v]) + float64(h.g*t))
		e[h.v] -= float64(h.a * w)
		ft -= float64(h.g * w)
	}
	for k := range s.soc {
		c := &s.soc[k]
		v := c.value(s.pull(x, c.pull), t)
		v = c.divW2(&v)
		ft += c.back(&v, -1, s.pull(e, c.pull))
	}
	if s.fixt {
		ft = 0
	}
	return ft, g
}
