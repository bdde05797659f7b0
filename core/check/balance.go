package check

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
)

// Balance asks whether forces and moments add up to nothing.
var Balance = Check{
	ID: "balance", Title: "Forces and moments balance",
	Doc:      "The team's forces and moments on the body must add up to its weight less its drag. What is left over is measured against the weight, moments against the weight at one metre.",
	Limits:   []Limit{air, leanRange},
	Refs:     []string{"iso-2533", "boyd-convex"},
	Examples: []Example{{Plan: "beam-pair", Utilisation: 0, Tol: 1, Source: "a residual below 1e-9, (5.13)"}},
	Run:      balance,
}

// air is the range of the standard atmosphere's lowest layer, where the density formula holds.
var air = Limit{What: "the altitude", Lo: -500, Hi: 11000, Unit: "m", // ISO 2533, troposphere
	Of: func(f Facts) float64 { return f.Plan.Site.Altitude }}

// leanRange is where the drag of a leaning body still says something.
var leanRange = Limit{What: "the lean of the body in the wind", Lo: 0, Hi: share.LeanMax, Unit: "°",
	Of: func(f Facts) float64 { return degrees(f.Model.Lean.Norm()) }}

func balance(f Facts) Outcome {
	a := f.Answer
	if a.None != nil {
		o := none(Fail, a.None.Sentence)
		o.Demand, o.Capacity, o.Unit = a.None.Need, math.Max(0, a.None.Have), a.None.Unit
		return o
	}
	if a.Parts == nil {
		return none(Unsolved, "The balance was not solved.")
	}
	var w working
	weight := f.Model.Weight()
	name, mass := "payload and rigid vehicles", f.Model.Body.Mass
	if mass == 0 {
		name, mass = "team", f.Model.Mass
	}
	w.add("M", mass, "kg", "THEORY (2.2): "+name, "%v", mass)
	w.add("W", weight, "N", exact, "M*%v", share.Gravity)
	w.add("dF", a.Force.Norm(), "N", "THEORY (5.3)", "hypot(hypot(%v, %v), %v)", a.Force[0], a.Force[1], a.Force[2])
	w.add("dM", a.Moment.Norm(), "N m", "THEORY (5.3)", "hypot(hypot(%v, %v), %v)", a.Moment[0], a.Moment[1], a.Moment[2])
	w.add("r", a.Residual, "1", "THEORY (5.13)", "max(dF/W, dM/(W*1))")
	o := Outcome{Demand: a.Residual, Capacity: share.Balanced, Unit: "1", Steps: w}
	o.Sentence = "Forces and moments add up to better than a billionth of the weight."
	if a.Residual > share.Balanced {
		o.Status = Fail
		o.Sentence = "This sharing leaves " + say(a.Force.Norm(), "N") + " and " + say(a.Moment.Norm(), "N m") +
			" unbalanced; the load would not stay where it is."
		if !plan.WithinLimits(a.Policy) && a.Status == solve.Optimal {
			o.Sentence += " Another policy balances it."
		}
		return o
	}
	o.Status = OK
	return o
}
