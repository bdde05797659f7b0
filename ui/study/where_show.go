package study

import (
	"strconv"

	"cohoist/ui/format"
)

// whereInput is an input of a length.
type whereInput struct{ Name, Label, Set string }

// points are the lengths that say where points may lie.
func (c *WhereForm) points() []whereInput {
	var out []whereInput
	add := func(name, label string) {
		out = append(out, whereInput{name, label, "where." + name})
	}
	if c.Kind == inRow || c.Kind == onEdges || c.Kind == onGrid {
		add("pitch", "A hole every")
	}
	switch c.Kind {
	case inRow, along:
		add("margin", "Margin from the ends")
	case onEdges, onGrid, inside:
		add("margin", "Margin from the edges")
	}
	add("spacing", "Smallest spacing of vehicles")
	return out
}

func (c *WhereForm) wind() string {
	if !c.Windy {
		return "wind from any side (the site has none)"
	}
	return "the site's wind of " + c.Units.Show(format.Speed, c.Wind) + " from any side"
}

func (c *WhereForm) find() string {
	if c.Front {
		return "Find the front"
	}
	return "Find the best places"
}

// show puts the form on the page. Its HTML stays the same while numbers are typed, so that a click
// on a button is not lost when the input before it is left.
func (c *choices) show(t *Turn, running bool) {
	f := &WhereForm{Units: c.units, Kind: c.kind, Windy: c.plan.Site.Wind > 0, Wind: c.plan.Site.Wind, Front: len(c.goals) > 1,
		Faulty: len(c.faults) > 0, NoTable: len(c.faults) > 0 || c.free() || len(c.goals) > 1, Running: running}
	zones, in := c.circles()
	f.ZoneUnit = in
	for i, m := range c.plan.Team {
		f.IDs = append(f.IDs, m.ID)
		t.Value("where-stay-"+strconv.Itoa(i), strconv.FormatBool(c.ticked("stay."+m.ID)))
	}
	t.Show("where-form", f)
	for _, name := range []string{"kind", "pitch", "margin", "spacing", "zones", "list", "goal", "off", "stay"} {
		t.Say("where-fault-"+name, c.faults[name])
	}
	for name, until := range map[string]float64{"pitch": c.spread(), "margin": 0, "spacing": c.room(), "off": c.plan.Limits.COMError} {
		t.Value("where-"+name, c.written(name, until))
	}
	for _, name := range []string{"mirror-x", "mirror-y", "winds", "lost"} {
		t.Value("where-"+name, strconv.FormatBool(c.ticked(name)))
	}
	t.Value("where-kind", c.kind)
	t.Value("where-goal", c.word("goal", "0"))
	t.Value("where-zones", zones)
	t.Value("where-list", c.listing)
	t.Value("where-list-unit", c.word("list-unit", "m"))
	if len(c.faults) > 0 {
		t.Say("where-count", "Not to be searched like this.")
	} else {
		t.Say("where-count", capital(c.said())+".")
	}
}
