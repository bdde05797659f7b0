package study

import (
	"math"

	"github.com/vugu/vugu"

	"cohoist/core/vec"
	"cohoist/core/way"
)

// corners4 are the corners of an opening, or of what its clearance leaves of it, in order.
func corners4(o way.Opening, clear float64) [4]vec.V3 {
	wide := vec.V3{-math.Sin(o.Normal), math.Cos(o.Normal), 0}.Scale(o.Width/2 - clear)
	high := vec.V3{0, 0, o.Height/2 - clear}
	return [4]vec.V3{o.At.Add(wide).Add(high), o.At.Sub(wide).Add(high), o.At.Sub(wide).Sub(high), o.At.Add(wide).Sub(high)}
}

// jamb is how much of the wall is drawn beside an opening, m.
const jamb = 0.7

// openings draws the walls beside, below and above every opening, and what its clearance leaves.
func (s *stage) openings(pic *vugu.VGNode) {
	for i, o := range s.route.Openings {
		for _, v := range []sight{s.high, s.top} {
			outer, inner := corners4(o, 0), corners4(o, o.Clearance)
			walls, gap := "", ""
			for k := range 4 {
				gap += stroke(v.at(inner[k]), v.at(inner[(k+1)%4]))
				from, along := outer[k], outer[k].Sub(outer[(k+1+2*(k%2))%4]).Unit() // outwards along the wall, level
				if v.up == upright {
					from, along = outer[k], vec.V3{0, 0, math.Copysign(1, outer[k][2]-o.At[2])}
				}
				walls += stroke(v.at(from), v.at(s.inside(from.Add(along.Scale(jamb)))))
			}
			path(pic, "wy-wall", walls)
			path(pic, "wy-gap", gap)
		}
		at := s.top.at(corners4(o, 0)[0])
		text(pic, "wy-quiet", at[0]+6, at[1]-4, "opening "+digits(i+1))
	}
}

// inside keeps a point above the floor, where the picture has one.
func (s *stage) inside(p vec.V3) vec.V3 {
	for a := range 3 {
		p[a] = math.Max(s.lo[a]-0.1, math.Min(s.hi[a]+0.1, p[a]))
	}
	return p
}
