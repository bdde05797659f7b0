// Package scatter tells what errors in a plan's numbers do to the lift (THEORY chapter 16).
//
// Restriction: that of core/share. The team is as well off as it can be with the true numbers: the
// smallest worst utilisation (5.10), whatever the plan's policy, cables hanging as they like. Errors are independent of
// each other, normal, and cut off at three standard deviations. A payload on cables is held level,
// so the lengths of cables do not matter for the share.
// Geometry: payload frame. Attachments in one line or point let the load tip until it hangs, so that errors
// across the line move nothing.
// Calculation: (16.1) to (16.11).
// Verification: the perturbed program against core/share, closed normal distributions, corners by
// brute force, and another solver on the same samples, in the tests.
// References: THEORY chapter 16.
package scatter

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
)

// Cut is where errors are cut off, in standard deviations: the bound of the worst case.
const Cut = 3

// Most is the most samples of a study; a figure of float64 tells that many strata apart.
const Most = 1 << 24

// Study is a plan with its errors and the number of samples. It does not change once made, so that
// several workers may run parts of it.
type Study struct {
	Plan    plan.Plan // with its defaults filled in
	N       int       // samples
	Errors  []Error   // those that have a spread
	Nominal float64   // utilisation as planned

	Assumptions []string // a sentence for each standard deviation that the plan leaves out

	model  *share.Model
	strata []float64 // standard normal deviates of the strata, (16.3)
	deals  []deal    // who gets which, by error
}

// New prepares a study of n samples of a plan that plan.Validate accepts. The reason is empty unless
// there is nothing to study: a number lacks, or the lift does not balance as planned.
func New(p plan.Plan, n int) (*Study, string) {
	if n < 1 || n > Most {
		return nil, "the number of samples is not between 1 and 16 777 216"
	}
	m, err := share.Of(p)
	if err != nil {
		return nil, err.Error()
	}
	s := &Study{Plan: m.Plan, N: n, model: m}
	if !s.model.Settled {
		return nil, "the body finds no steady lean in this wind"
	}
	r := solve.NewSolver().Solve(s.model.Even(0))
	if r.Status != solve.Optimal {
		return nil, "the lift does not balance as planned"
	}
	s.Nominal = r.T
	var e plan.Errors
	e, s.Assumptions = assume(s.model)
	s.Errors = list(s.model, e)
	s.strata = strata(n)
	s.deals = make([]deal, len(s.Errors))
	for d, e := range s.Errors {
		s.deals[d] = newDeal(p.Seed, e.at, n)
	}
	return s, ""
}

// Offsets are the errors of sample i, in the order of Errors, in their own units: one from every
// stratum of every error over all samples (Latin hypercube), (16.3).
func (s *Study) Offsets(i int) []float64 {
	out := make([]float64, len(s.Errors))
	for d, e := range s.Errors {
		out[d] = e.SD * s.strata[s.deals[d].at(i)]
	}
	return out
}

// strata are the standard normal deviates in the middle of n strata of equal chance, cut off at Cut,
// (16.3).
func strata(n int) []float64 {
	out := make([]float64, n)
	edge := math.Erf(Cut / math.Sqrt2)
	for k := range out {
		out[k] = math.Sqrt2 * math.Erfinv(edge*(float64(2*k+1-n)/float64(n))) // (16.2)
	}
	return out
}

// Variance is that of the standard normal cut off at Cut: 1 − 2 c φ(c)/erf(c/√2), (16.2).
var Variance = 1 - 2*Cut*math.Exp(-Cut*Cut/2.0)/math.Sqrt(2*math.Pi)/math.Erf(Cut/math.Sqrt2)
