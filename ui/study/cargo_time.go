package study

import (
	"math"

	"github.com/vugu/vugu"

	"cohoist/core/cargo"
	"cohoist/ui/figure"
)

// Size of the timeline, and of its rows.
const timeWide, timeLeft, timeRight, timeRow, timeHead = 1000.0, 190.0, 16.0, 26.0, 8.0

func (c *Cargo) timeline() vugu.Builder { return node{c.times()} }

// times is who is handled when: a row for each item, time to the right.
func (c *Cargo) times() *vugu.VGNode {
	n := len(c.Study.Best.Stops)
	foot := timeHead + timeRow*float64(n)
	pic := image("cg-svg", c.timeWords(), timeWide, foot+54)
	scale := (timeWide - timeLeft - timeRight) / math.Max(c.Study.Best.Time, 1)
	at := func(t float64) float64 { return timeLeft + scale*t }
	tick := 60 * figure.Round125(math.Max(c.Study.Best.Time/60/8, 0.5))
	for t := 0.0; t <= c.Study.Best.Time; t += tick {
		line(pic, "cg-tick", at(t), timeHead, at(t), foot+5)
		text(pic, "cg-mid", at(t), foot+22, figure.Num(math.Round(t/6)/10))
	}
	text(pic, "cg-end", timeWide-timeRight, foot+46, "minutes")
	for k, stop := range c.Study.Best.Stops {
		y := timeHead + timeRow*float64(k)
		text(pic, "cg-end", timeLeft-8, y+timeRow/2+5, shortened(c.Study.Items[stop.Item].ID, 14))
	}
	for _, x := range c.spans {
		row := c.at[x.Item] - 1
		if x.Item < 0 {
			row = c.at[x.From] - 1
			if row+1 < n { // home for packs: in the row of the item they are for
				row++
			}
		}
		y, w := timeHead+timeRow*float64(row), math.Max(scale*x.Time, 0.8)
		look := spanLooks[x.Kind]
		rect(pic, look.class, at(x.Start), y+(timeRow-look.high)/2, w, look.high)
	}
	return pic
}

// spanLook is how a span is drawn: by height and fill, and what the legend says.
type spanLook struct {
	class string
	high  float64
	name  string
}

var spanLooks = map[string]spanLook{
	cargo.Flying:    {"cg-fly", 3, "flying without a payload"},
	cargo.Hooking:   {"cg-hook", 10, "hooking up"},
	cargo.Carrying:  {"cg-carry", 18, "carrying"},
	cargo.Unhooking: {"cg-unhook", 10, "unhooking"},
	cargo.Changing:  {"cg-change", 14, "changing packs"},
}

// legend is the marks of the timeline in the order in which they come.
func (c *Cargo) legend() []vugu.Builder {
	var out []vugu.Builder
	for _, kind := range []string{cargo.Flying, cargo.Hooking, cargo.Carrying, cargo.Unhooking, cargo.Changing} {
		look := spanLooks[kind]
		mark := figure.SVG("svg", figure.Attrs{"class", "cg-mark", "viewBox", "0 0 26 20", "aria-hidden", "true"})
		rect(mark, look.class, 1, (20-look.high)/2, 24, look.high)
		out = append(out, node{figure.HTML("span", figure.Attrs{"class", "cg-name"}, mark, figure.Text(look.name))})
	}
	return out
}

// timeWords are the timeline for those who do not see it.
func (c *Cargo) timeWords() string {
	text := ""
	for _, stop := range c.Study.Best.Stops {
		if stop.Fresh {
			text += "packs changed; "
		}
		text += c.Study.Items[stop.Item].ID + " set at " + clock(c.ends[stop.Item]) + "; "
	}
	return text + "home at " + clock(c.Study.Best.Time) + "."
}

// shortened cuts a name that is too long for its room.
func shortened(s string, most int) string {
	r := []rune(s)
	if len(r) <= most {
		return s
	}
	return string(r[:most-1]) + "…"
}
