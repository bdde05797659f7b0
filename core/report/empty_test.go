package report

import (
	"testing"

	"cohoist/core/example"
)

// A plan without a team, which Validate refuses before, does not stop the program either.
func TestNoTeam(t *testing.T) {
	p, _ := example.Plan("beam-pair")
	p.Team = nil
	if r := Build(p); r.Verdict == Lifts || r.Verdict == ThinLift {
		t.Errorf("nobody %s", r.Verdict)
	}
}
