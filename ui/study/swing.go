package study

import (
	"math"
	"strings"

	"github.com/vugu/vugu"

	"cohoist/core/unit"
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
