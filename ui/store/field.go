package store

import (
	"errors"
	"math"
	"strings"

	"cohoist/core/plan"
	"cohoist/ui/format"
)

// Field is a number of the plan that can be typed. Its ID is also the id of its input.
type Field struct {
	ID   string
	Name string // what it is, for the label
	Q    format.Quantity
	Must bool // may not be left out
	Get  func(plan.Plan) float64
	Set  func(*plan.Plan, float64)
}

// Words is a text of the plan that can be typed.
type Words struct {
	ID   string
	Name string
	Get  func(plan.Plan) string
	Set  func(*plan.Plan, string)
}

// Text is what stands in the input: what is being typed, else the plan's number.
func (s *Store) Text(f Field) string {
	if t, ok := s.raw[f.ID]; ok {
		return t
	}
	return s.Units.Text(f.Q, f.Get(s.plan))
}

// Fault is what is wrong with what was typed, or "".
func (s *Store) Fault(id string) string { return s.faults[id] }

// Type takes a text as it is being typed. A number goes into the plan at once; anything else stays
// in the input, with a sentence, and the plan stays as it was.
func (s *Store) Type(f Field, raw string) {
	if len(raw) > 200 {
		raw = raw[:200]
	}
	s.raw[f.ID] = raw
	x, err := s.Units.Parse(f.Q, raw)
	if err == nil && math.IsNaN(x) && f.Must {
		err = errors.New("This needs a number.")
	}
	if err == nil {
		err = s.Edit(f.ID, func(p *plan.Plan) { f.Set(p, x) })
	}
	s.judge(f.ID, err)
}

// Leave ends the typing: a good text is written the usual way, a bad one stays to be mended.
func (s *Store) Leave(id string) {
	s.Done()
	if s.faults[id] == "" {
		delete(s.raw, id)
	}
}

// WordsText is what stands in a text input.
func (s *Store) WordsText(w Words) string {
	if t, ok := s.raw[w.ID]; ok {
		return t
	}
	return w.Get(s.plan)
}

// TypeWords takes a text of the plan as it is being typed.
func (s *Store) TypeWords(w Words, raw string) {
	s.raw[w.ID] = raw
	s.judge(w.ID, s.Edit(w.ID, func(p *plan.Plan) { w.Set(p, raw) }))
}

func (s *Store) judge(id string, err error) {
	if err == nil {
		delete(s.faults, id)
		return
	}
	s.faults[id] = strings.TrimSpace(err.Error())
}

// SetUnits changes how numbers are shown; texts being typed are written anew.
func (s *Store) SetUnits(u format.Units) {
	s.rest()
	s.Units = u
	s.keep(unitsKey, u.Length+" "+u.Mass+" "+u.Force)
	s.study()
}
