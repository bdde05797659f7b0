package drawing

import (
	"math"

	"cohoist/core/vec"
)

// Vehicles up to which each rotor is drawn, and up to which vehicles are drawn at all.
const (
	craftDetailed = 60
	craftDrawn    = 400
)

// Size of the marks about a vehicle, from its middle, in screen units.
const (
	overMark   = 14.0
	pickedMark = 10.0
)

// fleet draws cables and vehicles.
func (c Camera) fleet(p *pen, s *Scene) {
	for i, v := range s.Craft {
		if i == craftDrawn {
			break
		}
		if v.Cable {
			p.line(classCable, c.At(v.Attach), c.At(v.Centre))
		}
		c.craft(p, v, len(s.Craft) <= craftDetailed)
		at := c.At(v.Centre)
		if s.Over(v) {
			p.poly(classOver, octagon(at, overMark)...)
		}
		if i == s.Selected {
			p.circle(classPicked, at, pickedMark)
		}
	}
	eye, h := 3.2, 3.0
	if len(s.Craft) > craftDetailed {
		eye, h = 1.4, 1.4
	}
	for i, v := range s.Craft {
		if i == craftDrawn {
			break
		}
		at := c.At(v.Attach)
		if v.Cable {
			p.circle(classEye, at, eye)
			continue
		}
		p.poly(classGrip, Point{at.X - h, at.Y - h}, Point{at.X + h, at.Y - h}, Point{at.X + h, at.Y + h}, Point{at.X - h, at.Y + h})
	}
}

// craft draws one vehicle: arms, rotor discs to scale, hub, and a nose along its own x.
func (c Camera) craft(p *pen, v Craft, detailed bool) {
	up := v.Axes.T()[2] // its own z, in scene axes
	at := c.At(v.Centre)
	if !detailed || v.Rotors == 0 || v.Radius*c.Scale < 1.2 {
		rx, ry, turn := c.disc(math.Max(v.reach(), 2.5/c.Scale), up)
		p.oval(classDisc, at, rx, ry, turn)
		return
	}
	rx, ry, turn := c.disc(v.Radius, up)
	for j := range v.Rotors {
		r := c.At(v.rotor(j))
		p.line(classArm, at, r)
		p.oval(classDisc, r, rx, ry, turn)
	}
	hub := math.Min(math.Max(0.16*v.Arm*c.Scale, 1.6), 6)
	p.circle(classHub, at, hub)
	own := func(x, y float64) Point {
		return c.At(v.Centre.Add(v.Axes.Mul(vec.V3{x * v.Arm, y * v.Arm, 0})))
	}
	if v.Arm*c.Scale > 8 {
		p.poly(classNose, own(0.62, 0), own(0.34, 0.14), own(0.34, -0.14))
	}
}

// octagon stands on a side, r from its middle to the middle of a side.
func octagon(at Point, r float64) []Point {
	k := r * (math.Sqrt2 - 1)
	return []Point{{at.X - k, at.Y - r}, {at.X + k, at.Y - r}, {at.X + r, at.Y - k}, {at.X + r, at.Y + k},
		{at.X + k, at.Y + r}, {at.X - k, at.Y + r}, {at.X - r, at.Y + k}, {at.X - r, at.Y - k}}
}
