package study

import (
	"math"
	"strconv"
	"strings"

	"cohoist/core/vec"
	"cohoist/ui/format"
)

// words is the cost of a shift as a text.
func (s *shifted) words(c *choices) string {
	id, u := c.plan.Team[s.who].ID, c.units
	best, least, inside := 0, math.Inf(1), 0
	lo, hi := vec.V3{math.Inf(1), math.Inf(1)}, vec.V3{math.Inf(-1), math.Inf(-1)}
	for i, v := range s.values {
		if v < least {
			best, least = i, v
		}
		if v <= s.limit*(1+1e-6) {
			inside++
			for k, x := range s.at(i) {
				lo[k], hi[k] = math.Min(lo[k], x), math.Max(hi[k], x)
			}
		}
	}
	limit := format.Share(s.limit)
	text := "Moving " + id + " alone, the others staying: "
	switch {
	case math.IsInf(least, 1):
		return text + "the load is held nowhere."
	case inside == 0:
		return text + "nowhere within " + limit + "; least " + used(least) + " at " + near(u, s.at(best)) + "."
	case s.line:
		return text + "within " + limit + " " + s.ranges(c) + "; least " + used(least) + " at " + axisName(s.axis) + " " + u.Show(format.Length, s.at(best)[s.axis]) + "."
	}
	part := strconv.Itoa(int(math.Round(100*float64(inside)/float64(len(s.values))))) + "\u202f%"
	return text + "within " + limit + " on " + part + " of the payload, x from " + u.Show(format.Length, lo[0]-s.side[0]/2) + " to " + u.Show(format.Length, hi[0]+s.side[0]/2) +
		", y from " + u.Show(format.Length, lo[1]-s.side[1]/2) + " to " + u.Show(format.Length, hi[1]+s.side[1]/2) + "; least " + used(least) + " at " + near(u, s.at(best)) + "."
}

// near is a place to read: x and y in three figures.
func near(u format.Units, p vec.V3) string {
	return "x " + u.Show(format.Length, p[0]) + ", y " + u.Show(format.Length, p[1])
}

func axisName(axis int) string { return [...]string{"x", "y"}[axis] }

// span is a stretch of a bar.
type span struct{ from, to float64 }

// spans are the stretches within the limit, their ends between two places by proportion.
func (s *shifted) spans() []span {
	var out []span
	at := func(i int) float64 { return s.at(i)[s.axis] }
	in := false
	for i, v := range s.values {
		ok := v <= s.limit*(1+1e-6)
		if ok && !in {
			out = append(out, span{from: at(i), to: at(i)})
			if i > 0 {
				out[len(out)-1].from = at(i) - s.part(v, s.values[i-1])*(at(i)-at(i-1))
			}
		}
		if ok {
			out[len(out)-1].to = at(i)
		} else if in {
			out[len(out)-1].to = at(i-1) + s.part(s.values[i-1], v)*(at(i)-at(i-1))
		}
		in = ok
	}
	return out
}

// part is how far from a place within the limit to one beyond it the limit lies; nothing is known of a place
// where nothing holds.
func (s *shifted) part(within, beyond float64) float64 {
	if math.IsInf(beyond, 1) || beyond <= within {
		return 0
	}
	return math.Min(1, math.Max(0, (s.limit-within)/(beyond-within)))
}

// ranges are the spans in words.
func (s *shifted) ranges(c *choices) string {
	var parts []string
	for _, p := range s.spans() {
		parts = append(parts, "from "+c.units.Show(format.Length, p.from)+" to "+c.units.Show(format.Length, p.to))
	}
	return "with its " + axisName(s.axis) + " " + strings.Join(parts, " and ")
}

// within is how many bands lie within the limit.
const within = 4

// grade finds the steps of the colours: the largest utilisation of each, and what the legend says. Those within
// the limit part evenly what there is.
func (s *shifted) grade() {
	least, most := s.limit, 0.0
	for _, v := range s.values {
		least = math.Min(least, v)
		most = math.Max(most, v)
	}
	most = math.Min(most, s.limit)
	s.tops, s.names = nil, nil
	for k := range within {
		s.tops = append(s.tops, least+(most-least)*float64(k+1)/within)
		s.names = append(s.names, "to "+used(s.tops[k]))
	}
	if most == s.limit {
		s.names[within-1] = "to the limit, " + used(s.limit)
	}
	s.tops = append(s.tops, math.Max(1, s.limit), math.MaxFloat64)
	s.names = append(s.names, "over the limit", "over full thrust", "does not hold")
}

// band is the step of a utilisation.
func (s *shifted) band(v float64) int {
	for i, top := range s.tops {
		if v <= top*(1+1e-6) && !math.IsInf(v, 1) {
			return i
		}
	}
	return len(s.tops)
}
