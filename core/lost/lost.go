// Package lost asks what is left of a team when vehicles or rotors fail (THEORY chapter 13).
//
// Restriction: the steady state after the loss, not how the team gets there: what a falling vehicle
// does to its cable and to others is not asked. Survivors share as evenly as they can, whatever the
// plan's policy, and do not lean apart to keep their separation.
// Geometry: that of core/share.
// Calculation: (13.1) to (13.5), one smallest worst utilisation (5.10) for every loss.
// Verification: drop-outs of rings, hand cases, and the shares of plans written without the lost one,
// in the tests.
// References: THEORY chapter 13.
package lost

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
)

// Kind is what is lost.
type Kind uint8

// The kinds of loss.
const (
	Vehicle Kind = iota
	Pair
	Rotor
)

// AnyRotor stands for the rotor of a vehicle whose rotors are all alike to the load: one on a cable.
const AnyRotor = -1

// Entry is one loss and what is left.
type Entry struct {
	Kind        Kind
	Lost        []string     // ids; of a Rotor its vehicle
	Rotor       int          // of a Rotor: which, from 0, or AnyRotor
	Grounded    bool         // of a Rotor: too few are left, so that the vehicle is lost, (13.3)
	Status      solve.Status // Optimal, Infeasible: nothing balances; Unsolved
	Utilisation float64      // of the hardest-working survivor; +Inf: nothing balances; NaN: not solved
	Bound       float64      // proven lower bound on it
	Residual    float64      // of the balance, as the solver's: over the force of the load
	Lines       []Line       // of one Vehicle whose loss the others hold: what their cables bear
}

// Line is what one cable bears when a vehicle is lost, (13.5).
type Line struct {
	ID          string
	Before      float64 // N
	After       float64 // N, when all has come to rest
	Peak        float64 // N, in the first swing
	WorkingLoad float64 // N; NaN: not given
}

// Study is every loss asked for.
type Study struct {
	Entries  []Entry // vehicles, pairs, rotors, in the order of the team
	Limit    float64 // the crew's utilisation limit
	Rule     string  // what becomes of a lost vehicle on a cable, plan.DeadWeight or CutAway; empty: there is none
	Vehicles Summary
	Pairs    Summary
	Rotors   Summary
	Taut     string // a sentence on what the cables bear; empty: no cable, or nothing held
	Stopped  bool   // tell asked to stop: the entries and summaries are of what was asked until then
}

// mostPairs is up to how many vehicles pairs are asked, and singleRotors rotors one by one: beyond,
// the answer would take seconds.
const (
	mostPairs    = 40
	singleRotors = 200
)

// Of asks every loss of one vehicle, of two, and of one rotor. Tell, if it is not nil, hears how many of
// all losses are answered and may return false to stop.
func Of(m *share.Model, s *solve.Solver, tell func(done, all int) bool) Study {
	t := &table{m: m, s: s, study: Study{Limit: m.Plan.Limits.Utilisation}}
	if m.Cables {
		t.study.Rule = plan.DeadWeight
		if m.Plan.Limits.Lost == plan.CutAway {
			t.study.Rule = plan.CutAway
		}
	}
	losses := t.list()
	var all [3]int
	for _, l := range losses {
		all[l.kind]++
	}
	t.hover()
	for i, l := range losses {
		if tell != nil && !tell(i, len(losses)) {
			t.study.Stopped = true
			break
		}
		t.ask(l)
	}
	if tell != nil && !t.study.Stopped {
		tell(len(losses), len(losses))
	}
	t.study.summarise(all, len(m.Craft))
	return t.study
}

// loss is what to take away, by places in the team.
type loss struct {
	kind Kind
	i, j int // vehicles; of a Rotor the vehicle and the rotor
}

// table is a study in the making.
type table struct {
	m      *share.Model
	s      *solve.Solver
	study  Study
	before []float64 // N, of every vehicle's cable in hover; nil: hover is not held
}

// list is every loss to ask: vehicles, pairs, rotors.
func (t *table) list() []loss {
	n := len(t.m.Craft)
	var out []loss
	for i := range n {
		out = append(out, loss{Vehicle, i, i})
	}
	for i := range n {
		for j := i + 1; j < n && n <= mostPairs; j++ {
			out = append(out, loss{Pair, i, j})
		}
	}
	for i := range n {
		if c := t.m.Craft[i]; !c.Rigid {
			out = append(out, loss{Rotor, i, AnyRotor})
		} else if n <= singleRotors {
			for j := range c.Rotors {
				out = append(out, loss{Rotor, i, j})
			}
		}
	}
	return out
}

// ask answers one loss.
func (t *table) ask(l loss) {
	e := Entry{Kind: l.kind, Lost: []string{t.m.Craft[l.i].ID}, Rotor: AnyRotor}
	var left *share.Model
	switch l.kind {
	case Vehicle:
		left = t.m.Without(l.i)
	case Pair:
		e.Lost = append(e.Lost, t.m.Craft[l.j].ID)
		left = t.m.Without(l.i, l.j)
	case Rotor:
		e.Rotor = l.j
		left, e.Grounded = t.m.WithoutRotor(l.i, l.j)
	}
	if e.Grounded { // answered among the vehicles
		v := t.study.Entries[l.i]
		e.Status, e.Utilisation, e.Bound, e.Residual = v.Status, v.Utilisation, v.Bound, v.Residual
	} else {
		t.solve(&e, left, l.i)
	}
	t.study.Entries = append(t.study.Entries, e)
}

// solve fills in the smallest worst utilisation of what is left, (13.4).
func (t *table) solve(e *Entry, left *share.Model, gone int) {
	e.Status, e.Utilisation, e.Bound, e.Residual = solve.Unsolved, math.NaN(), math.NaN(), math.NaN()
	if !left.Settled {
		return
	}
	p := left.Even(0)
	r := t.s.Solve(p)
	e.Status = r.Status
	switch r.Status {
	case solve.Optimal:
		e.Utilisation, e.Bound, e.Residual = r.T, r.Bound, r.Residual
		if e.Kind == Vehicle && t.before != nil && r.T <= 1+rounding {
			t.lines(e, p, gone)
		}
	case solve.Infeasible:
		e.Utilisation = math.Inf(1)
	}
}

// rounding is how much above a limit still counts as at it, as in the checks.
const rounding = 1e-6
