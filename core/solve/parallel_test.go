package solve_test

import (
	"math"
	"testing"

	"cohoist/core/solve"
	"cohoist/core/vec"
)

// ringed is a payload of 30 k N on k like cables in still air: 40 N of own weight, 100 N of thrust.
func ringed(k int) *solve.Program {
	p := &solve.Program{Goal: 1, Wrench: solve.Wrench{2: 30 * float64(k)}}
	for i := range k {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(k))
		own := vec.V3{0, 0, 40}
		p.Pulls = append(p.Pulls, solve.Pull{At: vec.V3{3 * cos, 3 * sin, 0}, MinZ: 1, Cones: []solve.Cone{
			{B: own, T: 100}, {Flat: true, B: own, Z: 0.5, C: 20}, {Flat: true, Z: 0.5}}})
	}
	return p
}

// Teams whose thrusts are parallel, by hand: (30 + 40)/100 of thrust; the most upwards is 100 − 70 N a vehicle;
// the most weight that 80 % hold 40 N a vehicle; a slanting pull of 3 and 4 N a vehicle up and aside.
func TestParallel(t *testing.T) {
	for _, k := range []int{2, 3, 8, 50} {
		n := float64(k)
		for _, c := range []struct {
			what  string
			limit float64 // of thrust; 0: asked for
			pull  vec.V3  // of t = 1
			want  float64
		}{
			{"utilisation", 0, vec.V3{}, 0.7},
			{"climb", 1, vec.V3{0, 0, 1}, 30 * n},
			{"payload", 0.8, vec.V3{0, 0, 1}, 10 * n},
			{"aside", 1, vec.V3{0, 0.3 * n, 0.4 * n}, (math.Sqrt(56*56+5100) - 56) / 0.5}, // (0.3 t)² + (70 + 0.4 t)² = 100²
		} {
			p := ringed(k)
			if c.limit > 0 {
				p.Goal = -1
				p.WrenchT = solve.Wrench{c.pull[0], c.pull[1], c.pull[2]}
				for i := range p.Pulls {
					p.Pulls[i].Cones[0] = solve.Cone{B: vec.V3{0, 0, 40}, C: 100 * c.limit}
				}
			}
			r := solve.NewSolver().Solve(p)
			if !(math.Abs(r.T-c.want) <= 1e-10*c.want) {
				t.Errorf("%s of %d: %v, by hand %v", c.what, k, r.T, c.want)
			}
			certified(t, c.what, p, r)
		}
	}
}
