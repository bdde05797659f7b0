package study

import (
	"errors"
	"math"
	"strings"

	"cohoist/core/plan"
	"cohoist/core/unit"
	"cohoist/ui/format"
)

// field is the row of the plan's table for a path.
func field(path string) (plan.Field, bool) {
	if strings.HasPrefix(path, "vehicles") {
		return ofClass(path)
	}
	var b strings.Builder
	for i := 0; i < len(path); i++ {
		b.WriteByte(path[i])
		if path[i] == '[' {
			for i+1 < len(path) && path[i+1] != ']' {
				i++
			}
		}
	}
	pattern := b.String()
	if f, ok := plan.FieldAt(pattern); ok {
		return f, true
	}
	return plan.FieldAt(strings.TrimSuffix(pattern, "[]"))
}

// ofClass is the row for a field of a class, whatever the class is called.
func ofClass(path string) (best plan.Field, ok bool) {
	const any = "vehicles.*"
	for _, f := range plan.Fields {
		if end, is := strings.CutPrefix(f.Path, any); is && strings.HasSuffix(path, end) && len(f.Path) > len(best.Path) {
			best, ok = f, true
		}
	}
	return best, ok
}

// shown is the unit in which a field is typed and read.
func shown(u format.Units, f plan.Field) string {
	switch f.Kind {
	case unit.Length:
		return u.Length
	case unit.Mass:
		return u.Mass
	case unit.Force:
		return u.Force
	case unit.Stress:
		return "MPa"
	case unit.SectionModulus:
		return "cm³"
	case unit.SecondMoment:
		return "cm⁴"
	}
	return f.Unit
}

// put sets a field of the plan to what was typed; nothing typed leaves it out. It returns the number or text.
func put(p *plan.Plan, u format.Units, path, text string) (value any, err error) {
	f, ok := field(path)
	if !ok {
		return nil, errors.New("The plan has no field " + path + ".")
	}
	value = text
	if f.Kind != unit.Text {
		x := math.NaN()
		if strings.TrimSpace(text) != "" {
			if x, err = unit.Parse(text, shown(u, f)); err != nil {
				return nil, err
			}
		}
		value = x
	}
	if !plan.Put(p, path, value) {
		return nil, errors.New("The plan has no field " + path + ".")
	}
	return value, nil
}

// typed is what stands in the input of a field.
func typed(p plan.Plan, u format.Units, path string) string {
	f, _ := field(path)
	switch x := plan.Get(p, path).(type) {
	case string:
		return x
	case float64:
		if !math.IsNaN(x) && (f.Kind != unit.Count || f.In.Holds(x)) { // a count of 0 is left out
			return unit.Figures(x/unit.Scale(shown(u, f)), 6)
		}
	}
	return ""
}

// Entry is one field of the plan in a form.
type Entry struct {
	Path, Name, Until string // Until stands in the empty input
	Words             []Word // for a choice
}

// Word is one choice of a field.
type Word struct{ Value, Name string }

// id is the id of the input of a path.
func id(path string) string {
	return "f-" + strings.NewReplacer(".", "-", "_", "-", "[", "-", "]", "").Replace(path)
}

// label is what a field is called, with its unit.
func (e Entry) label() string {
	if e.Name != "" {
		return e.Name
	}
	f, _ := field(e.Path)
	return f.Title
}

func (e Entry) help() string {
	f, _ := field(e.Path)
	return f.Help
}

// fill gives the inputs of entries what the plan says.
func (t *Turn) fill(entries []Entry) {
	for _, e := range entries {
		t.Value(id(e.Path), typed(t.Plan, t.Units, e.Path))
	}
}
