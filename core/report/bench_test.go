package report_test

import (
	"testing"

	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/report"
)

// BenchmarkBuild is the whole report of eight vehicles: what a drag of an attachment waits for.
func BenchmarkBuild(b *testing.B) {
	deck, faults := example.Plan("deck-of-eight")
	if len(faults) > 0 {
		b.Fatal(faults)
	}
	even := deck // shared for equal endurance, one pack worn
	even.Vehicles = map[string]plan.Class{"field-quad": deck.Vehicles["field-quad"]}
	even.Team = append([]plan.Member(nil), deck.Team...)
	worn := deck.Vehicles[deck.Team[2].Vehicle]
	worn.Battery.Energy, worn.Battery.Charge = 0.7*worn.Battery.Energy, 0.7*worn.Battery.Charge
	even.Vehicles["worn"], even.Team[2].Vehicle, even.Policy = worn, "worn", plan.EqualEndurance
	near := func(p plan.Plan) plan.Plan {
		p.Near = plan.Near{Ground: plan.Counted, Download: plan.Counted, Wakes: plan.Counted, Clearance: 0.5}
		return p
	}
	for _, c := range []struct {
		name string
		p    plan.Plan
	}{{"eight cables", ring(8, plan.Cable)}, {"eight rigid", ring(8, plan.Rigid)}, {"deck of eight", deck}, {"deck for the longest hold", even},
		{"eight cables, all near", near(ring(8, plan.Cable))}, {"eight rigid, all near", near(ring(8, plan.Rigid))}, {"deck of eight, all near", near(deck)}} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for range b.N {
				report.Build(c.p)
			}
		})
	}
}
