package store

import (
	"testing"

	"cohoist/core/advice"
	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/report"
)

// patient waits with what is to be done later until it is told.
type patient struct {
	nowhere
	due map[string]func()
}

func (p *patient) Later(key string, _ int, f func()) { p.due[key] = f }

func (p *patient) rest() {
	for key, f := range p.due {
		delete(p.due, key)
		f()
	}
}

// counting tells how often advice was worked out.
type counting struct{ times int }

func (c *counting) Advise(p plan.Plan, done func(advice.Advice, error)) {
	c.times++
	done(advice.Of(p), nil)
}

// A lift that fails is advised on when it rests; a remedy is one step, and the lift then holds.
func TestTakeARemedy(t *testing.T) {
	heavy, _ := example.Plan("lens-too-heavy")
	desk, adviser := &patient{due: map[string]func(){}}, &counting{}
	s := New(heavy, Ports{Desk: desk, Adviser: adviser})
	if _, ok := s.Advice(); ok || adviser.times != 0 {
		t.Fatal("advice before the plan rests")
	}
	desk.rest()
	a, ok := s.Advice()
	if !ok || len(a.Remedies) == 0 || adviser.times != 1 {
		t.Fatalf("advice %v, %d remedies, worked out %d times", ok, len(a.Remedies), adviser.times)
	}
	s.Take(a.Remedies[0])
	if v := s.Report().Verdict; v == report.Fails {
		t.Errorf("the remedy leaves %s", v)
	}
	if _, ok := s.Advice(); ok {
		t.Error("the advice of the plan before still stands")
	}
	s.Undo()
	if !plan.Same(s.Plan(), heavy) || s.CanUndo() {
		t.Error("a remedy is not one step of history")
	}
}

// A lift that holds is advised on only when somebody looks.
func TestAdviceWhenOpened(t *testing.T) {
	good, _ := example.Plan("beam-pair")
	desk, adviser := &patient{due: map[string]func(){}}, &counting{}
	s := New(good, Ports{Desk: desk, Adviser: adviser})
	desk.rest()
	if adviser.times != 0 {
		t.Error("advice that nobody looks at")
	}
	s.Toggle(WhatMovesIt)
	s.Advise()
	s.Advise()
	desk.rest()
	if a, ok := s.Advice(); !ok || len(a.Moves) == 0 || adviser.times != 1 {
		t.Errorf("advice %v, worked out %d times", ok, adviser.times)
	}
}
