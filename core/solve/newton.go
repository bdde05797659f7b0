package solve

import "math"

// newton lays out and factors the system of one Newton step, (6.12): every block eliminated, the
// balance rows in S, the shared scalar last.
func (s *Solver) newton() bool {
	s.S = [6][6]float64{}
	s.sq = [6]float64{}
	for i := range s.r {
		s.sq[i] = -s.at[i]
	}
	s.eta = 0
	for j := range s.hl {
		s.hl[j], s.hlt[j] = s.quad, 0
	}
	for i := range s.np {
		s.hp[i], s.hpt[i] = [6]float64{s.quad, 0, s.quad, 0, 0, s.quad}, [3]float64{}
	}
	s.htt = 0
	k := 0
	for ; k < len(s.half) && s.half[k].v < s.nl; k++ {
		h := &s.half[k]
		w := h.z / h.s
		if s.hl[h.v] > 0 { // the pair of this line's bounds, so that nothing cancels
			old := s.hl[h.v]
			both := old + w
			s.eta += float64(float64(old*w)/both) * h.g * h.g
			s.hl[h.v] = both
		} else {
			s.hl[h.v] = w
		}
		s.hlt[h.v] += float64(h.a * h.g * w)
		s.htt += float64(h.g * h.g * w)
	}
	for ; k < len(s.half); k++ {
		h := &s.half[k]
		s.hp[(h.v-s.nl)/3][5] += h.z / h.s
	}
	for j := range s.nl {
		if !(s.hl[j] > 0) {
			s.hl[j] = 1e-12
		}
		s.border(j, 1/s.hl[j])
	}
	k = 0
	for i := range s.np {
		var tt float64
		m := &s.hp[i]
		t := &s.hpt[i]
		for ; k < len(s.soc) && s.soc[k].pull == i; k++ {
			c := &s.soc[k]
			e := 1 / c.eta2
			jw := four{c.w[0], -c.w[1], -c.w[2], -c.w[3]}
			v := [4]float64{jw[1], jw[2], float64(c.z0 * jw[0]), dot(&c.g, &jw)}
			third := 1.0
			if c.flat {
				third = 0
			} else {
				v[2] += jw[3]
			}
			m[0] += e * (float64(2*v[0]*v[0]) + 1)
			m[1] += e * float64(2*v[0]*v[1])
			m[2] += e * (float64(2*v[1]*v[1]) + 1)
			m[3] += e * float64(2*v[0]*v[2])
			m[4] += e * float64(2*v[1]*v[2])
			m[5] += e * (float64(2*v[2]*v[2]) + third - float64(c.z0*c.z0))
			t[0] += e * (float64(2*v[0]*v[3]) + c.g[1])
			t[1] += e * (float64(2*v[1]*v[3]) + c.g[2])
			t[2] += e * (float64(2*v[2]*v[3]) + float64(third*c.g[3]) - float64(c.z0*c.g[0]))
			tt += e * (float64(2*v[3]*v[3]) - float64(c.g[0]*c.g[0]) + float64(c.g[1]*c.g[1]) + float64(c.g[2]*c.g[2]) + float64(c.g[3]*c.g[3]))
		}
		s.htt += tt
		if !chol3(m) {
			return false
		}
		b := lower3(m, *t)
		s.eta += math.Max(0, tt-float64(b[0]*b[0])-float64(b[1]*b[1])-float64(b[2]*b[2]))
		s.blockS(i, b)
	}
	for i := range s.r {
		for j := 0; j < i; j++ {
			s.S[j][i] = s.S[i][j]
		}
	}
	for i := range s.r { // Cholesky
		for j := 0; j <= i; j++ {
			v := s.S[i][j]
			for k := range j {
				v -= float64(s.S[i][k] * s.S[j][k])
			}
			if i == j {
				if !(v > 0) {
					v = 1e-300 + 1e-16*math.Abs(s.S[i][i])
				}
				s.S[i][i] = math.Sqrt(v)
			} else {
				s.S[i][j] = v / s.S[j][j]
			}
		}
	}
	s.qt = s.solveS(s.sq)
	return true
}

func (s *Solver) border(j int, inv float64) {
	a := &s.a[j]
	for i := range s.r {
		ai := a[i] * inv
		s.sq[i] += float64(ai * s.hlt[j])
		for k := 0; k <= i; k++ {
			s.S[i][k] += float64(ai * a[k])
		}
	}
}

// blockS adds A H⁻¹ Aᵀ of a pull; b = L⁻¹ h.
func (s *Solver) blockS(i int, b [3]float64) {
	v := s.nl + 3*i
	var l [6][3]float64
	for k := range s.r {
		l[k] = lower3(&s.hp[i], [3]float64{s.a[v][k], s.a[v+1][k], s.a[v+2][k]})
		s.sq[k] += float64(l[k][0]*b[0]) + float64(l[k][1]*b[1]) + float64(l[k][2]*b[2])
		for j := 0; j <= k; j++ {
			s.S[k][j] += float64(l[k][0]*l[j][0]) + float64(l[k][1]*l[j][1]) + float64(l[k][2]*l[j][2])
		}
	}
}

// chol3 factors a packed lower 3×3 matrix in place.
func chol3(m *[6]float64) bool {
	m[0] = math.Sqrt(m[0])
	m[1] /= m[0]
	m[3] /= m[0]
	m[2] = math.Sqrt(m[2] - float64(m[1]*m[1]))
	m[4] = (m[4] - float64(m[3]*m[1])) / m[2]
	m[5] = math.Sqrt(m[5] - float64(m[3]*m[3]) - float64(m[4]*m[4]))
	return m[0] > 0 && m[2] > 0 && m[5] > 0
}

func lower3(l *[6]float64, b [3]float64) [3]float64 {
	b[0] /= l[0]
	b[1] = (b[1] - float64(l[1]*b[0])) / l[2]
	b[2] = (b[2] - float64(l[3]*b[0]) - float64(l[4]*b[1])) / l[5]
	return b
}

func upper3(l *[6]float64, b [3]float64) [3]float64 {
	b[2] /= l[5]
	b[1] = (b[1] - float64(l[4]*b[2])) / l[2]
	b[0] = (b[0] - float64(l[1]*b[1]) - float64(l[3]*b[2])) / l[0]
	return b
}

func (s *Solver) solveS(b [6]float64) [6]float64 {
	for i := range s.r {
		for k := range i {
			b[i] -= float64(s.S[i][k] * b[k])
		}
		b[i] /= s.S[i][i]
	}
	for i := s.r - 1; i >= 0; i-- {
		for k := i + 1; k < s.r; k++ {
			b[i] -= float64(s.S[k][i] * b[k])
		}
		b[i] /= s.S[i][i]
	}
	return b
}

// inv gives H⁻¹ f in place.
func (s *Solver) inv(f []float64) {
	for j := range s.nl {
		f[j] /= s.hl[j]
	}
	for i := range s.np {
		v := s.nl + 3*i
		o := upper3(&s.hp[i], lower3(&s.hp[i], [3]float64{f[v], f[v+1], f[v+2]}))
		f[v], f[v+1], f[v+2] = o[0], o[1], o[2]
	}
}

// solve answers H x + h t − Aᵀy = f, hᵀx + H_tt t − a_tᵀy = ft, A x + a_t t = g.
func (s *Solver) solve(f []float64, ft float64, g [6]float64, x []float64) (t float64, y [6]float64) {
	copy(x, f)
	s.inv(x)
	for j := range x {
		for i := range s.r {
			g[i] -= float64(s.a[j][i] * x[j])
		}
	}
	for j := range s.nl {
		ft -= float64(s.hlt[j] * x[j])
	}
	for i := range s.np {
		v := s.nl + 3*i
		for k := range 3 {
			ft -= float64(s.hpt[i][k] * x[v+k])
		}
	}
	y = s.solveS(g)
	if !s.fixt {
		t = (ft - dot6(&s.sq, &y)) / (s.eta + dot6(&s.sq, &s.qt))
		for i := range s.r {
			y[i] += float64(s.qt[i] * t)
		}
	}
	for j := range s.nl {
		x[j] = f[j] + dot6(&s.a[j], &y) - float64(s.hlt[j]*t)
	}
	for i := range s.np {
		v := s.nl + 3*i
		for k := range 3 {
			x[v+k] = f[v+k] + dot6(&s.a[v+k], &y) - float64(s.hpt[i][k]*t)
		}
	}
	s.inv(x)
	return t, y
}
