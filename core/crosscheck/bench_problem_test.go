package crosscheck

import (
	"fmt"
	"math"
	"math/rand/v2"

	"cohoist/core/solve"
	"cohoist/core/vec"
)

// benchSizes are the numbers of vehicles that are timed, and how many problems of each.
var benchSizes = []struct{ k, problems int }{{2, 9}, {4, 9}, {8, 9}, {16, 9}, {48, 7}, {100, 5}, {200, 5}, {1000, 3}}

// problem is one share problem, smallest worst utilisation, of k vehicles.
type problem struct {
	Name    string         `json:"name"`
	Kind    string         `json:"kind"`
	K       int            `json:"k"`
	Program *solve.Program `json:"program"`
}

// problems are the same every time.
func problems() []problem {
	var list []problem
	for _, kind := range []string{"cable", "rigid"} {
		for _, s := range benchSizes {
			for seed := range s.problems {
				rng := rand.New(rand.NewPCG(uint64(s.k), uint64(seed)))
				p := problem{Name: fmt.Sprintf("%s-%d-%d", kind, s.k, seed), Kind: kind, K: s.k}
				if kind == "cable" {
					p.Program = hangOn(rng, s.k)
				} else {
					p.Program = gripped(rng, s.k)
				}
				list = append(list, p)
			}
		}
	}
	return list
}

func between(rng *rand.Rand, a, b float64) float64 { return a + (b-a)*rng.Float64() }

// places scatters k vehicles around a ring; two stand on a line through the middle, so that they balance.
func places(rng *rand.Rand, k int) []vec.V3 {
	r := 0.5 + 0.12*float64(k)
	at := make([]vec.V3, k)
	for i := range at {
		a := 2 * math.Pi * float64(i) / float64(k)
		at[i] = vec.V3{r * math.Cos(a), r * math.Sin(a), 0.1}
		if k > 2 {
			at[i] = at[i].Scale(between(rng, 0.6, 1))
		}
	}
	return at
}

// hangOn is a payload on k cables under two classes of vehicle in a light wind, its centre of mass
// off the middle.
func hangOn(rng *rand.Rand, k int) *solve.Program {
	const g = 9.80665
	at := places(rng, k)
	p := &solve.Program{Goal: 1}
	tan := math.Tan(math.Pi / 6)
	lift := 0.0
	for i := range at {
		mass, thrust := 3.4, 76.0
		if rng.Float64() < 0.4 {
			mass, thrust = 5.2, 132
		}
		lift += thrust - mass*g
		own := vec.V3{-between(rng, 0, 1), 0, mass * g}
		p.Pulls = append(p.Pulls, solve.Pull{At: at[i].Sub(vec.V3{0.1 * at[0].Norm() * float64(min(1, k-2)), 0, 0}), MinZ: 0.5, Cones: []solve.Cone{
			{B: own, T: thrust}, {Flat: true, B: own, Z: tan, C: tan * own[2]}, {Flat: true, Z: tan}, {C: 200}}})
	}
	p.Wrench = solve.Wrench{-between(rng, 0, 0.01) * lift, 0, between(rng, 0.4, 0.8) * lift}
	return p
}

// gripped is a payload under k quadrotors held rigidly, moments about the centre of mass of all.
func gripped(rng *rand.Rand, k int) *solve.Program {
	const g, arm, kappa = 9.80665, 0.33, 0.016
	at := places(rng, k)
	p := &solve.Program{Goal: 1}
	lift := 0.0
	for i := range at {
		most := 19.0
		if rng.Float64() < 0.4 {
			most = 26
		}
		lift += 4*most - 3.4*g
		yaw := between(rng, 0, 2*math.Pi)
		for j := range 4 {
			s, c := math.Sincos(yaw + math.Pi/4 + math.Pi/2*float64(j))
			x, y := at[i][0]+arm*c, at[i][1]+arm*s
			p.Lines = append(p.Lines, solve.Line{Column: solve.Wrench{0, 0, 1, y, -x, kappa * float64(1-2*(j%2))}, HiT: most})
		}
	}
	p.Wrench = solve.Wrench{0, 0, 3.4*g*float64(k) + between(rng, 0.3, 0.7)*lift}
	p.Wrench[3], p.Wrench[4] = p.Wrench[2]*between(rng, -0.02, 0.02)*at[0].Norm(), p.Wrench[2]*between(rng, -0.02, 0.02)*at[0].Norm()
	return p
}
