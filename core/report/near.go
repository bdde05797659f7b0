package report

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/share"
)

// telling is the part of a vehicle's thrust from which a term that is left out is worth a word, and mostFaces up to how many pairs of rotors
// and solids it is looked for.
const (
	telling   = 0.02
	mostFaces = 4000
)

// beside says what is left out of the thrust needed but would take more than a little of it.
func (r *Report) beside(m *share.Model, a share.Answer) {
	n := m.Plan.Near
	if a.Parts == nil || n.Download == plan.Counted && n.Wakes == plan.Counted || len(m.Craft)*max(len(m.Craft), len(m.Plan.Payload.Solids)) > mostFaces {
		return
	}
	n.Ground = plan.LeftOut
	worst, who := [2]float64{telling, telling}, [2]string{}
	left := [2]bool{n.Download != plan.Counted, n.Wakes != plan.Counted}
	n.Download, n.Wakes = plan.Counted, plan.Counted
	for i, near := range m.Beside(a.Parts, n) {
		for k, x := range [2]float64{near.Share(), 1 - near.Worst()} {
			if left[k] && x > worst[k]*(1+1e-6) {
				worst[k], who[k] = x, m.Craft[i].ID
			}
		}
	}
	for k, what := range [2]string{"Wash on the payload", "The wake of another vehicle"} {
		if who[k] != "" {
			r.LeftOut = append(r.LeftOut, what+" is left out of the thrust needed, but takes about "+figures(math.Round(100*worst[k]))+" % of the thrust of "+who[k]+".")
		}
	}
}
