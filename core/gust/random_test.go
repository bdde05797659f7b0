package gust_test

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"cohoist/core/gust"
	"cohoist/core/mass"
	"cohoist/core/plan"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// random is a team of unlike vehicles on cables, rigid and leant, or both.
func random(rng *rand.Rand) lift {
	p := plan.Plan{Policy: plan.EvenEffort, Vehicles: map[string]plan.Class{},
		Limits: plan.Limits{Utilisation: 0.7 + 0.3*rng.Float64(), Cone: 20 + 20*rng.Float64(), TensionMin: 0.5}}
	kind, lifting := rng.IntN(3), 0.0
	for i := range 3 + rng.IntN(4) {
		name := strconv.Itoa(i)
		kg := 1 + 2*rng.Float64()
		thrust := kg * (2 + rng.Float64()) * 9.8
		lifting += thrust*0.7/9.8 - kg
		p.Vehicles[name] = plan.Class{Mass: kg, Rotors: 4, Layout: plan.Cross, Arm: 0.2 + 0.2*rng.Float64(), RotorRadius: 0.1,
			RotorThrustMax: thrust / 4, TorquePerThrust: 0.02, DragArea: 0.03 * rng.Float64(), TiltMax: 15 + 12*rng.Float64()}
		angle := float64(i) + rng.Float64()
		m := plan.Member{ID: name, Vehicle: name, Attach: vec.V3{math.Cos(angle), math.Sin(angle), 0.2 * rng.Float64()}, Yaw: 90 * rng.Float64(),
			Hold: plan.Hold{Kind: plan.Cable, Length: 3, WorkingLoad: math.NaN()}}
		if kind == 1 || kind == 2 && rng.IntN(2) == 0 {
			m.Hold = plan.Hold{Kind: plan.Rigid, Lean: [2]float64{8*rng.Float64() - 4, 8*rng.Float64() - 4}}
		}
		p.Team = append(p.Team, m)
	}
	body := mass.Properties{Mass: lifting * (0.3 + 0.4*rng.Float64()), COM: vec.V3{0.1 * rng.Float64(), 0.1 * rng.Float64(), 0}, Inertia: vec.Diag(vec.V3{1, 1, 1})}
	return lift{p, body, vec.V3{0.1, 0.2, 0.3}, rho}
}

// Thirty random teams from all sides: held a millionth below, not above, and at every tenth of the speed in between.
func TestRandom(t *testing.T) {
	s := solve.NewSolver()
	moved := 0
	for seed := range uint64(30) {
		l := random(rand.New(rand.NewPCG(seed, 15)))
		for _, side := range gust.Of(l.model(), s, nil).Sides {
			if more := math.Max(side.Speed*(1+1e-6), breath); side.Speed < gust.Cap && l.holds(s, more, side.To) {
				t.Errorf("seed %d: more than %+v is held", seed, side)
			}
			if side.Speed == 0 {
				continue
			}
			moved++
			for part := 0.1; part <= 1; part += 0.1 {
				if !l.holds(s, side.Speed*part*(1-1e-6), side.To) {
					t.Errorf("seed %d: %.1f of %+v is not held", seed, part, side)
				}
			}
		}
	}
	if moved < 400 {
		t.Errorf("only %d sides hold any wind", moved)
	}
}
