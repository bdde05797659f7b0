package energy

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
)

// Share is the share of a plan by its policy, whichever that is: core/share's, and for equal endurance the one of (18.20), or
// even effort's when no other is held longer. says tells which of the two it is, for that policy alone. With anything that Lacking lists
// there are no parts.
func Share(m *share.Model, s *solve.Solver) (a share.Answer, says string) {
	a = m.Share(s)
	if a.Policy != plan.EqualEndurance || len(a.Parts) == 0 {
		return a, ""
	}
	study := At(m, a)
	if len(study.Needs) > 0 {
		a.Parts, a.T, a.Residual = nil, math.NaN(), math.NaN()
		return a, study.Sentence()
	}
	if study.First >= 0 {
		if e := study.even(s, a); e.Gain > 1 {
			return m.With(a, e.Parts), e.policy()
		}
	}
	return a, "The load is shared with even effort: no share was found that is held longer."
}

// policy says what the policy of equal endurance gains.
func (e *Even) policy() string {
	text := "The load is shared for equal endurance: it is held for " + span(e.Hold) + ", " + e.longer() + " than with even effort."
	if !(e.Gain > 1+least) {
		text = "The load is shared for equal endurance, which holds it hardly longer than even effort."
	}
	return text + " Largest payload, agility and losses are what the team can do at most, however it shares."
}

// Lacking lists the paths of the fields that a plan's policy needs and that were left out; nothing but equal endurance needs any.
func Lacking(p plan.Plan) []string {
	if p.Policy != plan.EqualEndurance {
		return nil
	}
	m := &share.Model{Plan: p}
	for _, v := range p.Team {
		if _, known := p.Vehicles[v.Vehicle]; known {
			m.Craft = append(m.Craft, share.Craft{Class: v.Vehicle})
		}
	}
	return begin(m).Needs
}
