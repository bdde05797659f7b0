package plan

import (
	"fmt"
	"math"

	"cohoist/core/canon"
	"cohoist/core/unit"
)

// Need says what becomes of a plan in which a field is left out.
type Need int

// The needs.
const (
	Optional Need = iota // nothing: it is computed, or only words
	Assumed              // the Default is taken and listed as an assumption
	OneCheck             // the checks that use it are needs-input, the rest is answered
	Required             // no honest default: nothing about the balance can be said
)

// Field is one row of the table of fields: what the form, the faults, the schema and the
// documents know about a field.
type Field struct {
	Path    string // [] stands for any index, * for any class name
	Title   string // in words
	Kind    unit.Kind
	Unit    string // of the number in the plan; empty for none
	In      Range
	Need    Need
	Default float64  // when Assumed and a number; every entry of a list of numbers
	Word    string   // when Assumed and a text
	Choices []string // for a text: the words it may be
	Longest int      // for a text: its most characters
	When    func(Context) bool
	Help    string
}

// Range is where a number may lie.
type Range struct {
	Low, High         float64
	LowOpen, HighOpen bool // the end itself is outside
}

// Holds tells whether x lies in the range.
func (r Range) Holds(x float64) bool {
	return x > r.Low && x < r.High || x == r.Low && !r.LowOpen || x == r.High && !r.HighOpen
}

// Text says the range in words, in the unit given: from 0 to 5 m; above 0, at most 5 m; above 0,
// below 5 m.
func (r Range) Text(unit string) string {
	low, high := Number(r.Low, ""), Number(r.High, unit)
	if !r.LowOpen && !r.HighOpen {
		return "from " + low + " to " + high
	}
	from, to := "at least ", ", at most "
	if r.LowOpen {
		from = "above "
	}
	if r.HighOpen {
		to = ", below "
	}
	return from + low + to + high
}

// Number writes a number of a plan with its unit.
func Number(x float64, unit string) string {
	s := string(canon.AppendFloat(nil, x))
	switch {
	case math.IsNaN(x):
		return "not given"
	case math.IsInf(x, 0):
		s = fmt.Sprint(x)
	case unit == "°":
		return s + unit
	}
	if unit == "" {
		return s
	}
	return s + " " + unit
}

// FieldAt returns the row of a path pattern.
func FieldAt(pattern string) (Field, bool) {
	i, ok := fieldIndex[pattern]
	if !ok {
		return Field{}, false
	}
	return Fields[i], true
}

var fieldIndex = func() map[string]int {
	out := make(map[string]int, len(Fields))
	for i, f := range Fields {
		out[f.Path] = i
	}
	return out
}()

// Applies tells whether a field has a meaning where it stands: a cable has a length, a rigid hold has none.
func (f Field) Applies(c Context) bool { return f.When == nil || f.When(c) }

func onCable(c Context) bool  { return c.Member.Hold.Kind == Cable }
func onRigid(c Context) bool  { return c.Member.Hold.Kind == Rigid }
func isBeam(c Context) bool   { return c.payload().Beam.Given() }
func isMesh(c Context) bool   { return c.Solid.Shape == MeshBody }
func hasSize(c Context) bool  { return c.Solid.Shape == Box || c.Solid.Shape == Plate }
func hasInner(c Context) bool { return c.Solid.Shape == Tube }
func hasOuter(c Context) bool { return c.Solid.Shape == Tube || c.Solid.Shape == Cylinder }
func hasLength(c Context) bool {
	return c.Solid.Shape == Rod || c.Solid.Shape == Tube || c.Solid.Shape == Cylinder
}

// unmeasured narrows a need for a solid's sizes: with all three overrides given they only draw it.
func unmeasured(has func(Context) bool) func(Context) bool {
	return func(c Context) bool {
		l := c.payload()
		return has(c) && (l.COM == nil || l.Inertia == nil || l.DragArea == nil)
	}
}

// grounded tells whether ground effect is counted.
func grounded(c Context) bool { return c.Plan.Near.Ground == Counted }

// windy tells whether the plan's wind blows: without one there is nothing to gust.
func windy(c Context) bool { return c.Plan.Site.Wind > 0 }

// cabled tells whether one of several vehicles is on a cable.
func cabled(c Context) bool {
	for _, m := range c.Plan.Team {
		if m.Hold.Kind == Cable {
			return len(c.Plan.Team) > 1
		}
	}
	return false
}

// powered tells whether a vehicle of the team has a battery.
func powered(c Context) bool {
	for _, m := range c.Plan.Team {
		if c.Plan.Vehicles[m.Vehicle].Battery.Given() {
			return true
		}
	}
	return false
}

func used(c Context) bool { return usedBy(c, "") }

func usedRigid(c Context) bool { return usedBy(c, Rigid) }

// usedBy tells whether a vehicle of the team, on the given kind of hold or any, is of the class.
func usedBy(c Context, hold string) bool {
	for _, m := range c.Plan.Team {
		if m.Vehicle == c.Name && (hold == "" || m.Hold.Kind == hold) {
			return true
		}
	}
	return false
}
