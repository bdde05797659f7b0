package beam

import "math"

// program is who carries: least ½ Rᵀ K R − cᵀ R with A R = b, and R ≥ 0 when one-sided, (9.10). K is
// symmetric and positive definite on the forces that A leaves free, so there is one answer at most.
type program struct {
	K        [][]float64
	A        [][]float64
	b, c     []float64
	oneSided bool
}

// Forces smaller than this part of the load count as zero; it is some thousand times the rounding
// of the linear systems.
const tiny = 1e-11

// solve works from the dual side: it starts with the answer in which supports may push, and makes the
// one that pushes most go slack, letting go of others whose slackness no longer pays. Each
// step raises the least energy, so no set of slack supports comes twice and the steps end.
// (D. Goldfarb, A. Idnani, A numerically stable dual method for solving strictly convex quadratic
// programs, Mathematical Programming 27, 1983; from memory.)
func (q program) solve() ([]float64, error) {
	q, err := q.independent()
	if err != nil {
		return nil, err
	}
	n := len(q.c)
	var slack []int     // supports held at zero
	var press []float64 // their multipliers: the gap over flexibility, ≥ 0
	r, ok := q.step(q.c, q.b, nil)
	if !ok {
		return nil, ErrTips
	}
	for q.oneSided {
		worst := -1
		for i := range n {
			if r[i] < -tiny && (worst < 0 || r[i] < r[worst]) {
				worst = i
			}
		}
		if worst < 0 {
			break
		}
		grown := 0.0 // the multiplier of the new one
		for {
			e := make([]float64, n)
			e[worst] = 1
			z, ok := q.step(e, make([]float64, len(q.b)), slack) // how the answer moves with it
			if !ok {
				return nil, ErrTips
			}
			fall := z[n+len(q.b):] // how fast the others' multipliers fall
			full := math.Inf(1)
			if z[worst] > 1e-9 { // K is about one, so z is, unless the slack ones leave no freedom
				full = -r[worst] / z[worst]
			}
			partial, out := math.Inf(1), -1
			for k := range slack {
				if fall[k] > tiny {
					if t := press[k] / fall[k]; t < partial {
						partial, out = t, k
					}
				}
			}
			t := math.Min(full, partial)
			if math.IsInf(t, 1) {
				return nil, ErrTips // nothing balances without pushing
			}
			for i := range n {
				r[i] += float64(t * z[i])
			}
			for k := range slack {
				press[k] -= float64(t * fall[k])
			}
			grown += t
			if full <= partial {
				slack, press = append(slack, worst), append(press, grown)
				break
			}
			slack = append(slack[:out:out], slack[out+1:]...)
			press = append(press[:out:out], press[out+1:]...)
		}
		r, ok = q.step(q.c, q.b, slack) // afresh, so that rounding does not add up
		if !ok {
			return nil, ErrTips
		}
		for k := range slack {
			press[k] = -r[n+len(q.b)+k]
		}
	}
	out := r[:n:n]
	for i := range out {
		if q.oneSided && out[i] < tiny {
			out[i] = 0
		}
	}
	for _, i := range slack {
		out[i] = 0
	}
	return out, nil
}

// step solves K R + Aᵀ λ + Eᵀ μ = c, A R = b, R = 0 on the slack ones. It returns R, λ, μ.
func (q program) step(c, b []float64, slack []int) ([]float64, bool) {
	n, m := len(q.c), len(q.b)
	size := n + m + len(slack)
	a := make([][]float64, size)
	for i := range a {
		a[i] = make([]float64, size+1)
	}
	for i := range n {
		copy(a[i], q.K[i])
		a[i][size] = c[i]
	}
	for k := range m {
		for i := range n {
			a[n+k][i], a[i][n+k] = q.A[k][i], q.A[k][i]
		}
		a[n+k][size] = b[k]
	}
	for k, i := range slack {
		a[n+m+k][i], a[i][n+m+k] = 1, 1
	}
	return eliminate(a)
}

// independent leaves out rows of A that say nothing new. A row that contradicts the others is an
// imbalance that no forces can answer.
func (q program) independent() (program, error) {
	var rows [][]float64
	var ortho [][]float64
	var rhs, orb []float64
	for k, row := range q.A {
		v, s := append([]float64(nil), row...), q.b[k]
		size := norm(row)
		for pass := 0; pass < 2; pass++ {
			for j, o := range ortho {
				d := dot(v, o)
				for i := range v {
					v[i] -= float64(d * o[i])
				}
				s -= float64(d * orb[j])
			}
		}
		if left := norm(v); left > 1e-9*size {
			rows, rhs = append(rows, row), append(rhs, q.b[k])
			for i := range v {
				v[i] /= left
			}
			ortho, orb = append(ortho, v), append(orb, s/left)
		} else if math.Abs(s) > 1e-9 {
			return q, ErrTips
		}
	}
	q.A, q.b = rows, rhs
	return q, nil
}

func dot(a, b []float64) float64 {
	s := 0.0
	for i := range a {
		s += float64(a[i] * b[i])
	}
	return s
}

func norm(a []float64) float64 { return math.Sqrt(dot(a, a)) }

// eliminate solves a linear system with the right side as last column, by rows in order of size. It
// reports false when the system is singular.
func eliminate(a [][]float64) ([]float64, bool) {
	n := len(a)
	for k := range n {
		p := k
		for i := k + 1; i < n; i++ {
			if math.Abs(a[i][k]) > math.Abs(a[p][k]) {
				p = i
			}
		}
		if math.Abs(a[p][k]) < 1e-18 {
			return nil, false
		}
		a[k], a[p] = a[p], a[k]
		for i := k + 1; i < n; i++ {
			f := a[i][k] / a[k][k]
			if f == 0 {
				continue
			}
			for j := k; j <= n; j++ {
				a[i][j] -= float64(f * a[k][j])
			}
		}
	}
	x := make([]float64, n)
	for k := n - 1; k >= 0; k-- {
		s := a[k][n]
		for j := k + 1; j < n; j++ {
			s -= float64(a[k][j] * x[j])
		}
		x[k] = s / a[k][k]
	}
	return x, true
}
