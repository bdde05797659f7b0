package chart

import (
	"math"
	"unicode/utf8"

	"github.com/vugu/vugu"

	"cohoist/ui/figure"
)

// Item is one bar, Value in parts of the whole (1 is all there is).
type Item struct {
	Name  string
	Value float64
}

// Bars are horizontal bars of utilisation, one a row, with a line at the limit.
type Bars struct {
	Title   string
	Summary string
	Items   []Item
	Limit   float64
	Comma   bool
}

// Rows a chart of bars has at most; the rest is told in words.
const barRows = 40

// Build draws the chart.
func (c *Bars) Build(*vugu.BuildIn) *vugu.BuildOut { return out(c.node()) }

func (c *Bars) node() *vugu.VGNode {
	items := c.Items[:min(len(c.Items), barRows)]
	const rowHigh, from = 18.0, 64.0
	high := 40 + rowHigh*float64(max(len(items), 1))
	to := width - 84.0
	most := 1.0
	for _, it := range items {
		if it.Value > most && it.Value <= 1e6 {
			most = it.Value
		}
	}
	at := func(v float64) float64 { return from + (to-from)*v/most }
	pic := picture(c.Title, c.Summary, width, high+8)
	label(pic, "ch-title", 8, 12, c.Title)
	sound, over := new(pathData), new(pathData)
	for i, it := range items {
		y := 24 + rowHigh*float64(i)
		name := it.Name
		if utf8.RuneCountInString(name) > 8 {
			name = string([]rune(name)[:7]) + "…"
		}
		label(pic, "ch-end", from-6, y+9, name)
		if !figure.Finite(it.Value) {
			label(pic, "ch-quiet", from+4, y+9, "not known")
			continue
		}
		v := math.Max(0, math.Min(it.Value, most))
		bar, text := sound, percent(it.Value)
		if exceeds(it.Value, c.Limit) {
			bar, text = over, text+" over"
		}
		bar.rect(from, y, at(v)-from, rowHigh-7)
		label(pic, "", at(v)+5, y+9, text)
	}
	path(pic, "ch-bar", sound)
	path(pic, "ch-bar-over", over)
	end := 24 + rowHigh*float64(len(items))
	path(pic, "ch-axis", new(pathData).move(from, 20).line(from, end))
	if c.Limit > 0 && c.Limit <= most {
		path(pic, "ch-limit", new(pathData).move(at(c.Limit), 18).line(at(c.Limit), end+2))
		label(pic, "ch-mid ch-quiet", at(c.Limit), end+14, "limit "+percent(c.Limit))
	}
	if n := len(c.Items) - len(items); n > 0 {
		label(pic, "ch-quiet", 8, high+4, "and "+number(float64(n), false)+" more")
	}
	return frame(pic)
}

// exceeds allows for rounding at the limit itself.
func exceeds(v, limit float64) bool { return limit > 0 && v > limit*(1+1e-9) }

func percent(v float64) string { return number(math.Round(v*100), false) + "\u00a0%" }

// Meter is a single bar with a tick at the limit, for a row of a table: no text of its own is shown.
type Meter struct {
	Label string  // what a screen reader says before the value
	Value float64 // 1 is all there is
	Limit float64 // 0 or NaN: no tick
}

// Build draws the bar. Beyond the limit it has a notch at its end as well as another colour.
func (m *Meter) Build(*vugu.BuildIn) *vugu.BuildOut { return out(m.node()) }

func (m *Meter) node() *vugu.VGNode {
	const w, h, full = 120.0, 14.0, 96.0 // where 100 % lies
	known := figure.Finite(m.Value)
	text := "not known"
	if known {
		text = percent(m.Value)
		if exceeds(m.Value, m.Limit) {
			text += ", over the limit of " + percent(m.Limit)
		}
	}
	pic := figure.SVG("svg", figure.Attrs{"class", "ch-meter", "viewBox", "0 0 120 14", "role", "img", "aria-label", m.Label + ": " + text})
	path(pic, "ch-axis", new(pathData).rect(0.5, 2.5, full, h-5))
	if known && m.Value > 0 {
		end := math.Min(m.Value*full, w-1)
		class, bar := "ch-bar", new(pathData)
		bar.rect(0.5, 4, end, h-8)
		if exceeds(m.Value, m.Limit) {
			class, bar = "ch-bar-over", new(pathData)
			bar.move(0.5, 4).line(end-4, 4).line(end, 1).line(end, h-1).line(end-4, h-4).line(0.5, h-4)
			bar.b = append(bar.b, 'Z')
		}
		path(pic, class, bar)
	}
	if m.Limit > 0 && m.Limit <= 1.2 {
		path(pic, "ch-limit", new(pathData).move(m.Limit*full+0.5, 0).line(m.Limit*full+0.5, h))
	}
	return figure.HTML("span", figure.Attrs{"class", "ch ch-cell"}, pic)
}
