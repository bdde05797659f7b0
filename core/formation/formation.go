// Package formation finds places for vehicles on cables that keep their separation at the least worst
// utilisation, and says who would fly in whose wake (THEORY chapter 17).
//
// Restriction: that of core/share, (5.10). The separation is not convex, so that the best place found need not be the
// best there is; how much better another could be is bounded by the team without separation. Wakes are
// those of hover in calm air.
// Geometry: payload frame, level, z up. Two vehicles are side by side when seen from above they are
// as far apart as they must be, and one above the other when their rotors overlap there.
// Calculation: (17.1) to (17.7).
// Verification: two and three vehicles on one attachment by hand, unlike cables by a second route, all examples,
// in the tests.
// References: THEORY chapter 17.
package formation

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Status says how a search ended.
type Status uint8

// The ways a search ends.
const (
	NotAsked Status = iota // no two vehicles of which one is on a cable, or nothing balances
	AsHung                 // as the cables hang, the vehicles keep their separation
	Apart                  // the cables lean apart
	None                   // no formation was found that keeps the separation
)

func (s Status) String() string {
	return [...]string{"not asked", "as hung", "apart", "none"}[s]
}

// Formation is what was found.
type Formation struct {
	Status  Status
	Parts   []share.Part // in the order of the team; nil: none
	T       float64      // worst utilisation
	Free    float64      // worst utilisation without separation
	Bound   float64      // proven lower bound: of the team without separation
	Cost    float64      // T − Free
	Nearest float64      // m: least distance of two vehicles of which one is on a cable
	Stacked bool         // it keeps the separation by height, one vehicle above another
	Flags   []Flag
	Tried   int  // starts
	Held    int  // starts that led to a formation
	Stopped bool // it was broken off; what was found until then stands
	Reason  string
}

// Find looks for the best formation: side by side, so that nobody flies in another's wake; where that is not to be had, or
// dearer than it is worth, see Stack. A formation in which cables cross or rotors reach a cable is taken only when there is no other.
// GoOn is asked before every solve, unless it is nil: false breaks the search off.
func Find(m *share.Model, s *solve.Solver, goOn func() bool) Formation {
	return find(m, s, goOn, false)
}

// Stack also lets vehicles keep their separation by height, which cables of different lengths allow: one
// flies above the other, and mostly in its wake, which the flags say.
func Stack(m *share.Model, s *solve.Solver, goOn func() bool) Formation {
	return find(m, s, goOn, true)
}

func find(m *share.Model, s *solve.Solver, goOn func() bool, heights bool) Formation {
	nan := math.NaN()
	out := Formation{T: nan, Free: nan, Bound: nan, Cost: nan, Nearest: nan}
	if !m.Settled || !m.Cables || len(m.Craft) < 2 {
		out.Reason = "No two vehicles of which one is on a cable."
		return out
	}
	r := s.Solve(m.Even(0))
	if r.Status != solve.Optimal {
		out.Reason = "The lift does not balance, wherever the vehicles fly."
		return out
	}
	out.Free, out.Bound = r.T, r.Bound
	f := newFlock(m, s, heights)
	if goOn != nil {
		f.goOn = goOn
	}
	free := s.Settle(m.Even(0), r.T*(1+spare))
	if free.Status == solve.Optimal {
		f.take(free)
		if f.keeps() {
			out.fill(f, AsHung, r.T)
			out.T, out.Cost = r.T, 0
			out.Reason = f.hungReason()
			return out
		}
	}
	near, pair := f.nearest()
	best, tangled := math.Inf(1), math.Inf(1)
	for _, start := range f.starts() {
		out.Tried++
		t, parts := f.improve(start, best)
		if out.Stopped = f.stopped; out.Stopped {
			break
		}
		if parts == nil {
			continue
		}
		out.Held++
		loose := len(Cables(parts, m.Craft)) == 0
		if loose && t < best {
			best = t
		} else if !loose && math.IsInf(best, 1) && t < tangled {
			tangled = t
		} else {
			continue
		}
		f.parts = parts
		out.fill(f, Apart, t)
	}
	if out.Held == 0 && !out.Stopped {
		out.Status = None
		out.Reason = f.noneReason(near, pair)
		return out
	}
	if out.Held > 0 {
		out.Reason = f.apartReason(&out, near, pair)
	}
	return out
}

// spare is by how much t is let off when ties are broken, so that vehicles share what is left.
const spare = 1e-6

// fill copies the present formation.
func (o *Formation) fill(f *flock, status Status, t float64) {
	o.Status, o.T, o.Cost = status, t, t-o.Free
	o.Parts = f.parts
	o.Nearest, _ = f.nearest()
	o.Flags = append(Flags(f.parts, f.m.Craft), Cables(f.parts, f.m.Craft)...)
	o.Stacked = false
	for _, g := range o.Flags {
		o.Stacked = o.Stacked || g.Kind == Stacked
	}
}

// flat is a vector seen from above.
func flat(v vec.V3) vec.V3 { return vec.V3{v[0], v[1], 0} }
