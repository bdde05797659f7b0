package solve_test

import (
	"math"
	"math/rand"
	"testing"

	"cohoist/core/solve"
	"cohoist/core/vec"
)

// symmetric is a ring of eight cables, each with its opposite and its mirror image, that is asked for
// the most of a wrench.
func symmetric(w solve.Wrench) *solve.Program {
	p := &solve.Program{Goal: -1, Wrench: solve.Wrench{2: 200}, WrenchT: w}
	for _, at := range [8]vec.V3{{1, 2}, {-1, 2}, {1, -2}, {-1, -2}, {3, 1}, {-3, 1}, {3, -1}, {-3, -1}} {
		p.Pulls = append(p.Pulls, solve.Pull{At: at, MinZ: 1, Cones: []solve.Cone{
			{B: vec.V3{0, 0, 30}, C: 80}, {Flat: true, B: vec.V3{0, 0, 30}, Z: 0.5, C: 15}, {Flat: true, Z: 0.6}}})
	}
	return p
}

// What Reversible promises: t goes as far the other way.
func TestReversible(t *testing.T) {
	s := solve.NewSolver()
	for i, w := range []solve.Wrench{{1}, {0, 1}, {3: 1}, {4: 1}, {5: 1}, {0: 1, 1: 2}, {0: 1, 5: 1}} {
		p := symmetric(w)
		if !p.Reversible() {
			t.Errorf("%v: not seen", w)
		}
		one := s.Solve(p)
		for k := range p.WrenchT {
			p.WrenchT[k] *= -1
		}
		other := s.Solve(p)
		if d := math.Abs(one.T - other.T); !(d <= 1e-9*one.T) {
			t.Errorf("%d: %v and %v", i, one.T, other.T)
		}
	}
}

// Anything moved out of place must be seen, as must wrenches that no symmetry turns round.
func TestNotReversible(t *testing.T) {
	for _, w := range []solve.Wrench{{2: 1}, {0: 1, 1: 1, 5: 1}, {0: 1, 2: 1}} {
		if symmetric(w).Reversible() {
			t.Errorf("%v: said to be reversible", w)
		}
	}
	rng := rand.New(rand.NewSource(7))
	for _, change := range []func(*solve.Program){
		func(p *solve.Program) { p.Pulls[rng.Intn(8)].At[rng.Intn(2)] += 1e-9 },
		func(p *solve.Program) { p.Pulls[rng.Intn(8)].MinZ += 1e-9 },
		func(p *solve.Program) { p.Pulls[rng.Intn(8)].Cones[0].C += 1e-9 },
		func(p *solve.Program) { p.Pulls[rng.Intn(8)].Cones[0].B[0] += 1e-9 },
		func(p *solve.Program) { p.Pulls[rng.Intn(8)].Cones[1].D[2] += 1e-9 },
		func(p *solve.Program) { p.Pulls[rng.Intn(8)].Cones[1].T += 1e-9 },
		func(p *solve.Program) { p.Pulls = p.Pulls[:7] },
		func(p *solve.Program) { p.Wrench[3] += 1e-9; p.Wrench[5] += 1e-9; p.Wrench[0] += 1e-6 },
		func(p *solve.Program) {
			p.Lines = append(p.Lines, solve.Line{Column: solve.Wrench{2: 1, 3: 1, 4: 1}, Hi: 9})
		},
	} {
		p := symmetric(solve.Wrench{3: 1})
		if change(p); p.Reversible() {
			t.Error("a changed program is said to be reversible")
		}
	}
}
