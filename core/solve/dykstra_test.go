package solve_test

import (
	"math"
	"math/rand"
	"testing"

	"cohoist/core/solve"
)

// shortest projects the origin onto balance and bounds at t by Dykstra's alternating projections
// (J. P. Boyle, R. L. Dykstra, 1986; from memory): another road to stage two, slow but simple.
func shortest(p *solve.Program, t float64) []float64 {
	n := len(p.Lines)
	rows := independent(p)
	g := make([][]float64, len(rows)) // orthonormal rows
	b := make([]float64, len(rows))
	for i, r := range rows {
		g[i] = make([]float64, n)
		for j := range n {
			g[i][j] = p.Lines[j].Column[r]
		}
		b[i] = p.Wrench[r] + t*p.WrenchT[r]
		for range 2 {
			for k := range i {
				d := 0.0
				for j := range n {
					d += g[i][j] * g[k][j]
				}
				for j := range n {
					g[i][j] -= d * g[k][j]
				}
				b[i] -= d * b[k]
			}
		}
		d := 0.0
		for j := range n {
			d += g[i][j] * g[i][j]
		}
		for j := range n {
			g[i][j] /= math.Sqrt(d)
		}
		b[i] /= math.Sqrt(d)
	}
	x, e := make([]float64, n), make([]float64, n)
	for range 400_000 {
		for i := range g { // the balance is a plane: no correction needed
			d := b[i]
			for j := range n {
				d -= g[i][j] * x[j]
			}
			for j := range n {
				x[j] += d * g[i][j]
			}
		}
		moved := 0.0
		for j, l := range p.Lines {
			v := x[j] + e[j]
			w := math.Max(l.Lo, math.Min(v, l.Hi+l.HiT*t))
			moved = math.Max(moved, math.Abs(w-x[j]))
			x[j], e[j] = w, v-w
		}
		if moved < 1e-10 {
			break
		}
	}
	return x
}

// Stage two against alternating projections; 1e-5 of 12 N, as far as those come at the edge.
func TestSettleByProjections(t *testing.T) {
	s := solve.NewSolver()
	seen := 0
	for seed := int64(0); seen < 25 && seed < 200; seed++ {
		rng := rand.New(rand.NewSource(seed))
		p := gripped(rng, 2+rng.Intn(3))
		if seed%2 == 0 { // equal upright rotors on a ring: many best answers
			k := len(p.Lines) / 4
			for i := range p.Lines {
				sin, cos := math.Sincos(2 * math.Pi * float64(i/4) / float64(k))
				in, out := math.Sincos(math.Pi / 2 * (float64(i%4) + 0.5))
				p.Lines[i] = up(cos+0.3*out, sin+0.3*in, 0, 12)
			}
			p.Wrench = solve.Wrench{0, 0, 25 * float64(k), rng.NormFloat64(), rng.NormFloat64()}
		}
		r := s.Solve(p)
		if r.Status != solve.Optimal {
			continue
		}
		seen++
		// A little room, so that the projections end; the answer moves no further than that.
		const room = 1e-8
		want := shortest(p, r.T*(1+room))
		q := s.Settle(p, r.T)
		for j := range want {
			if !(math.Abs(q.U[j]-want[j]) <= 1.2e-4) {
				t.Errorf("seed %d: line %d: %.9g, by projections %.9g", seed, j, q.U[j], want[j])
			}
		}
	}
	if seen < 20 {
		t.Errorf("only %d programs", seen)
	}
}
