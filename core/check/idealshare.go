package check

import (
	"math"
	"strings"

	"cohoist/core/share"
)

// IdealShare asks what the vehicles carry when they hold their places instead of their thrusts.
var IdealShare = Check{
	ID: "ideal-share", Title: "Share if the team holds its places",
	Doc:    "A team that holds places rather than commanded thrusts shares the load as springs do: a stiff payload may hang almost wholly on two of four, a beam most on its inner holds. The vehicle that then works hardest, length errors included, against the part of its thrust that the crew is willing to use. Asked when the stiffness of every hold is given.",
	Limits: []Limit{air},
	Run:    idealShare,
}

func idealShare(f Facts) Outcome {
	h := f.Held
	switch {
	case h == nil:
		return none(NotApplicable, "Balance alone says who carries: it is the same whether the vehicles hold thrusts or places.")
	case h.Tips:
		return none(NotApplicable, "There are no upright forces that hold this load in place.")
	}
	worst, n := -1, math.Inf(-1)
	for i, c := range f.Model.Craft {
		if x := (h.Most[i] + c.Vehicle.Mass*share.Gravity) / c.Vehicle.ThrustMax; x > n {
			worst, n = i, x
		}
	}
	c, limit := f.Model.Craft[worst], f.Plan.Limits.Utilisation
	var w working
	force := w.add("R", h.Most[worst], "N", "THEORY (9.9) to (9.12)", "%v", h.Most[worst])
	need := w.add("u", force+c.Vehicle.Mass*share.Gravity, "N", "THEORY (9.14)", "R + %v*%v", c.Vehicle.Mass, share.Gravity)
	w.add("T", c.Vehicle.ThrustMax, "N", "THEORY (4.3), "+given, "%v", c.Vehicle.ThrustMax)
	w.add("U", limit, "1", given, "%v", limit)
	capacity := w.add("C", limit*c.Vehicle.ThrustMax, "N", "THEORY (8.1)", "U*T")
	w.add("n", need/capacity, "1", "THEORY (9.14)", "u/C")
	o := Outcome{Where: c.ID, Demand: need, Capacity: capacity, Unit: "N", Steps: w, Sentence: heldWords(f, worst)}
	if !h.Stated {
		o.Status = NotApplicable
		o.Sentence += " Give the stiffness of every hold to have this checked."
	}
	return o
}

// heldWords says what the worst vehicle would carry, against its part of the commanded share, and who goes slack.
func heldWords(f Facts, worst int) string {
	h := f.Held
	way, might := "If all hold their places stiffly", " would carry "
	if h.Stated {
		way = "Holding places with the stated stiffness"
	}
	if h.Stated && h.Measured || !h.Stated && !h.Bends {
		might = " may carry up to "
	}
	s := way + ", " + f.Model.Craft[worst].ID + might + percent(h.Most[worst]/weight(f)) + " of the load"
	if f.Answer.Parts != nil {
		s += " instead of " + percent(upright(f, f.Answer.Parts[worst].Force)/weight(f))
	}
	s += "."
	var slack []string
	for i, is := range h.Slack {
		if is {
			slack = append(slack, f.Model.Craft[i].ID)
		}
	}
	if len(slack) > 0 {
		s += " " + strings.Join(slack, ", ") + " would go slack: it would have to push."
	}
	return s
}
