package report_test

import (
	"math"
	"strings"
	"testing"

	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/vec"
)

// worn is an example whose vehicle i has a part of its pack's energy.
func worn(t *testing.T, name string, i int, part float64) plan.Plan {
	t.Helper()
	p, faults := example.Plan(name)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	c := p.Vehicles[p.Team[i].Vehicle]
	c.Battery.Energy *= part
	c.Battery.Charge *= part
	p.Vehicles["worn"] = c
	p.Team[i].Vehicle = "worn"
	return p
}

// A sheet for equal endurance is another share of the same lift: held at least as long as even effort's, its forces add up to the weight
// less the drag, multiplied out here from what the sheet prints, its checks of forces are of them, and what the team can do at most stays.
func TestSheetForEqualEndurance(t *testing.T) {
	gains := 0
	for _, e := range example.All {
		for i, part := range []float64{1, 0.6} {
			p := worn(t, e.Name, 0, part)
			even := report.Build(p)
			p.Policy = plan.EqualEndurance
			r := report.Build(p)
			if !(r.Team.Hold >= even.Team.Hold) || r.Team.Residual > 1e-9 {
				t.Errorf("%s %d: held for %g s, even effort %g s, residual %g", e.Name, i, r.Team.Hold, even.Team.Hold, r.Team.Residual)
			}
			if same := func(a, b float64) bool { return a == b || a != a && b != b }; !same(r.Team.LargestPayload, even.Team.LargestPayload) ||
				!same(r.Agility.Team.Climb, even.Agility.Team.Climb) || !same(r.Team.DualBound, even.Team.DualBound) {
				t.Errorf("%s %d: what the team can do at most changed", e.Name, i)
			}
			var sum vec.V3
			most := 0.0
			for _, v := range r.Vehicles {
				sum = sum.Add(v.Force)
				most = math.Max(most, v.Utilisation)
			}
			if p.Site.Wind != p.Site.Wind || p.Site.Wind == 0 {
				if w := 9.80665 * r.Payload.Mass; sum.Sub(vec.V3{0, 0, w}).Norm() > 1e-9*(w+9.80665*r.Team.Mass) {
					t.Errorf("%s %d: forces add up to %v, weight %g", e.Name, i, sum, w)
				}
			}
			if most != r.Team.Utilisation || most > math.Max(even.Team.Utilisation, 0.8)*(1+1e-6) {
				t.Errorf("%s %d: utilisation %g, %g", e.Name, i, most, r.Team.Utilisation)
			}
			if notes := strings.Join(r.Notes, " "); !strings.Contains(notes, "even effort") {
				t.Errorf("%s %d: %q", e.Name, i, notes)
			}
			if r.Team.Hold > 1.01*even.Team.Hold {
				gains++
			}
		}
	}
	if gains < 5 {
		t.Errorf("only %d gain", gains)
	}
}

// Four alike around a square, A and C with half the pack: all end together, ((1 + 2^(2/3))/2)^1.5 times as late as A did, and the sheet names them all.
func TestEqualEnduranceByHand(t *testing.T) {
	p := ring(4, plan.Cable)
	c := p.Vehicles["quad"]
	c.RotorRadius, c.Arm, c.FigureOfMerit, c.DriveEfficiency, c.Avionics = 0.2, 0.4, 0.6, 0.8, 0
	c.Battery.Energy, c.Battery.Usable, c.Battery.Resistance, c.Battery.Peukert = 80, 1, 0, 1
	p.Vehicles["quad"] = c
	c.Battery.Energy = 40
	p.Vehicles["half"] = c
	p.Team[0].Vehicle, p.Team[2].Vehicle = "half", "half"
	p.Limits.Utilisation = 1
	before := report.Build(p)
	p.Policy = plan.EqualEndurance
	after := report.Build(p)
	want := math.Pow((1+math.Cbrt(4))/2, 1.5)
	if gain := after.Team.Hold / before.Team.Hold; math.Abs(gain/want-1) > 1e-6 || len(after.Team.HoldEnds) != 4 || len(before.Team.HoldEnds) != 2 {
		t.Errorf("gains %.8g, by hand %.8g; %v end together, before %v", gain, want, after.Team.HoldEnds, before.Team.HoldEnds)
	}
}

// Without packs the sheet asks for them by their paths and shows no forces; every other policy needs none.
func TestEqualEnduranceNeedsPacks(t *testing.T) {
	p, _ := example.Plan("beam-pair")
	c := p.Vehicles["field-quad"]
	c.Battery, c.FigureOfMerit = plan.BlankClass().Battery, math.NaN()
	p.Vehicles["field-quad"] = c
	for _, policy := range []string{plan.EvenEffort, plan.LeastSquares, plan.Equal} {
		p.Policy = policy
		if r := report.Build(p); r.Verdict == report.NeedsInput || len(r.Missing) > 0 {
			t.Errorf("%s: %s", policy, r.Sentence)
		}
	}
	p.Policy = plan.EqualEndurance
	r := report.Build(p)
	want := "The plan does not say enough to answer: vehicles.field-quad.figure_of_merit and vehicles.field-quad.battery.energy_wh are missing. Only sharing for equal endurance needs that: say what feeds the vehicles, or share another way."
	if r.Verdict != report.NeedsInput || r.Sentence != want || !math.IsNaN(r.Vehicles[0].Thrust) {
		t.Errorf("%s: %s, thrust %g", r.Verdict, r.Sentence, r.Vehicles[0].Thrust)
	}
}
