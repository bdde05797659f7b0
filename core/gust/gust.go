// Package gust finds the steady wind that a team holds from every side (THEORY chapter 15).
//
// Restriction: that of core/share; a gust is taken as a steady wind of its speed, for the team has no
// time to lean and the load none to swing. Vehicles do not lean apart to keep their separation.
// Geometry: wind in the payload's plane, towards an angle anticlockwise from payload x.
// Calculation: a team that is held level is one program, for drag grows with the square of the speed,
// (15.1); a rigid one leans, and its speed is found by bracketing, (15.2).
// Verification: shares of the plan in the wind found and in a little more, and turned plans, in the tests.
// References: THEORY chapter 15.
package gust

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/solve"
)

// Cap is the fastest wind that is asked, m/s: hurricane force, in which nobody flies.
const Cap = 40

// Sides is how many directions a rose has.
const Sides = 36

// Limit names what ends the wind that is held.
type Limit string

// The limits. Each is a bound of THEORY chapter 5 or 8.
const (
	Utilisation Limit = "utilisation"
	Tilt        Limit = "tilt"         // of a vehicle
	Cone        Limit = "cone"         // of a cable
	Slack       Limit = "slack"        // a cable's least tension
	WorkingLoad Limit = "working load" // of a cable
	NoBalance   Limit = "no balance"   // a moment that nobody can answer
	Lean        Limit = "lean"         // of a rigid team, beyond which drag by payload axes says nothing
	Unsolved    Limit = "unsolved"
	None        Limit = "" // more than Cap
)

// Side is the wind that is held towards one direction.
type Side struct {
	To      float64  // degrees, anticlockwise from payload x
	Speed   float64  // m/s: held, as every lesser one; NaN: unsolved
	EndedBy Limit    // what ends it
	Who     []string // vehicles at that limit
}

// Rose is the wind that is held from all sides.
type Rose struct {
	Sides   []Side
	Least   int     // the side with the least speed, by its place in Sides; −1: none asked
	Site    Side    // towards the plan's own wind
	Mean    float64 // the plan's wind, m/s
	Gust    float64 // in its gusts, m/s
	Holds   bool    // the gusts are held
	Stopped bool    // tell asked to stop: Sides are those asked until then
}

// Of finds the rose of a team. Tell, if it is not nil, hears how many directions are done and may return
// false to stop.
func Of(m *share.Model, s *solve.Solver, tell func(done, all int) bool) Rose {
	q := newQuestion(m, s)
	site := m.Plan.Site
	out := Rose{Least: -1, Site: q.side(site.WindTo), Mean: site.Wind}
	if site.Wind > 0 {
		out.Gust = site.Wind * site.GustFactor // (15.3)
	}
	out.Holds = out.Gust <= out.Site.Speed
	for i := range Sides {
		if tell != nil && !tell(i, Sides) {
			out.Stopped = true
			return out
		}
		out.Sides = append(out.Sides, q.side(360*float64(i)/Sides))
		if least := out.Least; least < 0 || out.Sides[i].Speed < out.Sides[least].Speed*(1-1e-9) {
			out.Least = i
		}
	}
	if tell != nil {
		tell(Sides, Sides)
	}
	return out
}

// question is a rose in the making.
type question struct {
	m     *share.Model // in calm
	s     *solve.Solver
	limit float64        // of utilisation
	p     *solve.Program // of a level team, (15.1)
	calm  Side           // when even calm is not held: what ends it
	held  bool
}

func newQuestion(m *share.Model, s *solve.Solver) *question {
	q := &question{m: m.Aloft().InWind(0, 0), s: s, limit: m.Plan.Limits.Utilisation}
	over, calm := q.excess(q.m)
	q.calm, q.held = calm, over <= 0
	if m.Cables {
		q.p = q.m.Within(q.limit)
	}
	return q
}

// side finds the wind that is held towards one direction.
func (q *question) side(to float64) Side {
	var out Side
	switch {
	case !q.held:
		out = q.calm
	case q.m.Cables:
		out = q.level(to)
	default:
		out = q.leaning(to)
	}
	out.To = to
	return out
}

// rounding is how much above a limit still counts as at it: what the solver may leave.
const rounding = 1e-9

// excess is how far a model is beyond what ends its wind, ≤ 0 when it holds, and what that is: utilisation beyond
// its limit, or angles beyond theirs in radians, whichever is more.
func (q *question) excess(m *share.Model) (float64, Side) {
	if !m.Settled {
		return math.Inf(1), Side{EndedBy: Lean}
	}
	p := m.Even(0)
	r := q.s.Solve(p)
	switch r.Status {
	case solve.Infeasible:
		return math.Inf(1), Side{EndedBy: NoBalance}
	case solve.Optimal:
	default:
		return math.Inf(1), Side{Speed: math.NaN(), EndedBy: Unsolved}
	}
	over, side := r.T-q.limit-rounding, Side{EndedBy: Utilisation}
	if over > 0 { // who is at the limit is asked only when it is told
		side.Who = hardest(m, p, r)
	}
	for i := range m.Craft {
		if c := &m.Craft[i]; c.Rigid {
			tilt := m.Tilt(c) - c.Vehicle.TiltMax - rounding
			if also := side.EndedBy == Tilt && math.Abs(tilt-over) <= rounding; also {
				side.Who = append(side.Who, c.ID)
			} else if tilt > over {
				over, side = tilt, Side{EndedBy: Tilt, Who: []string{c.ID}}
			}
		}
	}
	if lean := m.Lean.Norm() - leanMax - rounding; lean > over+rounding { // a vehicle's own limit is named first
		over, side = lean, Side{EndedBy: Lean}
	}
	return over, side
}

// leanMax is how far a rigid team may lean in the model, radians.
const leanMax = share.LeanMax * math.Pi / 180
