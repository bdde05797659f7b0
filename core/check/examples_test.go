package check_test

import (
	"math"
	"os"
	"strings"
	"testing"

	"cohoist/core/check"
	"cohoist/core/example"
	"cohoist/core/report"
)

// Every check's own examples come out as it says.
func TestExamplesOfChecks(t *testing.T) {
	run := 0
	for i, c := range check.All {
		for _, e := range c.Examples {
			p, faults := example.Plan(e.Plan)
			if len(faults) > 0 {
				t.Fatal(faults)
			}
			row := report.Build(p).Checks[i]
			if row.ID != c.ID || !(math.Abs(row.Utilisation-e.Utilisation) <= e.Tol) {
				t.Errorf("%s of %s: utilisation %.9g, want %g within %g (%s)", c.ID, e.Plan, row.Utilisation, e.Utilisation, e.Tol, e.Source)
			}
			run++
		}
	}
	if run < 8 {
		t.Errorf("only %d examples", run)
	}
}

// Every check says what it asks, and every reference it names is in the list of references.
func TestChecksAreDocumented(t *testing.T) {
	refs, err := os.ReadFile("../references.bib")
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for _, c := range check.All {
		if c.ID == "" || c.Title == "" || len(c.Doc) < 40 || c.Run == nil || seen[c.ID] {
			t.Errorf("check %q is not described, or twice in the list", c.ID)
		}
		seen[c.ID] = true
		for _, key := range c.Refs {
			if !strings.Contains(string(refs), "{"+key+",") {
				t.Errorf("%s refers to %s, which is not in references.bib", c.ID, key)
			}
		}
	}
}
