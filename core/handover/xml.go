package handover

import (
	"strings"
	"unicode/utf8"

	"cohoist/core/vec"
)

// markup writes XML 1.0, two blanks a level.
type markup struct {
	b    strings.Builder
	open []string
}

func (m *markup) line(s string) {
	m.b.WriteString(strings.Repeat("  ", len(m.open)) + s + "\n")
}

// tag is the inside of a tag: its name, and attributes as pairs of name and value.
func tag(name string, attributes []string) string {
	s := name
	for i := 0; i+1 < len(attributes); i += 2 {
		s += " " + attributes[i] + `="` + escape(attributes[i+1]) + `"`
	}
	return s
}

// begin opens an element, end closes the last one, one is an element with nothing in it.
func (m *markup) begin(name string, attributes ...string) {
	m.line("<" + tag(name, attributes) + ">")
	m.open = append(m.open, name)
}

func (m *markup) end() {
	name := m.open[len(m.open)-1]
	m.open = m.open[:len(m.open)-1]
	m.line("</" + name + ">")
}

func (m *markup) one(name string, attributes ...string) { m.line("<" + tag(name, attributes) + "/>") }

// leaf is an element with a text in it.
func (m *markup) leaf(name, value string, attributes ...string) {
	m.line("<" + tag(name, attributes) + ">" + escape(value) + "</" + name + ">")
}

// comment writes lines of our own words, which have no two hyphens in a row.
func (m *markup) comment(lines ...string) {
	m.line("<!-- " + strings.Join(lines, "\n"+strings.Repeat("  ", len(m.open))+"     ") + " -->")
}

func (m *markup) bytes() []byte {
	return []byte(`<?xml version="1.0" encoding="UTF-8"?>` + "\n" + m.b.String())
}

// escape writes a text of a plan so that it is only a text. Characters that XML 1.0 does not have (section 2.2) become
// U+FFFD, as in Go's encoding/xml.
func escape(s string) string {
	var b strings.Builder
	for _, r := range s {
		switch {
		case r == '&':
			b.WriteString("&amp;")
		case r == '<':
			b.WriteString("&lt;")
		case r == '>':
			b.WriteString("&gt;")
		case r == '"':
			b.WriteString("&quot;")
		case r == '\t' || r == '\n' || r == '\r':
			b.WriteByte(' ')
		case r < 0x20 || r == 0xFFFE || r == 0xFFFF:
			b.WriteRune(utf8.RuneError)
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// list is numbers with blanks between, a 0 for what was not computed.
func list(xs ...float64) string {
	cells := numbers(xs...)
	for i, c := range cells {
		if c == "" {
			cells[i] = "0"
		}
	}
	return strings.Join(cells, " ")
}

func vector(v vec.V3) string { return list(v[0], v[1], v[2]) }
