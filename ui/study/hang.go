package study

import (
	"math"

	"cohoist/core/hang"
	"cohoist/core/plan"
	"cohoist/core/vec"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// hangs is how a payload on cables hangs and swings.
type hangs struct {
	of     int          // the plan that was searched for other equilibria
	others []hang.State // what was found
}

func (s *hangs) See(t *Turn) {
	h, why := hungOf(t.Plan, t.Report)
	if h == nil {
		t.Say(talk.Hang+"-gist", why)
		if t.Opened(talk.Hang) {
			t.Say(talk.Hang+"-form", "")
			t.Show(talk.Hang, &Hang{Why: why})
		}
		return
	}
	modes := h.rig.Modes(h.rest)
	t.Say(talk.Hang+"-gist", hangGist(h, modes))
	if !t.Opened(talk.Hang) {
		return
	}
	form := hangForm(t)
	t.form("What goes wrong", form, hangLines(t.Plan))
	c := &Hang{Plan: t.Plan, Units: t.Units, hung: h, modes: modes}
	rate, _ := t.number(form[atRate], hang.LoopRate)
	c.rate = rate
	if s.of == t.Gen {
		c.others, c.looked = s.others, true
	}
	c.upsets = h.asked(t, form)
	if c.upsets == nil && !t.GoOn() {
		return
	}
	t.Show(talk.Hang, c)
}

func (s *hangs) Do(t *Turn, what string) {
	if h, _ := hungOf(t.Plan, t.Report); h != nil && what == "others" {
		s.of, s.others = t.Gen, h.rig.Equilibria(t.Plan.Seed)
	}
}

// hangGist is the section in a sentence.
func hangGist(h *hung, modes []hang.Mode) string {
	text := "It hangs level"
	if tilt := h.rest.Tilt * 180 / math.Pi; tilt > level {
		text = "It does not stay level: it comes to rest tilted by " + degrees(tilt)
	}
	for _, m := range modes {
		if figureOf(m.Period) {
			return text + "; its slowest swing takes " + seconds(m.Period) + "."
		}
	}
	return text + ", and its lines hold it so that it cannot swing."
}

// level is the tilt, degrees, that nobody sees.
const level = 0.05

// Places in the form.
const (
	atKind = iota
	atWho
	atFar
	atX
	atY
	atZ
	atShort
	atRate
)

// What goes wrong until something is chosen. Common practice, no source.
const (
	farUntil   = 0.1  // m; a position hold with corrected satellite fixes keeps within
	shortUntil = 0.05 // m
)

func hangForm(t *Turn) []Choice {
	who := []Word{{"", "the worst one"}}
	for _, m := range t.Plan.Team {
		who = append(who, Word{m.ID, m.ID})
	}
	length, show := t.Units.Length, func(x float64) string { return t.Units.Text(format.Length, x) }
	return []Choice{
		{Name: "kind", Label: "What goes wrong", Words: []Word{{"", "each in turn"}, {outOfPlace, "a vehicle out of place"}, {shortLine, "a line too short"}, {lostOne, "a vehicle lost"}}},
		{Name: "who", Label: "Whose", Words: who},
		{Name: "far", Label: "Out of place by", Until: show(farUntil), Unit: length, Low: 0, High: 100, Help: "Whichever way is worst: up, down, along or across."},
		{Name: "x", Label: "Instead, along x", Until: "worst way", Unit: length, Low: -100, High: 100},
		{Name: "y", Label: "Instead, along y", Until: "worst way", Unit: length, Low: -100, High: 100},
		{Name: "z", Label: "Instead, upwards", Until: "worst way", Unit: length, Low: -100, High: 100},
		{Name: "short", Label: "Line short by", Until: show(shortUntil), Unit: length, Low: -100, High: 100, Help: "Negative: too long."},
		{Name: "rate", Label: "Position loop, times a second", Until: "100", Low: 0.1, High: 1e5, Help: "How often the vehicles correct their places. 100 is common practice, no source."},
	}
}

// asked are the worst upsets of each kind that is asked for; nil when something newer came, or a number is none.
func (h *hung) asked(t *Turn, form []Choice) []pair {
	far, ok := t.number(form[atFar], farUntil)
	short, fine := t.number(form[atShort], shortUntil)
	ok = ok && fine
	var by vec.V3
	for k := range by {
		x, fine := t.number(form[atX+k], 0)
		by[k], ok = x, ok && fine
	}
	if !ok {
		return nil
	}
	who := -1
	for i, m := range t.Plan.Team {
		if m.ID == t.word(form[atWho]) {
			who = i
		}
	}
	var out []pair
	for _, kind := range []string{outOfPlace, shortLine, lostOne} {
		if w := t.word(form[atKind]); w != "" && w != kind {
			continue
		}
		list := h.wrongs(kind, who, by, far, short)
		for i := range list {
			if !t.GoOn() {
				return nil
			}
			list[i] = h.upset(list[i])
		}
		tilts, asks := worst(list)
		out = append(out, pair{tilts, asks})
	}
	return out
}

// pair is the upset of a kind that tilts most, and the one that asks most of a vehicle.
type pair struct{ tilts, asks upset }

// hangLines is what the lines are made of.
func hangLines(p plan.Plan) Group {
	g := Group{Name: "What the lines are made of", Lead: "A line stretches by its measured stiffness (pull over strain), or by its material and working load; one with neither counts as one that does not stretch. Ropes of one material differ by half of it, so measure yours."}
	materials := []Word{{"", "not said"}}
	for _, f := range hang.Fibres {
		materials = append(materials, Word{f.Name, f.Title})
	}
	for i, m := range p.Team {
		if i == mostHolds {
			break
		}
		path := "team[" + digits(i) + "].hold."
		g.Entries = append(g.Entries, Entry{Path: path + "line_material", Name: m.ID + ", line of", Words: materials},
			Entry{Path: path + "line_stiffness_n", Name: m.ID + ", stiffness E A", Until: "by the material"})
	}
	return g
}
