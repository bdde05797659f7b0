package report

import "cohoist/core/plan"

// Build answers a plan. It never modifies the plan; the same plan gives the same report. A plan
// that lacks a number with no honest default gets what can be computed without it, and needs-input.
func Build(p plan.Plan) Report {
	r := Blank()
	for _, m := range p.Team {
		r.Vehicles = append(r.Vehicles, blankVehicle(m.ID))
	}
	r.Sentence = "Not computed yet."
	return r
}
