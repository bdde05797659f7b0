package energy

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/solve"
)

// Even is a share in which the vehicle that ends first ends as late as it can.
type Even struct {
	Parts    []share.Part
	Vehicles []Vehicle
	Hold     float64 // s: until the first ends
	Gain     float64 // Hold over that of the plan's share
	Solves   int
}

// leans is how often pulls are found again for cables that lean as the pulls before asked for.
const leans = 4

// even looks for the longest hold: the largest time τ for which there is a share with no vehicle above the thrust T_i(τ) that it
// holds for τ, nor above the utilisation that the plan's share or the crew's limit has, (18.20). Smallest t with thrusts within t T_i(τ) is
// convex, and t = 1 at the answer. Where no such share is found that keeps the vehicles apart it is the plan's own, with a gain of 1.
func (s *Study) even(solver *solve.Solver, a share.Answer) *Even {
	m := s.model
	q := &quest{study: s, solver: solver, parts: a.Parts, held: make([]float64, len(m.Craft)), limit: math.Max(a.T, m.Plan.Limits.Utilisation)}
	out := &Even{Parts: a.Parts, Vehicles: s.Vehicles, Hold: s.Hold, Gain: 1}
	apart := m.Plan.Limits.Separation
	kept := !m.TooNear(a.Parts, apart) // where it is not, the check says so
	parts := a.Parts
	for range leans {
		q.program = m.Even(0)
		m.SpreadFor(q.program, a.Apart, m.Pulls(parts))
		parts = q.find(s.Hold)
		out.Solves = q.solves
		if parts == nil {
			return out
		}
		if kept && m.TooNear(parts, apart) {
			continue // the cables lean for the pulls before
		}
		vehicles := s.vehicles(m, parts)
		hold := math.Inf(1)
		for i := range vehicles {
			hold = math.Min(hold, vehicles[i].Time) // NaN: not known
		}
		if hold > s.Hold*(1+gained) {
			*out = Even{Parts: parts, Vehicles: vehicles, Hold: hold, Gain: hold / s.Hold, Solves: q.solves}
		}
		return out
	}
	return out
}

// gained is the least gain that is not rounding, with room: τ is found within matched.
const gained = 1e-6

// find is the share of the longest hold under the program's bounds; nil: none is found.
func (q *quest) find(start float64) []share.Part {
	late := func(tau float64) float64 { return math.Log(q.at(tau)) }
	lo := math.Max(start, 1) // a hold of no time, too, may be mended
	hi, y := lo, late(lo)
	fhi := y
	if y > 0 { // rigid: caps are each rotor's
		lo /= 64
		y = late(lo)
	}
	for n := 0; n < 20 && !(fhi > 0) && y < -matched; n++ {
		lo, y, hi = hi, fhi, 2*hi
		fhi = late(hi)
	}
	if tau := rising(late, lo, hi, y, fhi, matched); !(q.at(tau) <= 1+1e-6) {
		return nil
	}
	r := q.solver.Settle(q.program, math.Max(q.t, 1e-12)) // ties
	if r.Status != solve.Optimal {
		if r = q.solver.Solve(q.program); r.Status != solve.Optimal {
			return nil
		}
	}
	return q.study.model.Placed(r)
}

// EvenWorking is how power and hold of vehicle i come about when shared for equal endurance.
func (s *Study) EvenWorking(i int) []Step {
	even := *s
	even.Vehicles = s.Even.Vehicles
	return even.Working(i, s.Even.Parts[i])
}
