package check

import (
	"math"

	"cohoist/core/agility"
)

// ControlReserve asks whether hovering leaves thrust to correct attitude.
var ControlReserve = Check{
	ID: "control-reserve", Title: "Control reserve in hover",
	Doc:    "Angular acceleration about roll and pitch that the rotors can still give while they carry the load, at the weaker axis and way, against what the crew wants kept free. A rigid team turns as one body; on cables every vehicle keeps its own attitude.",
	Limits: []Limit{air},
	Run:    controlReserve,
}

func controlReserve(f Facts) Outcome {
	if f.Answer.Parts == nil {
		return noBalance()
	}
	want := f.Plan.Limits.TurnReserve
	r := agility.Hover(f.Model, f.Answer, f.Moves, f.Solver)
	if math.IsInf(r.Acc, 1) || math.IsNaN(r.Acc) { // the rigid team is beyond full thrust in hover
		r = agility.Reserve{Axis: "roll"}
	}
	var w working
	w.add("α", r.Acc, "rad/s²", "THEORY (7.8)", "%v", r.Acc)
	if r.Where != "" && r.Moment > 0 {
		w = nil
		w.add("M", r.Moment, "N m", "THEORY (7.1)", "%v", r.Moment)
		j := r.Moment / r.Acc
		w.add("J", j, "kg m²", "THEORY (4.4)", "%v", j)
		w.add("α", r.Acc, "rad/s²", "THEORY (7.8)", "M/J")
	}
	w.add("αmin", want, "rad/s²", given, "%v", want)
	who := "The team as one body"
	if r.Where != "" {
		who = r.Where
	}
	o := Outcome{Where: r.Where, Demand: want, Capacity: r.Acc, Unit: "rad/s²",
		Sentence: who + " can still turn with " + say(r.Acc, "rad/s²") + " in " + r.Axis + " while it carries its load; " + say(want, "rad/s²") + " is wanted."}
	if r.Acc > 0 {
		w.add("n", want/r.Acc, "1", "THEORY (8.2)", "αmin/α")
	} else {
		o.Sentence = who + " has no thrust left to correct its attitude; " + say(want, "rad/s²") + " is wanted."
	}
	o.Steps = w
	return o
}
