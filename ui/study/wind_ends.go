package study

import (
	"slices"

	"cohoist/core/gust"
	"cohoist/core/share"
	"cohoist/ui/format"
)

// limits are what may end a wind, with the mark and the words of each.
var limits = []struct {
	gust.Limit
	mark, words string
}{
	{gust.Utilisation, "●", "thrust: the utilisation at its limit"},
	{gust.Tilt, "■", "tilt of a vehicle at its limit"},
	{gust.Cone, "▲", "a cable at the edge of its cone"},
	{gust.Slack, "◆", "a cable that goes slack"},
	{gust.WorkingLoad, "▼", "a cable at its working load"},
	{gust.NoBalance, "✕", "a moment that nobody can answer"},
	{gust.Lean, "□", "the body leans as far as the model goes"},
	{gust.Unsolved, "?", "not solved"},
	{gust.None, "○", "nothing: more was not asked"},
}

// mark is how a limit is marked, and called.
func mark(l gust.Limit) (sign, words string) {
	for _, k := range limits {
		if k.Limit == l {
			return k.mark, k.words
		}
	}
	return "?", string(l)
}

// run is neighbouring sides that the same limit of the same vehicles ends.
type run struct {
	gust.Side
	last     float64 // the direction of the last side, degrees
	from, to float64 // speeds, m/s
}

// mostRuns is how many runs are told apart by vehicle too.
const mostRuns = 14

// runs are the sides by what ends them, from payload x onwards; by the limit alone when there are too many.
func (c *Wind) runs() []run {
	list := c.joined(func(a, b gust.Side) bool { return a.EndedBy == b.EndedBy && slices.Equal(a.Who, b.Who) })
	if len(list) > mostRuns {
		list = c.joined(func(a, b gust.Side) bool { return a.EndedBy == b.EndedBy })
		for i := range list {
			list[i].Who = nil
		}
	}
	return list
}

// joined joins neighbouring sides that are alike.
func (c *Wind) joined(alike func(a, b gust.Side) bool) []run {
	var list []run
	for _, s := range c.Rose.Sides {
		if n := len(list) - 1; n >= 0 && alike(list[n].Side, s) {
			list[n].last = s.To
			list[n].from, list[n].to = min(list[n].from, s.Speed), max(list[n].to, s.Speed)
			continue
		}
		list = append(list, run{s, s.To, s.Speed, s.Speed})
	}
	if n := len(list) - 1; n > 0 && alike(list[0].Side, list[n].Side) { // around the circle
		list[0].To = list[n].To
		list[0].from, list[0].to = min(list[0].from, list[n].from), max(list[0].to, list[n].to)
		list = list[:n]
	}
	return list
}

// words of a run.
func (c *Wind) run(r run, whole bool) string {
	where := "From all sides"
	switch {
	case whole:
	case r.To == r.last:
		where = "Towards " + toward(r.To)
	default:
		where = "Towards " + toward(r.To) + " to " + toward(r.last)
	}
	text := where + ": " + c.ended(r.Side)
	if r.to-r.from > 0.005*r.to {
		return text + "; " + c.Units.Bare(format.Speed, r.from) + " to " + c.speed(r.to) + "."
	}
	return text + "; " + c.speed(r.to) + "."
}

// ends are the runs in words.
func (c *Wind) ends() []string {
	runs := c.runs()
	var list []string
	for _, r := range runs {
		list = append(list, c.run(r, len(runs) == 1))
	}
	return list
}

// ended is what ends the wind of a side, in the table.
func (c *Wind) ended(s gust.Side) string {
	sign, words := mark(s.EndedBy)
	if len(s.Who) > 0 {
		words += ", " + share.List(s.Who)
	}
	return sign + " " + words
}
