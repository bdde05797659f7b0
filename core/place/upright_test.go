package place

import (
	"math"
	"math/rand/v2"
	"testing"

	"cohoist/core/solve"
	"cohoist/core/vec"
)

func spots(thrust, own, low float64, at ...[2]float64) []spot {
	out := make([]spot, len(at))
	for i, p := range at {
		out[i] = spot{p[0], p[1], thrust, own, low, math.Inf(1)}
	}
	return out
}

func ring(k int) [][2]float64 {
	out := make([][2]float64, k)
	for i := range out {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(k))
		out[i] = [2]float64{cos, sin}
	}
	return out
}

func TestUprightClosedCases(t *testing.T) {
	for _, c := range []struct {
		name   string
		spots  []spot
		weight float64
		off    float64
		want   float64
	}{
		{"four on a ring, load in the middle", spots(1, 0, 0, ring(4)...), 1, 0, 0.25},
		{"one of four lost: only its neighbours carry", spots(1, 0, 0, ring(4)[:3]...), 1, 0, 0.5}, // linear program
		{"one of five lost: (5 + √5)/20", spots(1, 0, 0, ring(5)[:4]...), 1, 0, (5 + math.Sqrt(5)) / 20},
		{"one of six lost", spots(1, 0, 0, ring(6)[:5]...), 1, 0, 0.25},
		{"one of eight lost", spots(1, 0, 0, ring(8)[:7]...), 1, 0, 1. / 6},
		{"one of three lost", spots(1, 0, 0, ring(3)[:2]...), 1, 0, math.Inf(1)},
		// L. Euler's table, 1773: smallest largest leg, linear program
		{"four legs on a rectangle", spots(1, 0, 0, [2]float64{0.7, 0.4}, [2]float64{0.7, -0.6}, [2]float64{-1.3, -0.6}, [2]float64{-1.3, 0.4}), 100, 0, 32.5},
		{"lever rule: 8 and 2 ft, 10 000 lb", spots(1, 0, 0, [2]float64{-8, 0}, [2]float64{2, 0}), 10000, 0, 8000},
		{"lever rule, the centre off by 1 along the line", spots(1, 0, 0, [2]float64{-8, 0}, [2]float64{2, 0}), 10000, 1, 9000},
		{"own weight of 3 each, thrust 10", spots(10, 3, 0, [2]float64{-1, 0}, [2]float64{1, 0}), 8, 0, 0.7},
		{"load outside", spots(1, 0, 0, [2]float64{1, 0}, [2]float64{2, 1}, [2]float64{2, -1}), 1, 0, math.Inf(1)},
		{"load beside the line", spots(1, 0, 0, [2]float64{1, 0.1}, [2]float64{-1, 0.1}), 1, 0, math.Inf(1)},
		{"one above the load", spots(2, 1, 0, [2]float64{0, 0}), 1, 0, 1},
		{"one beside the load", spots(2, 1, 0, [2]float64{0.1, 0}), 1, 0, math.Inf(1)},
		{"tautness alone asks for more than the load leaves", spots(1, 0, 0.6, [2]float64{1, 0}, [2]float64{-1, 0}), 1, 0, math.Inf(1)},
	} {
		got, _ := upright(c.spots, c.weight, c.off, false)
		if !(math.Abs(got-c.want) <= 1e-9*math.Max(1, math.Abs(c.want))) && got != c.want {
			t.Errorf("%s: %.12g, want %.12g", c.name, got, c.want)
		}
	}
}

// Against the general solver, which solves the same question with forces in space.
func TestUprightAgainstTheSolver(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 40))
	s := solve.NewSolver()
	infeasible, inline := 0, 0
	for i := range 400 {
		k := 1 + rng.IntN(9)
		var sp []spot
		p := solve.Program{Goal: 1, Wrench: solve.Wrench{0, 0, 50}}
		for range k {
			v := spot{2*rng.Float64() - 1, 2*rng.Float64() - 1, 20 + 40*rng.Float64(), 10 * rng.Float64(), rng.Float64(), math.Inf(1)}
			if i%4 == 0 {
				v.most = 12 + 20*rng.Float64()
			}
			if i%3 == 0 {
				v.y = 0.3 * v.x
			}
			sp = append(sp, v)
			p.Pulls = append(p.Pulls, solve.Pull{At: vec.V3{v.x, v.y, 0}, MinZ: v.low, Cones: []solve.Cone{
				{B: vec.V3{0, 0, v.own}, T: v.thrust}, {Flat: true, Z: math.Tan(0.5)}, {C: math.Min(v.most, 1e4)}}})
		}
		got, y := upright(sp, 50, 0, false)
		r := s.Solve(&p)
		if math.IsInf(got, 1) {
			infeasible++
			if r.Status != solve.Infeasible {
				t.Errorf("%d: no balance, but the solver says %v %g", i, r.Status, r.T)
			}
			continue
		}
		if i%3 == 0 {
			inline++
		}
		if r.Status != solve.Optimal || math.Abs(r.T-got) > 1e-6*got {
			t.Errorf("%d: %d vehicles: %.9g, the solver says %v %.9g", i, k, got, r.Status, r.T)
		}
		if y != (line{}) { // the line proves the answer by (10.3)
			if again, _ := raise(sp, y, 50, 0, 1, 0, line{}); math.Abs(again-got) > 1e-9*got {
				t.Errorf("%d: the line proves %g, not %g", i, again, got)
			}
		}
	}
	if infeasible < 20 || inline < 20 {
		t.Errorf("%d without balance, %d in line: too tame a set", infeasible, inline)
	}
}

func BenchmarkUpright4(b *testing.B) {
	sp := spots(1, 0.2, 0.01, [2]float64{0.7, 0.4}, [2]float64{0.7, -0.6}, [2]float64{-1.3, -0.6}, [2]float64{-1.3, 0.4})
	for b.Loop() {
		upright(sp, 1, 0, false)
	}
}
