// Package field is the inputs of the page: a word of a sentence, a labelled row, a choice, a text.
// They show what the store says and hand it what is typed.
package field

import (
	"math"
	"strconv"
	"unicode/utf8"

	"cohoist/ui/store"
)

// Option is one of the things to choose from.
type Option = store.Option

// Assumed is what the report assumes for a number left out: shown greyed in its empty input.
func Assumed(s *store.Store, f store.Field) string {
	if !math.IsNaN(f.Get(s.Plan())) {
		return ""
	}
	return s.Units.Text(f.Q, f.Get(s.Assumed()))
}

// width is the size of an input for its text, in characters.
func width(text, placeholder string, least int) string {
	n := max(utf8.RuneCountInString(text), utf8.RuneCountInString(placeholder), least)
	return strconv.Itoa(min(n, 24))
}

// described is the id of a field's fault while there is one.
func described(s *store.Store, id string) any {
	if s.Fault(id) == "" {
		return nil
	}
	return id + "-fault"
}

// invalid is the value of aria-invalid.
func invalid(s *store.Store, id string) any {
	if s.Fault(id) == "" {
		return nil
	}
	return "true"
}

// class is a component's class, with a mark while its field has a fault.
func class(base string, s *store.Store, id string) string {
	if s.Fault(id) != "" {
		return base + " wrong"
	}
	return base
}
