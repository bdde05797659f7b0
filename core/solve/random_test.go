package solve_test

import (
	"math"
	"math/rand"
	"testing"

	"cohoist/core/certify"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// hung is a random team of k vehicles on cables, its load a share of what they lift.
func hung(rng *rand.Rand, k int) *solve.Program {
	p := &solve.Program{Goal: 1}
	lift := 0.0
	for range k {
		m := 1 + rng.Float64()
		own := vec.V3{0.3 * rng.NormFloat64(), 0.3 * rng.NormFloat64(), 10 * m}
		tan := math.Tan(0.6)
		p.Pulls = append(p.Pulls, solve.Pull{
			At: vec.V3{rng.NormFloat64(), rng.NormFloat64(), 0.1 * rng.NormFloat64()}, MinZ: 0.5,
			Cones: []solve.Cone{{B: own, T: 22 * m}, {Flat: true, B: own, Z: tan, C: tan * own[2]}, {Flat: true, Z: math.Tan(0.5)}, {C: 400}},
		})
		lift += 10 * m
	}
	p.Wrench = solve.Wrench{0.3, 0.2, 0.7 * lift}
	return p
}

// gripped is a random team of k vehicles with four rotors each, held rigidly.
func gripped(rng *rand.Rand, k int) *solve.Program {
	p := &solve.Program{Goal: 1}
	for range k {
		at := vec.V3{rng.NormFloat64(), rng.NormFloat64(), 0.1 * rng.NormFloat64()}
		axis := vec.V3{0.1 * rng.NormFloat64(), 0.1 * rng.NormFloat64(), 1}.Unit()
		most := 10 + 5*rng.Float64()
		for j := range 4 {
			sin, cos := math.Sincos(math.Pi / 2 * (float64(j) + 0.5))
			r := at.Add(vec.V3{0.3 * cos, 0.3 * sin, 0})
			m := r.Cross(axis).Add(axis.Scale(0.016 * float64(1-2*(j%2))))
			p.Lines = append(p.Lines, solve.Line{Column: solve.Wrench{axis[0], axis[1], axis[2], m[0], m[1], m[2]}, HiT: most})
		}
	}
	p.Wrench = solve.Wrench{0, 0, 25 * float64(k), 0.5, 0.2, 0.1}
	return p
}

// certified fails the test unless the answer multiplies out, within tolerances that are a few
// hundred times what these programs reach.
func certified(t *testing.T, what string, p *solve.Program, r solve.Result) {
	t.Helper()
	proven(t, what, p, r, 1)
}

// proven is certified with tolerances loose times as large.
func proven(t *testing.T, what string, p *solve.Program, r solve.Result, loose float64) {
	t.Helper()
	switch r.Status {
	case solve.Optimal:
		c := certify.Forces(p, r.U, r.F, r.T)
		c.Duals(p, &r)
		gap := p.Goal * (r.T - c.Bound(p.Goal)) / math.Max(math.Abs(r.T), 1e-3)
		if !(c.Imbalance <= 1e-12*loose && c.Broken <= 1e-9*loose && c.Stray <= 1e-11*loose && gap <= 1e-7*loose && gap >= -1e-9*loose) {
			t.Errorf("%s: T = %g: gap %.2g, %+v", what, r.T, gap, c)
		}
	case solve.Infeasible:
		var c certify.Proof
		c.Duals(p, &r)
		if !(c.Excludes() >= 1e5/loose && c.Stray <= 2e-9*loose) {
			t.Errorf("%s: no proof of infeasible: excludes %g, %+v", what, c.Excludes(), c)
		}
	default:
		t.Errorf("%s: %v: %s", what, r.Status, r.Reason)
	}
}

func TestRandom(t *testing.T) {
	s := solve.NewSolver()
	for seed := range int64(150) {
		rng := rand.New(rand.NewSource(seed))
		for _, k := range []int{1, 2, 3, 4, 5, 8, 20} {
			for _, p := range []*solve.Program{hung(rng, k), gripped(rng, k)} {
				r := s.Solve(p)
				certified(t, "seed", p, r)
				if r.Status != solve.Optimal {
					continue
				}
				least := size(r)
				q := s.Settle(p, r.T)
				if q.Status != solve.Optimal {
					t.Errorf("seed %d k %d: settle: %s", seed, k, q.Reason)
					continue
				}
				c := certify.Forces(p, q.U, q.F, q.T)
				if !(c.Imbalance <= 1e-12 && c.Broken <= 1e-9 && size(q) <= least*(1+3e-5)) {
					t.Errorf("seed %d k %d: settle: %+v, %g after %g", seed, k, c, size(q), least)
				}
			}
		}
	}
}

// size is Σu² + Σ|F|².
func size(r solve.Result) (v float64) {
	for _, u := range r.U {
		v += u * u
	}
	for _, f := range r.F {
		v += f.Dot(f)
	}
	return v
}
