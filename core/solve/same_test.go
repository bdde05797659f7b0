package solve_test

import (
	"math"
	"math/rand"
	"testing"

	"cohoist/core/solve"
)

// The same answers on every machine, native and wasm, to 1e-9: T and the sum of the squares of
// stage two, written down once on amd64. Change detection, not truth.
func TestSameEverywhere(t *testing.T) {
	rows := []struct {
		kind    string
		seed    int64
		k       int
		T, size float64
	}{
		{"cable", 3, 4, 0.9341067579425, 745.8909868834},
		{"cable", 4, 8, 1.207244727202, 1680.400752296},
		{"cable", 5, 8, 0.7749681787932, 986.8836323904},
		{"cable", 11, 20, 0.8116193094795, 2847.935792032},
		{"cable", 12, 20, 0.8052973648277, 2500.420563422},
		{"cable", 13, 48, 0.78538610559, 5432.952168159},
		{"rigid", 5, 8, 1.556193582305, 3839.928424921},
		{"rigid", 11, 20, 0.941424141212, 5584.727193938},
		{"rigid", 12, 20, 0.6707570353824, 4340.670597894},
		{"rigid", 13, 48, 0.5879428616817, 8813.839800114},
	}
	s := solve.NewSolver()
	for _, r := range rows {
		make := hung
		if r.kind == "rigid" {
			make = gripped
		}
		p := make(rand.New(rand.NewSource(r.seed)), r.k)
		got := s.Solve(p)
		q := s.Settle(p, got.T)
		if !(math.Abs(got.T-r.T) <= 1e-9*r.T) || !(math.Abs(size(q)-r.size) <= 1e-8*r.size) {
			t.Errorf("{%q, %d, %d, %.13g, %.13g},", r.kind, r.seed, r.k, got.T, size(q))
		}
	}
}
