package hang

import "math"

// Small symmetric matrices. Six unknowns need no library, and the browser program none to load.

type vec6 [6]float64
type mat6 [6]vec6

func (a *vec6) dot(b *vec6) float64 {
	sum := 0.0
	for i := range a {
		sum += float64(a[i] * b[i])
	}
	return sum
}

func (a *vec6) norm() float64 { return math.Sqrt(a.dot(a)) }

func (a vec6) scale(s float64) vec6 {
	for i := range a {
		a[i] *= s
	}
	return a
}

func (m *mat6) mul(a *vec6) vec6 {
	var out vec6
	for i := range m {
		out[i] = m[i].dot(a)
	}
	return out
}

// column is a column of a matrix.
func (m *mat6) column(j int) vec6 {
	var out vec6
	for i := range m {
		out[i] = m[i][j]
	}
	return out
}

// factor puts the Cholesky factor of m + shift·1 into low. It returns false when that is not positive definite.
func (m *mat6) factor(shift float64, low *mat6) bool {
	for j := range m {
		d := m[j][j] + shift
		small := 1e-15 * math.Abs(d)
		for k := range j {
			d -= float64(low[j][k] * low[j][k])
		}
		if !(d > small) {
			return false
		}
		root := math.Sqrt(d)
		low[j][j] = root
		for i := j + 1; i < len(m); i++ {
			s := m[i][j]
			for k := range j {
				s -= float64(low[i][k] * low[j][k])
			}
			low[i][j] = s / root
		}
	}
	return true
}

// solve returns x with L Lᵀ x = a, L the factor.
func (m *mat6) solve(a vec6) vec6 {
	for i := range a {
		for k := range i {
			a[i] -= float64(m[i][k] * a[k])
		}
		a[i] /= m[i][i]
	}
	for i := len(a) - 1; i >= 0; i-- {
		for k := i + 1; k < len(a); k++ {
			a[i] -= float64(m[k][i] * a[k])
		}
		a[i] /= m[i][i]
	}
	return a
}

// eigen returns the eigenvalues and, in the columns of the matrix, unit eigenvectors of the first n rows
// and columns, by Jacobi's rotations. Errors are about 1e-15 of the largest entry. The order is
// that of the diagonal, so a diagonal matrix keeps its axes.
func (m mat6) eigen(n int) (vec6, mat6) {
	var v mat6
	for i := range v {
		v[i][i] = 1
	}
	for range 30 { // sweeps; six or seven do
		off, all := 0.0, 0.0
		for i := range n {
			all += float64(m[i][i] * m[i][i])
			for j := range i {
				off += float64(m[i][j] * m[i][j])
			}
		}
		if off <= 1e-34*all || off == 0 {
			break
		}
		for p := range n {
			for q := p + 1; q < n; q++ {
				m.rotate(p, q, n, &v)
			}
		}
	}
	var values vec6
	for i := range n {
		values[i] = m[i][i]
	}
	return values, v
}

// rotate makes entry p, q zero by a rotation in its plane, and keeps the rotation in v.
func (m *mat6) rotate(p, q, n int, v *mat6) {
	if m[p][q] == 0 {
		return
	}
	theta := (m[q][q] - m[p][p]) / (2 * m[p][q])
	t := math.Copysign(1, theta) / (math.Abs(theta) + math.Hypot(theta, 1))
	c := 1 / math.Sqrt(1+float64(t*t))
	s := t * c
	for k := range n {
		a, b := m[k][p], m[k][q]
		m[k][p], m[k][q] = float64(c*a)-float64(s*b), float64(s*a)+float64(c*b)
	}
	for k := range n {
		a, b := m[p][k], m[q][k]
		m[p][k], m[q][k] = float64(c*a)-float64(s*b), float64(s*a)+float64(c*b)
	}
	m[p][q], m[q][p] = 0, 0
	for k := range n {
		a, b := v[k][p], v[k][q]
		v[k][p], v[k][q] = float64(c*a)-float64(s*b), float64(s*a)+float64(c*b)
	}
}
