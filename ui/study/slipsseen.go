package study

import (
	"math"
	"strconv"

	"cohoist/core/scatter"
	"cohoist/core/unit"
	"cohoist/ui/format"
)

// outcome is a run in a sentence.
func (r *sampling) outcome() string {
	s := r.seen
	limit := s.Limits[0]
	text := "above the limit of " + format.Share(r.study.Plan.Limits.Utilisation) + " in " + often100(limit) + " of " + many(s.N) + " samples"
	if q := s.Quantiles[4]; !math.IsInf(q, 1) {
		text = "95 of 100 times no vehicle gives more than " + format.Share(q) + " of its thrust; " + text
	}
	return capital(text) + "."
}

// often100 is a chance as it was seen.
func often100(c scatter.Chance) string {
	if c.Times == 0 {
		return "none"
	}
	return percentOf(c.P)
}

// percentOf writes a chance so that it is never rounded to all or nothing.
func percentOf(p float64) string {
	x := 100 * p
	for digits := 3; digits < 9; digits++ {
		if s := unit.Figures(x, digits); s != "100" || x == 100 {
			return s + "\u202f%"
		}
	}
	return unit.Figures(x, 9) + "\u202f%"
}

// many is a number of things with gaps between thousands.
func many(n int) string {
	s := strconv.Itoa(n)
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + "\u202f" + s[i:]
	}
	return s
}

// chance is a row of the table of chances.
type chance struct{ What, Times, Chance, Between string }

func (c *SlipsSeen) chances() []chance {
	var out []chance
	for i, l := range c.Run.seen.Limits {
		name := l.What
		switch i {
		case 0:
			name = "Above the limit of " + format.Share(c.Run.study.Plan.Limits.Utilisation)
		case 1:
			name = "Above full thrust"
		case 2:
			name = "No balance at all"
		default:
			if l.Times == 0 {
				continue
			}
			name = "– for " + causeNoun(l.What)
		}
		out = append(out, chance{name, many(l.Times), percentOf(l.P), percentOf(l.Low) + " to " + percentOf(l.Top)})
	}
	return out
}

func causeNoun(what string) string {
	for c := scatter.Slack; c <= scatter.Unsolved; c++ {
		if c.String() == what {
			return causeWords(c)
		}
	}
	return what
}

// level is a row of the table of quantiles.
type quantileRow struct{ Name, Value string }

func (c *SlipsSeen) quantiles() []quantileRow {
	var out []quantileRow
	for i, q := range scatter.Levels {
		value := "no balance"
		if x := c.Run.seen.Quantiles[i]; !math.IsInf(x, 1) {
			value = unit.Figures(100*x, 3) + "\u202f%"
		}
		out = append(out, quantileRow{unit.Figures(100*q, 3) + "\u202f%", value})
	}
	return out
}

// weight is a row of what matters.
type weight struct{ Name, Share, Bar string }

// kinds are the kinds of errors, by how much of the spread each explains alone.
func (c *SlipsSeen) kinds() []weight {
	var out []weight
	for _, k := range c.Run.seen.Kinds {
		if !math.IsNaN(k.Ratio) {
			out = append(out, weight{capital(k.Kind), format.Share(k.Ratio), bar(k.Ratio)})
		}
	}
	return out
}

// mostSingles is how many single numbers are listed.
const mostSingles = 6

func (c *SlipsSeen) singles() []weight {
	var out []weight
	for _, m := range c.Run.seen.Matters {
		if len(out) == mostSingles || !(m.Ratio > 0.005) {
			break
		}
		name := m.Kind
		if m.Who != "" {
			name += " of " + m.Who
		}
		if m.Axis != "" {
			name += " along " + m.Axis
		}
		out = append(out, weight{capital(name), format.Share(m.Ratio), bar(m.Ratio)})
	}
	return out
}

// mattersLead says how to read the bars.
func (c *SlipsSeen) mattersLead() string {
	if len(c.kinds()) == 0 || !(c.Run.seen.SD > 1e-9) {
		return "The utilisation does not vary."
	}
	sum := 0.0
	for _, k := range c.Run.seen.Kinds {
		sum += k.Ratio
	}
	text := "How much of the spread (the variance of the utilisation) each error explains by itself."
	if sum < 0.98 {
		text += " Together that is " + format.Share(sum) + "; the rest comes from errors that act together."
	}
	return text
}

// summary says what the numbers belong to.
func (c *SlipsSeen) summary() string {
	s := c.Run.seen
	text := many(s.N) + " samples with the plan’s seed " + strconv.FormatInt(c.Run.study.Plan.Seed, 10) + ": the hardest-working vehicle gives " + unit.Figures(100*s.Mean, 3) + "\u202f% of its thrust on average, with a standard deviation of " + unit.Figures(100*s.SD, 2) + "\u202f%."
	if math.IsNaN(s.Mean) {
		text = many(s.N) + " samples: none has a balance."
	}
	if s.N < c.Run.study.N {
		text = "So far, " + text
	}
	return text
}
