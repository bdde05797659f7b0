package check

import (
	"math"

	"cohoist/core/vec"
)

// Separation asks whether the vehicles keep clear of each other.
var Separation = Check{
	ID: "separation", Title: "Distance between vehicles",
	Doc:      "Centre to centre, the pair that is nearest to what it must keep: the crew's own separation for vehicles that fly on cables, and never less than the two reaches (arm and rotor radius), at which rotor tips can touch.",
	Limits:   []Limit{air},
	Examples: []Example{{Plan: "beam-pair", Utilisation: 0.7, Tol: 1e-4, Source: "by hand: 1.4 m over 2 m, (8.7)"}},
	Run:      separation,
}

func separation(f Facts) Outcome {
	if f.Answer.Parts == nil {
		return noBalance()
	}
	n := len(f.Answer.Parts)
	if n < 2 {
		return none(NotApplicable, "There is one vehicle.")
	}
	at := worst(n*n, func(k int) float64 {
		if i, j := k/n, k%n; i < j {
			return math.Min(1e9, apart(f, i, j)/between(f, i, j).Norm()) // in one point: 1e9
		}
		return math.NaN()
	})
	a, b := at/n, at%n
	ca, cb := f.Model.Craft[a], f.Model.Craft[b]
	d := between(f, a, b)
	var w working
	tips := w.add("R", ca.Vehicle.Reach+cb.Vehicle.Reach, "m", "THEORY (8.7)", "%v + %v", ca.Vehicle.Reach, cb.Vehicle.Reach)
	need := tips
	if ca.Rigid && cb.Rigid {
		w.add("s", tips, "m", "THEORY (8.7): both rigid", "R")
	} else {
		need = w.add("s", apart(f, a, b), "m", given, "max(R, %v)", f.Plan.Limits.Separation)
	}
	w.add("d", d.Norm(), "m", "THEORY (5.16)", "hypot(hypot(%v, %v), %v)", d[0], d[1], d[2])
	where := ca.ID + " " + cb.ID
	o := Outcome{Where: where, Demand: need, Capacity: d.Norm(), Unit: "m",
		Sentence: ca.ID + " and " + cb.ID + " are " + say(d.Norm(), "m") + " apart; they must keep " + say(need, "m") + "."}
	if d.Norm() > 0 {
		w.add("n", need/d.Norm(), "1", "THEORY (8.7)", "s/d")
	}
	o.Steps = w
	return o
}

// apart is the distance that vehicles i and j must keep, m.
func apart(f Facts, i, j int) float64 {
	a, b := f.Model.Craft[i], f.Model.Craft[j]
	tips := a.Vehicle.Reach + b.Vehicle.Reach
	if a.Rigid && b.Rigid {
		return tips
	}
	return math.Max(tips, f.Plan.Limits.Separation)
}

// between is the vector from the centre of vehicle i to that of j.
func between(f Facts, i, j int) vec.V3 {
	return f.Answer.Parts[j].Position.Sub(f.Answer.Parts[i].Position)
}
