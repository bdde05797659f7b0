package plan

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Fault is something wrong with a plan, as data: where, what, and what would fix it.
type Fault struct {
	Path  string `json:"path"`  // such as team[2].hold.length_m; empty for the plan as a whole
	Wrong string `json:"wrong"` // what is wrong, to follow the path
	Fix   string `json:"fix"`   // a sentence: what would fix it
}

// Faults are all faults of a plan, in the order of the document.
type Faults []Fault

// mostFaults is how many faults are kept; beyond it they are only counted.
const mostFaults = 100

// String is the fault on one line.
func (f Fault) String() string {
	where := f.Path
	if where == "" {
		where = "the plan"
	}
	return where + " " + f.Wrong + ". " + f.Fix
}

// String is a line per fault.
func (fs Faults) String() string {
	lines := make([]string, len(fs))
	for i, f := range fs {
		lines[i] = f.String()
	}
	return strings.Join(lines, "\n")
}

// Error lets Faults be returned as an error where one is wanted.
func (fs Faults) Error() string { return fs.String() }

// add keeps a fault, and says at the cap how it goes on.
func (fs *Faults) add(where path, wrong, fix string) {
	switch n := len(*fs); {
	case n < mostFaults:
		*fs = append(*fs, Fault{where.String(), wrong, fix})
	case n == mostFaults:
		*fs = append(*fs, Fault{"", fmt.Sprintf("has more than %d faults", mostFaults), "Mend these first; the others are not listed."})
	}
}

// path is where in a plan something stands, step by step.
type path []step

// step is a key, or an index when the key is empty. (A key that is empty is written out as "".)
type step struct {
	name string
	i    int
}

func (p path) key(k string) path {
	if k == "" {
		k = `""`
	}
	return append(p[:len(p):len(p)], step{name: k})
}

func (p path) index(i int) path { return append(p[:len(p):len(p)], step{i: i}) }

const mostSteps = 16 // shown of a path; a plan's own fields have at most 6

func (p path) String() string {
	var b strings.Builder
	for n, s := range p {
		switch {
		case n == mostSteps:
			return b.String() + "…"
		case s.name == "":
			b.WriteString("[" + strconv.Itoa(s.i) + "]")
		case !plainKey(s.name):
			b.WriteString("[" + strconv.Quote(shorten(s.name)) + "]")
		default:
			if n > 0 {
				b.WriteByte('.')
			}
			b.WriteString(s.name)
		}
	}
	return b.String()
}

func plainKey(k string) bool {
	for _, r := range k {
		if !(r == '_' || r == '-' || r >= '0' && r <= '9' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z') {
			return false
		}
	}
	return k != "" && len(k) <= mostID
}

// said is a name inside a sentence: as it is when it is short and printable, else in quotes.
func said(name string) string {
	for _, r := range name {
		if !unicode.IsPrint(r) {
			return quote(name)
		}
	}
	if name == "" || utf8.RuneCountInString(name) > mostID {
		return quote(name)
	}
	return name
}

// quote shows text from a plan inside a sentence: on one line, cut when long.
func quote(s string) string {
	s = strconv.Quote(shorten(s))
	return "“" + strings.ReplaceAll(s[1:len(s)-1], `\"`, `"`) + "”"
}

func shorten(s string) string {
	if utf8.RuneCountInString(s) > 40 {
		s = string([]rune(s)[:40]) + "…"
	}
	return s
}

// ClassPath is the path of a class of vehicle, as faults and Put write it.
func ClassPath(name string) string { return path{}.key("vehicles").key(name).String() }
