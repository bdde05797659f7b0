package check

import (
	"math"

	"cohoist/core/share"
)

// CableAngle asks whether the cables stay within the cone that the crew allows.
var CableAngle = Check{
	ID: "cable-angle", Title: "Cable angle",
	Doc:      "Angle of the cable furthest from the vertical, against the cone that the crew allows. A leaning cable pulls harder than a hanging one by 1/cos of the angle.",
	Limits:   []Limit{air, clear},
	Refs:     []string{"ashley-sling-angles"},
	Examples: []Example{{Plan: "beam-pair", Utilisation: 0, Tol: 1e-3, Source: "by hand: vertical cables, (8.4)"}},
	Run:      cableAngle,
}

// clear is the shortest cable that keeps the rotors off the payload, in reaches of the vehicle.
var clear = Limit{What: "the shortest cable over its vehicle's reach", Lo: 1, Hi: math.Inf(1), Unit: "",
	Of: func(f Facts) float64 {
		least := math.NaN()
		for _, c := range f.Model.Craft {
			if x := c.Length / c.Vehicle.Reach; !c.Rigid && !(x >= least) {
				least = x
			}
		}
		return least
	}}

func cableAngle(f Facts) Outcome {
	if !f.Model.Cables {
		return none(NotApplicable, "There are no cables.")
	}
	if f.Answer.Parts == nil {
		return dropped(f, share.DropCone, "The cables would have to lean further than their cone allows.")
	}
	at := worst(len(f.Answer.Parts), func(i int) float64 { return f.Answer.Parts[i].CableAngle }) // rigid: NaN
	c, p := f.Model.Craft[at], f.Answer.Parts[at]
	var w working
	w.add("Fh", math.Hypot(p.Force[0], p.Force[1]), "N", "THEORY (5.2)", "hypot(%v, %v)", p.Force[0], p.Force[1])
	angle := w.add("γ", degrees(p.CableAngle), "°", "THEORY (5.7)", "atan2(Fh, %v)*180/pi", p.Force[2])
	limit := w.add("Γ", f.Plan.Limits.Cone, "°", given, "%v", f.Plan.Limits.Cone)
	w.add("n", angle/limit, "1", "THEORY (8.4)", "γ/Γ")
	return Outcome{Where: c.ID, Demand: angle, Capacity: limit, Unit: "°", Steps: w,
		Sentence: "The cable of " + c.ID + " leans " + say(angle, "°") + " from the vertical; " + say(limit, "°") + " is allowed."}
}

// Tension asks whether every cable stays taut.
var Tension = Check{
	ID: "tension", Title: "Cables stay taut",
	Doc:      "A cable pulls and never pushes, and a slack one snatches when it comes taut again. The vertical pull of the slackest cable, against the least that the crew wants in it.",
	Limits:   []Limit{air},
	Examples: []Example{{Plan: "beam-pair", Utilisation: 0.0254929, Tol: 1e-6, Source: "by hand: 0.5 N over 2 g, (8.5)"}},
	Run:      tension,
}

func tension(f Facts) Outcome {
	if !f.Model.Cables {
		return none(NotApplicable, "There are no cables.")
	}
	if f.Answer.Parts == nil {
		return dropped(f, share.DropTension, "Not every cable could be kept taut.")
	}
	at := worst(len(f.Answer.Parts), func(i int) float64 {
		if f.Model.Craft[i].Rigid {
			return math.NaN()
		}
		return -f.Answer.Parts[i].Force[2] / f.Model.Weight()
	})
	c, p := f.Model.Craft[at], f.Answer.Parts[at]
	demand := f.Plan.Limits.TensionMin
	var w working
	w.add("Fz", p.Force[2], "N", "THEORY (5.8)", "%v", p.Force[2])
	w.add("Fmin", demand, "N", given, "%v", demand)
	o := Outcome{Where: c.ID, Demand: demand, Capacity: p.Force[2], Unit: "N",
		Sentence: "The slackest cable, of " + c.ID + ", still pulls up with " + say(p.Force[2], "N") + "; " + say(demand, "N") + " is wanted."}
	if p.Force[2] <= 0 {
		o.Status, o.Steps = Fail, w
		o.Sentence = "The cable of " + c.ID + " would have to push with " + say(-p.Force[2], "N") + ": it is slack and carries nothing."
		return o
	}
	w.add("n", demand/p.Force[2], "1", "THEORY (8.5)", "Fmin/Fz")
	o.Steps = w
	return o
}

// WorkingLoad asks whether the lines are strong enough.
var WorkingLoad = Check{
	ID: "working-load", Title: "Working load of the lines",
	Doc:      "Pull in the cable nearest to its working load, which the maker of the line states with its design factor in it.",
	Refs:     []string{"doe-1090"},
	Examples: []Example{{Plan: "beam-pair", Utilisation: 0.0490333, Tol: 1e-6, Source: "by hand: 2 g over 400 N, (8.6)"}},
	Run:      workingLoad,
}

func workingLoad(f Facts) Outcome {
	if !f.Model.Cables {
		return none(NotApplicable, "There are no cables.")
	}
	if f.Answer.Parts == nil {
		return dropped(f, share.DropWorkingLoad, "A line would have to bear more than its working load.")
	}
	lacks := ""
	for _, c := range f.Model.Craft {
		if !c.Rigid && math.IsNaN(c.WorkingLoad) && lacks == "" {
			lacks = c.ID
		}
	}
	at := worst(len(f.Answer.Parts), func(i int) float64 { // rigid, or not given: NaN
		return f.Answer.Parts[i].Tension / f.Model.Craft[i].WorkingLoad
	})
	if at < 0 {
		return none(NeedsInput, "Give the working load of the lines (that of "+lacks+" is missing) to have this checked.")
	}
	c, p := f.Model.Craft[at], f.Answer.Parts[at]
	var w working
	w.add("F", p.Tension, "N", "THEORY (5.2)", "hypot(hypot(%v, %v), %v)", p.Force[0], p.Force[1], p.Force[2])
	w.add("S", c.WorkingLoad, "N", given, "%v", c.WorkingLoad)
	w.add("n", p.Tension/c.WorkingLoad, "1", "THEORY (8.6)", "F/S")
	o := Outcome{Where: c.ID, Demand: p.Tension, Capacity: c.WorkingLoad, Unit: "N", Steps: w,
		Sentence: "The cable of " + c.ID + " pulls " + say(p.Tension, "N") + " of its working load of " + say(c.WorkingLoad, "N") + "."}
	if lacks != "" {
		if p.Tension <= c.WorkingLoad*(1+Edge) {
			o.Status = NeedsInput
		}
		o.Sentence += " The working load of " + lacks + " is missing."
	}
	return o
}

// dropped is the outcome of a bound on cables when there is no balance: fail when leaving out that
// bound alone would give one.
func dropped(f Facts, d share.Drop, sentence string) Outcome {
	if f.Answer.None != nil && f.Answer.None.Dropped&d != 0 {
		return none(Fail, sentence+" Without this limit there would be a balance.")
	}
	return noBalance()
}
