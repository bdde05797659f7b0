package solve

import (
	"math"
	"math/rand"
	"testing"

	"cohoist/core/vec"
)

// rotors is a random rigid team: scattered, or a symmetric grid of equal ones with a load in the
// middle, whose corners are degenerate.
func rotors(rng *rand.Rand, k int, even bool) *Program {
	p := &Program{Goal: 1}
	for i := range k {
		at, axis, most := vec.V3{rng.NormFloat64(), rng.NormFloat64(), 0.1 * rng.NormFloat64()}, vec.V3{0.1 * rng.NormFloat64(), 0.1 * rng.NormFloat64(), 1}.Unit(), 10+5*rng.Float64()
		if even {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(k))
			at, axis, most = vec.V3{cos, sin, 0}, vec.V3{0, 0, 1}, 12
		}
		for j := range 4 {
			sin, cos := math.Sincos(math.Pi / 2 * (float64(j) + 0.5))
			m := at.Add(vec.V3{0.3 * cos, 0.3 * sin, 0}).Cross(axis).Add(axis.Scale(0.016 * float64(1-2*(j%2))))
			p.Lines = append(p.Lines, Line{Column: Wrench{axis[0], axis[1], axis[2], m[0], m[1], m[2]}, HiT: most})
		}
	}
	p.Wrench = Wrench{0, 0, 25 * float64(k)}
	if rng.Intn(3) > 0 {
		p.Wrench[3], p.Wrench[4], p.Wrench[5] = rng.NormFloat64(), rng.NormFloat64(), 0.1*rng.NormFloat64()
	}
	if rng.Intn(2) > 0 { // the largest part of a wrench within full thrust
		p.Goal = -1
		for i := range p.Lines {
			p.Lines[i].Hi, p.Lines[i].HiT = p.Lines[i].HiT, 0
		}
		p.WrenchT[rng.Intn(4)+2] = 1
	}
	return p
}

// Two routes to the same number: the walk along corners and the interior method.
func TestWalk(t *testing.T) {
	s, in := NewSolver(), NewSolver()
	in.inside = true
	walked, n := 0, 0
	for seed := range int64(1500) {
		rng := rand.New(rand.NewSource(seed))
		p := rotors(rng, 1+rng.Intn(12), seed%2 == 0)
		a := s.Solve(p)
		corner := s.cornered
		b := in.Solve(p)
		if a.Status != b.Status {
			t.Errorf("seed %d: %v by walk %v, inside %v", seed, a.Status, corner, b.Status)
		}
		if b.Status != Optimal {
			continue
		}
		n++
		if corner {
			walked++
		}
		if !(math.Abs(a.T-b.T) <= 1e-8*math.Max(1, math.Abs(b.T))) {
			t.Errorf("seed %d: T = %.12g, inside %.12g", seed, a.T, b.T)
		}
		if corner && !(p.Goal*(a.T-a.Bound) <= 1e-12*math.Max(1, math.Abs(a.T)) && a.Residual <= 1e-12) {
			t.Errorf("seed %d: gap %g, residual %g", seed, a.T-a.Bound, a.Residual)
		}
	}
	if walked < n*9/10 {
		t.Errorf("only %d of %d answers by walk", walked, n)
	}
	t.Logf("%d of %d by walk", walked, n)
}
