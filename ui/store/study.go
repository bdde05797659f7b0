package store

import (
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/ui/talk"
)

// Studio is where studies are worked out, beside the page.
type Studio interface {
	Ask(a talk.Ask, now bool) // about the plan on the screen; the newest counts. Not now: when there is time
}

// Ask of nowhere never answers.
func (nowhere) Ask(talk.Ask, bool) {}

// study asks the studies about the plan on the screen: now when somebody looks at one or the lift is in trouble.
func (s *Store) study() {
	if s.Busy {
		return
	}
	a := talk.Ask{Gen: s.asked, Plan: s.plan, Report: s.report, Selected: s.Selected, Units: s.Units}
	for _, d := range talk.Sections {
		if s.Open(d.ID) {
			a.Open = append(a.Open, d.ID)
		}
	}
	s.studio.Ask(a, len(a.Open) > 0 || a.Report.Verdict == report.Fails || a.Report.Verdict == report.ThinLift)
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
