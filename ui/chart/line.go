package chart

import (
	"math"
	"sort"

	"github.com/vugu/vugu"

	"cohoist/ui/figure"
)

// Series is one line. A value that is no number breaks it.
type Series struct {
	Name  string
	X, Y  []float64
	Bare  bool // no mark at every point
	Loose bool // marks alone, no line between them
}

// Line is a chart of up to three series over one axis, told apart by dash, mark and name as well as
// by colour. Title and Summary are what a screen reader says; Title is shown above the chart.
type Line struct {
	Title   string
	Summary string
	X, Y    Axis
	Series  []Series
	Now     float64 // a value of X to be marked, NaN or 0 for none
	NowName string
	// Mark, when given, draws over point k of the first series, at x, y of the picture.
	Mark func(k int, x, y float64) *vugu.VGNode
}

// Size of a chart, in units of its viewBox.
const (
	width  = 340.0
	height = 216.0
	left   = 46.0
	right  = 76.0
	top    = 34.0
	bottom = 38.0
)

// Build draws the chart.
func (c *Line) Build(*vugu.BuildIn) *vugu.BuildOut { return out(c.node()) }

func out(n *vugu.VGNode) *vugu.BuildOut { return &vugu.BuildOut{Out: []*vugu.VGNode{n}} }

func (c *Line) node() *vugu.VGNode {
	var xs, ys []float64
	for _, s := range c.Series[:min(3, len(c.Series))] {
		for i := range min(len(s.X), len(s.Y)) {
			if c.X.shows(s.X[i]) && c.Y.shows(s.Y[i]) {
				xs, ys = append(xs, s.X[i]), append(ys, s.Y[i])
			}
		}
	}
	x, ok := newScale(c.X, xs, left, width-right, 6)
	y, _ := newScale(c.Y, ys, height-bottom, top, 5)
	pic := picture(c.Title, c.Summary, width, height)
	if c.Mark != nil { // an image has nothing in it to press
		pic.Attr[1].Val = "group"
	}
	label(pic, "ch-title", left-38, 12, c.Title)
	if !ok {
		label(pic, "ch-quiet", left, height/2, "Nothing to show yet.")
		return frame(pic)
	}
	c.axes(pic, x, y)
	if c.X.shows(c.Now) && c.Now != 0 && c.Now >= x.lo && c.Now <= x.hi {
		at := x.at(c.Now)
		path(pic, "ch-now", new(pathData).move(at, top).line(at, height-bottom))
		if c.NowName != "" {
			label(pic, "ch-mid ch-quiet", at, top-4, c.NowName)
		}
	}
	var names []name
	for i, s := range c.Series[:min(3, len(c.Series))] {
		if n, ok := c.series(pic, i, s, x, y); ok {
			names = append(names, n)
		}
	}
	sort.Slice(names, func(i, j int) bool { return names[i].y < names[j].y })
	for k := len(names) - 1; k >= 0; k-- { // from below, each clear of the one under it
		n := &names[k]
		if n.y = math.Min(n.y, height-bottom); k < len(names)-1 {
			n.y = math.Min(n.y, names[k+1].y-12)
		}
		label(pic, n.class, n.x, n.y, n.text)
	}
	return frame(pic)
}

func (c *Line) axes(pic *vugu.VGNode, x, y scale) {
	grid, axis := new(pathData), new(pathData)
	for _, v := range y.ticks {
		grid.move(left, y.at(v)).line(width-right, y.at(v))
		label(pic, "ch-end ch-quiet", left-5, y.at(v)+4, y.label(v))
	}
	for _, v := range x.ticks {
		axis.move(x.at(v), height-bottom).line(x.at(v), height-bottom+4)
		label(pic, "ch-mid ch-quiet", x.at(v), height-bottom+15, x.label(v))
	}
	axis.move(left, height-bottom).line(width-right, height-bottom)
	path(pic, "ch-grid", grid)
	path(pic, "ch-axis", axis)
	label(pic, "ch-mid", (left+width-right)/2, height-6, c.X.Title)
	if c.Y.Title != "" {
		label(pic, "ch-quiet", left-38, top-9, c.Y.Title) // over the axis, clear of the names of the series
	}
}

var letters = [3]string{"a", "b", "c"}

// name is that of a series, at the end of its line.
type name struct {
	x, y        float64
	class, text string
}

func (c *Line) series(pic *vugu.VGNode, i int, s Series, x, y scale) (n name, ok bool) {
	line, dots := new(pathData), new(pathData)
	var marks []*vugu.VGNode
	broken := true
	lastX, lastY := math.NaN(), math.NaN()
	for k := range min(len(s.X), len(s.Y)) {
		if !c.X.shows(s.X[k]) || !c.Y.shows(s.Y[k]) {
			broken = true
			continue
		}
		px, py := x.at(s.X[k]), y.at(s.Y[k])
		switch {
		case s.Loose:
		case broken:
			line.move(px, py)
		default:
			line.line(px, py)
		}
		if !s.Bare {
			dots.mark(i, px, py)
		}
		if i == 0 && c.Mark != nil {
			marks = append(marks, c.Mark(k, px, py))
		}
		broken, lastX, lastY = false, px, py
	}
	if !figure.Finite(lastY) {
		return n, false
	}
	path(pic, "ch-"+letters[i], line)
	path(pic, "ch-dot-"+letters[i], dots)
	for _, m := range marks {
		pic.AppendChild(m)
	}
	return name{lastX + 7, lastY + 4, "ch-t-" + letters[i], s.Name}, true
}
