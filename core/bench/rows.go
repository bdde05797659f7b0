package bench

import (
	"errors"
	"math"
	"slices"
	"strconv"
	"strings"

	"cohoist/core/plan"
)

// Rows reads the chosen columns of a sheet as rows of a static test. notes say what was done with them: rows left out, rows that
// repeat a throttle and were averaged. It fails with a sentence that names the column that is missing.
func Rows(s Sheet, columns []Column) (rows []plan.Bench, notes []string, err error) {
	at := map[Quantity]Column{}
	for _, c := range columns {
		if c.Index < 0 || c.Index >= len(s.Names) {
			return nil, nil, errors.New("There is no column " + strconv.Itoa(c.Index+1) + " for " + string(c.Quantity) + ".")
		}
		if _, ok := unitNamed(c.Quantity, c.Unit); !ok && !(c.Quantity == Throttle && c.Unit == "") {
			return nil, nil, errors.New("Choose the unit of " + string(c.Quantity) + ", column “" + s.Names[c.Index] + "”: " + strings.Join(Units(c.Quantity), ", ") + ".")
		}
		at[c.Quantity] = c
	}
	for _, q := range []Quantity{Thrust, Power} {
		_, ok := at[q]
		_, volts := at[Voltage]
		_, amps := at[Current]
		if !ok && !(q == Power && volts && amps) {
			return nil, nil, errors.New(missing(q, s))
		}
	}
	left := []string{}
	for i := range s.Cells {
		r := s.row(i, at)
		if !(r.Thrust >= 0 && r.Power >= 0) {
			left = append(left, strconv.Itoa(s.Lines[i]))
			continue
		}
		rows = append(rows, r)
	}
	if len(left) > 0 {
		notes = append(notes, "Left out for want of thrust or power, or with one below zero: line "+some(left)+".")
	}
	if c, ok := at[Throttle]; ok && c.Unit == "" {
		notes = append(notes, "Throttle "+percent(rows)+".")
	}
	rows, repeats := tidy(rows)
	switch {
	case repeats == 1:
		notes = append(notes, "1 row repeats a throttle or a thrust and was averaged with it.")
	case repeats > 1:
		notes = append(notes, strconv.Itoa(repeats)+" rows repeat a throttle or a thrust and were averaged with it.")
	}
	switch {
	case len(rows) < 2:
		return nil, notes, errors.New("The file has fewer than two rows with thrust and power.")
	case len(rows) > mostRows:
		return nil, notes, errors.New("The file has more than " + strconv.Itoa(mostRows) + " rows; keep every tenth, the curve between them is smooth.")
	}
	return rows, notes, nil
}

// row reads one line.
func (s *Sheet) row(i int, at map[Quantity]Column) plan.Bench {
	get := func(q Quantity) float64 {
		c, ok := at[q]
		if !ok {
			return math.NaN()
		}
		x := s.number(s.Cells[i][c.Index])
		u, _ := unitNamed(q, c.Unit)
		if c.Unit == "" {
			return x
		}
		if u.name == "us" { // pulses of 1 ms to 2 ms: common practice, no source
			x -= 1000
		}
		return x * u.scale
	}
	r := plan.Bench{Throttle: get(Throttle), Thrust: get(Thrust), Power: get(Power), Speed: get(Speed), Voltage: get(Voltage)}
	if _, ok := at[Power]; !ok {
		r.Power = r.Voltage * get(Current) // (19.2)
	}
	return r
}

// number reads a cell; NaN when it is none, or nobody's size.
func (s *Sheet) number(c string) float64 {
	c = strings.TrimSpace(strings.TrimSuffix(c, "%"))
	if s.DecimalComma {
		c = strings.Replace(strings.ReplaceAll(c, ".", ""), ",", ".", 1)
	}
	x, err := strconv.ParseFloat(c, 64)
	if err != nil || math.Abs(x) > 1e9 {
		return math.NaN()
	}
	return x
}

// percent turns throttles without a unit into ratios: percent when one is above 1.
func percent(rows []plan.Bench) string {
	most := 0.0
	for _, r := range rows {
		if r.Throttle > most {
			most = r.Throttle
		}
	}
	if !(most > 1) {
		return "has no unit and is read as a ratio"
	}
	for i := range rows {
		rows[i].Throttle /= 100
	}
	return "has no unit and is read as percent"
}

// tidy sorts rows by throttle, those without one by thrust, and averages repeats. It tells how many rows went.
func tidy(rows []plan.Bench) ([]plan.Bench, int) {
	key := func(r plan.Bench) float64 { return r.Throttle }
	for _, r := range rows {
		if math.IsNaN(r.Throttle) {
			key = func(r plan.Bench) float64 { return r.Thrust }
		}
	}
	slices.SortStableFunc(rows, func(a, b plan.Bench) int {
		switch {
		case key(a) < key(b):
			return -1
		case key(a) > key(b):
			return 1
		}
		return 0
	})
	out := merged(rows, key)
	return out, len(rows) - len(out)
}

func missing(q Quantity, s Sheet) string {
	text := "The file has no column for " + string(q)
	if q == Power {
		text += ", and none for voltage and current to compute it from"
	}
	names := make([]string, 0, len(s.Names))
	for _, n := range s.Names {
		if r := []rune(n); len(r) > 40 {
			n = string(r[:40]) + "…"
		}
		names = append(names, "“"+n+"”")
	}
	if n := len(names); n > 12 {
		names = append(names[:11], strconv.Itoa(n-11)+" more")
	}
	return text + ". Its columns are " + strings.Join(names, ", ") + "."
}

func some(list []string) string {
	if n := len(list); n > 8 {
		list = append(list[:7:7], strconv.Itoa(n-7)+" more")
	}
	return strings.Join(list, ", ")
}
