package scatter

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/solve"
)

// Cause says why a sample has no balance.
type Cause uint8

// The causes, (16.11): the bound on cables that alone is in the way, or none of them.
const (
	Balances    Cause = iota
	Slack             // a cable would go slack, (5.8)
	WorkingLoad       // a cable would be loaded above its working load, (5.8)
	CableAngle        // a cable would lean out of its cone, (5.7)
	Tilt              // a vehicle would tilt too far, (5.6)
	NoBalance         // no forces of the team balance the load, or a rigid team finds no steady lean
	Unsolved          // the solver does not know; counts as no balance
	causes
)

func (c Cause) String() string { return causeNames[c] }

var causeNames = [causes]string{"balances", "slack cable", "working load", "cable angle", "tilt", "no balance", "unsolved"}

// runner solves samples one after the other.
type runner struct {
	rig    *rig
	solver *solve.Solver
	x      offset
}

func newRunner(m *share.Model) *runner {
	return &runner{newRig(m), solve.NewSolver(), newOffset(len(m.Craft))}
}

// ask is the smallest worst utilisation with the numbers off by x, +Inf when nothing balances.
func (r *runner) ask() (float64, Cause) {
	if !r.rig.set(r.x) {
		return math.Inf(1), NoBalance
	}
	a := r.solver.Solve(r.rig.p)
	switch a.Status {
	case solve.Optimal:
		return a.T, Balances
	case solve.Infeasible:
		return math.Inf(1), r.cause()
	}
	return math.Inf(1), Unsolved
}

// cause leaves out one kind of bound on the cables after the other, to see which alone is in the way.
func (r *runner) cause() Cause {
	for c := Slack; c < NoBalance; c++ {
		p := r.without(c)
		if p != nil && r.solver.Solve(p).Status == solve.Optimal {
			return c
		}
	}
	return NoBalance
}

// without is the program without one kind of bound; nil when there is none of the kind.
func (r *runner) without(c Cause) *solve.Program {
	if len(r.rig.p.Pulls) == 0 {
		return nil
	}
	p := *r.rig.p
	p.Pulls = append([]solve.Pull(nil), p.Pulls...)
	found := false
	for i := range p.Pulls {
		q := &p.Pulls[i]
		if c == Slack {
			found, q.MinZ = true, 0
			continue
		}
		kind := map[Cause]int{Tilt: 1, CableAngle: 2, WorkingLoad: 3}[c]
		if kind < len(q.Cones) {
			found = true
			q.Cones = append([]solve.Cone(nil), q.Cones...)
			q.Cones[kind].C = math.Inf(1)
		}
	}
	if !found {
		return nil
	}
	return &p
}
