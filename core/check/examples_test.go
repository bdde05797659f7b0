package check_test

import (
	"math"
	"testing"

	"cohoist/core/check"
	"cohoist/core/example"
	"cohoist/core/report"
)

// Every worked case of a check gives what it says.
func TestExamplesOfChecks(t *testing.T) {
	ran := 0
	for i, c := range check.All {
		for _, e := range c.Examples {
			p, faults := example.Plan(e.Plan)
			if len(faults) > 0 {
				t.Fatal(e.Plan, faults)
			}
			got := report.Build(p).Checks[i]
			if !(math.Abs(got.Utilisation-e.Utilisation) <= e.Tol) {
				t.Errorf("%s of %s: %.10g, want %.10g ± %g (%s): %s", c.ID, e.Plan, got.Utilisation, e.Utilisation, e.Tol, e.Source, got.Sentence)
			}
			ran++
		}
	}
	if ran < 2 {
		t.Errorf("only %d worked cases", ran)
	}
}
