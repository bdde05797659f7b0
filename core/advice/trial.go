package advice

import (
	"cohoist/core/agility"
	"cohoist/core/check"
	"cohoist/core/plan"
	"cohoist/core/solve"
)

// aim is what a changed plan must reach: these checks hold, and not thinly when nothing failed before.
type aim struct {
	ids  []string
	thin bool // thin is not good enough
	base *lift
}

// costly are the checks that need more than the share of the load, asked last.
var costly = map[string]int{"com": 1, "bending": 2, "deflection": 2, "ideal-share": 2, "control-reserve": 3}

// newAim wants the named checks, cheap ones first, and always a balance.
func newAim(l *lift, ids []string, thin bool) aim {
	a := aim{ids: []string{"balance"}, thin: thin, base: l}
	for cost := range 4 {
		for _, id := range ids {
			if id != "balance" && costly[id] == cost {
				a.ids = append(a.ids, id)
			}
		}
	}
	return a
}

// likely tells that a plan has a balance and, when the aim is thrust, that the cheapest share (5.10)
// is within what the aim allows: what does not pass is not good, and one solve tells.
func (a aim) likely(p plan.Plan) bool {
	m := a.base.model(p, true)
	if m == nil {
		return false
	}
	r := a.base.solver.Solve(m.Even(0))
	switch {
	case r.Status != solve.Optimal:
		return false
	case !held(a.ids, "thrust"):
		return true
	case a.thin:
		return r.T <= 0.9*p.Limits.Utilisation*(1+1e-9)
	}
	return r.T <= p.Limits.Utilisation*(1+check.Edge)
}

// good tells that a plan, its defaults filled in, reaches the aim. It stops at the first check that
// does not hold.
func (a aim) good(p plan.Plan) bool {
	f, ok := a.facts(p)
	if !ok {
		return false
	}
	for _, id := range a.ids {
		a.complete(&f, id)
		if !a.enough(check.Ask(id, f).Status) {
			return false
		}
	}
	return true
}

// enough tells that a check's answer will do.
func (a aim) enough(s check.Status) bool {
	switch s {
	case check.OK, check.NotApplicable, check.NeedsInput:
		return true
	case check.Thin:
		return !a.thin
	}
	return false
}

// facts shares the load of a plan.
func (a aim) facts(p plan.Plan) (check.Facts, bool) {
	m := a.base.model(p, true)
	if m == nil {
		return check.Facts{}, false
	}
	f := check.Facts{Plan: p, Model: m, Solver: a.base.solver}
	f.Answer = m.Share(f.Solver)
	return f, f.Answer.Status != solve.Infeasible && f.Answer.Parts != nil
}

// complete works out what a costly check looks at.
func (a aim) complete(f *check.Facts, id string) {
	switch costly[id] {
	case 2:
		if f.Bent == nil && f.Held == nil {
			f.Bent, f.Held = check.Bend(*f), check.Hold(*f)
		}
	case 3:
		if f.Model.Rigid {
			f.Moves = agility.Of(f.Model, f.Answer, f.Solver)
		}
	}
}
