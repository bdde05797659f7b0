package advise

import (
	"strings"
	"testing"

	"cohoist/core/advice"
	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/ui/store"
)

// prompt does at once what is to be done later.
type prompt struct{ store.Desk }

func (prompt) Later(_ string, _ int, f func()) { f() }

func (prompt) Advise(p plan.Plan, done func(advice.Advice, error)) { done(advice.Of(p), nil) }

func section(t *testing.T, name string, change func(*plan.Plan)) *Section {
	t.Helper()
	p, faults := example.Plan(name)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	change(&p)
	return &Section{Store: store.New(p, store.Ports{Desk: prompt{store.Still().Desk}, Adviser: prompt{}})}
}

func TestALiftThatFails(t *testing.T) {
	c := section(t, "lens-too-heavy", func(*plan.Plan) {})
	if len(c.why()) == 0 || len(c.remedies()) == 0 || c.gist() != together(c.remedies()[0].Sentence) {
		t.Errorf("%d reasons, %d remedies, %q", len(c.why()), len(c.remedies()), c.gist())
	}
	// three equal vehicles are one line each: the whole list has no two lines that only differ in the name
	for i, m := range c.moves() {
		if m.ID == "vehicles.mass_kg" && len(m.alike) != 2 || !strings.HasSuffix(m.sentence(), ".") {
			t.Errorf("line %d: %q", i, m.sentence())
		}
		if c.part(m) == "0" {
			t.Errorf("line %d has no bar", i)
		}
	}
	if c.part(c.moves()[0]) != "100.0" {
		t.Errorf("the strongest has a bar of %s", c.part(c.moves()[0]))
	}
}

// Nobody looks, nothing fails: nothing is worked out, and the section says so.
func TestALiftThatHolds(t *testing.T) {
	c := section(t, "beam-pair", func(*plan.Plan) {})
	if len(c.moves()) != 0 || c.gist() != "Nothing has to change." {
		t.Errorf("%d moves, %q", len(c.moves()), c.gist())
	}
	c.toggle(store.WhatMovesIt)
	if len(c.moves()) == 0 {
		t.Error("opened, but not worked out")
	}
}
