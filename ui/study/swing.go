package study

import (
	"math"
	"strings"

	"github.com/vugu/vugu"

	"cohoist/core/hang"
	"cohoist/core/unit"
	"cohoist/core/vec"
)

// meets is the least number of times that a position loop must run in one swing. A loop that runs less often
// sees a motion late and in steps, and feeds it: a tenth of the rate is where that begins (common practice, no source).
const meets = 10

// swing is a row of the table of motions.
type swing struct {
	Word, Period, Hertz, Loop, Says string
	Picture                         vugu.Builder
}

func (c *Hang) swings() []swing {
	var out []swing
	for _, m := range c.modes {
		s := swing{Word: m.Word, Period: seconds(m.Period), Hertz: hertz(m.Hertz), Picture: node{c.motion(m)}}
		switch {
		case math.IsNaN(m.Hertz):
			s.Period, s.Hertz, s.Says = "–", "–", "runs away"
		case m.Hertz == 0:
			s.Period, s.Hertz, s.Says = "–", "–", "nothing holds it"
		default:
			times := 1 / m.LoopRatio(c.rate)
			s.Loop = unit.Figures(times, 2) + "\u202f×"
			if times < meets {
				s.Says = "meets the position loop"
			}
		}
		out = append(out, s)
	}
	return out
}

// swingLead says what the table means.
func (c *Hang) swingLead() string {
	held, text := 6-len(c.modes), ""
	if len(c.modes) == 0 {
		return "A body has six motions. Taut lines that do not stretch hold all of them, so that nothing swings: it moves only with the vehicles. Say what the lines are made of to see how it bounces."
	}
	text = "Small motions about where it hangs as planned, the slowest first, computed without damping: a payload on lines in still air has next to none. "
	if held > 0 {
		text += several(held, "of the six motions of a body is", "of the six motions of a body are") + " missing, held by lines that do not stretch or without inertia. "
	}
	return text + c.meeting()
}

// meeting says which motions the position loop meets.
func (c *Hang) meeting() string {
	var names []string
	slow := false
	for _, m := range c.modes {
		if !math.IsNaN(m.Hertz) && m.LoopRatio(c.rate)*meets > 1 {
			names = append(names, m.Word)
		}
		slow = slow || m.Hertz > 0 && m.Hertz < 1
	}
	text := "No motion meets a position loop of " + hertz(c.rate) + ", which corrects more than " + digits(meets) + " times in each swing."
	if len(names) > 0 {
		text = "A position loop of " + hertz(c.rate) + " corrects less than " + digits(meets) + " times in a swing of " + strings.Join(names, ", ") + ": it sees such a motion late and in steps, and may feed it. Softer lines or a faster loop part them (common practice, no source)."
	}
	if slow {
		text += " Swings slower than once a second are what the loop can damp, and what it drives when it is tuned too tightly (common practice, no source)."
	}
	return text
}

// Size of a motion's picture.
const motionWide, motionHigh = 150.0, 112.0

// motion is the picture of a small motion: at rest, at both ends, and where the part that moves most goes to. Of the
// lines it shows the lower ends.
func (c *Hang) motion(m hang.Mode) *vugu.VGNode {
	h, f := c.hung, c.body()
	rest, com := h.rest.Pose, h.model.Payload.COM
	at, size := rest.Place(com), 0.0
	f.each(func(p vec.V3) { size = math.Max(size, p.Sub(com).Norm()) })
	if size == 0 {
		size = 0.1 // a point on one line
	}
	shift, turn := vec.V3{m.Shape[0], m.Shape[1], m.Shape[2]}, vec.V3{m.Shape[3], m.Shape[4], m.Shape[5]}
	most := math.Max(shift.Norm(), size*turn.Norm())
	moved := func(part float64) func(vec.V3) vec.V3 {
		r := vec.Rot(turn.Scale(part / most))
		return func(p vec.V3) vec.V3 {
			return at.Add(shift.Scale(part / most)).Add(r.Mul(rest.Place(p).Sub(at)))
		}
	}
	s, corner := c.facing(f, moved(0.01*size), moved(0))
	reach := 0.35 * size
	var all []vec.V3
	f.each(func(p vec.V3) { all = append(all, moved(reach)(p), moved(-reach)(p)) })
	for i, l := range h.rig.Lines {
		if !h.rest.Slack[i] {
			all = append(all, part(rest.Place(l.At), l.Top, size))
		}
	}
	s = s.fit(all, motionWide, motionHigh, 8, 8, 8)
	pic := image("hg-motion", m.Word, motionWide, motionHigh)
	for i, l := range h.rig.Lines {
		if a := moved(reach)(l.At); !h.rest.Slack[i] {
			s.stroke(pic, "hg-was", part(rest.Place(l.At), l.Top, size), rest.Place(l.At))
			s.stroke(pic, "hg-now", part(a, l.Top, size), a)
		}
	}
	path(pic, "hg-was", s.shape(f, moved(-reach)))
	path(pic, "hg-load", s.shape(f, moved(0)))
	path(pic, "hg-now", s.shape(f, moved(reach)))
	arrow(pic, "hg-arrow", s.at(moved(0)(corner)), s.at(moved(reach)(corner)))
	return pic
}

// facing is the side from which a motion is seen best, and the corner that moves most there.
func (c *Hang) facing(f form, moved, still func(vec.V3) vec.V3) (sight, vec.V3) {
	best, most := fromSide, 0.0
	for _, s := range []sight{fromSide, fromEnd, fromTop} {
		sum := 0.0
		f.each(func(p vec.V3) { sum += square(s, still(p), moved(p)) })
		if sum > most*1.01 {
			best, most = s, sum
		}
	}
	corner, far := c.hung.model.Payload.COM, 0.0
	f.each(func(p vec.V3) {
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
