package advice

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Move is how one number of the plan moves the utilisation of the hardest-working vehicle.
type Move struct {
	ID       string  `json:"id"`       // path of the number, its vehicle in Who
	Who      string  `json:"who"`      // vehicle, or ""
	Toward   string  `json:"toward"`   // where the step points, when it is not the number itself
	Unit     string  `json:"unit"`     // of Step
	Step     float64 `json:"step"`     // a change that a person would make
	Rate     float64 `json:"rate"`     // exact derivative of the even-effort utilisation (5.10) per Unit; NaN for another policy
	Up       float64 `json:"up"`       // change of the policy's utilisation for +Step, found by solving again; NaN: no balance, or not solved
	Down     float64 `json:"down"`     // the same for −Step
	Verified bool    `json:"verified"` // Up and Down were found by solving again; else they are Rate · Step
	Kink     bool    `json:"kink"`     // Up and Down do not lie on one line: who works hardest changes
	Lost     bool    `json:"lost"`     // the step leaves no balance, one way or the other
	Effect   float64 `json:"effect"`   // the larger of the two as a size, by which the list is ranked
	Sentence string  `json:"sentence"`
}

// verified is how many numbers are solved again at most; those are the ones with the largest rates.
const verified = 150

// Moves ranks what moves team.utilisation of a plan that plan.Validate accepts. Empty when there is
// no balance to move.
func Moves(p plan.Plan) []Move { return moves(p, always) }

func moves(p plan.Plan, going func() bool) []Move {
	l := newLift(p, going)
	if l == nil {
		return nil
	}
	m := l.model(l.plan, false)
	if m == nil {
		return nil
	}
	t := l.utilisation(m)
	if math.IsNaN(t) {
		return nil
	}
	duals := solve.NewSolver() // of its own: its answer must outlive the others
	r := duals.Solve(m.Even(0))
	exact := plan.WithinLimits(l.plan.Policy) && r.Status == solve.Optimal
	knobs := l.knobs()
	moves := make([]Move, len(knobs))
	for i := range knobs {
		k := &knobs[i]
		moves[i] = Move{ID: k.id, Who: k.who, Unit: k.unit, Step: k.step, Rate: math.NaN()}
		if exact {
			moves[i].Rate = l.rate(k, &r)
		}
	}
	for _, i := range largest(moves) {
		k, v := &knobs[i], &moves[i]
		v.Up, v.Down, v.Verified = l.change(k, k.step, t), math.NaN(), true
		if k.step <= k.least {
			v.Down = l.change(k, -k.step, t)
		}
		v.Lost = math.IsNaN(v.Up) || math.IsNaN(v.Down) && k.step <= k.least
	}
	for i := range moves {
		moves[i].finish()
	}
	if plane, ok := l.plane(moves, t); ok {
		plane.finish()
		moves = append(moves, plane)
	}
	ranked := make([]Move, len(moves))
	for rank, i := range order(len(moves), func(i, j int) bool { return moves[i].Effect > moves[j].Effect*(1+1e-6) }) {
		ranked[rank] = moves[i]
		ranked[rank].Sentence = moves[i].say()
	}
	return ranked
}

// order is the numbers below n, those that come before others first, else as they are.
func order(n int, before func(i, j int) bool) []int {
	list := make([]int, n)
	for i := range list {
		list[i] = i
	}
	for i := range list {
		for j := i; j > 0 && before(list[j], list[j-1]); j-- {
			list[j], list[j-1] = list[j-1], list[j]
		}
	}
	return list
}

// largest are the moves to solve again: all, or those with the largest rates.
func largest(moves []Move) []int {
	size := func(i int) float64 { return math.Abs(moves[i].Rate * moves[i].Step) }
	if len(moves) <= verified {
		return order(len(moves), func(int, int) bool { return false })
	}
	return order(len(moves), func(i, j int) bool { return size(i) > size(j) })[:verified]
}

// change solves again with a knob turned and tells how much the utilisation moved; NaN: no balance.
func (l *lift) change(k *knob, d, t float64) float64 {
	m := l.model(k.turned(l.plan, d), k.payload)
	if m == nil {
		return math.NaN()
	}
	return l.utilisation(m) - t // (11.3)
}

// utilisation is the worst vehicle's by the plan's policy; NaN without balance. Of even-effort it is
// t of (5.10): keeping vehicles apart, (5.18), adds up to 1/1000 of it by rounds that a derivative
// would feel as noise.
func (l *lift) utilisation(m *share.Model) float64 {
	if plan.WithinLimits(l.plan.Policy) {
		if r := l.solver.Solve(m.Even(0)); r.Status == solve.Optimal {
			return r.T
		}
		return math.NaN()
	}
	a := m.Share(l.solver)
	if a.Parts == nil || a.Residual > share.Balanced {
		return math.NaN()
	}
	return a.T
}

// kinked is how far from one line the two changes may be before the derivative is no longer told.
const kinked = 0.1

func (v *Move) finish() {
	if !v.Verified {
		v.Up, v.Down = v.Rate*v.Step, -v.Rate*v.Step
	}
	v.Effect = 0
	for _, x := range [2]float64{v.Up, v.Down} {
		if math.Abs(x) > v.Effect {
			v.Effect = math.Abs(x)
		}
	}
	v.Kink = math.Abs(v.Up+v.Down) > kinked*v.Effect
}

// plane is the centre of mass moved the worst way in the plane: along the gradient, or, where the
// answer has a kink, the worst of the ways towards the vehicles and of 16 around.
func (l *lift) plane(moves []Move, t float64) (Move, bool) {
	var gradient vec.V3
	for _, v := range moves {
		for k := range 2 {
			if v.ID == "payload.com_m."+axes[k] {
				gradient[k] = v.Rate
			}
		}
	}
	ways := l.ways()
	if gradient.Norm() > 0 {
		ways = append([]vec.V3{gradient.Unit()}, ways...)
	}
	best := Move{ID: "payload.com_m", Unit: "m", Step: l.lengthStep(), Rate: math.NaN(), Up: math.NaN(), Verified: true}
	var at vec.V3
	for _, way := range ways {
		k := knob{payload: true, turn: func(p *plan.Plan, d float64) { l.shift(p, way.Scale(d)) }}
		if up := l.change(&k, best.Step, t); up > best.Up || math.IsNaN(best.Up) && !math.IsNaN(up) {
			if best.Up > 0 && up < best.Up*(1+1e-6) {
				continue
			}
			best.Up, best.Down, at = up, l.change(&k, -best.Step, t), way
			best.Rate = gradient.Dot(way)
		}
	}
	if math.IsNaN(best.Up) {
		return best, false
	}
	best.Toward = l.towards(at)
	return best, true
}
