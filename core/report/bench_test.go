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
	for _, c := range []struct {
		name string
		p    plan.Plan
	}{{"eight cables", ring(8, plan.Cable)}, {"eight rigid", ring(8, plan.Rigid)}, {"deck of eight", deck}} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for range b.N {
				report.Build(c.p)
			}
		})
	}
}
