package study

import (
	"math"

	"github.com/vugu/vugu"

	"cohoist/core/bench"
	"cohoist/core/energy"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/unit"
	"cohoist/ui/chart"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// benches shows for every class what its static test says: that of the form, or the plan's.
func (e *endurance) benches(t *Turn) {
	for i, class := range kinds(t.Plan) {
		if i == mostKinds {
			return
		}
		s := sheetOf(t, class)
		c := &Bench{Class: class, place: i, Units: t.Units, sheet: s, table: s.table, inPlan: len(t.Plan.Vehicles[class].Bench)}
		if s.text == "" && c.inPlan > 0 {
			c.table, _ = bench.New(t.Plan.Vehicles[class].Bench)
		}
		for k, v := range e.found.Vehicles {
			if e.model.Craft[k].Class != class {
				continue
			}
			most := 0.0
			for _, u := range e.answer.Parts[k].Rotor {
				most = max(most, u)
			}
			c.at = append(c.at, works{v.ID, most * standardDensity / e.found.Density})
		}
		c.byFigures(t.Plan.Vehicles[class])
		t.Show("energy-bench-"+digits(i), c)
	}
}

// byFigures makes the curve that of figure of merit and drive where there is no test.
func (c *Bench) byFigures(k plan.Class) {
	r := energy.Rotor{Area: math.Pi * k.RotorRadius * k.RotorRadius, FigureOfMerit: k.FigureOfMerit, DriveEfficiency: k.DriveEfficiency}
	if c.table == nil && r.Electric(k.RotorThrustMax, standardDensity, 0, 0) > 0 {
		c.rotor, c.most = &r, k.RotorThrustMax
	}
}

// drawn tells that there is a curve.
func (c *Bench) drawn() bool { return c.table != nil || c.rotor != nil }

// span is the least and the most thrust of the curve, N.
func (c *Bench) span() (least, most float64) {
	if c.table == nil {
		return 0, c.most
	}
	return c.table.Span()
}

// power is the curve, W; false outside it.
func (c *Bench) power(thrust float64) (w float64, ok bool) {
	switch {
	case c.table != nil:
		return c.table.Power(thrust)
	case thrust > c.most*(1+1e-9):
		return math.NaN(), false
	}
	return c.rotor.Electric(thrust, standardDensity, 0, 0), true
}

// standardDensity is that of static tests, kg/m³.
const standardDensity = 1.225

// works is where a vehicle's hardest-working rotor works: its thrust in standard air, N.
type works struct {
	ID     string
	Thrust float64
}

// curvePoints is from how many points a curve is drawn.
const curvePoints = 60

// plot is points, curve, and where the vehicles work.
func (c *Bench) plot() vugu.Builder {
	scale := unit.Scale(c.Units.Force)
	least, most := c.span()
	curve, rows, at := chart.Series{Name: "curve", Bare: true}, chart.Series{Name: "rows", Loose: true}, chart.Series{Loose: true}
	for k := range curvePoints + 1 {
		x := least + (most-least)*float64(k)/curvePoints
		w, _ := c.power(x)
		curve.X, curve.Y = append(curve.X, x/scale), append(curve.Y, w)
	}
	if c.table != nil {
		for _, r := range c.table.Rows {
			rows.X, rows.Y = append(rows.X, r.Thrust/scale), append(rows.Y, r.Power)
		}
	}
	for _, v := range c.at {
		if w, ok := c.power(v.Thrust); ok {
			at.X, at.Y = append(at.X, v.Thrust/scale), append(at.Y, w)
			at.Name = v.ID
		}
	}
	if len(at.X) > 1 {
		at.Name = "in the lift"
	}
	series := []chart.Series{curve, rows, at}
	if c.table == nil {
		series = []chart.Series{curve, at}
	}
	return &chart.Line{Title: "Power over thrust, one rotor of " + c.Class, Series: series, Summary: c.words(),
		X: chart.Axis{Title: "thrust, " + c.Units.Force, Zero: true}, Y: chart.Axis{Title: "W", Zero: true}}
}

// words are the plot in words.
func (c *Bench) words() string {
	least, most := c.span()
	text, outside := "By figure of merit and drive, in standard air at rest, up to "+c.Units.Show(format.Force, most)+".", "more than a rotor can."
	if c.table != nil {
		text, outside = several(len(c.table.Rows), "row", "rows")+" from "+c.Units.Show(format.Force, least)+" to "+c.Units.Show(format.Force, most)+".", "outside the rows: the power would not be known."
	}
	beyond := map[string][]string{} // by the thrust as it is written
	var order []string
	for _, v := range c.at {
		force := c.Units.Show(format.Force, v.Thrust)
		if w, ok := c.power(v.Thrust); ok {
			text += " " + v.ID + " works at " + force + " and " + watts(w) + "."
			continue
		}
		if beyond[force] == nil {
			order = append(order, force)
		}
		beyond[force] = append(beyond[force], v.ID)
	}
	for _, force := range order {
		text += " " + share.List(beyond[force]) + needs(len(beyond[force])) + force + ", " + outside
	}
	return text
}

// needs is the verb of one or more vehicles.
func needs(n int) string {
	if n == 1 {
		return " needs "
	}
	return " need "
}

// remarks are what is to be said of the file.
func (c *Bench) remarks() []string {
	list := append([]string{}, c.sheet.Notes...)
	if n := len(c.sheet.rows); n > 0 {
		list = append(list, several(n, "row", "rows")+" read: "+c.between("thrust", func(r plan.Bench) float64 { return r.Thrust }, c.Units.Force)+
			c.between(", power", func(r plan.Bench) float64 { return r.Power }, "W")+c.between(", speed", func(r plan.Bench) float64 { return r.Speed }, "rpm")+
			c.between(", voltage", func(r plan.Bench) float64 { return r.Voltage }, "V")+c.between(", throttle", func(r plan.Bench) float64 { return r.Throttle }, "%")+".")
	}
	return list
}

func (c *Bench) between(name string, of func(plan.Bench) float64, sign string) string {
	least, most := between(c.sheet.rows, of)
	if least > most {
		return ""
	}
	return name + " " + unit.Figures(least/unit.Scale(sign), 3) + " to " + unit.Format(most, sign, 3)
}

func (c *Bench) state() string {
	if c.inPlan == 0 {
		return "The plan has no static test of " + c.Class + "."
	}
	return "The plan uses a static test of " + c.Class + " with " + several(c.inPlan, "row", "rows") + "."
}

func useWords(class string) string { return "Use it for " + class }

// do is what a button of the class says.
func (c *Bench) do(verb string) string { return talk.Energy + " " + verb + " " + c.Class }
