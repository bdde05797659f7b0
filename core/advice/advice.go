// Package advice says what stands in the way of a lift, what would do, and what moves the answer
// (THEORY chapter 11).
//
// Restriction: that of the report; each remedy is one change, searched where more of it helps more.
// Geometry: payload frame, SI. Calculation: derivatives from the duals of the even-effort program,
// (11.1); changes that a person would make are solved again, (11.3); remedies are searched on the checks
// that fail, rounded to the safe side, and verified by a whole report, (11.5).
// Verification: derivatives against central differences of solving again; every remedy's plan
// answers its own report; hand cases. References: THEORY chapter 11.
package advice

import (
	"cohoist/core/plan"
	"cohoist/core/report"
)

// Advice is all that there is to say about a plan beyond its report.
type Advice struct {
	Why      []string `json:"why"`      // what runs out, by how much, who is at the limit
	Remedies []Remedy `json:"remedies"` // single changes that would make it lift
	Moves    []Move   `json:"moves"`    // what moves the team's utilisation, the strongest first
}

// Of advises on a plan that plan.Validate accepts. It asks goOn, unless it is nil, before every trial; when
// that says no it stops, and the advice is not whole.
func Of(p plan.Plan, goOn func() bool) (a Advice, whole bool) {
	stopped := false
	going := func() bool {
		stopped = stopped || goOn != nil && !goOn()
		return !stopped
	}
	r := report.Build(p)
	a = Advice{Why: Why(r), Remedies: remedies(p, r, going), Moves: moves(p, going)}
	return a, !stopped
}

// always never stops.
func always() bool { return true }
