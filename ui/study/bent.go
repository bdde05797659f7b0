package study

import (
	"math"
	"strconv"

	"cohoist/core/beam"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// bent is the payload as a beam, and who carries it.
type bent struct{}

func (bent) See(t *Turn) {
	t.Say(talk.Bent+"-gist", bentGist(t))
	if !t.Opened(talk.Bent) {
		return
	}
	groups := bentForm(t.Plan)
	t.Show(talk.Bent+"-form", &BentForm{Units: t.Units, Groups: groups})
	for _, g := range groups {
		t.fill(g.Entries)
	}
	t.Show(talk.Bent, &Bent{Report: t.Report, Plan: t.Plan, Units: t.Units})
}

func (bent) Do(*Turn, string) {}

// bentGist is the section in a sentence.
func bentGist(t *Turn) string {
	b := t.Report.Beam
	switch {
	case b == nil && !t.Plan.Payload.Beam.Given():
		return "Not asked for: say what the payload is made of to see how it bends."
	case b == nil:
		return "It cannot be worked out yet; the checks say what is missing."
	}
	text := "It bends by " + t.Units.Small(abs(b.Deflect.Value))
	if b.Allowable > 0 {
		text = "Stressed to " + format.Share(b.Stress.Value/b.Allowable) + " of what it bears; it bends by " + t.Units.Small(abs(b.Deflect.Value))
	}
	if h := t.Report.Held; h != nil && !h.Tips {
		text += "; how it is held changes who carries"
	}
	return text + "."
}

func abs(x float64) float64 { return max(x, -x) }

// Group is fields of the form that belong together.
type Group struct {
	Name, Lead string
	Entries    []Entry
	Open       bool // unfolded at first; the first of a form is
}

// bentForm is what the section asks for.
func bentForm(p plan.Plan) []Group {
	materials := []Word{{"", "not a beam"}}
	for _, m := range beam.Materials {
		materials = append(materials, Word{m.Name, m.Title})
	}
	profiles := []Word{{"", "that of the part"}, {plan.Rectangle, "rectangle"}, {plan.Pipe, "pipe"}}
	const shape, table, profile = "by the part", "by the material", "by the profile"
	at := func(name, until string) Entry { return Entry{Path: "payload.beam." + name, Until: until} }
	groups := []Group{{Name: "Material and section", Entries: []Entry{
		{Path: "payload.beam.material", Words: materials}, {Path: "payload.beam.profile", Words: profiles},
		at("width_m", shape), at("depth_m", shape), at("wall_m", "full"),
		at("strength_factor", "3"), at("deflection_ratio_max", "0.005")}},
		{Name: "Measured or certified instead", Entries: []Entry{
			at("youngs_modulus_pa", table), at("strength_pa", table), at("allowable_stress_pa", "by strength"),
			at("area_m2", profile),
			{Path: "payload.beam.second_moment_m4[0]", Name: "Second moment, upright", Until: profile},
			{Path: "payload.beam.second_moment_m4[1]", Name: "Second moment, sideways", Until: profile},
			{Path: "payload.beam.section_modulus_m3[0]", Name: "Section modulus, upright", Until: profile},
			{Path: "payload.beam.section_modulus_m3[1]", Name: "Section modulus, sideways", Until: profile}}}}
	hold := Group{Name: "How stiffly each holds its place", Lead: "For a team that holds places rather than thrusts: how much more each gives per metre that its hold hangs low, and how far its place or cable length may be off, which counts once every stiffness is given."}
	for i, m := range p.Team {
		if i == mostHolds {
			break
		}
		path := "team[" + strconv.Itoa(i) + "].hold."
		hold.Entries = append(hold.Entries, Entry{Path: path + "stiffness_n_m", Name: m.ID + ", stiffness", Until: "stiff"},
			Entry{Path: path + "length_error_m", Name: m.ID + ", may be off by", Until: "0"})
	}
	return append(groups, hold)
}

// mostHolds is how many vehicles have fields in the form; a larger team's stand in its file.
const mostHolds = 24

// carrier is a row of the table of who carries.
type carrier struct {
	ID, Shares, Holds, Between, Says string
	Part, PartHeld                   string // lengths of bars, of 100 for all the load
}

// carriers compares what every vehicle carries when the team shares force and when it holds places.
func (c *Bent) carriers() []carrier {
	h := c.Report.Held
	if h == nil || len(h.Force) != len(c.Report.Vehicles) {
		return nil
	}
	total := 0.0
	for _, v := range c.Report.Vehicles {
		total += v.Force[2]
	}
	var list []carrier
	for i, v := range c.Report.Vehicles {
		r := carrier{ID: v.ID, Shares: c.force(v.Force[2], total), Part: bar(v.Force[2] / total)}
		if !h.Tips {
			r.Holds, r.PartHeld = c.force(h.Force[i], total), bar(h.Force[i]/total)
			if h.Most[i]-h.Least[i] > 1e-3*total {
				r.Between = format.Share(h.Least[i]/total) + " to " + format.Share(h.Most[i]/total)
			}
			if h.Slack[i] {
				r.Says = "goes slack"
			}
		}
		list = append(list, r)
	}
	return list
}

func (c *Bent) force(f, total float64) string {
	return c.Units.Show(format.Force, f) + ", " + format.Share(f/total)
}

// bar is the length of a bar, of 100; what is not known has none.
func bar(part float64) string {
	if math.IsNaN(part) {
		return "0"
	}
	return strconv.FormatFloat(100*max(0, min(1, part)), 'f', 1, 64)
}

// held says what the table compares.
func (c *Bent) held() string {
	h := c.Report.Held
	switch {
	case h == nil:
		return "Balance alone says who carries: it is the same whether the vehicles hold thrusts or places."
	case h.Tips:
		return "There are no upright forces with which the team could hold this load in place."
	}
	text := "Each vehicle can hold its thrust, as the plan has it, or its place, as a stiff spring does. "
	if h.Stated {
		text = "Each vehicle can hold its thrust, as the plan has it, or its place, with the stiffness stated. "
	}
	if h.Bends {
		return text + "In the second case the payload bends between its holds, and the inner ones carry more."
	}
	return text + "In the second case a stiff payload rests on few of them: between what and what, balance alone does not say."
}

// rows are the peaks in words.
func (c *Bent) peaks() []string {
	b, u := c.Report.Beam, c.Units
	if b == nil {
		return nil
	}
	at := func(p report.BeamPeak) string { return " at x = " + u.Show(format.Length, p.X) }
	list := []string{
		"Largest shear force " + u.Show(format.Force, b.Shear.Value) + at(b.Shear) + ".",
		"Largest bending moment " + u.Show(format.Moment, b.Moment.Value) + at(b.Moment) + ".",
		"Largest deflection " + u.Small(b.Deflect.Value) + at(b.Deflect) + ".",
	}
	stress := "Largest stress " + megapascal(b.Stress.Value) + at(b.Stress)
	if b.Allowable > 0 {
		stress += ", of " + megapascal(b.Allowable) + " it may bear"
	}
	return append(list, stress+".")
}
