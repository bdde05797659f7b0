package unit

import (
	"errors"
	"math"
	"strconv"
	"strings"
	"unicode"
)

// Parse reads a number as a person types it and returns it in the base unit: SI, degrees for
// angles. The number is in the unit named by display unless a unit follows it: Parse("12 oz", "kg")
// is 0.3402. The decimal mark is a point or a comma, one of them at most: 1,234 is a little more than
// one, always, and whatever has a second mark or a gap (1,234.5 or 1 234) is refused. The minus may be
// a real minus sign. The error is one sentence to show the person.
func Parse(text, display string) (float64, error) {
	s := strings.TrimSpace(text)
	number, rest := split(s)
	if number == "" {
		return 0, notNumber(s, display)
	}
	if sentence := separators(s, rest); sentence != "" {
		return 0, errors.New(sentence)
	}
	x, err := strconv.ParseFloat(number, 64)
	if err != nil || math.IsInf(x, 0) {
		return 0, errors.New("“" + short(s) + "” is too large a number.")
	}
	scale := Scale(display)
	if rest = strings.Join(strings.Fields(rest), " "); rest != "" {
		k := KindOf(display)
		u, ok := find(rest, k)
		if !ok || u.Kind != k {
			return 0, wrongUnit(rest, u, ok, k)
		}
		scale = u.Scale
	}
	if x *= scale; math.IsInf(x, 0) {
		return 0, errors.New("“" + short(s) + "” is too large a number.")
	}
	return x + 0, nil // + 0: minus zero is zero
}

// split takes the number off the front of s, with a point for its decimal mark and a plain sign,
// and returns what follows. The number is empty when s does not begin with one.
func split(s string) (number, rest string) {
	sign := ""
	for _, m := range []string{"-", "−", "+"} {
		if t, ok := strings.CutPrefix(s, m); ok {
			s = strings.TrimSpace(t)
			if m != "+" {
				sign = "-"
			}
			break
		}
	}
	whole, s := digits(s)
	part := ""
	if s != "" && (s[0] == '.' || s[0] == ',') {
		part, s = digits(s[1:])
	}
	if whole == "" && part == "" {
		return "", s
	}
	power := ""
	if s != "" && (s[0] == 'e' || s[0] == 'E') {
		t, minus := s[1:], ""
		for _, m := range []string{"-", "−"} {
			if after, ok := strings.CutPrefix(t, m); ok {
				t, minus = after, "-"
				break
			}
		}
		if minus == "" {
			t = strings.TrimPrefix(t, "+")
		}
		if d, after := digits(t); d != "" {
			power, s = "e"+minus+d, after
		}
	}
	return sign + "0" + whole + "." + part + "0" + power, s
}

func digits(s string) (string, string) {
	n := 0
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	return s[:n], s[n:]
}

// separators finds a second mark or a gap inside the number: rest is what follows its readable front.
func separators(s, rest string) string {
	r := strings.TrimLeftFunc(rest, unicode.IsSpace)
	if r == "" || !strings.ContainsAny(r[:1], ".,'_0123456789") && !strings.HasPrefix(r, "’") {
		return ""
	}
	if r[0] == '\'' && !(len(r) > 1 && r[1] >= '0' && r[1] <= '9') {
		return "" // feet
	}
	return "“" + short(s) + "” has a separator of thousands or two numbers in it; write one number without separators, such as 1234.5."
}

func notNumber(s, display string) error {
	example := "1.5"
	if display != "" {
		example = "1.5 or 1.5 " + short(display)
	}
	if s == "" {
		return errors.New("Nothing is written; write a number such as " + example + ".")
	}
	return errors.New("“" + short(s) + "” is not a number; write one such as " + example + ".")
}

func wrongUnit(typed string, u Unit, known bool, want Kind) error {
	names := []string{}
	for _, v := range Of(want) {
		if v.Symbol != "" {
			names = append(names, v.Symbol)
		}
	}
	choice := strings.Join(names, ", ")
	if n := len(names); n > 1 {
		choice = strings.Join(names[:n-1], ", ") + " or " + names[n-1]
	}
	fix := "; write only the number."
	if choice != "" {
		fix = "; write only the number, or one of " + choice + "."
		if len(names) == 1 {
			fix = "; write only the number, or " + choice + "."
		}
	}
	if known {
		return errors.New("“" + u.Symbol + "” is a unit of " + u.Kind.String() + ", not of " + want.String() + fix)
	}
	return errors.New("“" + short(typed) + "” is not a unit of " + want.String() + " known here" + fix)
}

// short cuts what was typed to fit into a sentence on one line.
func short(s string) string {
	s = strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return ' '
		}
		return r
	}, s)
	if r := []rune(s); len(r) > 24 {
		return string(r[:24]) + "…"
	}
	return s
}
