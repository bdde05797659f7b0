package example

import (
	"strings"
	"testing"

	"cohoist/core/plan"
)

// Every example is a plan without fault that needs no number, says that it is invented, and is the
// only one of its name and title.
func TestExamples(t *testing.T) {
	if len(All) < 6 {
		t.Fatalf("%d examples", len(All))
	}
	titles := map[string]string{}
	for _, e := range All {
		p, faults := Plan(e.Name)
		for _, f := range append(faults, plan.Validate(p)...) {
			t.Errorf("%s: %v", e.Name, f)
		}
		if m := plan.Missing(p); len(m) > 0 {
			t.Errorf("%s lacks %v", e.Name, m)
		}
		if u := plan.Unknown(p); len(u) > 0 {
			t.Errorf("%s has unknown fields %v", e.Name, u)
		}
		if !strings.HasSuffix(p.Note, "All data is invented.") {
			t.Errorf("%s does not say that it is invented", e.Name)
		}
		if other := titles[p.Title]; other != "" {
			t.Errorf("%s and %s have the same title", e.Name, other)
		}
		titles[p.Title] = e.Name
	}
	if JSON("no-such-example") != nil {
		t.Error("an example nobody made")
	}
}
