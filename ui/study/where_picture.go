package study

import (
	"github.com/vugu/vugu"

	"cohoist/core/vec"
	"cohoist/ui/figure"
)

// mostDots is how many holes are drawn at most; of more, every second, third, …
const mostDots = 1500

// Build draws the picture.
func (v *planView) Build(*vugu.BuildIn) *vugu.BuildOut {
	lo, hi := v.at()
	b := newBoard(lo, hi, 30, 42)
	pic := b.sheet("Where the team attaches, from above", v.summary())
	pic.AppendChild(figure.SVG("defs", nil, hatch("wh-hatch")))
	pic.AppendChild(b.outline(v.c))
	for _, z := range v.c.zones {
		pic.AppendChild(disc("wh-zone", b.x(z.Points[0][0]), b.y(z.Points[0][1]), b.scale*z.Radius))
	}
	v.holes(pic, b)
	v.reach(pic, b)
	for i, m := range v.team() {
		x, y := b.x(m.Attach[0]), b.y(m.Attach[1])
		if !figure.Finite(x) || !figure.Finite(y) {
			continue
		}
		if !v.c.asks.Free[i] {
			pic.AppendChild(figure.SVG("rect", figure.Attrs{"class", "wh-stays", "x", figure.Num(x - 5), "y", figure.Num(y - 5), "width", "10", "height", "10"}))
		} else {
			pic.AppendChild(disc("wh-now", x, y, 6))
		}
		pic.AppendChild(words("wh-t wh-mid wh-quiet", x, y+19, m.ID))
	}
	for i, p := range v.places {
		if i < len(v.c.asks.Free) && v.c.asks.Free[i] {
			x, y := b.x(p[0]), b.y(p[1])
			pic.AppendChild(disc("wh-spot", x, y, 4))
			pic.AppendChild(words("wh-t wh-mid wh-id", x, y-10, v.team()[i].ID))
		}
	}
	b.ends(pic, v.c)
	return &vugu.BuildOut{Out: []*vugu.VGNode{pic}}
}

// holes draws the holes as one path of dots.
func (v *planView) holes(pic *vugu.VGNode, b board) {
	step := 1 + len(v.c.holes)/mostDots
	var d []byte
	for i := 0; i < len(v.c.holes); i += step {
		d = append(figure.Append(append(d, 'M'), b.x(v.c.holes[i][0])), ' ')
		d = append(figure.Append(d, b.y(v.c.holes[i][1])), "h0"...)
	}
	if len(d) > 0 {
		pic.AppendChild(figure.SVG("path", figure.Attrs{"class", "wh-holes", "d", string(d)}))
	}
}

// reach draws where points may lie when they are not holes.
func (v *planView) reach(pic *vugu.VGNode, b board) {
	points, closed := v.c.region.Path, false
	if len(v.c.region.Area) > 0 {
		points, closed = v.c.region.Area, true
	}
	if d := trace(b, points, closed); d != "" {
		pic.AppendChild(figure.SVG("path", figure.Attrs{"class", "wh-region", "d", d}))
	}
}

// trace is a path through points.
func trace(b board, points []vec.V3, closed bool) string {
	var d []byte
	for i, p := range points {
		op := byte('L')
		if i == 0 {
			op = 'M'
		}
		d = append(figure.Append(append(d, op), b.x(p[0])), ' ')
		d = figure.Append(d, b.y(p[1]))
	}
	if closed {
		d = append(d, 'Z')
	}
	return string(d)
}

// hatch is a pattern of thin lines.
func hatch(id string) *vugu.VGNode {
	return figure.SVG("pattern", figure.Attrs{"id", id, "width", "6", "height", "6", "patternUnits", "userSpaceOnUse"},
		figure.SVG("path", figure.Attrs{"class", "wh-hatching", "d", "M-1 1l2 -2M0 6l6 -6M5 7l2 -2"}))
}
