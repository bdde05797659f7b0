package solve_test

import (
	"math"
	"math/rand"
	"testing"

	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Teams at the ends: every answer is proven, whatever the rank and the scale.
func TestDegenerate(t *testing.T) {
	s := solve.NewSolver()
	ring := func(k int, radius, own, most float64) *solve.Program {
		p := &solve.Program{Goal: 1}
		for i := range k {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(k))
			q := sling(radius*cos, radius*sin, own, most)
			q.Cones = append(q.Cones, solve.Cone{Flat: true, Z: 0.5}, solve.Cone{C: 1e6 * most})
			p.Pulls = append(p.Pulls, q)
		}
		return p
	}
	rows := []struct {
		what string
		p    *solve.Program
		w    solve.Wrench
		want float64
	}{
		{"one cable", ring(1, 0, 20, 100), solve.Wrench{2: 40}, 0.6},
		{"two on a line", ring(2, 1, 20, 100), solve.Wrench{2: 80}, 0.6},
		{"sixteen equal", ring(16, 1, 20, 100), solve.Wrench{2: 640}, 0.6},
		{"1 mm apart", ring(3, 1e-3, 20, 100), solve.Wrench{2: 120}, 0.6},
		{"1 km apart", ring(3, 1e3, 20, 100), solve.Wrench{2: 120}, 0.6},
		{"a thousandth of a newton", ring(4, 1, 1e-3, 1e-2), solve.Wrench{2: 4e-3}, 0.2},
		{"1e5 N", ring(4, 1, 1e5, 1e6), solve.Wrench{2: 4e5}, 0.2},
		{"a feather under giants", ring(4, 1, 1e5, 1e6), solve.Wrench{2: 1e-3}, 0.1 + 0.25e-9},
		{"nothing to lift", ring(5, 1, 20, 100), solve.Wrench{}, 0.2},
	}
	for _, r := range rows {
		r.p.Wrench = r.w
		got := s.Solve(r.p)
		certified(t, r.what, r.p, got)
		if got.Status == solve.Optimal && !(math.Abs(got.T-r.want) <= 1e-8*r.want) {
			t.Errorf("%s: T = %.12g, want %g", r.what, got.T, r.want)
		}
		q := s.Settle(r.p, got.T)
		if q.Status != solve.Optimal {
			t.Errorf("%s: settle: %v %s", r.what, q.Status, q.Reason)
			continue
		}
		for i, f := range q.F { // all alike, straight up
			if want := r.w[2] / float64(len(q.F)); !(f.Sub(vec.V3{0, 0, want}).Norm() <= 1e-7*math.Max(want, 1e-2*r.p.Pulls[0].Cones[0].T*got.T)) {
				t.Errorf("%s: pull %d: %v, want %g up", r.what, i, f, want)
			}
		}
	}
}

// 75 g beside 10 kg, 1 mm beside 1 m: random mixed teams of rotors and cables.
func TestUnlikeScales(t *testing.T) {
	s := solve.NewSolver()
	unsolved := 0
	for seed := range int64(600) {
		rng := rand.New(rand.NewSource(seed))
		p := &solve.Program{Goal: 1}
		lift := 0.0
		span := math.Pow(10, -3*rng.Float64())
		for range 1 + rng.Intn(8) {
			m := 0.075 * math.Pow(10/0.075, rng.Float64())
			if rng.Intn(2) == 0 {
				m = []float64{0.075, 10}[rng.Intn(2)]
			}
			at := vec.V3{span * rng.NormFloat64(), span * rng.NormFloat64(), 0.1 * span * rng.NormFloat64()}
			if rng.Intn(3) == 0 {
				for j := range 4 {
					sin, cos := math.Sincos(math.Pi / 2 * float64(j))
					arm := at.Add(vec.V3{0.1 * cos, 0.1 * sin, 0}).Cross(vec.V3{0, 0, 1})
					p.Lines = append(p.Lines, solve.Line{Column: solve.Wrench{0, 0, 1, arm[0], arm[1], arm[2] + 0.01*float64(1-2*(j%2))}, HiT: 5 * m})
				}
			} else {
				own := vec.V3{0, 0, 10 * m}
				p.Pulls = append(p.Pulls, solve.Pull{At: at, MinZ: 0.1 * float64(rng.Intn(2)),
					Cones: []solve.Cone{{B: own, T: 20 * m}, {Flat: true, B: own, Z: 0.6, C: 6 * m}, {Flat: true, Z: 0.5}, {C: math.Pow(10, 5*rng.Float64())}}})
			}
			lift += 10 * m
		}
		p.Wrench = solve.Wrench{2: lift * rng.Float64()}
		if rng.Intn(4) == 0 {
			p.Wrench = solve.Wrench{}
		}
		r := s.Solve(p)
		if r.Status == solve.Unsolved { // at the edge between the two answers
			unsolved++
			t.Logf("seed %d: %s", seed, r.Reason)
			continue
		}
		proven(t, "unlike", p, r, 10) // with nothing to lift t is 0 and bounds have no size
		if t.Failed() {
			t.Fatalf("seed %d", seed)
		}
		if r.Status == solve.Optimal {
			if q := s.Settle(p, r.T); q.Status != solve.Optimal || !(q.Residual <= 1e-12) {
				t.Errorf("seed %d: settle: %v %s, residual %g", seed, q.Status, q.Reason, q.Residual)
			}
		}
	}
	if unsolved > 3 {
		t.Errorf("%d unsolved", unsolved)
	}
}

// A solver keeps nothing of the last program, and a warm one allocates nothing.
func TestReuse(t *testing.T) {
	warm := solve.NewSolver()
	for seed := range int64(30) {
		rng := rand.New(rand.NewSource(seed))
		for _, p := range []*solve.Program{hung(rng, 5), gripped(rng, 4), hung(rng, 12)} {
			a, b := warm.Solve(p), solve.NewSolver().Solve(p)
			if a.Status != b.Status || a.T != b.T && a.Status == solve.Optimal {
				t.Errorf("seed %d: %v %g warm, %v %g cold", seed, a.Status, a.T, b.Status, b.T)
			}
		}
	}
	rng := rand.New(rand.NewSource(1))
	for _, p := range []*solve.Program{hung(rng, 48), gripped(rng, 48)} {
		warm.Settle(p, warm.Solve(p).T)
		if n := testing.AllocsPerRun(5, func() { warm.Settle(p, warm.Solve(p).T) }); n != 0 {
			t.Errorf("%g allocations in a warm solve", n)
		}
	}
}
