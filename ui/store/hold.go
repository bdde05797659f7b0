package store

import "cohoist/core/plan"

// TeamHold is how every vehicle holds the payload, or "" when they differ.
func TeamHold(p plan.Plan) string {
	if len(p.Team) == 0 {
		return ""
	}
	for _, m := range p.Team {
		if m.Hold.Kind != p.Team[0].Hold.Kind {
			return ""
		}
	}
	return p.Team[0].Hold.Kind
}

// SetTeamHold gives every vehicle the same kind of hold.
func (s *Store) SetTeamHold(kind string) {
	if kind != plan.Cable && kind != plan.Rigid {
		return
	}
	before := patternOf(s.plan)
	s.Do(func(p *plan.Plan) {
		for i := range p.Team {
			hold(&p.Team[i], kind)
		}
		again(p, before)
	})
}

// SetHold gives vehicle i a kind of hold.
func (s *Store) SetHold(i int, kind string) {
	s.Do(func(p *plan.Plan) { hold(&p.Team[i], kind) })
}

// hold changes the kind. A cable starts with three metres, as people start; the working load and
// what a grip bears are left for the crew to say.
func hold(m *plan.Member, kind string) {
	if m.Hold.Kind == kind {
		return
	}
	m.Hold = plan.BlankMember().Hold
	m.Hold.Kind = kind
	if kind == plan.Cable {
		m.Hold.Length = 3
	}
}

// Policies are the ways to share the load, with what each is called in a sentence.
var Policies = []struct{ Policy, Name string }{
	{plan.EvenEffort, "with even effort"},
	{plan.LeastSquares, "by least squares"},
	{plan.Equal, "in equal parts"},
	{plan.EqualEndurance, "for the longest hold"},
}

// SetPolicy changes how the team shares the load.
func (s *Store) SetPolicy(policy string) { s.Do(func(p *plan.Plan) { p.Policy = policy }) }

// Drag makes a change that may be one of many in a drag, which together are one step.
func (s *Store) Drag(what string, change func(plan.Plan) plan.Plan, done bool) {
	if err := s.Edit("drag "+what, func(p *plan.Plan) { *p = change(*p) }); err != nil {
		s.Say("edit", err.Error())
	}
	if done {
		s.Done()
	}
}
