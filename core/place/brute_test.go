package place

import (
	"math"
	"math/rand/v2"
	"testing"

	"cohoist/core/plan"
	"cohoist/core/report"
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

// Three vehicles of two classes, one of them on a rigid hold, against every way to hand out the holes.
func TestUnlikeVehiclesAgainstBruteForce(t *testing.T) {
	p := panel(3)
	big := p.Vehicles["field-quad"]
	big.Mass, big.RotorThrustMax = 5, 40
	p.Vehicles["carrier"] = big
	p.Team[1].Vehicle = "carrier"
	for _, rigid := range []bool{false, true} {
		if rigid {
			p.Team[2].Hold.Kind, p.Team[2].Hold.Lean = plan.Rigid, [2]float64{}
		}
		holes := forty()[3:31:31]
		holes = append([]vec.V3(nil), holes[:4]...)
		holes = append(holes, forty()[30:37]...)
		q := Question{Plan: p, Cases: Cases{Off: 0.02}}
		a, err := OnHoles(q, holes, nil)
		if err != nil {
			t.Fatal(err)
		}
		if want := (choose(len(holes), 2) * float64(len(holes)-2)); !rigid && a.Proof.Candidates != want {
			t.Errorf("%g candidates, want %g", a.Proof.Candidates, want)
		}
		b, _ := newBench(q, holes)
		best := math.Inf(1)
		for i := range holes {
			for j := range holes {
				for k := range holes {
					if i == j || j == k || i == k {
						continue
					}
					at := map[int]vec.V3{0: holes[i], 1: holes[j], 2: holes[k]}
					var posts []vec.V3
					for _, g := range b.groups {
						for _, m := range g.members {
							posts = append(posts, at[m])
						}
					}
					v, _, _ := b.value(posts, math.Inf(1))
					best = math.Min(best, v)
				}
			}
		}
		if math.Abs(a.Value-best) > 2e-7*best || !a.Proof.Proved || math.IsInf(best, 1) {
			t.Errorf("rigid %v: %g, by brute force %g, %+v", rigid, a.Value, best, a.Proof)
		}
	}
}

// The plan with the places taken in has the utilisation that the chooser promised: the report's own.
func TestTheReportAgrees(t *testing.T) {
	p := panel(4)
	// apart as far as vehicles must be, so that no cable has to lean
	a, err := OnHoles(Question{Plan: p, Spacing: p.Limits.Separation}, forty(), nil)
	if err != nil {
		t.Fatal(err)
	}
	for i := range p.Team {
		p.Team[i].Attach = a.Places[i]
	}
	if r := report.Build(p); math.Abs(r.Team.Utilisation-a.Value) > 1e-6*a.Value {
		t.Errorf("the report says %g, the chooser %g", r.Team.Utilisation, a.Value)
	}
}

// Rigid holds whose wakes press on a plate narrower than the team: the best holes by branch and bound are those of brute force with wakes counted;
// a placement's value is what the report of it says.
func TestWashedAgainstBruteForce(t *testing.T) {
	other := 0
	for seed := range uint64(8) {
		rng := rand.New(rand.NewPCG(seed, 22))
		k := 3 + rng.IntN(2)
		p := panel(k)
		p.Payload.Solids[0].Size = []float64{1.2, 0.7, 0.1}
		p.Payload.Solids[1].At = vec.V3{0.3 * (rng.Float64() - 0.5), 0.3 * (rng.Float64() - 0.5), 0}
		for i := range p.Team {
			p.Team[i].Hold.Kind, p.Team[i].Hold.Lean = plan.Rigid, [2]float64{}
		}
		p.Near.Download = plan.Counted
		holes := make([]vec.V3, 10)
		for i := range holes {
			holes[i] = vec.V3{2*rng.Float64() - 1, 1.6*rng.Float64() - 0.8, 0.2}
		}
		q := Question{Plan: p, Cases: Cases{Lost: seed%2 == 1 && k > 3}}
		a, err := OnHoles(q, holes, nil)
		if err != nil {
			t.Fatal(err)
		}
		want, _ := brute(t, q, holes)
		if a.Value != want && !(math.Abs(a.Value-want) <= 2e-7*want) || !a.Proof.Proved {
			t.Errorf("seed %d: %g, by brute force %g, proved %v", seed, a.Value, want, a.Proof.Proved)
		}
		if !q.Cases.Lost && a.Places != nil {
			placed := p.Clone()
			for i, at := range a.Places {
				placed.Team[i].Attach = at
			}
			if u := report.Build(placed).Team.Utilisation; math.Abs(u-a.Value) > 1e-7*u {
				t.Errorf("seed %d: %g, its report %g", seed, a.Value, u)
			}
		}
		q.Plan.Near.Download = plan.LeftOut
		bare, err := OnHoles(q, holes, nil)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(bare.Value-a.Value) > 1e-6 {
			other++
		}
	}
	if other == 0 {
		t.Error("the wash changed nothing")
	}
}
