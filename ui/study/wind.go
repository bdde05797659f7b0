package study

import (
	"math"
	"strconv"

	"cohoist/core/gust"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// winds is the wind that a team holds from every side.
type winds struct{ found gust.Rose }

func (w *winds) ask(m *share.Model, s *solve.Solver, goOn func() bool) bool {
	w.found = gust.Of(m, s, func(int, int) bool { return goOn == nil || goOn() })
	return !w.found.Stopped
}

func (*winds) form(t *Turn) {
	entries := []Entry{{Path: "site.wind_m_s", Until: "0"}, {Path: "site.wind_to_deg", Until: "0"}}
	if f, _ := field("site.gust_factor"); f.Applies(plan.Context{Plan: &t.Plan}) {
		entries = append(entries, Entry{Path: f.Path, Until: t.Units.Bare(format.Plain, f.Default)})
	}
	t.Show(talk.Wind+"-form", &Fields{Units: t.Units, Entries: entries})
	t.fill(entries)
}

func (w *winds) show(t *Turn) { t.Show(talk.Wind, &Wind{Rose: w.found, Units: t.Units}) }

func (w *winds) gist(t *Turn) string {
	c := &Wind{Rose: w.found, Units: t.Units}
	r := w.found
	least := r.Sides[r.Least]
	text := "The team holds a wind of " + c.speed(least.Speed) + " from every side"
	still := c.count(func(s gust.Side) bool { return s.Speed == 0 })
	switch {
	case c.count(func(s gust.Side) bool { return math.IsNaN(s.Speed) }) > 0:
		return "Not all sides were solved."
	case least.EndedBy == gust.None:
		return text + ", the most that is asked."
	case still == gust.Sides && least.EndedBy != gust.NoBalance:
		return "The team holds no wind: even calm is at a limit, or beyond it."
	case still > 0:
		text = "Held level, the payload bears no wind in " + strconv.Itoa(still) + " of " + strconv.Itoa(gust.Sides) + " directions"
	}
	switch {
	case !(r.Mean > 0):
		return text + "."
	case r.Holds:
		return text + "; the gusts of " + c.speed(r.Gust) + " are held."
	}
	return text + "; the gusts of " + c.speed(r.Gust) + " are not held."
}

// count is how many sides are so.
func (c *Wind) count(so func(gust.Side) bool) int {
	n := 0
	for _, s := range c.Rose.Sides {
		if so(s) {
			n++
		}
	}
	return n
}

// toward is a direction as a number of degrees.
func toward(deg float64) string {
	return strconv.Itoa(int(math.Round(deg))) + "°"
}

// sides says where the team holds least and most.
func (c *Wind) sides() []string {
	list := []string{c.Rose.Sentence()}
	most := c.most()
	switch s, least := c.Rose.Sides[most], c.Rose.Sides[c.Rose.Least]; {
	case math.IsNaN(s.Speed) || s.Speed == 0 || least.EndedBy == gust.None:
	case s.Speed-least.Speed <= 1e-3*s.Speed:
		list = append(list, "It holds as much from all sides.")
	default:
		list = append(list, "The strongest side is towards "+toward(s.To)+": "+c.speed(s.Speed)+", "+s.Ended()+".")
	}
	if c.Rose.Mean > 0 {
		list = append(list, c.anywhere())
	}
	if c.count(func(s gust.Side) bool { return s.EndedBy == gust.NoBalance }) > 0 {
		list = append(list, "Nobody can answer a moment about a line through which all their forces pass. The wind then turns the payload out of level until it balances; "+
			"how far is a question of its free attitude, chapter 12.")
	}
	return list
}

// most is the side that holds most, by its place.
func (c *Wind) most() int {
	most := 0
	for i, s := range c.Rose.Sides {
		if s.Speed > c.Rose.Sides[most].Speed*(1+1e-9) {
			most = i
		}
	}
	return most
}

// anywhere says from how many sides the site's gusts would be held.
func (c *Wind) anywhere() string {
	held := c.count(func(s gust.Side) bool { return s.Speed >= c.Rose.Gust })
	gusts := "Gusts of " + c.speed(c.Rose.Gust) + ", the circle, "
	switch held {
	case gust.Sides:
		return gusts + "would be held from any side."
	case 0:
		return gusts + "would be held from no side."
	}
	return gusts + "would be held towards " + strconv.Itoa(held) + " of the " + strconv.Itoa(gust.Sides) + " directions."
}

func (c *Wind) speed(v float64) string { return c.Units.Show(format.Speed, v) }
