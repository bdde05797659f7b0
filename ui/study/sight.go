package study

import (
	"math"

	"github.com/vugu/vugu"

	"cohoist/core/vec"
	"cohoist/ui/figure"
)

// sight looks at level axes from far away: what lies to the right in the picture, and what up.
type sight struct {
	right, up vec.V3
	scale     float64 // units of the picture a metre
	x, y      float64 // where the origin lies
}

var (
	upright  = vec.V3{0, 0, 1}
	fromSide = sight{right: vec.V3{1, 0, 0}, up: upright}
	fromEnd  = sight{right: vec.V3{0, 1, 0}, up: upright}
	fromTop  = sight{right: vec.V3{1, 0, 0}, up: vec.V3{0, 1, 0}}
)

// flat is where a point lies, m, y up.
func (s sight) flat(p vec.V3) dot { return dot{s.right.Dot(p), s.up.Dot(p)} }

// at is where a point is drawn.
func (s sight) at(p vec.V3) dot {
	f := s.flat(p)
	return dot{s.x + s.scale*f[0], s.y - s.scale*f[1]}
}

// fit makes points fill a picture, margins left free.
func (s sight) fit(points []vec.V3, width, height, side, top, bottom float64) sight {
	lo, hi := dot{math.Inf(1), math.Inf(1)}, dot{math.Inf(-1), math.Inf(-1)}
	for _, p := range points {
		f := s.flat(p)
		for k := range 2 {
			lo[k], hi[k] = math.Min(lo[k], f[k]), math.Max(hi[k], f[k])
		}
	}
	s.scale = math.Min((width-2*side)/math.Max(hi[0]-lo[0], 1e-3), (height-top-bottom)/math.Max(hi[1]-lo[1], 1e-3))
	s.x = width/2 - s.scale*(lo[0]+hi[0])/2
	s.y = (height+top-bottom)/2 + s.scale*(lo[1]+hi[1])/2
	return s
}

// shape is the outline of each solid of a form, moved.
func (s sight) shape(f form, move func(vec.V3) vec.V3) string {
	d := ""
	for _, solid := range f {
		var points []dot
		for _, p := range solid {
			points = append(points, s.at(move(p)))
		}
		hull := around(points)
		if len(hull) < 2 { // a point
			p := points[0]
			hull = []dot{{p[0] - 2, p[1]}, {p[0], p[1] - 2}, {p[0] + 2, p[1]}, {p[0], p[1] + 2}}
		}
		for i, q := range hull {
			d += string("ML"[min(i, 1)]) + figure.Num(q[0]) + " " + figure.Num(q[1])
		}
		d += "Z"
	}
	return d
}

// stroke draws a line between two points of level axes.
func (s sight) stroke(pic *vugu.VGNode, class string, a, b vec.V3) {
	p, q := s.at(a), s.at(b)
	line(pic, class, p[0], p[1], q[0], q[1])
}

// arrow draws an arrow between two points of the picture, if it is long enough to see.
func arrow(pic *vugu.VGNode, class string, from, to dot) {
	dx, dy := to[0]-from[0], to[1]-from[1]
	long := math.Hypot(dx, dy)
	if long < 3 {
		return
	}
	dx, dy = dx/long, dy/long
	head := math.Min(6, long/2)
	bx, by := to[0]-head*dx, to[1]-head*dy
	line(pic, class, from[0], from[1], bx, by)
	path(pic, class+"-tip", "M"+figure.Num(to[0])+" "+figure.Num(to[1])+"L"+figure.Num(bx-head*dy/2)+" "+figure.Num(by+head*dx/2)+"L"+figure.Num(bx+head*dy/2)+" "+figure.Num(by-head*dx/2)+"Z")
}

func circle(pic *vugu.VGNode, class string, at dot, r float64) {
	pic.AppendChild(figure.SVG("circle", figure.Attrs{"class", class, "cx", figure.Num(at[0]), "cy", figure.Num(at[1]), "r", figure.Num(r)}))
}

// image starts a picture that reads as one image with words for those who do not see it.
func image(class, words string, width, height float64) *vugu.VGNode {
	return figure.SVG("svg", figure.Attrs{"class", class, "viewBox", "0 0 " + figure.Num(width) + " " + figure.Num(height), "role", "img", "aria-label", words})
}

// towards names a level direction in payload axes; empty for none.
func towards(x, y float64) string {
	if math.Hypot(x, y) == 0 {
		return ""
	}
	angle := math.Round(math.Atan2(y, x) * 180 / math.Pi)
	switch {
	case math.Abs(angle) <= 5:
		return "x"
	case math.Abs(angle) >= 175:
		return "−x"
	case math.Abs(angle-90) <= 5:
		return "y"
	case math.Abs(angle+90) <= 5:
		return "−y"
	}
	return degrees(angle) + " from x"
}
