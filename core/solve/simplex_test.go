package solve_test

import (
	"math"
	"math/rand"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize/convex/lp"

	"cohoist/core/solve"
)

// simplex answers min t, Σ b_j u_j = w, 0 ≤ u_j ≤ ĥ_j t by gonum's lp.Simplex, which wants x ≥ 0,
// equations, and no dependent rows: slacks are added and dependent rows left out first. NaN: none.
func simplex(t *testing.T, p *solve.Program) float64 {
	n := len(p.Lines)
	rows := independent(p)
	if rows == nil {
		return math.NaN()
	}
	a := mat.NewDense(len(rows)+n, 2*n+1, nil)
	b := make([]float64, len(rows)+n)
	for i, r := range rows {
		for j := range n {
			a.Set(i, j, p.Lines[j].Column[r])
		}
		b[i] = p.Wrench[r]
	}
	for j := range n {
		i := len(rows) + j
		a.Set(i, j, 1)
		a.Set(i, n, -p.Lines[j].HiT)
		a.Set(i, n+1+j, 1)
	}
	c := make([]float64, 2*n+1)
	c[n] = 1
	best, _, err := lp.Simplex(c, a, b, 1e-9, nil)
	switch err {
	case nil:
		return best
	case lp.ErrInfeasible:
		return math.NaN()
	}
	t.Fatalf("simplex: %v", err)
	return 0
}

// independent picks rows of the balance by elimination; nil when w breaks one of the others.
func independent(p *solve.Program) (rows []int) {
	n := len(p.Lines)
	var kept [][]float64
	var lead []int
	for r := range 6 {
		v := make([]float64, n+1)
		for j := range n {
			v[j] = p.Lines[j].Column[r]
		}
		v[n] = p.Wrench[r]
		for k, e := range kept {
			f := v[lead[k]] / e[lead[k]]
			for j := range v {
				v[j] -= f * e[j]
			}
		}
		at := 0
		for j := range n {
			if math.Abs(v[j]) > math.Abs(v[at]) {
				at = j
			}
		}
		if math.Abs(v[at]) > 1e-10 {
			kept, lead, rows = append(kept, v), append(lead, at), append(rows, r)
		} else if math.Abs(v[n]) > 1e-9 {
			return nil
		}
	}
	return rows
}

// The simplex method answers the same, 1e-7: its own tolerance of 1e-9 grows with the basis.
func TestSimplex(t *testing.T) {
	s := solve.NewSolver()
	feasible := 0
	for seed := range int64(150) {
		rng := rand.New(rand.NewSource(seed))
		p := gripped(rng, 2+rng.Intn(3))
		if seed%3 == 0 { // upright: four rows, two dependent
			for i := range p.Lines {
				c := p.Lines[i].Column
				p.Lines[i].Column = solve.Wrench{0, 0, 1, c[3], c[4], 0}
			}
			p.Wrench[5] = 0
		}
		want, got := simplex(t, p), s.Solve(p)
		if math.IsNaN(want) != (got.Status == solve.Infeasible) {
			t.Errorf("seed %d: simplex %g, here %v", seed, want, got.Status)
			continue
		}
		if !math.IsNaN(want) {
			feasible++
			if !(math.Abs(got.T-want) <= 1e-7*want) {
				t.Errorf("seed %d: T = %.12g, simplex %.12g", seed, got.T, want)
			}
		}
	}
	if feasible < 20 {
		t.Errorf("only %d of 150 have an answer", feasible)
	}
}
