package solve_test

import (
	"fmt"
	"math"
	"math/rand"
	"testing"

	"cohoist/core/solve"
)

// feasible are eight programs of one kind and size that have an answer.
func feasible(k int, make func(*rand.Rand, int) *solve.Program) (ps []*solve.Program) {
	s := solve.NewSolver()
	for seed := int64(1); len(ps) < 8; seed++ {
		if p := make(rand.New(rand.NewSource(seed)), k); s.Solve(p).Status == solve.Optimal {
			ps = append(ps, p)
		}
	}
	return ps
}

func BenchmarkSolve(b *testing.B) {
	for _, kind := range []struct {
		name string
		make func(*rand.Rand, int) *solve.Program
	}{{"cable", hung}, {"rigid", gripped}} {
		for _, k := range []int{4, 8, 48, 200, 1000} {
			ps := feasible(k, kind.make)
			s := solve.NewSolver()
			b.Run(fmt.Sprintf("%s/%d", kind.name, k), func(b *testing.B) {
				b.ReportAllocs()
				steps := 0
				for i := range b.N {
					steps += s.Solve(ps[i%len(ps)]).Iterations
				}
				b.ReportMetric(float64(steps)/float64(b.N), "steps/op")
			})
		}
	}
}

// Both stages, as the share of a plan needs them.
func BenchmarkSettle(b *testing.B) {
	for _, k := range []int{4, 8, 48} {
		for name, ps := range map[string][]*solve.Program{"cable": feasible(k, hung), "rigid": feasible(k, gripped)} {
			s := solve.NewSolver()
			b.Run(fmt.Sprintf("%s/%d", name, k), func(b *testing.B) {
				for i := range b.N {
					p := ps[i%len(ps)]
					s.Settle(p, s.Solve(p).T)
				}
			})
		}
	}
}

// Time grows with k, not faster: steps hardly grow, and each costs a fixed amount a vehicle.
func TestStepsHardlyGrow(t *testing.T) {
	s := solve.NewSolver()
	steps := func(k int, make func(*rand.Rand, int) *solve.Program) float64 {
		n := 0
		for _, p := range feasible(k, make) {
			n += s.Solve(p).Iterations
		}
		return float64(n) / 8
	}
	for name, make := range map[string]func(*rand.Rand, int) *solve.Program{"cable": hung, "rigid": gripped} {
		few, many := steps(100, make), steps(1000, make)
		t.Logf("%s: %.1f steps at 100, %.1f at 1000", name, few, many)
		if many > 2*few || math.IsNaN(few) {
			t.Errorf("%s: %g steps at 100 vehicles, %g at 1000", name, few, many)
		}
	}
}
