package place

import (
	"math"
	"math/rand/v2"
	"testing"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// A hundred small patterns with everything mixed: double holes, heights, lines, wind, losses, working loads, spacing,
// grips. Twenty seconds of these (1 500) found no difference when this was written.
func TestManySmallPatterns(t *testing.T) {
	finite := 0
	for seed := range uint64(100) {
		rng := rand.New(rand.NewPCG(seed, 77))
		k := 2 + rng.IntN(4)
		p := panel(k)
		p.Payload.Solids[1].At = vec.V3{rng.Float64() - 0.5, 0.6 * (rng.Float64() - 0.5), 0}
		p.Payload.Solids[0].Mass = 2 + 6*rng.Float64()
		n := 7 + rng.IntN(3)
		holes := make([]vec.V3, n)
		grid := rng.IntN(2) == 0
		line := rng.IntN(5) == 0
		for i := range holes {
			holes[i] = vec.V3{2.4*rng.Float64() - 1.2, 1.6*rng.Float64() - 0.8, 0.05}
			if grid {
				holes[i] = vec.V3{0.4 * float64(rng.IntN(7)-3), 0.4 * float64(rng.IntN(5)-2), 0.05}
			}
			if line {
				p.Payload.Solids[1].At[1] = 0
				holes[i][1] = 0
			}
			if rng.IntN(8) == 0 && seed%7 == 0 {
				holes[i][2] = 0.3
			}
		}
		q := Question{Plan: p, Cases: Cases{Off: 0.04 * float64(rng.IntN(2)), Lost: rng.IntN(2) == 0}}
		if rng.IntN(4) == 0 {
			q.Plan.Site.Wind, q.Cases.Winds = 4, 1+rng.IntN(2)
		}
		if rng.IntN(4) == 0 {
			for i := range q.Plan.Team {
				q.Plan.Team[i].Hold.Kind = plan.Rigid
				q.Plan.Team[i].Hold.Lean = [2]float64{}
				q.Plan.Team[i].Hold.Length = math.NaN()
			}
		}
		if rng.IntN(4) == 0 {
			load := 20 + 10*rng.Float64()
			for i := range q.Plan.Team {
				q.Plan.Team[i].Hold.WorkingLoad = load
			}
		}
		if rng.IntN(4) == 0 {
			q.Spacing = 0.5
		}
		a, err := OnHoles(q, holes, nil)
		if err != nil {
			continue
		}
		want, _ := brute(t, q, holes)
		if !math.IsInf(want, 1) {
			finite++
		}
		if a.Value != want && !(math.Abs(a.Value-want) <= 2e-7*want) && !(want > hopeless) {
			t.Errorf("seed %d: k %d %+v %v wind %v: %g, by brute force %g %+v", seed, k, q.Cases, q.Plan.Team[0].Hold.Kind, q.Plan.Site.Wind, a.Value, want, a.Proof)
		}
		if !a.Proof.Proved {
			t.Errorf("seed %d: not proved, %+v", seed, a.Proof)
		}
	}
	if finite < 30 {
		t.Errorf("only %d of them hold anything", finite)
	}
}
