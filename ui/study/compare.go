package study

import (
	"math"
	"strconv"
	"strings"

	"cohoist/core/check"
	"cohoist/core/link"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/unit"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// compare keeps up to three other plans beside the one on the screen.
type compare struct {
	reports map[string]report.Report // by link: a kept plan does not change
}

// mostKept is how many plans are kept beside the one on the screen.
const mostKept = 3

// kept are the links of the plans that are kept.
func kept(t *Turn) []string {
	var list []string
	for _, l := range strings.Split(t.Setting("kept", ""), "+") {
		if l != "" && len(list) < mostKept {
			list = append(list, l)
		}
	}
	return list
}

func (c *compare) See(t *Turn) {
	links := kept(t)
	switch len(links) {
	case 0:
		t.Say(talk.Compare+"-gist", "Nothing is kept yet to compare this plan with.")
	case 1:
		t.Say(talk.Compare+"-gist", "One variant is kept beside this plan.")
	default:
		t.Say(talk.Compare+"-gist", strconv.Itoa(len(links))+" variants are kept beside this plan.")
	}
	if !t.Opened(talk.Compare) {
		return
	}
	if c.reports == nil {
		c.reports = map[string]report.Report{}
	}
	v := &Variants{Units: t.Units, Here: t.Here, Link: link.Encode(t.Plan)}
	v.add("this plan", "", t.Plan, t.Report)
	for i, l := range links {
		p, err := link.Decode(l)
		if err != nil {
			v.Faults = append(v.Faults, "A variant cannot be read any more: "+err.Error())
			continue
		}
		r, ok := c.reports[l]
		if !ok {
			r = report.Build(p)
			c.reports[l] = r
		}
		v.add("variant "+strconv.Itoa(i+1), strconv.Itoa(i), p, r)
	}
	v.First = strings.Join(links, "+")
	t.Show(talk.Compare, v)
}

func (c *compare) Do(t *Turn, what string) {
	links := kept(t)
	verb, at, _ := strings.Cut(what, " ")
	i, err := strconv.Atoi(at)
	switch {
	case verb == "keep":
		l := link.Encode(t.Plan)
		if l == "" || len(links) == mostKept {
			return
		}
		t.Keep("kept", strings.Join(append(links, l), "+"))
	case err != nil || i < 0 || i >= len(links):
	case verb == "drop":
		t.Keep("kept", strings.Join(append(links[:i:i], links[i+1:]...), "+"))
	case verb == "open":
		if p, err := link.Decode(links[i]); err == nil {
			t.Take(p, talk.Compare)
		}
	}
}

// add puts a plan beside the others.
func (c *Variants) add(name, at string, p plan.Plan, r report.Report) {
	c.Columns = append(c.Columns, Column{Name: name, At: at, Plan: p, Report: r})
}

// full tells that no more can be kept.
func (c *Variants) full() bool { return len(c.Columns) > mostKept }

// both is a link that holds this plan and the variants.
func (c *Variants) both() string {
	if c.First == "" {
		return ""
	}
	return c.Here + "#" + c.Link + "+" + c.First
}

// Line is a row of the comparison.
type Line struct {
	Name  string
	Cells []Cell
}

// Cell is one number of it; Differs: it is another than this plan's.
type Cell struct {
	Text, Class string
	Differs     bool
}

// inputs are the fields in which the plans differ, with what was left out assumed.
func (c *Variants) inputs() []Line {
	values := make([]map[string]string, len(c.Columns))
	var paths []string
	seen := map[string]bool{}
	for i, col := range c.Columns {
		p, _ := plan.Assume(col.Plan)
		values[i] = map[string]string{}
		for _, v := range plan.Values(p) {
			values[i][v.Path] = c.value(v)
			if !seen[v.Path] {
				seen[v.Path] = true
				paths = append(paths, v.Path)
			}
		}
	}
	var list []Line
	for _, path := range paths {
		l := Line{Name: path}
		for i := range c.Columns {
			text, ok := values[i][path]
			if !ok {
				text = "–"
			}
			l.Cells = append(l.Cells, Cell{Text: text, Differs: i > 0 && text != l.Cells[0].Text})
		}
		if differs(l) {
			list = append(list, l)
		}
	}
	return list
}

func differs(l Line) bool {
	for _, c := range l.Cells {
		if c.Differs {
			return true
		}
	}
	return false
}

// value writes a field's value in its unit.
func (c *Variants) value(v plan.Value) string {
	f, _ := field(v.Path)
	switch x := v.Value.(type) {
	case string:
		return x
	case float64:
		if math.IsNaN(x) {
			return "–"
		}
		u := shown(c.Units, f)
		s := unit.Figures(x/unit.Scale(u), 6)
		switch u {
		case "":
			return s
		case "°":
			return s + u
		}
		return s + "\u202f" + u
	}
	return "–"
}

// checks are the answers beside one another: the verdict, the hardest-working vehicle, every check.
func (c *Variants) checks() []Line {
	list := []Line{{Name: "Verdict"}, {Name: "Hardest-working vehicle"}, {Name: "Largest payload"}, {Name: "All in the air"}}
	var ids []string
	titles := map[string]string{}
	for _, col := range c.Columns {
		r := col.Report
		list[0].Cells = append(list[0].Cells, Cell{Text: verdicts[r.Verdict], Class: classOf(r.Verdict)})
		list[1].Cells = append(list[1].Cells, Cell{Text: format.Share(r.Team.Utilisation)})
		list[2].Cells = append(list[2].Cells, Cell{Text: c.Units.Show(format.Mass, r.Team.LargestPayload)})
		list[3].Cells = append(list[3].Cells, Cell{Text: c.Units.Show(format.Mass, r.Team.Mass)})
		for _, k := range r.Checks {
			if titles[k.ID] == "" {
				titles[k.ID] = k.Title
				ids = append(ids, k.ID)
			}
		}
	}
	for _, id := range ids {
		l := Line{Name: titles[id]}
		asked := false
		for _, col := range c.Columns {
			cell := Cell{Text: "–"}
			for _, k := range col.Report.Checks {
				if k.ID == id && k.Status != check.NotApplicable {
					cell = Cell{Text: format.Share(k.Utilisation) + ", " + string(k.Status), Class: "is-" + string(k.Status)}
					asked = true
				}
			}
			l.Cells = append(l.Cells, cell)
		}
		if asked {
			list = append(list, l)
		}
	}
	for i := range list {
		for j := range list[i].Cells {
			list[i].Cells[j].Differs = j > 0 && list[i].Cells[j].Text != list[i].Cells[0].Text
		}
	}
	return list
}

var verdicts = map[report.Verdict]string{report.Lifts: "lifts", report.ThinLift: "only just lifts", report.Fails: "fails",
	report.NeedsInput: "needs input", report.OutsideModel: "outside the model", report.Unsolved: "not solved"}

func classOf(v report.Verdict) string {
	switch v {
	case report.Lifts:
		return "is-ok"
	case report.ThinLift:
		return "is-thin"
	case report.Fails:
		return "is-fail"
	}
	return "is-needs"
}

func (c Cell) class() string {
	s := strings.TrimSpace("cm-cell " + c.Class)
	if c.Differs {
		s += " cm-differs"
	}
	return s
}
