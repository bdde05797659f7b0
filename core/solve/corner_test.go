package solve_test

import (
	"math"
	"math/rand"
	"testing"

	"cohoist/core/solve"
	"cohoist/core/vec"
)

// length is the square that stage two makes least.
func length(r *solve.Result) (n float64) {
	for _, u := range r.U {
		n += u * u
	}
	for _, f := range r.F {
		n += f.Dot(f)
	}
	return n
}

// Stage two from the corner that Solve found must be as short as from the middle of all best answers,
// where a Solver goes that is asked for a t a little beside the best, and must keep the bounds. The middle is
// known to 1e-9, and what hangs on duals as small to less: 1e-4 of the square.
func TestSettleFromCorner(t *testing.T) {
	s := solve.NewSolver()
	shorter := 0
	for seed := range int64(400) {
		rng := rand.New(rand.NewSource(seed))
		p := hung(rng, 2+rng.Intn(10))
		if seed%3 == 0 { // all alike on a ring: many answers
			for i := range p.Pulls {
				sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(len(p.Pulls)))
				p.Pulls[i] = solve.Pull{At: vec.V3{2 * cos, 2 * sin, 0.3}, MinZ: p.Pulls[0].MinZ, Cones: p.Pulls[0].Cones}
			}
		}
		if seed%2 == 0 { // the most of a pull to one side
			p.Goal = -1
			p.WrenchT = solve.Wrench{rng.NormFloat64(), rng.NormFloat64(), 0, 0, 0, 0}
			for i := range p.Pulls {
				c := append([]solve.Cone(nil), p.Pulls[i].Cones...)
				c[0].C, c[0].T = 0.9*c[0].T, 0
				p.Pulls[i].Cones = c
			}
		}
		best := s.Solve(p)
		if best.Status != solve.Optimal {
			continue
		}
		most := best.T
		corner := s.Settle(p, most)
		middle := solve.NewSolver().Settle(p, most+1e-10*math.Abs(most)*p.Goal)
		if corner.Status != solve.Optimal {
			t.Errorf("seed %d: %v %s", seed, corner.Status, corner.Reason)
			continue
		}
		for i, f := range corner.F {
			if out := beyond(&p.Pulls[i], f, most); out > 1e-8*f.Norm()+1e-8 {
				t.Errorf("seed %d: pull %d is %g N beyond a bound", seed, i, out)
			}
		}
		if middle.Status == solve.Optimal {
			a, b := length(&corner), length(&middle)
			if !(a <= b*(1+1e-4)) {
				t.Errorf("seed %d: %.9g from the corner, %.9g from the middle", seed, a, b)
			}
			if a < b*(1-1e-4) {
				shorter++
			}
		}
	}
	t.Logf("%d shorter than from the middle", shorter)
}

// beyond is how far a force is beyond the bounds of its pull, N.
func beyond(q *solve.Pull, f vec.V3, t float64) float64 {
	out := q.MinZ - f[2]
	for _, k := range q.Cones {
		v := f.Add(k.B).Add(k.D.Scale(t))
		if k.Flat {
			v[2] = 0
		}
		out = max(out, v.Norm()-float64(k.Z*f[2])-float64(k.T*t)-k.C)
	}
	return out
}
