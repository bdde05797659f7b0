package drawing

import (
	"math"

	"cohoist/core/vec"
)

// arrow draws a shaft from a with a filled head at b; nothing when it would be shorter than its head.
func (p *pen) arrow(shaft, head string, a, b Point, size float64) bool {
	dx, dy := b.X-a.X, b.Y-a.Y
	n := math.Hypot(dx, dy)
	if !(n > 3) || !drawable(a) || !drawable(b) {
		return false
	}
	size = math.Min(size, 0.7*n)
	dx, dy = dx/n*size, dy/n*size
	neck := Point{b.X - dx, b.Y - dy}
	p.line(shaft, a, Point{b.X - 0.8*dx, b.Y - 0.8*dy})
	p.poly(head, b, Point{neck.X - 0.34*dy, neck.Y + 0.34*dx}, Point{neck.X + 0.34*dy, neck.Y - 0.34*dx})
	return true
}

// end is where the arrow of a force that acts at a point ends.
func (c Camera) end(from, f vec.V3, perN float64) Point {
	a, d := c.At(from), c.Along(f)
	return Point{a.X + d.X/c.Scale*perN, a.Y + d.Y/c.Scale*perN}
}

// tip is where the arrow of a vehicle's force on the payload ends.
func (c Camera) tip(v Craft, perN float64) (Point, bool) {
	return c.end(v.Attach, v.Force, perN), v.HasForce
}

// forces draws what each vehicle pulls the payload with, the payload's weight and both centres of mass.
// perN is the length of a newton in screen units.
func (c Camera) forces(p *pen, s *Scene, perN float64) {
	for i, v := range s.Craft {
		if i == craftDrawn {
			break
		}
		if tip, ok := c.tip(v, perN); ok {
			p.arrow(classForce, classForceHead, c.At(v.Attach), tip, 8)
		}
	}
	if s.HasCOM && usable(s.Weight) {
		p.arrow(classWeight, classWeightHead, c.At(s.COM), c.end(s.COM, vec.V3{0, 0, -s.Weight}, perN), 9)
	}
	if s.HasTeam {
		p.massMark(classTeam, classTeamFill, c.At(s.TeamCOM), 5)
	}
	if s.HasCOM {
		p.massMark(classCOM, classCOMFill, c.At(s.COM), 7)
	}
}

// massMark draws the quartered circle of a centre of mass, two opposite quarters filled.
func (p *pen) massMark(ring, fill string, at Point, r float64) {
	p.circle(ring, at, r)
	for _, k := range [2]float64{1, -1} {
		q := Point{at.X, at.Y - k*r}
		if !drawable(q) || !drawable(at) {
			return
		}
		p.seg(fill, Seg{Op: 'M', P: at})
		p.seg(fill, Seg{Op: 'L', P: q})
		p.seg(fill, Seg{Op: 'A', P: Point{at.X + k*r, at.Y}, RX: r, RY: r})
		p.seg(fill, Seg{Op: 'Z'})
	}
}

// wind draws the wind about at, its text to the left, its length fixed: the text says how strong it is.
func (c Camera) wind(p *pen, s *Scene, at Point, u Units) {
	w := s.Wind.Norm()
	if w == 0 {
		return
	}
	const long = 24
	d := c.Along(s.Wind.Scale(1 / w))
	dx, dy := d.X/c.Scale*long, d.Y/c.Scale*long
	switch {
	case p.arrow(classWind, classWindHead, Point{at.X - dx/2, at.Y - dy/2}, Point{at.X + dx/2, at.Y + dy/2}, 9):
	case c.Near.Dot(s.Wind) > 0: // towards the eye: the point of the arrow
		p.circle(classWind, at, 6)
		p.circle(classWindHead, at, 1.6)
	default: // away from it: its feathers
		p.circle(classWind, at, 6)
		const k = 4.2
		p.line(classWind, Point{at.X - k, at.Y - k}, Point{at.X + k, at.Y + k})
		p.line(classWind, Point{at.X - k, at.Y + k}, Point{at.X + k, at.Y - k})
	}
	p.text(textWind, "wind "+u.show(w, Unit{"m/s", 1}), Point{at.X - 20, at.Y + 4})
}

// axes draws the payload's own axes, each in its direction from at.
func (c Camera) axes(p *pen, s *Scene, at Point) {
	const long = 20
	for k, name := range [3]string{"x", "y", "z"} {
		d := c.Along(s.Turn.T()[k])
		dx, dy := d.X/c.Scale*long, d.Y/c.Scale*long
		if n := math.Hypot(dx, dy); n > 6 && p.arrow(classAxis, classAxisHead, at, Point{at.X + dx, at.Y + dy}, 5) {
			p.text(textSmall, name, Point{at.X + dx*(1+7/n), at.Y + dy*(1+7/n) + 3.5})
		}
	}
}
