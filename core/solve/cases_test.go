package solve_test

import (
	"math"
	"testing"

	"cohoist/core/certify"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Cases closed by hand, g = 10 m/s², round numbers. Tolerance 1e-9: the solver's own aim.

const tol = 1e-9

var none = math.Inf(-1)

// up is an upright rotor at (x, y) with a most of hi + hiT t.
func up(x, y, hi, hiT float64) solve.Line {
	return solve.Line{Column: solve.Wrench{0, 0, 1, y, -x, 0}, Hi: hi, HiT: hiT}
}

// sling is a cable at (x, y, 0) under a vehicle that weighs w and thrusts at most t times most.
func sling(x, y, w, most float64) solve.Pull {
	return solve.Pull{At: vec.V3{x, y, 0}, MinZ: 0, Cones: []solve.Cone{{B: vec.V3{0, 0, w}, T: most}}}
}

func TestByHand(t *testing.T) {
	inf := math.Inf(1)
	rows := []struct {
		what string
		p    solve.Program
		want float64
		st   solve.Status
	}{
		{"two rotors share 30 N evenly: 15/20", solve.Program{Goal: 1, Wrench: solve.Wrench{2: 30},
			Lines: []solve.Line{up(1, 0, 0, 20), up(-1, 0, 0, 20)}}, 0.75, solve.Optimal},
		{"lever: 30 N over x = 0.5, the near one bears 22.5 of 20", solve.Program{Goal: 1, Wrench: solve.Wrench{2: 30, 4: -15},
			Lines: []solve.Line{up(1, 0, 0, 20), up(-1, 0, 0, 20)}}, 1.125, solve.Optimal},
		{"a rotor can't push sideways", solve.Program{Goal: 1, Wrench: solve.Wrench{0: 1, 2: 30},
			Lines: []solve.Line{up(1, 0, 0, 20), up(-1, 0, 0, 20)}}, 0, solve.Infeasible},
		{"rotors never pull down", solve.Program{Goal: 1, Wrench: solve.Wrench{2: -1},
			Lines: []solve.Line{up(0, 0, 0, 20)}}, 0, solve.Infeasible},
		{"load beyond the lever's end", solve.Program{Goal: 1, Wrench: solve.Wrench{2: 10, 4: -20},
			Lines: []solve.Line{up(1, 0, 0, 20), up(-1, 0, 0, 20)}}, 0, solve.Infeasible},
		{"no load, t = 0", solve.Program{Goal: 1, Lines: []solve.Line{up(1, 0, 0, 20), up(-1, 0, 0, 20)}}, 0, solve.Optimal},
		{"a vehicle of 20 N lifts 40 N with 100 N: 0.6", solve.Program{Goal: 1, Wrench: solve.Wrench{2: 40},
			Pulls: []solve.Pull{sling(0, 0, 20, 100)}}, 0.6, solve.Optimal},
		{"no load: own weight 20 of 100", solve.Program{Goal: 1, Pulls: []solve.Pull{sling(0, 0, 20, 100)}}, 0.2, solve.Optimal},
		{"two on a line, load in the middle", solve.Program{Goal: 1, Wrench: solve.Wrench{2: 40},
			Pulls: []solve.Pull{sling(1, 0, 10, 50), sling(-1, 0, 10, 50)}}, 0.6, solve.Optimal},
		{"one cable, load off its point", solve.Program{Goal: 1, Wrench: solve.Wrench{2: 40, 4: -4},
			Pulls: []solve.Pull{sling(0, 0, 20, 100)}}, 0, solve.Infeasible},
		{"sideways drag 30 beside weight 40: |F| = 50 of 100", solve.Program{Goal: 1, Wrench: solve.Wrench{0: 30, 2: 40},
			Pulls: []solve.Pull{sling(0, 0, 0, 100)}}, 0.5, solve.Optimal},
		{"most load on two rotors of 20 N", solve.Program{Goal: -1, WrenchT: solve.Wrench{2: 1},
			Lines: []solve.Line{up(1, 0, 20, 0), up(-1, 0, 20, 0)}}, 40, solve.Optimal},
		{"strongest moment in hover: 20 up on one side, 10 on the other", solve.Program{Goal: -1, Wrench: solve.Wrench{2: 30}, WrenchT: solve.Wrench{4: 1},
			Lines: []solve.Line{up(1, 0, 20, 0), up(-1, 0, 20, 0)}}, 10, solve.Optimal},
		{"most load is none: t ≤ 0", solve.Program{Goal: -1, Wrench: solve.Wrench{2: 60}, WrenchT: solve.Wrench{2: 1},
			Lines: []solve.Line{up(1, 0, 20, 0), up(-1, 0, 20, 0)}}, -20, solve.Optimal},
		{"nothing holds t", solve.Program{Goal: -1, Wrench: solve.Wrench{2: 10},
			Lines: []solve.Line{up(1, 0, 20, 0), up(-1, 0, 20, 0)}}, 0, solve.Unbounded},
		{"no upper bound, load for ever", solve.Program{Goal: -1, WrenchT: solve.Wrench{2: 1},
			Lines: []solve.Line{up(0, 0, inf, 0)}}, 0, solve.Unbounded},
		{"accelerated sideways: 3-4-5", solve.Program{Goal: -1, Wrench: solve.Wrench{2: 40}, WrenchT: solve.Wrench{0: 4},
			Pulls: []solve.Pull{{MinZ: none, Cones: []solve.Cone{{D: vec.V3{1, 0, 0}, C: 50}}}}}, 6, solve.Optimal},
		{"a rotor's own two bounds hold t: 0 ≤ u = 3 + 3 t", solve.Program{Goal: 1, Wrench: solve.Wrench{2: 3}, WrenchT: solve.Wrench{2: 3},
			Lines: []solve.Line{up(0, 0, 3, 3)}}, -1, solve.Optimal}, // found by fuzzing
		{"no vehicle at all", solve.Program{Goal: 1, Wrench: solve.Wrench{2: 1}}, 0, solve.Infeasible},
	}
	s := solve.NewSolver()
	for _, r := range rows {
		got := s.Solve(&r.p)
		if got.Status != r.st {
			t.Errorf("%s: %v %s (T = %g), want %v", r.what, got.Status, got.Reason, got.T, r.st)
			continue
		}
		if r.st == solve.Unbounded {
			continue
		}
		certified(t, r.what, &r.p, got)
		if r.st == solve.Optimal && !(math.Abs(got.T-r.want) <= tol*math.Max(1, math.Abs(r.want))) {
			t.Errorf("%s: T = %.12g, want %g", r.what, got.T, r.want)
		}
	}
}

// Stage two by hand: of all answers at the best t the shortest.
func TestSettleByHand(t *testing.T) {
	s := solve.NewSolver()
	// Four rotors on a line, one half as strong as its load's share needs: the two inner ones are
	// spare and the outer pair decides nothing; equal squares share 40 N as 10 each.
	p := solve.Program{Goal: 1, Wrench: solve.Wrench{2: 40}, Lines: []solve.Line{up(2, 0, 0, 10), up(-2, 0, 0, 10), up(1, 0, 0, 40), up(-1, 0, 0, 40)}}
	r := s.Solve(&p) // t = 40/100: all at their bounds
	q := s.Settle(&p, r.T)
	for i, want := range []float64{4, 4, 16, 16} {
		if math.Abs(q.U[i]-want) > 1e-8 {
			t.Errorf("line %d: %.10g, want %g", i, q.U[i], want)
		}
	}
	// A heavy vehicle that hovers with 0.9 of its thrust unloaded decides t; the other two share
	// 60 N by least squares: 2:1 levers of forces 40 and 20 N.
	p = solve.Program{Goal: 1, Wrench: solve.Wrench{2: 60}, Pulls: []solve.Pull{sling(1, 0, 10, 100), sling(-2, 0, 10, 100), sling(0, 5, 90, 100)}}
	r = s.Solve(&p)
	if math.Abs(r.T-0.9) > tol {
		t.Fatalf("T = %.12g, want 0.9", r.T)
	}
	q = s.Settle(&p, r.T)
	for i, want := range []vec.V3{{0, 0, 40}, {0, 0, 20}, {}} {
		if !(q.F[i].Sub(want).Norm() <= 1e-7) {
			t.Errorf("pull %d: %v, want %v", i, q.F[i], want)
		}
	}
	// A ring of six equal vehicles: all alike, straight up.
	p = solve.Program{Goal: 1, Wrench: solve.Wrench{2: 60}}
	for i := range 6 {
		sin, cos := math.Sincos(float64(i) * math.Pi / 3)
		p.Pulls = append(p.Pulls, sling(cos, sin, 10, 40))
	}
	r = s.Solve(&p)
	q = s.Settle(&p, r.T)
	for i := range q.F {
		if !(q.F[i].Sub(vec.V3{0, 0, 10}).Norm() <= 1e-9) {
			t.Errorf("ring %d: %v", i, q.F[i])
		}
	}
}

// The pseudo-inverse of a lever, and of a wrench that nothing gives.
func TestLeastSquares(t *testing.T) {
	p := solve.Program{Goal: 1, Wrench: solve.Wrench{2: 30, 4: -15}, Lines: []solve.Line{up(1, 0, 0, 1), up(-1, 0, 0, 1)}}
	r := solve.LeastSquares(&p)
	if r.Status != solve.Optimal || math.Abs(r.U[0]-22.5) > 1e-12 || math.Abs(r.U[1]-7.5) > 1e-12 {
		t.Errorf("%v %v, want 22.5 and 7.5", r.Status, r.U)
	}
	p.Wrench[0] = 1
	r = solve.LeastSquares(&p)
	if r.Status != solve.Infeasible || r.Y != (solve.Wrench{0: 1}) {
		t.Errorf("%v %v, want the direction x", r.Status, r.Y)
	}
}

// Bad numbers are refused with a reason, never answered.
func TestRefused(t *testing.T) {
	good := solve.Program{Goal: 1, Wrench: solve.Wrench{2: 30}, Lines: []solve.Line{up(1, 0, 0, 20), up(-1, 0, 0, 20)}}
	bad := []func(p *solve.Program){
		func(p *solve.Program) { p.Goal = 0 },
		func(p *solve.Program) { p.Wrench[1] = math.NaN() },
		func(p *solve.Program) { p.WrenchT[1] = math.Inf(1) },
		func(p *solve.Program) { p.Lines[0].Hi = math.NaN() },
		func(p *solve.Program) { p.Lines[0].Lo = math.Inf(1) },
		func(p *solve.Program) { p.Pulls = []solve.Pull{{MinZ: math.NaN()}} },
		func(p *solve.Program) { p.Pulls = []solve.Pull{{Cones: []solve.Cone{{C: math.NaN()}}}} },
	}
	for i, spoil := range bad {
		p := good
		p.Lines = append([]solve.Line(nil), good.Lines...)
		spoil(&p)
		if r := solve.NewSolver().Solve(&p); r.Status != solve.Unsolved || r.Reason == "" {
			t.Errorf("%d: %v %q", i, r.Status, r.Reason)
		}
	}
}

// certify itself: a wrong claim must not pass.
func TestCertifyRefuses(t *testing.T) {
	p := solve.Program{Goal: 1, Wrench: solve.Wrench{2: 30}, Lines: []solve.Line{up(1, 0, 0, 20), up(-1, 0, 0, 20)}}
	r := solve.NewSolver().Solve(&p)
	c := certify.Forces(&p, []float64{15, 16}, nil, r.T)
	if c.Imbalance < 0.01 || c.Broken < 0.01 {
		t.Errorf("forces of 15 and 16 N pass: %+v", c)
	}
	r.LineHi[0] /= 2
	c.Duals(&p, &r)
	if c.Stray < 0.1 {
		t.Errorf("half a dual passes: %+v", c)
	}
}
