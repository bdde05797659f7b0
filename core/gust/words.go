package gust

import (
	"math"
	"strconv"

	"cohoist/core/plan"
	"cohoist/core/share"
)

// Ended says what ends a wind, as the end of a sentence.
func (s Side) Ended() string {
	who := ""
	if len(s.Who) > 0 {
		who = " of " + share.List(s.Who)
	}
	switch s.EndedBy {
	case None:
		return "and more was not asked"
	case Utilisation:
		return "where the utilisation" + who + " is at its limit"
	case Tilt:
		return "where the tilt" + who + " is at its limit"
	case Cone:
		return "where the cable" + who + " is at the edge of its cone"
	case Slack:
		return "where the cable" + who + " goes slack"
	case WorkingLoad:
		return "where the cable" + who + " is at its working load"
	case Lean:
		return "where the body leans as far as the model goes"
	case Unsolved:
		return "which was not solved"
	}
	return "for nothing balances more with the payload held level"
}

// Sentence says what wind is held from the worst side, and whether the site's gusts are.
func (r Rose) Sentence() string {
	if r.Stopped || r.Least < 0 {
		return "Stopped before all directions were asked." + r.gusts()
	}
	for _, s := range r.Sides {
		if math.IsNaN(s.Speed) {
			return "The wind towards " + degrees(s.To) + " was not solved, so nothing is said of all sides." + r.gusts()
		}
	}
	least := r.Sides[r.Least]
	switch {
	case least.EndedBy == None:
		return "From every side the team holds " + speed(Cap) + ", the most that is asked." + r.gusts()
	case least.Speed == 0 && r.still() == len(r.Sides):
		return "The team holds no wind from any side, " + least.Ended() + " in calm." + r.gusts()
	case least.Speed == 0:
		return "The team holds no wind in " + strconv.Itoa(r.still()) + " of " + strconv.Itoa(len(r.Sides)) + " directions, the first of them towards " +
			degrees(least.To) + ", " + least.Ended() + "." + r.gusts()
	}
	return "From every side the team holds a steady wind of " + speed(least.Speed) + "; the least is towards " + degrees(least.To) + ", " +
		least.Ended() + "." + r.gusts()
}

// still is how many sides hold no wind.
func (r Rose) still() int {
	n := 0
	for _, s := range r.Sides {
		if s.Speed == 0 {
			n++
		}
	}
	return n
}

// gusts says whether the site's gusts are held.
func (r Rose) gusts() string {
	if !(r.Mean > 0) {
		return ""
	}
	start := " The plan's wind of " + speed(r.Mean) + " towards " + degrees(r.Site.To) + " reaches " + speed(r.Gust) + " in gusts"
	switch {
	case math.IsNaN(r.Site.Speed) || math.IsNaN(r.Gust):
		return start + "; whether they are held was not solved."
	case r.Holds:
		return start + ", within the " + speed(r.Site.Speed) + " that the team holds that way."
	}
	return start + "; the team holds " + speed(r.Site.Speed) + " that way, " + r.Site.Ended() + "."
}

func speed(v float64) string { return share.Short(v) + " m/s" }

func degrees(a float64) string { return plan.Number(math.Round(a), "°") }
