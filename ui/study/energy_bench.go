package study

import (
	"hash/fnv"
	"math"
	"strconv"
	"strings"

	"cohoist/core/bench"
	"cohoist/core/plan"
	"cohoist/ui/talk"
)

// sheet is the file of a static test that was pasted or opened for a class, as far as it is understood.
type sheet struct {
	Class string
	text  string
	found bench.Sheet
	key   string // of the settings that belong to its header
	cols  []bench.Column
	rows  []plan.Bench
	Notes []string
	Fault string // why it is none
	table *bench.Table
}

// sheetOf reads what stands in the settings for a class.
func sheetOf(t *Turn, class string) *sheet {
	s := &sheet{Class: class, text: t.Setting("sheet."+class, "")}
	if strings.TrimSpace(s.text) == "" {
		return s
	}
	var err error
	if s.found, err = bench.Cut(s.text); err != nil {
		s.Fault = err.Error()
		return s
	}
	s.key = class + "." + digest(s.found.Names) + "."
	s.choose(t)
	if s.rows, s.Notes, err = bench.Rows(s.found, s.cols); err == nil {
		s.table, err = bench.New(s.rows)
	}
	if err != nil {
		s.Fault = err.Error()
	}
	if s.found.DecimalComma {
		s.Notes = append([]string{"Its numbers have decimal commas."}, s.Notes...)
	}
	return s
}

// digest tells headers apart, so that columns chosen for one are not taken for another's.
func digest(names []string) string {
	h := fnv.New32a()
	for _, n := range names {
		h.Write([]byte(n + "\n"))
	}
	return strconv.FormatUint(uint64(h.Sum32()), 36)
}

// choose takes the columns that were chosen, and guesses the others.
func (s *sheet) choose(t *Turn) {
	guessed := map[bench.Quantity]bench.Column{}
	for _, c := range bench.Guess(s.found) {
		guessed[c.Quantity] = c
	}
	for _, q := range bench.Quantities {
		c, ok := guessed[q]
		if typed := t.Setting(s.key+"col."+string(q), ""); typed != "" {
			i, err := strconv.Atoi(typed)
			ok = err == nil && i >= 0 && i < len(s.found.Names)
			if ok && i != c.Index || c.Quantity == "" {
				c = bench.Column{Quantity: q, Index: i, Unit: s.unitOf(q, i)}
			}
		}
		if u := t.Setting(s.key+"unit."+string(q), ""); u != "" {
			c.Unit = u
		}
		if ok {
			s.cols = append(s.cols, c)
		}
	}
}

// unitOf is the unit of a column chosen by hand: what its name says, when it says one of the quantity's.
func (s *sheet) unitOf(q bench.Quantity, column int) string {
	one := bench.Sheet{Names: []string{string(q) + " " + s.found.Names[column]}}
	for _, c := range bench.Guess(one) {
		if c.Quantity == q {
			return c.Unit
		}
	}
	return ""
}

// picker is a quantity with the columns to choose from.
type picker struct {
	Quantity, Column, Unit string // Column: index, empty for none
	Columns, Units         []Word
	ColumnSet, UnitSet     string
	ColumnID, UnitID       string
}

// pickers are the selects of a sheet whose header was read.
func (s *sheet) pickers(place int) []picker {
	if s.found.Names == nil {
		return nil
	}
	columns := []Word{{"none", "none"}}
	for i, n := range s.found.Names {
		columns = append(columns, Word{strconv.Itoa(i), clipped(n, 28)})
	}
	var list []picker
	for _, q := range bench.Quantities {
		p := picker{Quantity: string(q), Column: "none", Columns: columns, ColumnSet: "energy." + s.key + "col." + string(q), UnitSet: "energy." + s.key + "unit." + string(q)}
		p.ColumnID, p.UnitID = benchID(place, "col-"+string(q)), benchID(place, "unit-"+string(q))
		p.Units = []Word{{"", "choose"}}
		if q == bench.Throttle {
			p.Units[0].Name = "by its size"
		}
		for _, u := range bench.Units(q) {
			p.Units = append(p.Units, Word{u, u})
		}
		for _, c := range s.cols {
			if c.Quantity == q {
				p.Column, p.Unit = strconv.Itoa(c.Index), c.Unit
			}
		}
		list = append(list, p)
	}
	return list
}

func benchID(place int, what string) string {
	return "energy-bench-" + strconv.Itoa(place) + "-" + what
}

// values fills the inputs of a sheet.
func (s *sheet) values(t *Turn, place int) {
	t.Value(benchID(place, "text"), s.text)
	for _, p := range s.pickers(place) {
		t.Value(p.ColumnID, p.Column)
		t.Value(p.UnitID, p.Unit)
	}
}

// do takes a static test into the plan, or out of it, or a propeller's coefficients into it.
func (e *endurance) do(t *Turn, what string) {
	verb, class, _ := strings.Cut(what, " ")
	c, ok := t.Plan.Vehicles[class]
	if !ok {
		return
	}
	switch verb {
	case "use":
		s := sheetOf(t, class)
		if s.table == nil {
			return
		}
		c.Bench = s.rows
	case "drop":
		c.Bench = nil
	case "coef":
		of := coefOf(t, class, 0)
		if of.Fault != "" {
			return
		}
		c = of.prop.Class(c)
	default:
		return
	}
	next := t.Plan.Clone()
	next.Vehicles[class] = c
	if faults := plan.Validate(next); len(faults) > 0 {
		t.Say(talk.Energy+"-gist", "Not used. "+faults[0].Path+" "+faults[0].Wrong+". "+faults[0].Fix)
		return
	}
	t.Take(next, "")
}

// between is the least and most of what the rows of a test hold.
func between(rows []plan.Bench, of func(plan.Bench) float64) (least, most float64) {
	least, most = math.Inf(1), math.Inf(-1)
	for _, r := range rows {
		if x := of(r); !math.IsNaN(x) {
			least, most = math.Min(least, x), math.Max(most, x)
		}
	}
	return least, most
}
