package plan

import (
	"bytes"
	"fmt"
	"reflect"
	"strconv"
	"strings"
)

// Decode reads a plan from JSON (RFC 8259) and brings it up to the newest format. It reports
// every fault of the text at once: wrong types, NaN and the like, numbers too large, keys that
// stand twice, text after the end. A number that is left out is NaN. Fields this version does not
// know are kept in Extra and listed by Unknown; they are no fault. With faults, the plan holds
// what could be read. What the values mean is for Validate.
func Decode(data []byte) (Plan, Faults) {
	p, faults, _ := decode(data)
	return p, faults
}

// Read decodes and validates: every fault of text and values at once. A plan without faults may
// still lack numbers; see Missing.
func Read(data []byte) (Plan, Faults) {
	p, faults, whole := decode(data)
	if !whole {
		return p, faults
	}
	unread := len(faults)
	for _, f := range Validate(p) {
		if !within(f.Path, faults[:unread]) { // what could not be read is empty; that is no second fault
			faults = append(faults, f)
		}
	}
	return p, faults
}

// within tells whether a path is that of a fault, or lies under it.
func within(path string, faults Faults) bool {
	for _, f := range faults {
		rest, under := strings.CutPrefix(path, f.Path)
		if under && f.Path != "" && (rest == "" || rest[0] == '.' || rest[0] == '[') {
			return true
		}
	}
	return false
}

// decode also tells whether the text was read to its end as a plan.
func decode(data []byte) (p Plan, faults Faults, whole bool) {
	p = Blank()
	p.Format = ""
	if wrong, fix := refuse(data); wrong != "" {
		return Blank(), Faults{{"", wrong, fix}}, false
	}
	r := reader{data: bytes.TrimPrefix(data, []byte("\ufeff"))}
	r.value(reflect.ValueOf(&p).Elem())
	if !r.broken && r.peek() != 0 {
		r.stop("more text follows the plan's closing brace", "Take away what follows; a file holds one plan.")
	}
	p, more := Upgrade(p)
	if len(more) > 0 && p.Format != "" { // another format: its fields are not ours to judge
		return p, more, false
	}
	if r.broken {
		more = nil // the format may well stand in what could not be read
	}
	return p, append(more, r.faults...), !r.broken
}

// refuse says why a text cannot be a plan at all.
func refuse(data []byte) (wrong, fix string) {
	head := bytes.TrimLeft(bytes.TrimPrefix(data[:min(len(data), 4096)], []byte("\ufeff")), " \t\r\n")
	switch {
	case len(data) > mostBytes:
		return fmt.Sprintf("is %d MB long; the most is %d MB", len(data)>>20, mostBytes>>20),
			"Make a large mesh coarser, or take it out."
	case len(bytes.TrimSpace(data)) == 0:
		return "is empty", "Open a file that holds a plan."
	case bytes.HasPrefix(data, []byte{0xff, 0xfe}) || bytes.HasPrefix(data, []byte{0xfe, 0xff}):
		return "is UTF-16 text", "Save the file as UTF-8."
	case len(head) == 0 || head[0] != '{':
		return "does not begin with a brace {", `A plan is JSON and begins {"format": "` + Format + `", …}.`
	}
	return "", ""
}

// Upgrade brings a plan of any published format up to the newest. The cases fall through from old
// to new, so that each step is written once.
func Upgrade(p Plan) (Plan, Faults) {
	switch p.Format {
	// When liftplan/2 comes: case "liftplan/1": p = …; fallthrough
	case Format:
		return p, nil
	case "":
		return p, Faults{{"format", "is missing", `Write "format": "` + Format + `".`}}
	}
	name, version, _ := strings.Cut(p.Format, "/")
	if n, err := strconv.Atoi(version); name == "liftplan" && err == nil && n > 1 {
		return p, Faults{{"format", "is " + quote(p.Format) + ", which is newer than this program", "Load the page again to get the newest version."}}
	}
	return p, Faults{{"format", "is " + quote(p.Format) + ", which is not a lift plan", "Open a file of format " + Format + "."}}
}

// Remarks says a sentence for every field that this version does not know, with the known one that
// was perhaps meant: a misspelt key is otherwise silent, since its field then counts as left out.
func Remarks(p Plan) []string {
	var out []string
	walk(&p, func(l leaf) {
		if !l.unknown {
			return
		}
		s := l.where.String() + " is not a field this version knows; it is kept."
		key, near := l.where[len(l.where)-1].name, []string{}
		for _, f := range Fields {
			if rest, under := strings.CutPrefix(f.Path, l.pattern+"."); (under || l.pattern == "") && !strings.Contains(rest, ".") {
				near = append(near, rest)
			}
		}
		if n := nearest(key, near); n != "" {
			s += " Did you mean " + n + "?"
		}
		out = append(out, s)
	})
	return out
}

// Unknown lists the paths of the fields that this version does not know, in the order of the document.
func Unknown(p Plan) []string {
	var out []string
	walk(&p, func(l leaf) {
		if l.unknown {
			out = append(out, l.where.String())
		}
	})
	return out
}
