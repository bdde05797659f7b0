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
	Nearest  float64 // m: least distance of two vehicles, not both rigid; +Inf: none
}

// even looks for the longest hold: the largest time τ for which there is a share with no vehicle above the thrust T_i(τ) that it
// holds for τ, nor above the utilisation that the plan's share or the crew's limit has, (18.20). Smallest t with thrusts within t T_i(τ) is
// convex, and t = 1 at the answer. nil: no such share was found.
func (s *Study) even(solver *solve.Solver, a share.Answer) *Even {
	m := s.model
	q := &quest{study: s, parts: a.Parts, caps: make([]float64, len(m.Craft)), limit: math.Max(a.T, m.Plan.Limits.Utilisation)}
	q.program = m.Capped(q.caps, a.Apart)
	q.solver = solver
	lo, ok := q.bracket(s.Hold)
	out := &Even{Parts: a.Parts, Vehicles: s.Vehicles, Hold: s.Hold, Gain: 1, Solves: q.solves, Nearest: m.Nearest(a.Parts)}
	if !ok {
		return out
	}
	if t := q.at(lo); !(t <= 1+1e-6) {
		return out
	}
	r := solver.Settle(q.program, math.Max(q.t, 1e-12)) // ties
	if r.Status != solve.Optimal {
		if r = solver.Solve(q.program); r.Status != solve.Optimal {
			return out
		}
	}
	parts := m.Placed(r)
	vehicles := s.vehicles(m, parts)
	hold := math.Inf(1)
	for _, v := range vehicles {
		if !(v.Time >= hold) {
			hold = v.Time
		}
	}
	out.Solves = q.solves
	if hold > s.Hold {
		*out = Even{Parts: parts, Vehicles: vehicles, Hold: hold, Gain: hold / s.Hold, Solves: q.solves, Nearest: m.Nearest(parts)}
	}
	return out
}
