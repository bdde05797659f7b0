package energy_test

import (
	"math"
	"strings"
	"testing"

	"cohoist/core/energy"
	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
)

// tired is a plan shared for equal endurance in which one vehicle's pack has a part of its energy.
func tired(p plan.Plan, who int, part float64) plan.Plan {
	c := p.Vehicles[p.Team[who].Vehicle]
	c.Battery.Energy *= part
	c.Battery.Charge *= part
	vehicles := map[string]plan.Class{"tired": c}
	for name, c := range p.Vehicles {
		vehicles[name] = c
	}
	p.Vehicles = vehicles
	p.Team = append([]plan.Member(nil), p.Team...)
	p.Team[who].Vehicle = "tired"
	p.Policy = plan.EqualEndurance
	return p
}

// The policy by hand, as TestEvenByHand: half the energy in A and C gains ((1 + 2^(2/3))/2)^1.5, and all end together.
func TestPolicyByHand(t *testing.T) {
	for _, kind := range []string{plan.Cable, plan.Rigid} {
		p := square(kind, pack(20), pack(40))
		p.Policy = plan.EqualEndurance
		s, m, even := of(t, p)
		a, says := energy.Share(m, solve.NewSolver())
		got := energy.At(m, a)
		near(t, kind+" gain", got.Hold/s.Hold, math.Pow((1+math.Cbrt(4))/2, 1.5), 1e-6)
		for _, v := range got.Vehicles {
			near(t, "time", v.Time, got.Hold, 1e-6)
		}
		if want := "The load is shared for equal endurance: it is held for 5 min 30 s, 47 % longer than with even effort."; !strings.HasPrefix(says, want) {
			t.Errorf("%q", says)
		}
		if a.Bound != even.Bound || a.Policy != plan.EqualEndurance || !(a.T > even.T) || a.Residual > share.Balanced {
			t.Errorf("%+v", a)
		}
		p.Policy = plan.EvenEffort
		_, m, _ = of(t, p)
		if _, says := energy.Share(m, solve.NewSolver()); says != "" {
			t.Errorf("even effort says %q", says)
		}
	}
}

// Every example with its own packs, all alike, with one and another vehicle tired, and in a wind: the share balances as every share must, keeps the
// limits that even effort keeps, its vehicles as far apart, and is held at least as long. Where it is held longer, those that end
// first are joined by others: they end within what the search leaves of each other.
func TestPolicyOnExamples(t *testing.T) {
	longer, joined := 0, 0
	for _, e := range example.All {
		p, _ := example.Plan(e.Name)
		windy := p.Clone()
		windy.Site.Wind, windy.Site.WindTo = 4, 35
		cases := []plan.Plan{tired(p, 0, 1), tired(p, 0, 0.5), tired(p, len(p.Team)-1, 0.7), tired(windy, 0, 0.6)}
		for n, p := range cases {
			if lack := energy.Lacking(p); len(lack) > 0 {
				t.Fatalf("%s lacks %v", e.Name, lack)
			}
			s, m, even := of(t, p)
			a, says := energy.Share(m, solve.NewSolver())
			if len(even.Parts) == 0 { // no balance in that wind
				continue
			}
			got := energy.At(m, a)
			if a.Residual > share.Balanced || got.Hold < s.Hold || a.T > math.Max(even.T, m.Plan.Limits.Utilisation)*(1+1e-6) {
				t.Errorf("%s %d: residual %g, hold %g of %g, t %g", e.Name, n, a.Residual, got.Hold, s.Hold, a.T)
			}
			if apart := m.Plan.Limits.Separation; m.TooNear(a.Parts, apart) && !m.TooNear(even.Parts, apart) {
				t.Errorf("%s %d: nearer than %g m", e.Name, n, apart)
			}
			for i, part := range a.Parts {
				if c := m.Craft[i]; part.Tilt > c.Vehicle.TiltMax*(1+1e-6) || !c.Rigid && part.CableAngle*180/math.Pi > m.Plan.Limits.Cone*(1+1e-6) {
					t.Errorf("%s %d: %s leans %g, its cable %g", e.Name, n, c.ID, part.Tilt, part.CableAngle)
				}
			}
			if got.Hold > s.Hold*1.01 {
				longer++
				together := 0
				for _, v := range got.Vehicles {
					if v.Time < got.Hold*(1+1e-3) {
						together++
					}
				}
				if together > 1 {
					joined++
				}
				if !strings.Contains(says, "longer than with even effort") {
					t.Errorf("%s %d: %q", e.Name, n, says)
				}
			} else if !strings.Contains(says, "even effort") {
				t.Errorf("%s %d: %q", e.Name, n, says)
			}
		}
	}
	if longer < 8 || joined < 4 {
		t.Errorf("%d are held longer, in %d several end together", longer, joined)
	}
}

// Six cables leant apart to keep 1.3 m, with half the load and all thrust allowed: with one pack of a fifth its neighbours' pulls grow by
// more than the room that leaning has, and the cables lean anew.
func TestPolicyKeepsApart(t *testing.T) {
	for _, part := range []float64{0.6, 0.35, 0.2} {
		for who := range 6 {
			p, _ := example.Plan("crate-ring")
			p.Limits.Utilisation = 1
			for i := range p.Payload.Solids {
				p.Payload.Solids[i].Mass /= 2
			}
			s, m, even := of(t, tired(p, who, part))
			a, _ := energy.Share(m, solve.NewSolver())
			if even.Apart == nil || m.TooNear(a.Parts, m.Plan.Limits.Separation) {
				t.Errorf("%s at %g: too near", p.Team[who].ID, part)
			}
			if gain := energy.At(m, a).Hold / s.Hold; gain < 1.1 {
				t.Errorf("%s at %g: gains %g", p.Team[who].ID, part, gain)
			}
		}
	}
}

// Without its packs the policy has no share: what lacks is named, once for a class, and no other policy lacks it.
func TestPolicyNeeds(t *testing.T) {
	p := square(plan.Cable, pack(40), plan.BlankClass().Battery)
	p.Policy = plan.EqualEndurance
	if lack := energy.Lacking(p); len(lack) != 1 || lack[0] != "vehicles.odd.battery.energy_wh" {
		t.Errorf("%q", lack)
	}
	m, err := share.Of(p)
	if err != nil {
		t.Fatal(err)
	}
	a, says := energy.Share(m, solve.NewSolver())
	if a.Parts != nil || !math.IsNaN(a.T) || says != "How long the lift is held needs vehicles.odd.battery.energy_wh." {
		t.Errorf("%q %v", says, a.Parts)
	}
	p.Policy = plan.Equal
	if lack := energy.Lacking(p); lack != nil {
		t.Errorf("%q", lack)
	}
}
