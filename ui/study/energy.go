package study

import (
	"cohoist/core/energy"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// endurance is how long the team holds the lift, and how far it flies.
type endurance struct {
	model  *share.Model
	solver *solve.Solver
	answer share.Answer // by the plan's policy
	found  energy.Study
	effort *energy.Study // of even effort, with its share for equal endurance, where that is the plan's policy
	before []share.Part  // of even effort
}

func (e *endurance) ask(m *share.Model, s *solve.Solver, _ func() bool) bool {
	e.model, e.solver = m, s
	e.effort, e.before = nil, nil
	e.answer, _ = energy.Share(m, s)
	if m.Plan.Policy != plan.EqualEndurance {
		e.found = energy.Of(m, s, e.answer)
		return true
	}
	e.found = energy.At(m, e.answer)
	even := m.Share(s)
	effort := energy.Of(m, s, even)
	e.effort, e.before = &effort, even.Parts
	return true
}

// closed is the section in a sentence, by the report.
func (*endurance) closed(t *Turn) string { return holdGist(t.Report) }

func (e *endurance) gist(t *Turn) string { return holdGist(t.Report) }

func holdGist(r report.Report) string {
	h := r.Team
	if len(h.HoldEnds) == 0 {
		return "Say what feeds the vehicles to see how long they hold."
	}
	who := h.HoldEnds[0] + " ends first, "
	switch {
	case h.Hold == 0:
		return h.HoldEnds[0] + " can't hold its part, not even from a full battery."
	case len(h.HoldEnds) == len(r.Vehicles) && len(h.HoldEnds) > 1:
		who = "all end together, "
	}
	return "Held for " + format.Span(h.Hold) + " at " + watts(h.Power) + "; " + who + ends(energy.End(h.HoldBy)) + "."
}

// ends is what ends a hold, after who does.
func ends(e energy.End) string {
	switch e {
	case energy.Weak:
		return "as the voltage no longer gives the thrust"
	case energy.Collapse:
		return "as the battery can't give the power"
	case energy.FromStart:
		return "at once"
	}
	return "with the reserve left"
}

func (e *endurance) show(t *Turn) {
	legs, fine := t.legs()
	c := &Energy{Study: e.found, Parts: e.answer.Parts, Units: t.Units, model: e.model, now: &e.found, before: e.answer.Parts}
	if e.effort != nil {
		c.now, c.before, c.planned = e.effort, e.before, true
	}
	if fine && e.found.Hold > 0 {
		r := e.found.Route(e.solver, legs)
		c.route = &r
	}
	t.Show(talk.Energy, c)
	e.benches(t)
}

// kinds are the classes that the team flies, in its order.
func kinds(p plan.Plan) []string {
	var out []string
	seen := map[string]bool{}
	for _, m := range p.Team {
		if _, known := p.Vehicles[m.Vehicle]; known && !seen[m.Vehicle] {
			seen[m.Vehicle] = true
			out = append(out, m.Vehicle)
		}
	}
	return out
}

// feedOf is the fields of what feeds a class.
func feedOf(class string, p plan.Plan) Group {
	path := plan.ClassPath(class) + "."
	at := func(name, until string) Entry { return Entry{Path: path + name, Until: until} }
	g := Group{Name: "What feeds " + class, Entries: []Entry{
		at("figure_of_merit", "0.3 to 0.7"), at("drive_efficiency", "0.5 to 0.85"), at("avionics_w", "needed"),
		at("battery.energy_wh", "by capacity"), at("battery.capacity_ah", "by energy"), at("battery.cells", "not said"), at("battery.voltage_v", "by the cells"),
		at("battery.resistance_ohm", "0"), at("battery.usable_ratio", "1"), at("battery.peukert", "1")}}
	if n := len(p.Vehicles[class].Bench); n > 0 {
		g.Lead = "Its power comes from the static test of " + several(n, "row", "rows") + " in the plan; figure of merit and drive efficiency count only for what wind adds."
	}
	return g
}

// mostKinds is of how many classes the form shows the fields; those of a larger team's stand in its file.
const mostKinds = 6

func (e *endurance) form(t *Turn) {
	f := &EnergyForm{Units: t.Units, Route: routeHint(t.Plan), Site: []Entry{{Path: "limits.reserve_ratio", Until: "0.2"}, {Path: "site.humidity_ratio", Until: "dry"}}}
	t.fill(f.Site)
	for i, class := range kinds(t.Plan) {
		if i == mostKinds {
			break
		}
		g := feedOf(class, t.Plan)
		t.fill(g.Entries)
		f.Feeds = append(f.Feeds, feed{i, class, g, sheetOf(t, class), coefForm(t, class)})
	}
	t.Show(talk.Energy+"-form", f)
	t.Value("energy-route", t.Setting("route", ""))
	for _, d := range f.Feeds {
		d.Sheet.values(t, d.Place)
		for _, c := range d.Coef {
			t.Value(settingID(talk.Energy, c.Name), c.shown(t.Setting(c.Name, "")))
		}
		t.Show("energy-coef-"+digits(d.Place), &Coef{Of: coefOf(t, d.Class, d.Place)})
	}
}

// feed is what feeds a class, in the form.
type feed struct {
	Place int
	Class string
	Group Group
	Sheet *sheet
	Coef  []Choice
}

func watts(x float64) string { return amount(x, "W") }

// amount is a number with three figures and its unit.
func amount(x float64, sign string) string { return format.SI.In(sign, x) }
