package place

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"cohoist/core/vec"
)

// ParseHoles reads a list of holes, one a line: x and y, and z when the list has it (else z as given, m), separated
// by comma, semicolon, tab or blanks. Numbers are in units of unit metres (1 for m, 0.001 for mm); beside
// semicolons, tabs or blanks a decimal comma is understood. A first line without numbers, empty lines and what
// follows # are skipped. The error names the line.
func ParseHoles(text string, z, unit float64) ([]vec.V3, error) {
	var out []vec.V3
	for i, line := range strings.Split(text, "\n") {
		line, _, _ = strings.Cut(line, "#")
		line = strings.TrimSpace(strings.TrimPrefix(line, "\ufeff"))
		if line == "" {
			continue
		}
		cells := split(line)
		p := vec.V3{0, 0, z / unit}
		bad := ""
		for k, c := range cells {
			if k > 2 {
				break
			}
			x, err := strconv.ParseFloat(c, 64)
			if err != nil || math.IsNaN(x) || math.Abs(x*unit) > 1000 {
				bad = c
				break
			}
			p[k] = x
		}
		switch {
		case bad != "" && len(out) == 0 && strings.IndexFunc(line, func(r rune) bool { return r >= '0' && r <= '9' }) < 0:
			continue // a heading
		case bad != "":
			return nil, fmt.Errorf("line %d of the holes: %q is no number within 1000 m: write x and y, separated by a comma", i+1, shorten(bad))
		case len(cells) < 2:
			return nil, fmt.Errorf("line %d of the holes has one number: write x and y, separated by a comma", i+1)
		case len(out) == mostHoles:
			return nil, fmt.Errorf("line %d of the holes: the most is %d: take out those that will not be used", i+1, mostHoles)
		}
		out = append(out, p.Scale(unit))
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("the list holds no holes: write a line with x and y for each")
	}
	return out, nil
}

// split cuts a line into its cells; decimal commas become points when commas do not separate.
func split(line string) []string {
	separator := func(r rune) bool { return r == ';' || r == '\t' || r == ' ' }
	var cells []string
	if strings.Contains(line, ";") || strings.Contains(line, "\t") || !strings.Contains(strings.TrimRight(strings.ReplaceAll(line, ", ", ","), ","), ",") || spaced(line) {
		cells = strings.FieldsFunc(strings.ReplaceAll(line, ", ", " "), separator)
		for i, c := range cells {
			cells[i] = strings.Replace(strings.Trim(c, ","), ",", ".", 1)
		}
		return cells
	}
	for _, c := range strings.Split(strings.TrimRight(line, ", "), ",") {
		cells = append(cells, strings.TrimSpace(c))
	}
	return cells
}

// spaced tells that blanks separate and commas do not: no blank stands beside a comma, and there are both.
func spaced(line string) bool {
	return strings.Contains(line, " ") && !strings.Contains(line, ", ") && !strings.Contains(line, " ,")
}

func shorten(s string) string {
	if r := []rune(s); len(r) > 30 {
		return string(r[:30]) + "…"
	}
	return s
}
