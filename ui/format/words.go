package format

import (
	"strings"
	"unicode"
)

// Together keeps a number and its percent sign on one line.
func Together(s string) string { return strings.ReplaceAll(s, " %", "\u202f%") }

// FileName makes the stem of a file's name of a title.
func FileName(title string) string {
	name := strings.Map(func(r rune) rune {
		switch {
		case unicode.IsLetter(r), unicode.IsDigit(r):
			return unicode.ToLower(r)
		}
		return '-'
	}, title)
	for strings.Contains(name, "--") {
		name = strings.ReplaceAll(name, "--", "-")
	}
	name = strings.Trim(name, "-")
	if r := []rune(name); len(r) > 60 {
		name = string(r[:60])
	}
	if name == "" {
		return "lift"
	}
	return name
}
