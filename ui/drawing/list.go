package drawing

import (
	"math"

	"cohoist/ui/figure"
)

// Point is a place on the screen: units of the viewBox, x right, y down.
type Point struct{ X, Y float64 }

// Seg is one piece of a path. Op is M (move), L (line), A (the ellipse arc to P, small arc, swept
// clockwise on the screen) or Z (close).
type Seg struct {
	Op     byte
	P      Point
	RX, RY float64 // A: half axes
	Turn   float64 // A: degrees from screen x to the RX axis
}

// Shape is one element: a path, or a text when Text is set.
type Shape struct {
	Class string
	Path  []Seg
	Text  string
	At    Point   // text: where it is anchored, on its base line
	Slope float64 // text: degrees it is turned by about At
	d     string  // the path as it is written, when that is known already
}

// List is a picture, back to front. Paths of one class that follow each other are one shape.
type List []Shape

// pen writes into a list. Lines of one class are gathered into one shape as long as the class is not
// taken up again after another; layers are drawn in the order of their first use.
type pen struct {
	list List
	at   map[string]int
}

func newPen(layers ...string) *pen {
	p := &pen{at: map[string]int{}}
	for _, c := range layers {
		p.at[c] = len(p.list)
		p.list = append(p.list, Shape{Class: c})
	}
	return p
}

// done returns the list without the layers that stayed empty.
func (p *pen) done() List {
	out := p.list[:0]
	for _, s := range p.list {
		if len(s.Path) > 0 || s.Text != "" {
			out = append(out, s)
		}
	}
	return out
}

// paste puts in whole shapes that were drawn before, in place of their layers.
func (p *pen) paste(shapes []Shape) {
	for _, s := range shapes {
		if i, ok := p.at[s.Class]; ok {
			p.list[i] = s
		}
	}
}

func (p *pen) seg(class string, s Seg) {
	i, ok := p.at[class]
	if !ok {
		i = len(p.list)
		p.at[class] = i
		p.list = append(p.list, Shape{Class: class})
	}
	p.list[i].Path = append(p.list[i].Path, s)
}

// line draws a to b, and goes on from a when the last line of the class ended there.
func (p *pen) line(class string, a, b Point) {
	if !drawable(a) || !drawable(b) {
		return
	}
	if i, ok := p.at[class]; ok {
		if n := len(p.list[i].Path); n > 0 {
			if last := p.list[i].Path[n-1]; last.Op == 'L' && near(last.P, a) {
				p.seg(class, Seg{Op: 'L', P: b})
				return
			}
		}
	}
	p.seg(class, Seg{Op: 'M', P: a})
	p.seg(class, Seg{Op: 'L', P: b})
}

// poly draws a closed polygon.
func (p *pen) poly(class string, pts ...Point) {
	for _, q := range pts {
		if !drawable(q) {
			return
		}
	}
	for i, q := range pts {
		op := byte('L')
		if i == 0 {
			op = 'M'
		}
		p.seg(class, Seg{Op: op, P: q})
	}
	p.seg(class, Seg{Op: 'Z'})
}

// oval draws a whole ellipse about c, its axis rx turned by turn degrees from screen x.
func (p *pen) oval(class string, c Point, rx, ry, turn float64) {
	s, k := math.Sincos(turn * math.Pi / 180)
	a, b := Point{c.X - rx*k, c.Y - rx*s}, Point{c.X + rx*k, c.Y + rx*s}
	if !drawable(a) || !drawable(b) || !(ry >= 0) {
		return
	}
	if ry < 0.05 { // on edge: an arc of no height is a line
		p.seg(class, Seg{Op: 'M', P: a})
		p.seg(class, Seg{Op: 'L', P: b})
		return
	}
	p.seg(class, Seg{Op: 'M', P: a})
	p.seg(class, Seg{Op: 'A', P: b, RX: rx, RY: ry, Turn: turn})
	p.seg(class, Seg{Op: 'A', P: a, RX: rx, RY: ry, Turn: turn})
	p.seg(class, Seg{Op: 'Z'})
}

func (p *pen) circle(class string, c Point, r float64) { p.oval(class, c, r, r, 0) }

func (p *pen) text(class, s string, at Point) { p.sloped(class, s, at, 0) }

func (p *pen) sloped(class, s string, at Point, slope float64) {
	if s == "" || !drawable(at) || !figure.Finite(slope) {
		return
	}
	p.list = append(p.list, Shape{Class: class, Text: s, At: at, Slope: slope})
}

// Extent a screen coordinate may have: beyond it nothing could be seen.
const farOut = 1e5

func drawable(p Point) bool { return math.Abs(p.X) < farOut && math.Abs(p.Y) < farOut } // false for NaN too

func near(a, b Point) bool { return math.Abs(a.X-b.X) < 1e-6 && math.Abs(a.Y-b.Y) < 1e-6 }

// data writes a path as an SVG d attribute.
func data(path []Seg) string {
	b := make([]byte, 0, 12*len(path))
	for _, s := range path {
		b = append(b, s.Op)
		switch s.Op {
		case 'Z':
			continue
		case 'A':
			b = append(figure.Append(b, s.RX), ' ')
			b = append(figure.Append(b, s.RY), ' ')
			b = append(figure.Append(b, s.Turn), " 0 1 "...)
		}
		b = append(figure.Append(b, s.P.X), ' ')
		b = figure.Append(b, s.P.Y)
	}
	return string(b)
}
