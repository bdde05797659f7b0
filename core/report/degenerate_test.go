package report_test

import (
	"math"
	"strings"
	"testing"

	"cohoist/core/check"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/vec"
)

// at moves the attachments of a ring plan.
func at(p plan.Plan, places ...vec.V3) plan.Plan {
	for i := range p.Team {
		p.Team[i].Attach = places[i]
	}
	return p
}

func row(t *testing.T, r report.Report, id string) check.Row {
	t.Helper()
	for _, c := range r.Checks {
		if c.ID == id {
			return c
		}
	}
	t.Fatalf("no check %s", id)
	return check.Row{}
}

// Dependent rows, coincident attachments and weightless loads have answers, closed by hand: 4 kg
// (39.2266 N) and vehicles of 2 kg and 44 N, so that one alone is at (4 + 2) g/44 = 1.33727.
func TestDegenerate(t *testing.T) {
	massless := ring(3, plan.Cable)
	massless.Payload.Solids[0].Mass = 0
	massless.Limits.TensionMin = 0
	for _, c := range []struct {
		name string
		p    plan.Plan
		want float64
	}{
		{"one cable", ring(1, plan.Cable), 6 * 9.80665 / 44},
		{"one rigid hold", ring(1, plan.Rigid), 6 * 9.80665 / 44},
		{"two cables on a line", at(ring(2, plan.Cable), vec.V3{1, 0, 0}, vec.V3{-1, 0, 0}), 4 * 9.80665 / 44},
		{"two cables in one point", at(ring(2, plan.Cable), vec.V3{}, vec.V3{}), 4 * 9.80665 / 44},
		{"two cables 1 mm apart", at(ring(2, plan.Cable), vec.V3{0.0005, 0, 0}, vec.V3{-0.0005, 0, 0}), 4 * 9.80665 / 44},
		{"two rigid on a line", at(ring(2, plan.Rigid), vec.V3{1, 0, 0}, vec.V3{-1, 0, 0}), 4 * 9.80665 / 44},
		{"four in one plane above", at(ring(4, plan.Cable), vec.V3{1, 0, 1}, vec.V3{-1, 0, 1}, vec.V3{0, 1, 1}, vec.V3{0, -1, 1}), 3 * 9.80665 / 44},
		{"a load without mass", massless, 2 * 9.80665 / 44},
	} {
		p := c.p
		p.Limits.Separation = 1e-9 // the answer without leaning the cables apart
		for name, v := range p.Vehicles {
			v.Arm, v.RotorRadius = 1e-9, 1e-10
			v.Inertia = &vec.V3{0.02, 0.02, 0.03}
			p.Vehicles[name] = v
		}
		r := report.Build(p)
		c.want *= 1.225 / r.Team.Density // the standard atmosphere's constants give 1.2249991 kg/m³
		if !(math.Abs(r.Team.Utilisation-c.want) < 1e-7) || r.Team.Residual > 1e-9 || r.Team.DualBound < c.want-1e-7 {
			t.Errorf("%s: utilisation %.9g (residual %g, bound %.9g), want %.9g; %s", c.name, r.Team.Utilisation, r.Team.Residual, r.Team.DualBound, c.want, r.Sentence)
		}
	}
}

// A centre of mass outside the support: no balance at any thrust, and the reason names the axis. Two
// cables at x = 0.5 and 1 under a load centred at 0 tip about y; each newton at x turns with x.
func TestNoBalanceSaysWhy(t *testing.T) {
	p := at(ring(3, plan.Cable), vec.V3{0.5, 0.3, 0}, vec.V3{0.5, -0.3, 0}, vec.V3{1, 0, 0})
	r := report.Build(p)
	if r.Verdict != report.Fails || r.Governing != "balance" || r.NoBalance == nil {
		t.Fatalf("%s by %s: %s", r.Verdict, r.Governing, r.Sentence)
	}
	n := r.NoBalance
	if n.Unit != "N m" || math.Abs(math.Abs(n.Direction[4])-1) > 0.05 || !(n.Need > 0) || !(n.Have < n.Need) {
		t.Errorf("direction %v, need %g, have %g %s", n.Direction, n.Need, n.Have, n.Unit)
	}
	if !strings.Contains(r.Sentence, "No thrust balances") || !strings.Contains(r.Sentence, "V2") {
		t.Errorf("the sentence does not say why: %s", r.Sentence)
	}
	if math.IsNaN(r.Agility.Solo.ClimbAcc) || !math.IsNaN(r.Team.Utilisation) {
		t.Error("what can be computed was not, or what cannot was")
	}
}

// A working load that is too small is named, and so is a cone that is too narrow.
func TestBoundInTheWay(t *testing.T) {
	p := ring(4, plan.Cable)
	for i := range p.Team {
		p.Team[i].Hold.WorkingLoad = 5
	}
	r := report.Build(p)
	if r.Verdict != report.Fails || row(t, r, "working-load").Status != check.Fail || !strings.Contains(r.Sentence, "working load") {
		t.Errorf("%s: %s", r.Verdict, r.Sentence)
	}
	if n := r.NoBalance; n == nil || len(n.AtLimit) != 4 || math.Abs(n.Need-n.Have) < 1 {
		t.Errorf("no balance %+v", n)
	}
}

// A team that is too weak gets its honest figure, above 1.
func TestTooWeak(t *testing.T) {
	p := ring(4, plan.Rigid)
	p.Payload.Solids[0].Mass = 14
	r := report.Build(p)
	want := (14.0/4 + 2) * 9.80665 / 44 * 1.225 / r.Team.Density
	if r.Verdict != report.Fails || r.Governing != "thrust" || math.Abs(r.Team.Utilisation-want) > 1e-7 {
		t.Errorf("%s by %s, utilisation %g, want %g", r.Verdict, r.Governing, r.Team.Utilisation, want)
	}
	if !math.IsNaN(r.Agility.Team.ClimbAcc) {
		t.Error("a team that cannot hover climbs")
	}
}

// A plan without numbers that have no honest default needs them, and says which; the rest is computed.
func TestNeedsInput(t *testing.T) {
	p := ring(4, plan.Rigid)
	c := p.Vehicles["quad"]
	c.RotorThrustMax = math.NaN()
	p.Vehicles["quad"] = c
	r := report.Build(p)
	if r.Verdict != report.NeedsInput || len(r.Missing) == 0 || !strings.Contains(r.Sentence, "rotor_thrust_max_n") {
		t.Errorf("%s: %s (%v)", r.Verdict, r.Sentence, r.Missing)
	}
	if r.Payload.Mass != 4 || math.IsNaN(r.Team.Density) || len(r.Vehicles) != 4 {
		t.Errorf("what can be computed was not: %+v", r.Payload)
	}
}

// The plan is never modified, and the same plan gives the same report.
func TestPlanStays(t *testing.T) {
	p := ring(5, plan.Cable)
	before := string(plan.Encode(p))
	first := string(report.JSON(report.Build(p)))
	if second := string(report.JSON(report.Build(p))); first != second {
		t.Error("two reports of one plan differ")
	}
	if after := string(plan.Encode(p)); before != after {
		t.Error("the plan was modified")
	}
}

// Beyond the troposphere there is no density to compute with: outside the model, not a number.
func TestOutsideTheModel(t *testing.T) {
	p := ring(4, plan.Rigid)
	p.Site.Altitude = 12000
	r := report.Build(p)
	if r.Verdict != report.OutsideModel || !math.IsNaN(r.Team.Utilisation) || !strings.Contains(r.Sentence, "11 000 m") {
		t.Errorf("%s: %s", r.Verdict, r.Sentence)
	}
	// A short cable: the rotors would touch the load.
	p = ring(4, plan.Cable)
	for i := range p.Team {
		p.Team[i].Hold.Length = 0.2
	}
	if c := row(t, report.Build(p), "cable-angle"); c.Status != check.OutsideModel {
		t.Errorf("a cable shorter than the rotors reach: %s, %s", c.Status, c.Sentence)
	}
}
