package store

import (
	"cohoist/core/plan"
	"cohoist/core/vec"
)

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
	s.Do(func(p *plan.Plan) {
		for i := range p.Team {
			hold(&p.Team[i], kind)
		}
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
}

// SetPolicy changes how the team shares the load.
func (s *Store) SetPolicy(policy string) { s.Do(func(p *plan.Plan) { p.Policy = policy }) }

// Place puts something of the drawing elsewhere: "attach" the hold of vehicle id, "com" the measured
// centre of mass, "solid" a part of the payload. Moves of one drag are one step.
func (s *Store) Place(kind, id string, to vec.V3, done bool) {
	err := s.Edit("drag "+kind+" "+id, func(p *plan.Plan) {
		switch kind {
		case "attach":
			if i := member(*p, id); i >= 0 {
				p.Team[i].Attach = to
			}
		case "com":
			p.Payload.COM = &to
		}
	})
	if err != nil {
		s.Say("edit", err.Error())
	}
	if done {
		s.Done()
	}
}
