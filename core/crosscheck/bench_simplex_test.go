package crosscheck

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize/convex/lp"
)

// simplexMost is the largest team that the dense simplex is asked about: at 200 vehicles of four
// rotors one run takes minutes.
const simplexMost = 48

// simplexes times gonum's lp.Simplex on the rigid problems. It wants standard form and rows of full
// rank, so that dependent rows are taken out first (not timed).
func simplexes(t *testing.T) map[string]answer {
	out := map[string]answer{}
	for _, p := range problems() {
		if p.Kind != "rigid" || p.K > simplexMost {
			continue
		}
		c, A, b := standard(p)
		best, _, err := lp.Simplex(c, A, b, 0, nil)
		if err != nil {
			t.Errorf("%s: %v", p.Name, err)
			continue
		}
		out[p.Name] = answer{best, median(func() { _, _, _ = lp.Simplex(c, A, b, 0, nil) })}
	}
	return out
}

// standard is min t, B u = w, u_j + s_j = h_j t, all variables at least 0, with rows and forces scaled
// to about 1 and dependent rows of B left out.
func standard(p problem) ([]float64, *mat.Dense, []float64) {
	n := len(p.Program.Lines)
	weight := p.Program.Wrench[2] / float64(n)
	var rows [][]float64
	var b []float64
	var basis [][]float64 // orthonormal
	for k := range 6 {
		row := make([]float64, n)
		scale := 0.0
		for j, l := range p.Program.Lines {
			row[j] = l.Column[k]
			scale = math.Max(scale, math.Abs(row[j]))
		}
		if scale == 0 {
			continue
		}
		for j := range row {
			row[j] /= scale
		}
		rest := append([]float64(nil), row...)
		for _, q := range basis {
			d := 0.0
			for j := range q {
				d += q[j] * rest[j]
			}
			for j := range q {
				rest[j] -= d * q[j]
			}
		}
		norm := 0.0
		for _, v := range rest {
			norm += v * v
		}
		if norm = math.Sqrt(norm); norm < 1e-9 {
			continue
		}
		for j := range rest {
			rest[j] /= norm
		}
		basis, rows, b = append(basis, rest), append(rows, row), append(b, p.Program.Wrench[k]/weight/scale)
	}
	m := len(rows)
	A := mat.NewDense(m+n, 2*n+1, nil)
	for i, row := range rows {
		for j, v := range row {
			A.Set(i, j, v)
		}
	}
	for j, l := range p.Program.Lines {
		A.Set(m+j, j, 1)
		A.Set(m+j, n+j, 1)
		A.Set(m+j, 2*n, -l.HiT/weight)
	}
	c := make([]float64, 2*n+1)
	c[2*n] = 1
	return c, A, append(b, make([]float64, n)...)
}
