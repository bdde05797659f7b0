package report_test

import (
	"math"
	"strings"
	"testing"

	"cohoist/core/example"
	"cohoist/core/link"
	"cohoist/core/plan"
	"cohoist/core/report"
)

// Every example says how long it holds, of a size that such vehicles have (common practice, no source), and its link stays short; an item of
// a cargo adds some thirty characters, a waypoint some fifteen.
func TestExamplesHold(t *testing.T) {
	for _, e := range example.All {
		p, _ := example.Plan(e.Name)
		if n := len(link.Encode(p)); n > 700+30*len(p.Cargo.Items)+15*len(p.Way.Points) {
			t.Errorf("%s: a link of %d characters", e.Name, n)
		}
		r := report.Build(p)
		t.Logf("%s: %.0f W, %.0f s, %s by %s", e.Name, r.Team.Power, r.Team.Hold, r.Team.HoldEnds, r.Team.HoldBy)
		if len(r.Team.HoldEnds) == 0 || !(r.Team.Power > 0) {
			t.Errorf("%s: not known; notes %q", e.Name, r.Notes)
		}
		if r.Verdict != report.Fails && !(r.Team.Hold > 180 && r.Team.Hold < 1500) {
			t.Errorf("%s is held for %g s", e.Name, r.Team.Hold)
		}
	}
}

// By hand: 3 kg a vehicle, 29.42 N on discs of 0.5 m² in all at 1.225 kg/m³ ask 29.41995 √(29.41995/(2·1.225·0.5)) = 144.177 W; a figure of merit of 0.6
// and a drive of 0.8 make it 300.37 W, and 80 % of 100 Wh last 958.8 s. Without a battery it is a note and no number.
func TestHoldByHand(t *testing.T) {
	p := ring(4, plan.Cable)
	c := p.Vehicles["quad"]
	c.RotorRadius = math.Sqrt(0.125 / math.Pi)
	c.Arm, c.FigureOfMerit, c.DriveEfficiency, c.Avionics = 0.4, 0.6, 0.8, 0
	p.Vehicles["quad"] = c
	bare := report.Build(p)
	said := false
	for _, n := range bare.Notes {
		said = said || n == "How long the lift is held needs vehicles.quad.battery.energy_wh."
	}
	if !said || len(bare.Team.HoldEnds) > 0 || !math.IsNaN(bare.Team.Hold) || math.Abs(bare.Team.Power-4*300.37) > 0.05 {
		t.Errorf("%g W, %g s, notes %q", bare.Team.Power, bare.Team.Hold, bare.Notes)
	}
	c.Battery.Energy = 100
	p.Vehicles["quad"] = c
	r := report.Build(p)
	if math.Abs(r.Team.Hold-958.8) > 0.1 || r.Team.HoldBy != "reserve" || len(r.Team.HoldEnds) != 4 {
		t.Errorf("%g s, %s by %s, want 958.8 s", r.Team.Hold, r.Team.HoldEnds, r.Team.HoldBy)
	}
	if got := strings.Join(r.Assumptions, " "); !strings.Contains(got, "Usable energy of quad left out") {
		t.Errorf("what was assumed of the pack is not said: %s", got)
	}
}
