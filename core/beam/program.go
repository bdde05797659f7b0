package beam

import "math"

// program is who carries: least ½ Rᵀ K R − cᵀ R with A R = b, and R ≥ 0 when one-sided, (9.10), and R ≤ most
// where that is given. K is symmetric and positive definite on the forces that A leaves free, so
// there is one answer at most.
type program struct {
	K        [][]float64
	A        [][]float64
	b, c     []float64
	most     []float64 // nil: no upper bounds
	oneSided bool
}

// stop is a bound that holds a force: R_i = at, and sign R_i ≥ sign at.
type stop struct {
	i    int
	sign float64
	at   float64
}

// broken finds the bound that r breaks most.
func (q program) broken(r []float64) (worst stop, found bool) {
	far := tiny
	for i := range q.c {
		if q.oneSided && -r[i] > far {
			far, worst, found = -r[i], stop{i, 1, 0}, true
		}
		if q.most != nil && r[i]-q.most[i] > far {
			far, worst, found = r[i]-q.most[i], stop{i, -1, q.most[i]}, true
		}
	}
	return worst, found
}

// Forces smaller than this part of the load count as zero; it is some thousand times the rounding
// of the linear systems.
const tiny = 1e-11

// solve works from the dual side: it starts with the answer in which supports may push, and stops
// the force that breaks its bound most, letting go of other stops that no longer pay. Each
// step raises the least energy, so no set of stops comes twice and the steps end.
// (D. Goldfarb, A. Idnani, A numerically stable dual method for solving strictly convex quadratic
// programs, Mathematical Programming 27, 1983; from memory.)
func (q program) solve() ([]float64, error) {
	q, err := q.independent()
	if err != nil {
		return nil, err
	}
	n, m := len(q.c), len(q.b)
	var held []stop
	var press []float64 // their multipliers, ≥ 0
	r, ok := q.step(q.c, q.b, nil, true)
	if !ok {
		return nil, ErrTips
	}
	still := make([]float64, m)
	for range 100 * (n + 1) { // far more than ever needed; rounding could make steps go round
		worst, found := q.broken(r)
		if !found {
			break
		}
		grown := 0.0 // the multiplier of the new one
		for full := false; !full; {
			e := make([]float64, n)
			e[worst.i] = worst.sign
			z, ok := q.step(e, still, held, false) // how the answer moves with it
			if !ok {
				return nil, ErrTips
			}
			t, out := math.Inf(1), -1
			if move := worst.sign * z[worst.i]; move > 1e-9 { // K is about one, so this is, unless the stops leave no freedom
				t = worst.sign * (worst.at - r[worst.i]) / move
			}
			full = true
			for k, fall := range z[n+m:] { // how fast the others' multipliers fall
				if fall > tiny && press[k]/fall < t {
					t, out, full = press[k]/fall, k, false
				}
			}
			if math.IsInf(t, 1) {
				return nil, ErrTips // nothing balances within the bounds
			}
			for i := range n {
				r[i] += float64(t * z[i])
			}
			for k := range held {
				press[k] -= float64(t * z[n+m+k])
			}
			grown += t
			if !full {
				held = append(held[:out:out], held[out+1:]...)
				press = append(press[:out:out], press[out+1:]...)
			}
		}
		held, press = append(held, worst), append(press, grown)
		r, ok = q.step(q.c, q.b, held, true) // afresh, so that rounding does not add up
		if !ok {
			return nil, ErrTips
		}
		for k := range held {
			press[k] = -r[n+m+k]
		}
	}
	if _, found := q.broken(r); found {
		return nil, ErrTips
	}
	out := r[:n:n]
	for i := range out {
		if q.oneSided && out[i] < tiny {
			out[i] = 0
		}
	}
	for _, s := range held {
		out[s.i] = s.at
	}
	return out, nil
}

// step solves K R + Aᵀ λ + Sᵀ μ = c, A R = b, S R = the stops (or 0 when not at them). It returns R, λ, μ.
func (q program) step(c, b []float64, held []stop, at bool) ([]float64, bool) {
	n, m := len(q.c), len(q.b)
	size := n + m + len(held)
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
	for k, s := range held {
		a[n+m+k][s.i], a[s.i][n+m+k] = s.sign, s.sign
		if at {
			a[n+m+k][size] = s.sign * s.at
		}
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
