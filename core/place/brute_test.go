package place

import (
	"math"
	"math/rand/v2"
	"testing"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// Twenty seeded cases against brute force: patterns in the plane and in line, one vehicle fixed, cases of
// every kind, rigid holds, spacing.
func TestAgainstBruteForce(t *testing.T) {
	for seed := range uint64(20) {
		rng := rand.New(rand.NewPCG(seed, 7))
		k := 3 + rng.IntN(3)
		p := panel(k)
		p.Payload.Solids[1].At = vec.V3{rng.Float64() - 0.5, 0.6 * (rng.Float64() - 0.5), 0}
		n := 9 + rng.IntN(4)
		holes := make([]vec.V3, n)
		for i := range holes {
			holes[i] = vec.V3{2.4*rng.Float64() - 1.2, 1.6*rng.Float64() - 0.8, 0.05}
			if seed%5 == 4 { // in line through the centre of mass
				p.Payload.Solids[1].At[1] = 0
				holes[i][1] = 0
			}
		}
		q := Question{Plan: p, Cases: Cases{Off: 0.04 * float64(seed%2), Lost: seed%4 >= 2 && k > 4}}
		switch seed % 6 {
		case 1:
			q.Free = make([]bool, k)
			for i := range k {
				q.Free[i] = i > 0
			}
			q.Plan.Team[0].Attach = vec.V3{0.9, 0.4, 0.05}
			if seed%5 == 4 {
				q.Plan.Team[0].Attach[1] = 0
			}
		case 2:
			q.Spacing = 0.5
		case 3:
			if seed%5 != 4 {
				q.Plan.Site.Wind, q.Cases.Winds = 5, 2
			}
		case 5:
			for i := range q.Plan.Team {
				q.Plan.Team[i].Hold.Kind = plan.Rigid
				q.Plan.Team[i].Hold.Lean = [2]float64{}
			}
		}
		a, err := OnHoles(q, holes, nil)
		if err != nil {
			t.Fatal(err)
		}
		want, _ := brute(t, q, holes)
		if a.Value != want && !(math.Abs(a.Value-want) <= 2e-7*want) || !a.Proof.Proved {
			t.Errorf("seed %d: %g, by brute force %g", seed, a.Value, want)
		}
	}
}
