package crosscheck

import (
	"bufio"
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"testing"

	"cohoist/core/certify"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// programCount is how many random programs the peers have answered.
const programCount = 5000

// drawProgram is random program number seed: rotors, cables or both; generic, in a line, in one point,
// 1 mm apart or in one plane; of one size or from 1 mN to 100 kN; the wanted wrench one that some forces
// give, a weight alone, or any. A third ask for the largest t.
func drawProgram(seed uint64) *solve.Program {
	rng := rand.New(rand.NewPCG(seed, 77))
	d := func(a, b float64) float64 { return a + (b-a)*rng.Float64() }
	pow := func(a, b float64) float64 { return math.Pow(10, d(a, b)) }
	k := 1 + rng.IntN(10)
	rotors, cables := rng.IntN(3) != 0, true
	if rotors {
		cables = rng.IntN(3) == 0
	}
	shape := rng.IntN(8) // 0 line, 1 point, 2 close, 3 plane, else free
	size, unit := pow(-1, 1), pow(-1, 2)
	if rng.IntN(4) == 0 {
		size, unit = pow(-2, 1.5), pow(-3, 5)
	}
	mixed := rng.IntN(5) == 0
	p := &solve.Program{Goal: 1}
	if rng.IntN(3) == 0 {
		p.Goal = -1
	}
	var have solve.Wrench
	add := func(w solve.Wrench, f float64) {
		for i := range have {
			have[i] += w[i] * f
		}
	}
	even := p.Goal > 0
	for i := range k {
		at := vec.V3{d(-1, 1), d(-1, 1), d(-0.2, 0.2)}.Scale(size)
		switch shape {
		case 0:
			at[1], at[2] = 0, 0
		case 1:
			at = vec.V3{}
		case 2:
			at = at.Scale(0.001 / size)
		case 3:
			at[2] = 0
		}
		top := unit
		if mixed {
			top *= pow(-2, 2)
		}
		if rotors && (!cables || i%2 == 0) {
			n := 3 + rng.IntN(4)
			arm, turn, kappa := size*d(0.05, 0.3), d(0, 6), size*d(0.005, 0.03)
			axis := vec.V3{0, 0, 1}
			if rng.IntN(3) == 0 {
				axis = vec.V3{d(-0.3, 0.3), d(-0.3, 0.3), 1}.Unit()
			}
			for j := range n {
				s, c := math.Sincos(turn + 2*math.Pi*float64(j)/float64(n))
				m := at.Add(vec.V3{arm * c, arm * s, 0}).Cross(axis).Add(axis.Scale(kappa * float64(1-2*(j%2))))
				l := solve.Line{Column: solve.Wrench{axis[0], axis[1], axis[2], m[0], m[1], m[2]}, HiT: top}
				if !even {
					l.Hi, l.HiT = top, 0
				}
				p.Lines = append(p.Lines, l)
				add(l.Column, top*d(0.1, 0.9))
			}
			continue
		}
		f := vec.V3{d(-0.1, 0.1), d(-0.1, 0.1), d(0.3, 0.8)}.Scale(top)
		own := vec.V3{d(-0.02, 0.02), d(-0.02, 0.02), d(0.1, 0.4)}.Scale(top)
		cone, tilt := math.Tan(d(0.2, 0.8)), math.Tan(d(0.3, 0.8))
		thrust := solve.Cone{B: own, T: top}
		if !even {
			thrust.T, thrust.C = 0, top*d(1, 1.5)
		}
		q := solve.Pull{At: at, MinZ: top * d(0, 0.05), Cones: []solve.Cone{thrust, {Flat: true, B: own, Z: tilt, C: tilt * own[2]}, {Flat: true, Z: cone}}}
		if rng.IntN(2) == 0 {
			q.Cones = append(q.Cones, solve.Cone{C: top * d(0.3, 2)})
		}
		p.Pulls = append(p.Pulls, q)
		m := at.Cross(f)
		add(solve.Wrench{f[0], f[1], f[2], m[0], m[1], m[2]}, 1)
	}
	p.Wrench = have
	switch rng.IntN(6) {
	case 0: // any wrench
		for i := range p.Wrench {
			p.Wrench[i] *= d(0, 2)
		}
	case 1: // weight alone
		p.Wrench = solve.Wrench{0, 0, have[2], 0, 0, 0}
	}
	if !even {
		p.WrenchT = [...]solve.Wrench{{0, 0, 1}, {0, 0, 0, 1}, {0, 0, 0, 0, -1}, {0, 0, 0, 0, 0, 1}, {d(-0.2, 0.2), 0, 1, 0, d(-0.1, 0.1) * size}}[rng.IntN(5)]
	}
	return p
}

// What conelp and HiGHS vouch for at 1e-10 asked: see testdata/peers/README.md.
const programTol = 3e-8

// TestPrograms holds the solver against general-purpose solvers on random programs, and every answer
// and every "no" against its own multiplied-out proof. With COHOIST_PROGRAMS it writes the programs
// for testdata/peers/programs.py instead.
func TestPrograms(t *testing.T) {
	if path := os.Getenv("COHOIST_PROGRAMS"); path != "" {
		writePrograms(t, path)
		return
	}
	f, err := os.Open("../../testdata/peers/programs.txt")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	s := solve.NewSolver()
	var n, optimal, infeasible, unsolved int
	far := worst{}
	for lines := bufio.NewScanner(f); lines.Scan(); n++ {
		var seed uint64
		var said string
		if _, err := fmt.Sscan(lines.Text(), &seed, &said); err != nil {
			t.Fatalf("line %d: %v", n+1, err)
		}
		p := drawProgram(seed)
		r := s.Solve(p)
		if r.Status == solve.Unsolved {
			unsolved++
			t.Errorf("program %d: unsolved, %s; the peer says %s", seed, r.Reason, said)
			continue
		}
		prove(t, seed, p, &r)
		var want float64
		if said != "none" {
			if _, err := fmt.Sscan(said, &want); err != nil {
				t.Fatal(err)
			}
			optimal++
		} else {
			infeasible++
		}
		if (r.Status == solve.Optimal) != (said != "none") || r.Status == solve.Unbounded {
			t.Errorf("program %d: %v (t = %.9g), the peer says %s", seed, r.Status, r.T, said)
			continue
		}
		if r.Status == solve.Optimal {
			d := math.Abs(r.T-want) / math.Max(math.Abs(want), scale(p))
			if far.n++; !(d <= far.d) {
				far.d, far.seed = d, int(seed)
			}
			if !(d <= programTol) {
				t.Errorf("program %d: t = %.10g, the peer says %s", seed, r.T, said)
			}
		}
	}
	t.Logf("%d programs, %d with a balance, %d without, %d unsolved; t differs by %.2g at most (program %d)", n, optimal, infeasible, unsolved, far.d, far.seed)
	if n < programCount*95/100 || infeasible < programCount/20 || optimal < programCount/2 {
		t.Errorf("only %d programs, %d with and %d without a balance", n, optimal, infeasible)
	}
}

// scale is what counts as nothing beside t: 1/100 of full thrust for the smallest t, 1/100 of what the
// strongest could do for the largest.
func scale(p *solve.Program) float64 {
	if p.Goal > 0 {
		return 0.01
	}
	top := 0.0
	for _, l := range p.Lines {
		top = math.Max(top, l.Hi)
	}
	for _, q := range p.Pulls {
		top = math.Max(top, q.Cones[0].C)
	}
	if p.WrenchT[2] == 0 { // a moment
		arm := 0.0
		for _, l := range p.Lines {
			arm = math.Max(arm, math.Hypot(l.Column[3], l.Column[4]))
		}
		for _, q := range p.Pulls {
			arm = math.Max(arm, q.At.Norm())
		}
		top *= arm
	}
	return 0.01 * top
}

// prove multiplies out the forces and the duals.
func prove(t *testing.T, seed uint64, p *solve.Program, r *solve.Result) {
	t.Helper()
	switch r.Status {
	case solve.Optimal:
		c := certify.Forces(p, r.U, r.F, r.T)
		c.Duals(p, r)
		if !(c.Imbalance <= 1e-9 && c.Broken <= 1e-8 && c.Stray <= 1e-9) {
			t.Errorf("program %d: imbalance %.2g, bounds broken by %.2g, duals off by %.2g", seed, c.Imbalance, c.Broken, c.Stray)
		}
		if gap := p.Goal * (r.T - c.Bound(p.Goal)); !(math.Abs(gap) <= 1e-7*math.Max(math.Abs(r.T), scale(p))) {
			t.Errorf("program %d: t = %.10g is proven to %.2g only", seed, r.T, gap)
		}
	case solve.Infeasible:
		var c certify.Proof
		c.Duals(p, r)
		if !(c.Value > 0 && c.Stray <= 1e-9) {
			t.Errorf("program %d: the proof that there is no balance gives %.3g, duals off by %.2g", seed, c.Value, c.Stray)
		}
	}
}

func writePrograms(t *testing.T, path string) {
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	w := bufio.NewWriter(f)
	enc := json.NewEncoder(w)
	for seed := range uint64(programCount) {
		if err := enc.Encode(map[string]any{"seed": seed, "scale": scale(drawProgram(seed)), "program": drawProgram(seed)}); err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Flush(); err != nil {
		t.Fatal(err)
	}
}
