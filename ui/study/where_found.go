package study

import (
	"errors"
	"fmt"
	"math"
	"strconv"

	"cohoist/core/place"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/unit"
	"cohoist/core/vec"
	"cohoist/ui/format"
)

// found is a search and what came of it.
type found struct {
	of    plan.Plan // as it was asked
	set   string    // the choices it was asked with
	asks  place.Question
	goals []place.Goal
	said  string
	kept  *choices

	was      []float64 // of the goals, where the plan has the team
	wasCases []place.Case
	soFar    place.Progress
	reply    place.Reply
	stopped  bool
	done     bool
	then     report.Report // of the plan with the places
}

// before values the places that the plan has.
func (f *found) before() {
	for _, g := range f.goals {
		q := f.asks
		q.Goal = g
		v, cases, err := place.Value(q)
		if err != nil {
			v = math.NaN()
		}
		f.was, f.wasCases = append(f.was, v), cases
	}
}

// settle looks at what came of a search. Vehicles that are alike may change places with one another: each
// gets the one that is nearest to where it is.
func (f *found) settle() {
	a := &f.reply.Answer
	nearest(f.of.Team, a.Places, a.Holes)
	for _, p := range f.reply.Front {
		nearest(f.of.Team, p.Places, p.Holes)
	}
	if a.Places != nil {
		f.then = report.Build(f.plan(a.Places))
	}
}

// nearest swaps the places of vehicles that are alike while that shortens their ways.
func nearest(team []plan.Member, places []vec.V3, holes []int) {
	far := func(i, at int) float64 {
		d := places[at].Sub(team[i].Attach)
		return d.Dot(d)
	}
	for again := true; again; {
		again = false
		for i := range places {
			for j := range i {
				if alikeMembers(team[i], team[j]) && far(i, j)+far(j, i) < far(i, i)+far(j, j)-1e-12 {
					places[i], places[j] = places[j], places[i]
					if len(holes) > 0 {
						holes[i], holes[j] = holes[j], holes[i]
					}
					again = true
				}
			}
		}
	}
}

// alikeMembers tells that two vehicles differ in name and place only.
func alikeMembers(a, b plan.Member) bool {
	return a.Vehicle == b.Vehicle && fmt.Sprint(a.Yaw, a.Hold) == fmt.Sprint(b.Yaw, b.Hold)
}

// plan is what was asked about, with other places.
func (f *found) plan(places []vec.V3) plan.Plan { return placed(f.of, places) }

func placed(p plan.Plan, places []vec.V3) plan.Plan {
	p = p.Clone()
	for i := range min(len(p.Team), len(places)) {
		for k, x := range places[i] {
			p.Team[i].Attach[k] = math.Round(x*1e6) / 1e6 // whole micrometres: links stay short
		}
	}
	return p
}

// fresh tells that the plan is still the one that was asked about.
func (f *found) fresh(t *Turn) bool { return f != nil && f.done && same(f.of, t.Plan) }

// taken tells that the plan has places that were found.
func (f *found) taken(t *Turn) bool {
	if f.has(t, f.reply.Answer.Places) {
		return true
	}
	for _, p := range f.reply.Front {
		if f.has(t, p.Places) {
			return true
		}
	}
	return false
}

// has tells that the plan is the one that was asked about, with these places.
func (f *found) has(t *Turn, places []vec.V3) bool {
	if len(places) == 0 || len(places) != len(t.Plan.Team) {
		return false
	}
	for i, p := range places { // comparing whole plans takes longer
		if !(p.Sub(t.Plan.Team[i].Attach).Norm() < 1e-5) {
			return false
		}
	}
	return same(f.plan(places), t.Plan)
}

// current tells that the plan is the one that was asked about, or has places that were found for it.
func (f *found) current(t *Turn) bool { return f != nil && (f.fresh(t) || f.taken(t)) }

// standing says how what was found stands to the plan on the screen; empty when it was asked about just so.
func (f *found) standing(t *Turn) string {
	switch {
	case f.set != chosen(t) && f.current(t):
		return "Found with other choices: "
	case f.fresh(t):
		return ""
	case f.taken(t):
		return "Taken: "
	}
	return "Of an earlier plan: "
}

// none tells that a search found no places.
func (f *found) none() bool { return f.reply.Answer.Places == nil && len(f.reply.Front) == 0 }

// trouble is why a search found nothing.
func (f *found) trouble() string {
	if f.reply.Fault != "" {
		return sentence(errors.New(f.reply.Fault))
	}
	if f.stopped {
		return "Stopped before anything was found."
	}
	if f.reply.Proof.Evaluated == 0 {
		return "No placement was found that keeps the spacing of " + f.kept.units.Show(format.Length, f.asks.Spacing) + ": lower it, or add holes."
	}
	if f.goals[0] == place.Moment || len(f.goals) > 1 && f.goals[1] == place.Moment {
		return "Nothing holds the load within the limit on any of these points."
	}
	return "Nothing holds the load in every case on any of these points."
}

// outcome is the result in a sentence.
func (f *found) outcome() string {
	switch {
	case f.none():
		return f.trouble()
	case len(f.reply.Front) > 0:
		n := len(f.reply.Front)
		if n == 1 {
			return "One placement is best in both."
		}
		return strconv.Itoa(n) + " placements between the best in the one and the best in the other."
	}
	g, v, was := f.goals[0], f.reply.Answer.Value, f.was[0]
	text := capital(goalName(g)) + " " + f.show1(g, v)
	switch {
	case math.IsNaN(was):
		return text + "."
	case f.show1(g, v) == f.show1(g, was):
		return text + ", as where the plan has the team: nothing worth moving for."
	case math.IsInf(was, 0):
		return text + "; where the plan has the team it does not hold."
	case f.worse():
		return text + ". Where the plan has the team it is " + f.show1(g, was) + ", but not on these points or not so far apart."
	}
	return text + " instead of " + f.show1(g, was) + "."
}

// worse tells that the plan's own places do better than the best that was found.
func (f *found) worse() bool {
	if f.goals[0] == place.Agility {
		return f.was[0] > f.reply.Answer.Value*(1+1e-6)
	}
	return f.was[0] < f.reply.Answer.Value*(1-1e-6)
}

// goalName is what a goal makes best.
func goalName(g place.Goal) string {
	return [...]string{"worst utilisation", "largest bending moment", "weakest turning moment"}[g]
}

func (f *found) show1(g place.Goal, v float64) string { return goalValue(f.kept.units, g, v) }

func goalValue(u format.Units, g place.Goal, v float64) string {
	if g == place.Utilisation {
		return used(v)
	}
	if math.IsInf(v, 0) {
		return "does not hold"
	}
	return u.Show(format.Moment, v)
}

// used is a utilisation with a figure behind the point.
func used(v float64) string {
	switch {
	case math.IsInf(v, 0):
		return "does not hold"
	case math.IsNaN(v):
		return unit.None
	case v > 10:
		return "> 1000\u202f%"
	}
	return strconv.FormatFloat(100*v, 'f', 1, 64) + "\u202f%"
}
