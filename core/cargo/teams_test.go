package cargo

import (
	"math"
	"testing"

	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/vec"
)

// single is an example whose own payload goes 6 m along x and turns by 90°, from home 3 m aside.
func single(t *testing.T, name string) plan.Plan {
	t.Helper()
	p, faults := example.Plan(name)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	it := plan.BlankItem()
	it.ID, it.Payload = "it", p.Payload
	it.Pick, it.Set, it.SetHeading = vec.V3{0, 0, 1}, vec.V3{6, 0, 1}, 90
	p.Cargo = plan.Cargo{Items: []plan.Item{it}, Home: vec.V3{0, -3, 0}, Clearance: 1, Swap: 60, Hook: 30, Packs: 2}
	p.Way = plan.Way{SpeedMax: math.NaN()}
	return p
}

// Every team of the examples, on cables, rigid and mixed, in wind or not, takes its own payload as a cargo of one, unless it cannot lift it: the verdict is
// that of its sheet, and no sooner is the way there flown than the largest accelerations allow.
func TestEveryTeam(t *testing.T) {
	for _, e := range example.All {
		p := single(t, e.Name)
		s := study(t, p)
		own := report.Build(p)
		it := s.Items[0]
		if !(p.Site.Wind > 0) && (it.Report.Verdict != own.Verdict || it.Report.Governing != own.Governing) {
			t.Errorf("%s: %s by %s, its sheet says %s by %s", e.Name, it.Report.Verdict, it.Report.Governing, own.Verdict, own.Governing)
		}
		if lifts := own.Verdict != report.Fails; lifts != (it.Why == "") || lifts != (len(s.Best.Stops) == 1) {
			t.Errorf("%s, which %s: %q", e.Name, own.Verdict, it.Why)
			continue
		}
		if it.Why != "" {
			continue
		}
		for _, c := range it.Carry {
			if !(c.Reach <= 1+1e-9) {
				t.Errorf("%s %s has a reach of %g", e.Name, c.Name, c.Reach)
			}
		}
		hover := 0.0
		for _, v := range it.study.Vehicles {
			hover += v.Power
		}
		carry := it.Own.Time - 60
		taken := it.Own.Energy
		for _, c := range s.work.team {
			taken -= 60 * c.power
		}
		if len(s.Wants) == 0 && !(taken > 0.7*hover*carry && taken < 1.3*hover*carry) { // speed saves induced power, acceleration takes more
			t.Errorf("%s: carrying takes %g J, hovering as long %g J", e.Name, taken, hover*carry)
		}
		t.Logf("%s: %.1f s carried, %.1f s in all, utilisation %.3f", e.Name, carry, s.Best.Time, it.Report.Team.Utilisation)
	}
}

// In wind everything turned together, wind, places and headings, is the same lift: times to the 2e-5 that ways are found to, twice, shares to 1e-6.
// The verdict is that of the heading in which it does worse.
func TestWindTurned(t *testing.T) {
	p := single(t, "deck-of-eight")
	p.Site.Wind, p.Site.WindTo = 5, 20
	a := study(t, p)
	p.Site.WindTo += 90
	it := &p.Cargo.Items[0]
	it.Set, it.PickHeading, it.SetHeading, p.Cargo.Home = vec.V3{0, 6, 1}, 90, 180, vec.V3{3, 0, 0}
	b := study(t, p)
	close(t, "own time", b.Items[0].Own.Time, a.Items[0].Own.Time, 4e-5)
	close(t, "utilisation", b.Items[0].Report.Team.Utilisation, a.Items[0].Report.Team.Utilisation, 1e-6)
	for _, heading := range []float64{90, 180} {
		q := b.Items[0].Plan
		q.Site.WindTo -= heading
		if one := report.Build(q); one.Team.Utilisation > b.Items[0].Report.Team.Utilisation*(1+1e-9) {
			t.Errorf("with heading %g it uses %g, more than %g", heading, one.Team.Utilisation, b.Items[0].Report.Team.Utilisation)
		}
	}
}
