package solve_test

import (
	"fmt"
	"math/rand"
	"testing"

	"cohoist/core/solve"
)

// What a Solver solved before must not show in its answer, nor what is left in its room: the same
// steps on the same machine give the same bits.
func TestNoHistory(t *testing.T) {
	used := solve.NewSolver()
	for seed := range int64(600) {
		rng := rand.New(rand.NewSource(seed))
		k := 1 + rng.Intn(12)
		p := hung(rng, k)
		switch seed % 5 {
		case 0:
			p = gripped(rng, k)
		case 1:
			p = ringed(k + 1)
		case 2:
			p.Lines = gripped(rng, 1+rng.Intn(3)).Lines
		case 3:
			p.Wrench[3] = p.Wrench[2] * rng.NormFloat64()
		}
		fresh := solve.NewSolver()
		a, b := used.Solve(p), fresh.Solve(p)
		if one, other := fmt.Sprint(a), fmt.Sprint(b); one != other {
			t.Fatalf("seed %d: %s\nby a fresh Solver %s", seed, one, other)
		}
		if a.Status != solve.Optimal {
			continue
		}
		best := a.T
		if one, other := fmt.Sprint(used.Settle(p, best)), fmt.Sprint(fresh.Settle(p, best)); one != other {
			t.Fatalf("seed %d, stage two: %s\nby a fresh Solver %s", seed, one, other)
		}
	}
}
