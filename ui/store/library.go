package store

import (
	"math"
	"strings"

	"cohoist/core/class"
	"cohoist/core/plan"
	"cohoist/core/vec"
	"cohoist/ui/format"
)

// Library is the classes that come with the page, the lightest first.
func Library() []class.Entry { return library }

var library = class.Library()

// Option is one of the things to choose from.
type Option struct{ Value, Name string }

// ClassLabel is a class's name for reading: hyphens stand for spaces.
func ClassLabel(name string) string { return strings.ReplaceAll(name, "-", " ") }

// many is the plural of a class's label.
func many(label string, n int) string {
	if n == 1 || label == "" || strings.HasSuffix(label, "s") {
		return label
	}
	return label + "s"
}

// ClassNote is what the library says about a class.
func ClassNote(name string) string {
	for _, l := range Library() {
		if l.Name == name {
			return l.Line
		}
	}
	return ""
}

// AddClass brings a class of the library into the plan, to be used by some vehicles.
func (s *Store) AddClass(name string) {
	if name != "" {
		s.Do(func(p *plan.Plan) { bring(p, name) })
	}
}

// SetLayout turns the rotors of the class at place i onto the axes or between them.
func (s *Store) SetLayout(i int, layout string) {
	s.Do(func(p *plan.Plan) {
		name := nth(ClassNames(*p), i)
		c := p.Vehicles[name]
		c.Layout = layout
		p.Vehicles[name] = c
	})
}

// MeasureClass switches the measured inertia of the class at place i on, empty, or off.
func (s *Store) MeasureClass(i int, on bool) {
	s.Do(func(p *plan.Plan) {
		name := nth(ClassNames(*p), i)
		c := p.Vehicles[name]
		c.Inertia = nil
		if on {
			nan := math.NaN() // for the person to fill in
			c.Inertia = &vec.V3{nan, nan, nan}
		}
		p.Vehicles[name] = c
	})
}

// SetUnit changes one of the units.
func (s *Store) SetUnit(q format.Quantity, sign string) {
	u := s.Units
	switch q {
	case format.Length:
		u.Length = sign
	case format.Mass:
		u.Mass = sign
	case format.Force:
		u.Force = sign
	}
	s.SetUnits(u)
}
