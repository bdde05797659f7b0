package handover

import (
	"math"
	"strconv"
	"strings"
)

// table writes lines of comma-separated values as RFC 4180 says: lines end with CR LF, cells with commas, quotes or
// line ends stand in quotes, quotes are doubled. Numbers have a decimal point; what was not computed is empty.
type table struct{ b strings.Builder }

func head(keys ...string) *table {
	t := &table{}
	t.row(keys...)
	return t
}

func (t *table) row(cells ...string) {
	for i, c := range cells {
		if i > 0 {
			t.b.WriteByte(',')
		}
		if strings.ContainsAny(c, ",\"\r\n") {
			c = `"` + strings.ReplaceAll(c, `"`, `""`) + `"`
		}
		t.b.WriteString(c)
	}
	t.b.WriteString("\r\n")
}

func (t *table) bytes() []byte { return []byte(t.b.String()) }

// text is a cell of words. Names come from plans that strangers may have written: a cell that a spreadsheet would take
// for a formula gets an apostrophe before it.
func text(s string) string {
	if s != "" && strings.ContainsRune("=+-@\t\r", rune(s[0])) {
		return "'" + s
	}
	return s
}

// figures is how many figures a number is written with: ties between equal vehicles are shared to about 1e-5, the
// rest is better, and nine keep what there is.
const figures = 9

// dust is what counts as 0, in SI: rounding of forces, moments and places.
const dust = 1e-9

// number is a cell of a number; empty when it was not computed.
func number(x float64) string {
	switch {
	case math.IsNaN(x):
		return ""
	case math.Abs(x) < dust:
		return "0"
	}
	return strconv.FormatFloat(x, 'g', figures, 64)
}

// numbers is a cell for each.
func numbers(xs ...float64) []string {
	out := make([]string, len(xs))
	for i, x := range xs {
		out[i] = number(x)
	}
	return out
}
