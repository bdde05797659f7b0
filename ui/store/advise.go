package store

import (
	"cohoist/core/advice"
	"cohoist/core/plan"
	"cohoist/core/report"
)

// Advice takes many solves, so it is only worked out when the plan rests, and when somebody looks for
// it or the lift fails or is thin.
const rested = 350 // milliseconds after the last change

// Sections that show advice.
const (
	WouldDo     = "would-do"
	WhatMovesIt = "moves"
)

// counsel is advice with the generation of the plan that it is about.
type counsel struct {
	of, asked int
	found     advice.Advice
}

// Advise asks for advice on the plan on the screen, unless it is there or not wanted.
func (s *Store) Advise() {
	if s.counsel.asked == s.asked || !s.wantsAdvice() {
		return
	}
	s.desk.Later("advice", rested, func() {
		if s.counsel.asked == s.asked || s.Busy {
			return
		}
		mine := s.asked
		s.counsel.asked = mine
		s.adviser.Advise(s.plan, func(a advice.Advice, err error) {
			if mine != s.asked {
				return
			}
			if err != nil {
				s.Say("program", "The advice could not be worked out. "+err.Error())
			}
			s.counsel.of, s.counsel.found = mine, a
		})
	})
}

func (s *Store) wantsAdvice() bool {
	v := s.report.Verdict
	return s.Open(WouldDo) || s.Open(WhatMovesIt) || v == report.Fails || v == report.ThinLift
}

// Advice is what there is to advise on the plan on the screen; false while it is not worked out.
func (s *Store) Advice() (advice.Advice, bool) {
	return s.counsel.found, s.counsel.of == s.asked
}

// Take makes a remedy the plan, in one step of history.
func (s *Store) Take(r advice.Remedy) {
	if s.Do(func(p *plan.Plan) { *p = r.Plan.Clone() }) {
		s.Jump(WouldDo)
	}
}

// Adviser works out advice, at once or later. A newer plan replaces one that waits.
type Adviser interface {
	Advise(p plan.Plan, done func(advice.Advice, error))
}

// Counsel is what the program that works out advice answers.
type Counsel struct {
	Advice advice.Advice
	Error  string
}

// Advise of nowhere never answers.
func (nowhere) Advise(plan.Plan, func(advice.Advice, error)) {}
