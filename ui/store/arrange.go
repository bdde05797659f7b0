package store

import (
	"math"

	"cohoist/core/pattern"
	"cohoist/core/plan"
)

// Arrange attaches the whole team in a pattern.
func (s *Store) Arrange(name string) {
	s.arrangement = name
	s.Do(func(p *plan.Plan) { p.Team = pattern.Arrange(name, *p) })
}

// arrange attaches a team whose number, holds or classes have changed in the pattern that it had
// before, or else in the one chosen last, or else in a ring.
func (s *Store) arrange(p *plan.Plan, before string) {
	if before == "" {
		before = s.arrangement
	}
	if before == "" && inLine(s.plan.Team) {
		before = "line"
	}
	if before == "" {
		before = "ring"
	}
	p.Team = pattern.Arrange(before, *p)
}

// patternOf is the pattern in which the team stands, or "".
func patternOf(p plan.Plan) string {
	for _, k := range pattern.Kinds {
		if stands(p.Team, pattern.Arrange(k.Name, p)) {
			return k.Name
		}
	}
	return ""
}

// near is how far a place may be off a pattern's and still count as it, m.
const near = 1e-3

func stands(a, b []plan.Member) bool {
	for i := range a {
		if d := a[i].Attach.Sub(b[i].Attach).Norm(); !(d < near) || math.IsNaN(d) {
			return false
		}
	}
	return len(a) > 0
}

// inLine says that several vehicles attach at the same y.
func inLine(team []plan.Member) bool {
	for _, m := range team {
		if !(math.Abs(m.Attach[1]-team[0].Attach[1]) < near) {
			return false
		}
	}
	return len(team) > 1
}

// again arranges the team anew when it stood in a pattern before a change.
func again(p *plan.Plan, before string) {
	if before != "" {
		p.Team = pattern.Arrange(before, *p)
	}
}
