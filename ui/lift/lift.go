// Package lift is the sentences that state the lift. Their words are the inputs.
package lift

import (
	"strconv"
	"strings"

	"cohoist/core/plan"
	"cohoist/ui/field"
	"cohoist/ui/format"
	"cohoist/ui/store"
)

func (c *Sentence) count() store.Field { return store.Count("s-count") }

// classes are the plan's classes and the library's, named as a sentence needs them.
func (c *Sentence) classes() []field.Option {
	p := c.Store.Plan()
	var list []field.Option
	if store.TeamClass(p) == "" {
		list = append(list, field.Option{Value: "", Name: "vehicles of several classes"})
	}
	return append(list, store.ClassOptions(p, len(p.Team))...)
}

func (c *Sentence) holds() []field.Option {
	list := []field.Option{{Value: plan.Cable, Name: "on cables"}, {Value: plan.Rigid, Name: "in rigid holds"}}
	if store.TeamHold(c.Store.Plan()) == "" {
		list = append([]field.Option{{Value: "", Name: "on cables and in rigid holds"}}, list...)
	}
	return list
}

func (c *Sentence) cables() bool {
	for _, m := range c.Store.Plan().Team {
		if m.Hold.Kind == plan.Cable {
			return true
		}
	}
	return false
}

func (c *Sentence) shapes() []field.Option {
	var list []field.Option
	for _, s := range store.Shapes {
		if s.Shape != plan.MeshBody || c.solid().Shape == plan.MeshBody {
			list = append(list, field.Option{Value: s.Shape, Name: s.Name})
		}
	}
	return list
}

func (c *Sentence) policies() []field.Option {
	var list []field.Option
	for _, p := range store.Policies {
		list = append(list, field.Option{Value: p.Policy, Name: p.Name})
	}
	return list
}

func (c *Sentence) policy() string {
	if p := c.Store.Plan().Policy; p != "" {
		return p
	}
	return plan.EvenEffort
}

// solid is the payload's only part, or its first.
func (c *Sentence) solid() plan.Solid {
	if list := c.Store.Plan().Payload.Solids; len(list) > 0 {
		return list[0]
	}
	return plan.Solid{}
}

func (c *Sentence) single() bool { return len(c.Store.Plan().Payload.Solids) == 1 }

func (c *Sentence) parts() string {
	n := len(c.Store.Plan().Payload.Solids)
	if n == 0 {
		return "no parts yet"
	}
	return strconv.Itoa(n) + " parts"
}

// sizes are the measures of the payload's only part, each with what comes before it.
func (c *Sentence) sizes() []size {
	if !c.single() {
		return nil
	}
	fields := store.SolidSizes("s-size", c.Store.Plan(), 0)
	shape := c.solid().Shape
	var list []size
	for k, f := range fields {
		before := " × "
		switch {
		case k == 0 && (shape == plan.Box || shape == plan.Plate):
			before = " of "
		case shape != plan.Box && shape != plan.Plate:
			before = []string{" with a length of ", ", an outer radius of ", ", and an inner radius of "}[k]
		}
		list = append(list, size{Before: before, F: f})
	}
	for k := range list {
		list[k].Bare = k+1 < len(list) && list[k+1].Before == " × " // the last one says the unit
	}
	return list
}

type size struct {
	Before string
	F      store.Field
	Bare   bool
}

// faults are what is wrong in the sentences, each with the name of its word.
func (c *Sentence) faults() []wrong {
	p := c.Store.Plan()
	fields := []store.Field{c.count(), store.CableLength("s-cable"), store.Altitude("s-altitude"), store.Temperature("s-temperature"),
		store.Wind("s-wind"), store.WindTo("s-wind-to"), store.Utilisation("s-utilisation"), store.Cone("s-cone")}
	if c.single() {
		fields = append(fields, store.SolidMass("s-mass", 0))
		fields = append(fields, store.SolidSizes("s-size", p, 0)...)
	}
	var list []wrong
	for _, f := range fields {
		if t := c.Store.Fault(f.ID); t != "" {
			list = append(list, wrong{f.ID + "-fault", f.Name + ": " + t})
		}
	}
	return list
}

type wrong struct{ ID, Text string }

// article is "a" or "an" before a number as it is read aloud.
func article(number string) string {
	n, _, _ := strings.Cut(strings.ReplaceAll(number, ",", "."), ".")
	if n == "11" || n == "18" || strings.HasPrefix(n, "8") {
		return "an"
	}
	return "a"
}

func (c *Sentence) article() string { return article(c.Store.Text(store.SolidMass("s-mass", 0))) }

// mass is the payload's mass in words, when it has several parts.
func (c *Sentence) mass() string {
	m := c.Store.Report().Payload.Mass
	if m != m {
		return ""
	}
	return ", " + c.Store.Units.Show(format.Mass, m) + " in all,"
}
