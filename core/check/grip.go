package check

import (
	"math"
)

// Grip asks whether the rigid holds are strong enough.
var Grip = Check{
	ID: "grip", Title: "Loads on the grips",
	Doc:    "Force and moment that a rigid hold passes to the payload at the vehicle's place, against what the grip may bear; the worse of the two at the worst grip.",
	Limits: []Limit{air, leanRange},
	Run:    grip,
}

func grip(f Facts) Outcome {
	if !f.Model.Rigid {
		return none(NotApplicable, "There are no rigid holds.")
	}
	if f.Answer.Parts == nil {
		return noBalance()
	}
	lacks := ""
	for i, c := range f.Model.Craft {
		h := f.Plan.Team[i].Hold
		if c.Rigid && lacks == "" && (math.IsNaN(h.GripForceMax) || math.IsNaN(h.GripMomentMax)) {
			lacks = c.ID
		}
	}
	load := func(i int) float64 {
		if !f.Model.Craft[i].Rigid {
			return math.NaN()
		}
		force := f.Answer.Parts[i].Force.Norm() / f.Plan.Team[i].Hold.GripForceMax
		moment := f.Answer.Parts[i].Moment.Norm() / f.Plan.Team[i].Hold.GripMomentMax
		if math.IsNaN(force) || moment > force {
			return moment
		}
		return force
	}
	at := worst(len(f.Model.Craft), load)
	if at < 0 {
		big := worst(len(f.Model.Craft), func(i int) float64 {
			if !f.Model.Craft[i].Rigid {
				return math.NaN()
			}
			return f.Answer.Parts[i].Force.Norm() / f.Model.Weight()
		})
		p := f.Answer.Parts[big]
		return none(NeedsInput, "The grip of "+f.Model.Craft[big].ID+" passes "+say(p.Force.Norm(), "N")+" and "+
			say(p.Moment.Norm(), "N m")+", the most of all; give what the grips may bear to have this checked.")
	}
	o := gripRow(f, at)
	if lacks != "" && load(at) <= 1+Edge {
		o.Status = NeedsInput
		o.Sentence += " What the grip of " + lacks + " may bear is missing in part."
	}
	return o
}

// gripRow is the row of the worst grip: its force or its moment, whichever is nearer to its limit.
func gripRow(f Facts, i int) Outcome {
	c, p, h := f.Model.Craft[i], f.Answer.Parts[i], f.Plan.Team[i].Hold
	var w working
	force := w.add("F", p.Force.Norm(), "N", "THEORY (5.15)", "hypot(hypot(%v, %v), %v)", p.Force[0], p.Force[1], p.Force[2])
	moment := w.add("M", p.Moment.Norm(), "N m", "THEORY (5.15)", "hypot(hypot(%v, %v), %v)", p.Moment[0], p.Moment[1], p.Moment[2])
	if byMoment := math.IsNaN(h.GripForceMax) || moment/h.GripMomentMax > force/h.GripForceMax; byMoment {
		w.add("Mmax", h.GripMomentMax, "N m", given, "%v", h.GripMomentMax)
		w.add("n", moment/h.GripMomentMax, "1", "THEORY (8.8)", "M/Mmax")
		return Outcome{Where: c.ID, Demand: moment, Capacity: h.GripMomentMax, Unit: "N m", Steps: w,
			Sentence: "The grip of " + c.ID + " bears a moment of " + say(moment, "N m") + "; it may bear " + say(h.GripMomentMax, "N m") + "."}
	}
	w.add("Fmax", h.GripForceMax, "N", given, "%v", h.GripForceMax)
	w.add("n", force/h.GripForceMax, "1", "THEORY (8.8)", "F/Fmax")
	return Outcome{Where: c.ID, Demand: force, Capacity: h.GripForceMax, Unit: "N", Steps: w,
		Sentence: "The grip of " + c.ID + " bears a force of " + say(force, "N") + "; it may bear " + say(h.GripForceMax, "N") + "."}
}
