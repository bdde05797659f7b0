package store

import (
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/ui/talk"
)

// Studio is where studies are worked out, beside the page.
type Studio interface {
	Moved(gen int)            // the plan on the screen is another: what was worked out is about an earlier one
	Ask(a talk.Ask, now bool) // about the plan on the screen; the newest counts. Not now: when there is time
}

// Moved and Ask of nowhere are heard by nobody.
func (nowhere) Moved(int)          {}
func (nowhere) Ask(talk.Ask, bool) {}

// How long a plan rests before studies are asked about it that nobody looks at, in milliseconds: of a lift in
// trouble, and else.
const (
	restTroubled = 150
	restCalm     = 400
)

// study asks the studies about the plan on the screen: now when somebody looks at one, else when it rests.
func (s *Store) study() {
	s.studio.Moved(s.asked)
	if s.Busy {
		return
	}
	for _, d := range talk.Sections {
		if s.Open(d.ID) {
			s.askStudies(true)
			return
		}
	}
	rest := restCalm
	if v := s.report.Verdict; v == report.Fails || v == report.ThinLift {
		rest = restTroubled
	}
	s.desk.Later("study", rest, func() { s.askStudies(rest == restTroubled) })
}

func (s *Store) askStudies(now bool) {
	a := talk.Ask{Gen: s.asked, Plan: s.plan, Report: s.report, Selected: s.Selected, Units: s.Units}
	for _, d := range talk.Sections {
		if s.Open(d.ID) {
			a.Open = append(a.Open, d.ID)
		}
	}
	s.studio.Ask(a, now)
}

// ToggleStudy opens or closes a study.
func (s *Store) ToggleStudy(id string) {
	s.Toggle(id)
	s.study()
}

// Take makes what a study found the plan, in one step of history, unless the plan has changed since it
// was asked.
func (s *Store) Take(gen int, p plan.Plan, jump string) {
	if gen == s.asked && s.Do(func(q *plan.Plan) { *q = p.Clone() }) && jump != "" {
		s.Jump(jump)
	}
}

// Put sets fields of the plan, by path, in one step of history. What the plan has no room for any more, such as a field of
// a vehicle that is gone, is passed over.
func (s *Store) Put(values map[string]any) {
	s.Do(func(p *plan.Plan) {
		for path, v := range values {
			plan.Put(p, path, v)
		}
	})
}
