package solve

// Lines alone make a linear program of r ≤ 6 rows, however many they are. Its dual in y is the
// largest ratio V/γ of (6.5), both made of straight pieces that break where a line changes bounds,
// aᵀy = 0. walk climbs it, (6.22): straight up until the best break on the way, which then holds as
// an equation, and so on to a corner; there a line that left its bounds is let go again. The corner
// is exact, forces and proof.

// walks is the most climbs before the interior method takes over: degenerate corners might be
// walked round for ever.
const walks = 200

// flatness is the part of the residual, relative, below which there is nothing left to climb.
const flatness = 1e-12

// walker is the state of a walk.
type walker struct {
	d, e   []float64 // aᵀy and aᵀω
	hi     []bool    // the bound a line is at
	in     []bool    // the line is held at aᵀy = 0, its force free
	base   [5]int    // those lines
	m      int
	q      [5][6]float64 // orthonormal basis of their columns
	r      [5][5]float64
	v, g   [6]float64 // gradients of V and of γ
	breaks []crossing
}

// crossing is where a line changes bounds.
type crossing struct {
	at float64
	j  int
}

// straight tells whether walk knows how to climb the program.
func (s *Solver) straight() bool {
	if len(s.pulls) > 0 || s.idle || len(s.lines) == 0 {
		return false
	}
	for i := range s.lines {
		o := &s.lines[i]
		if o.hasLo == 0 || o.hasHi == 0 || s.goal*o.ht < 0 || o.lo > o.hi && o.ht == 0 {
			return false
		}
	}
	return true
}

// walk solves Lines alone; false when the interior method has to.
func (s *Solver) walk() bool {
	w := &s.walker
	n := s.nl
	w.d, w.e = room(w.d, n), room(w.e, n)
	w.hi, w.in = room(w.hi, n), room(w.in, n)
	w.m = 0
	y := s.b
	if !s.opening {
		y = s.tcol
		for k := range y {
			y[k] *= s.goal
		}
	}
	if !(unit6(&y) > 0) {
		return false
	}
	w.v, w.g = s.b, s.tcol
	for k := range 6 {
		w.g[k] *= s.goal
	}
	for j := range n {
		w.in[j] = false
		w.d[j] = dot6(&s.col[j], &y)
		w.hi[j] = w.d[j] > 0
		s.count(j, 1)
	}
	for range walks {
		s.iterations++
		gamma := dot6(&w.g, &y)
		if !(gamma > 0) {
			return false
		}
		t := s.goal * dot6(&w.v, &y) / gamma
		x, ok := s.climb(&y, t)
		if ok {
			return s.corner(&y, t, &x)
		}
		if !s.cross(&y, &x) {
			return false
		}
	}
	return false
}

// unit6 makes a vector 1 long and returns how long it was.
func unit6(a *[6]float64) float64 {
	n := norm6(a)
	if n > 0 {
		i := 1 / n
		for k := range a {
			a[k] *= i
		}
	}
	return n
}

// count adds a line at its bound to the gradients, times k.
func (s *Solver) count(j int, k float64) {
	w := &s.walker
	o, a := &s.lines[j], &s.col[j]
	v, g := k*o.lo, 0.0
	if w.hi[j] {
		v, g = k*o.hi, k*s.goal*o.ht
	}
	for i := range 6 {
		w.v[i] -= float64(v * a[i])
		w.g[i] += float64(g * a[i])
	}
}

// left is what the lines at their bounds leave of the balance at t.
func (w *walker) left(goal, t float64) (g [6]float64) {
	r := goal * t
	for k := range 6 {
		g[k] = w.v[k] - float64(r*w.g[k])
	}
	return g
}

// climb finds the steepest way up that keeps the equations; at a corner it lets go of the line that
// is furthest outside its bounds. It is true when there is none: x are then the forces of w.base.
func (s *Solver) climb(y *[6]float64, t float64) (x [6]float64, done bool) {
	w := &s.walker
	w.basis(s)
	g := w.left(s.goal, t)
	size := norm6(&g)
	u := w.fit(&g)
	for k := range w.m { // once more: what is left must stand on all of them
		d := dot6(&w.q[k], &g)
		for i := range 6 {
			g[i] -= float64(d * w.q[k][i])
		}
	}
	along := dot6(&g, y)
	for i := range 6 {
		g[i] -= float64(along * y[i])
	}
	if n := norm6(&g); n > flatness*max(1, max(size, norm6(&w.v))) && w.m < s.rank.r-1 {
		unit6(&g)
		return g, false
	}
	worst, at := 1e-11, -1
	for k := range w.m {
		o := &s.lines[w.base[k]]
		out := max(o.lo-u[k], u[k]-o.hi-float64(o.ht*t))
		if out > worst {
			worst, at = out, k
		}
	}
	if at < 0 {
		copy(x[:5], u[:])
		return x, true
	}
	j := w.base[at]
	o := &s.lines[j]
	w.hi[j] = u[at] > o.lo && u[at]-o.hi-float64(o.ht*t) > 0
	w.in[j] = false
	w.m--
	copy(w.base[at:w.m], w.base[at+1:w.m+1])
	w.basis(s)
	s.count(j, 1)
	x = s.col[j]
	w.clear(&x)
	w.clear(&x)
	if !w.hi[j] {
		for i := range x {
			x[i] = -x[i]
		}
	}
	unit6(&x)
	return x, false
}

// basis makes the base's columns orthonormal, A = Q R.
func (w *walker) basis(s *Solver) {
	for k := range w.m {
		a := s.col[w.base[k]]
		for range 2 {
			for i := range k {
				d := dot6(&w.q[i], &a)
				w.r[i][k] += d
				for l := range 6 {
					a[l] -= float64(d * w.q[i][l])
				}
			}
		}
		for i := range k { // R from the column itself
			w.r[i][k] = dot6(&w.q[i], &s.col[w.base[k]])
		}
		w.r[k][k] = unit6(&a)
		w.q[k] = a
	}
}

// fit takes from g its part in the base and returns the forces that make it.
func (w *walker) fit(g *[6]float64) (u [5]float64) {
	for k := range w.m {
		u[k] = dot6(&w.q[k], g)
		for i := range 6 {
			g[i] -= float64(u[k] * w.q[k][i])
		}
	}
	for k := w.m - 1; k >= 0; k-- {
		for i := k + 1; i < w.m; i++ {
			u[k] -= float64(w.r[k][i] * u[i])
		}
		u[k] /= w.r[k][k]
	}
	return u
}

// clear takes from x its part in the base.
func (w *walker) clear(x *[6]float64) {
	for k := range w.m {
		d := dot6(&w.q[k], x)
		for i := range 6 {
			x[i] -= float64(d * w.q[k][i])
		}
	}
}
