package study

import (
	"math"
	"strings"

	"github.com/vugu/vugu"

	"cohoist/core/hang"
	"cohoist/core/vec"
)

// Size of a motion's picture.
const motionWide, motionHigh = 150.0, 112.0

// seenMove is how much of a motion is drawn: what moves most goes by so much of the payload's extent as it is seen, and
// nothing turns by more, radians.
const seenMove, seenTurn = 0.5, 0.5

// moving is a motion to be drawn.
type moving struct {
	form        form
	rest        hang.Pose
	at          vec.V3 // centre of mass at rest, level axes
	shift, turn vec.V3
}

// place is where a point of the payload is when so much of the motion is made.
func (m *moving) place(part float64) func(vec.V3) vec.V3 {
	r := vec.Rot(m.turn.Scale(part))
	return func(p vec.V3) vec.V3 {
		return m.at.Add(m.shift.Scale(part)).Add(r.Mul(m.rest.Place(p).Sub(m.at)))
	}
}

// motion is the picture of a small motion: at rest, at both ends, and where the part that moves most goes to. Of the
// lines it shows the lower ends.
func (c *Hang) motion(mode hang.Mode) *vugu.VGNode {
	m := &moving{form: c.body(), rest: c.hung.rest.Pose, shift: vec.V3{mode.Shape[0], mode.Shape[1], mode.Shape[2]}, turn: vec.V3{mode.Shape[3], mode.Shape[4], mode.Shape[5]}}
	m.at = m.rest.Place(c.hung.model.Payload.COM)
	s, corner := m.facing(strings.HasSuffix(mode.Word, "twist"))
	wide, still := 0.0, m.place(0)
	m.form.each(func(p vec.V3) { wide = math.Max(wide, math.Sqrt(square(s, still(p), m.at))) })
	if wide < 1e-6 {
		wide = 0.1 // a point on lines, m
	}
	const little = 1e-3
	far := math.Sqrt(square(s, still(corner), m.place(little)(corner))) / little // a unit of motion, as it is seen
	part := math.Min(seenMove*wide/math.Max(far, 1e-9), seenTurn/math.Max(m.turn.Norm(), 1e-9))
	return c.drawn(m, s, corner, part, wide, mode.Word)
}

// drawn draws so much of a motion, and the lines as far as a length, m.
func (c *Hang) drawn(m *moving, s sight, corner vec.V3, much, long float64, words string) *vugu.VGNode {
	to, fro, still := m.place(much), m.place(-much), m.place(0)
	var all []vec.V3
	m.form.each(func(p vec.V3) { all = append(all, to(p), fro(p)) })
	var taut []hang.Line
	for i, l := range c.hung.rig.Lines {
		if !c.hung.rest.Slack[i] {
			taut = append(taut, l)
			all = append(all, part(still(l.At), l.Top, long))
		}
	}
	s = s.fit(all, motionWide, motionHigh, 8, 8, 8)
	pic := image("hg-motion", words, motionWide, motionHigh)
	for _, l := range taut {
		s.stroke(pic, "hg-was", part(still(l.At), l.Top, long), still(l.At))
		s.stroke(pic, "hg-now", part(to(l.At), l.Top, long), to(l.At))
	}
	path(pic, "hg-was", s.shape(m.form, fro))
	path(pic, "hg-load", s.shape(m.form, still))
	path(pic, "hg-now", s.shape(m.form, to))
	arrow(pic, "hg-arrow", s.at(still(corner)), s.at(to(corner)))
	return pic
}

// facing is the side from which a motion is seen best, from above for a twist, and the corner that moves most there.
func (m *moving) facing(twist bool) (sight, vec.V3) {
	sights := []sight{fromSide, fromEnd, fromTop}
	if twist {
		sights = []sight{fromTop}
	}
	still, moved := m.place(0), m.place(1e-3)
	best, most := sights[0], 0.0
	for _, s := range sights {
		sum := 0.0
		m.form.each(func(p vec.V3) { sum += square(s, still(p), moved(p)) })
		if sum > most*1.01 {
			best, most = s, sum
		}
	}
	corner, far := m.form[0][0], 0.0
	m.form.each(func(p vec.V3) {
		if d := square(best, still(p), moved(p)); d > far*1.01 {
			corner, far = p, d
		}
	})
	return best, corner
}

// square is the square of the distance between two points as it is seen.
func square(s sight, a, b vec.V3) float64 {
	p, q := s.flat(a), s.flat(b)
	return (q[0]-p[0])*(q[0]-p[0]) + (q[1]-p[1])*(q[1]-p[1])
}
