// Package place chooses where a team attaches to its payload, and how many vehicles it takes (THEORY
// chapter 10).
//
// Restriction: what the load share of chapter 5 can answer; separation is kept by the smallest spacing of
// attachments. Geometry: payload axes. Calculation: hole patterns exactly, by branch and
// bound with bounds from the duals of the share (10.3); continuous places by the duals' gradients from many
// starts (10.6), with the gap to a bound over the whole region. Nothing runs in the background: long work
// calls a function that is told how far it is and says whether to go on. Verification: brute force, the
// general solver, closed cases.
package place

import (
	"errors"
	"math"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// Goal is what the best places make best.
type Goal int

// The goals.
const (
	Utilisation Goal = iota // smallest worst utilisation over all cases
	Moment                  // smallest largest bending moment of the payload as a beam, as planned, N m
	Agility                 // largest moment that turns it in roll and pitch (pitch only, when the places are in line along x), the weaker way, N m
)

// Cases are the situations in which the team must hold, beside hover as planned.
type Cases struct {
	Off   float64 // m: the centre of mass off by this in any direction; NaN or 0: as planned
	Winds int     // the site's wind from this many sides, evenly around; then hover is calm. 0: the wind as planned
	Lost  bool    // any one vehicle of the team lost, its cable or grip let go
}

// Question is what is asked. The plan is assumed (plan.Assume) and complete; nothing changes it.
type Question struct {
	Plan    plan.Plan
	Free    []bool // by member of the team: may move; nil: all may. The others stay where the plan has them
	Cases   Cases
	Goal    Goal
	Spacing float64 // m, smallest distance between two attachments; 0: holes may not be shared, no more
	Mirror  [2]bool // the places are mirror images about payload x = 0, and about y = 0
}

// Answer is the best placement found.
type Answer struct {
	Places []vec.V3 // by member of the team
	Holes  []int    // index of the hole, by member; −1: fixed, or no hole pattern
	Value  float64  // of the goal: utilisation, N m; +Inf: nothing holds (Agility: −Inf)
	Cases  []Case   // utilisation case by case
	Proof  Proof
}

// Case is the utilisation of the best placement in one situation.
type Case struct {
	Name        string
	Lost        bool    // a vehicle is lost
	Utilisation float64 // +Inf: no balance
}

// Proof says how sure the answer is.
type Proof struct {
	Candidates float64 // placements there are
	Evaluated  int     // placements whose cases were solved
	Pruned     float64 // placements ruled out by a bound without being solved
	Bound      float64 // no placement has a smaller value (Agility: a larger one); NaN: not known
	Unsolved   int     // programs that did not come to an answer; then nothing is proved
	Proved     bool    // the answer is the best there is, within Tolerance
}

// Tolerance is how much better, relative, a placement must be to count as better.
const Tolerance = 1e-9

// Progress is told to the caller now and then, and whenever a better placement is found.
type Progress struct {
	Places    []vec.V3 // best so far; nil: none yet
	Value     float64
	Evaluated int
	Part      float64 // of the placements dealt with, 0 to 1
}

// Tell receives progress and returns whether to go on. It may be nil.
type Tell func(Progress) (goOn bool)

// Errors of a question.
var (
	ErrFew      = errors.New("there are fewer places than vehicles to place: add holes, or lower the spacing")
	ErrNone     = errors.New("no vehicle of the team may move: let at least one move")
	ErrMirror   = errors.New("mirrored places need vehicles that are all alike, none of them fixed: make them alike or place them without symmetry")
	ErrNotBeam  = errors.New("the smallest bending moment needs a payload that is a beam along x: say its material")
	ErrManySize = errors.New("there is no mirror-symmetric placement of so many vehicles on these places")
)

// better tells whether a value is better than the best so far by more than Tolerance.
func (g Goal) better(value, best float64) bool {
	if g == Agility {
		value, best = -value, -best
	}
	return value < best-Tolerance*math.Abs(best) || math.IsInf(best, 1) && value < best
}

// worst is the value of no placement at all.
func (g Goal) worst() float64 {
	if g == Agility {
		return math.Inf(-1)
	}
	return math.Inf(1)
}
