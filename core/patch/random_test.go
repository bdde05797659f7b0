package patch_test

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"cohoist/core/mass"
	"cohoist/core/patch"
	"cohoist/core/plan"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// random is a team of unlike vehicles at unlike heights: on cables, rigid and leant, or both, in wind.
func random(rng *rand.Rand) lift {
	k := 3 + rng.IntN(5)
	p := plan.Plan{Policy: plan.EvenEffort, Vehicles: map[string]plan.Class{},
		Limits: plan.Limits{Utilisation: 0.7 + 0.3*rng.Float64(), Cone: 20 + 20*rng.Float64(), TensionMin: 0.5},
		Site:   plan.Site{Wind: float64(rng.IntN(3)) * 2, WindTo: 360 * rng.Float64()}}
	kind := rng.IntN(3)
	lifting := 0.0
	for i := range k {
		name := strconv.Itoa(i)
		kg := 1 + 2*rng.Float64()
		thrust := kg * (2 + rng.Float64()) * 9.8
		lifting += thrust*0.7/9.8 - kg
		p.Vehicles[name] = plan.Class{Mass: kg, Rotors: 4 + 2*rng.IntN(2), Layout: plan.Cross, Arm: 0.2 + 0.2*rng.Float64(), RotorRadius: 0.1,
			RotorThrustMax: thrust / 5, TorquePerThrust: 0.02, DragArea: 0.03 * rng.Float64(), TiltMax: 25 + 10*rng.Float64()}
		m := plan.Member{ID: name, Vehicle: name, Attach: vec.V3{2*rng.Float64() - 1, 2*rng.Float64() - 1, 0.3 * rng.Float64()}, Yaw: 90 * rng.Float64(),
			Hold: plan.Hold{Kind: plan.Cable, Length: 3, WorkingLoad: math.NaN()}}
		if kind == 1 || kind == 2 && rng.IntN(2) == 0 {
			m.Hold = plan.Hold{Kind: plan.Rigid, Lean: [2]float64{20*rng.Float64() - 10, 20*rng.Float64() - 10}}
		}
		p.Team = append(p.Team, m)
	}
	kg := lifting * (0.4 + 0.4*rng.Float64())
	body := mass.Properties{Mass: kg, COM: vec.V3{0.4*rng.Float64() - 0.2, 0.4*rng.Float64() - 0.2, 0}, Inertia: vec.Diag(vec.V3{1, 1, 1})}
	return lift{p, body, vec.V3{0.1, 0.2, 0.3}, 1.225}
}

// Thirty random teams against shares on grids, and the evidence of the patch: Inner within Outer, the best place inside.
func TestRandom(t *testing.T) {
	s := solve.NewSolver()
	wide := 0
	for seed := range uint64(30) {
		l := random(rand.New(rand.NewPCG(seed, 14)))
		p := patch.Of(l.model(), s)
		name := "seed " + strconv.Itoa(int(seed))
		if p.Status != solve.Optimal {
			if p.Status != solve.Infeasible || held(s, l.model()) {
				t.Errorf("%s: %v %s", name, p.Status, p.Note)
			}
			continue
		}
		if len(p.Outer) < 3 {
			t.Errorf("%s: %s", name, p.Sentence())
			continue
		}
		wide++
		ask(t, name, p, func(c patch.XY) bool { return held(s, l.at(c)) })
		if largest := math.Sqrt(p.Area()); !(p.Gap <= 0.02*largest) || depth(p.Outer, p.Best) < -edge {
			t.Errorf("%s: gap %g m of %g m after %d solves, best %v", name, p.Gap, largest, p.Solves, p.Best)
		}
	}
	if wide < 15 {
		t.Errorf("only %d of 30 have a patch", wide)
	}
}
