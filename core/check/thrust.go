package check

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/share"
)

// Thrust asks how much of its thrust the hardest-working vehicle needs.
var Thrust = Check{
	ID: "thrust", Title: "Thrust margin",
	Doc:      "Thrust needed over thrust available, at the vehicle that works hardest, against the part of it that the crew is willing to use in hover.",
	Limits:   []Limit{air},
	Examples: []Example{{Plan: "beam-pair", Utilisation: 0.870985, Tol: 2e-6, Source: "by hand: (4/2 + 3.4) g over 0.8 × 76 N, (8.1)"}},
	Run:      thrust,
}

// shared is the equation of each policy.
var shared = map[string]string{plan.EvenEffort: "(5.10)", plan.LeastSquares: "(5.11)", plan.Equal: "(5.12)", plan.EqualEndurance: "(18.20)"}

func thrust(f Facts) Outcome {
	if f.Answer.Parts == nil {
		return noBalance()
	}
	at := worst(len(f.Answer.Parts), func(i int) float64 { return f.Answer.Parts[i].Utilisation })
	least, pull := math.Inf(1), 0
	for i, p := range f.Answer.Parts {
		for _, u := range p.Rotor {
			if u < least {
				least, pull = u, i
			}
		}
	}
	c, p := f.Model.Craft[at], f.Answer.Parts[at]
	limit := f.Plan.Limits.Utilisation
	var w working
	need, most, lift := p.Effort, c.Vehicle.ThrustMax, 1.0
	if c.Near != nil {
		lift = c.Near.Worst()
	}
	what := "of its thrust"
	if c.Rigid {
		need, most, lift = rotorAtWorst(c, p)
		what = "of the thrust of its hardest-working rotor"
		w.add("u", need, "N", "THEORY "+shared[f.Answer.Policy]+washed(c), "%v", need)
	} else {
		w.add("fx", p.Thrust[0], "N", "THEORY (5.4)", "%v - %v", p.Force[0], c.Drag[0])
		w.add("fy", p.Thrust[1], "N", "THEORY (5.4)", "%v - %v", p.Force[1], c.Drag[1])
		w.add("fz", p.Thrust[2], "N", "THEORY (5.4)", "%v + %v*%v - %v", p.Force[2], c.Vehicle.Mass, share.Gravity, c.Drag[2])
		w.add("u", need, "N", "THEORY (5.4)", "hypot(hypot(fx, fy), fz)")
		if c.Wash != 0 {
			w.add("D", c.Wash*need, "N", "THEORY (22.3): of it presses on the payload", "%v*u", c.Wash)
		}
	}
	available(&w, f, c, most, lift)
	w.add("t", need/most, "1", "THEORY (5.5)", "u/T")
	w.add("U", limit, "1", given, "%v", limit)
	capacity := w.add("C", limit*most, "N", "THEORY (8.1)", "U*T")
	w.add("n", need/capacity, "1", "THEORY (8.1)", "u/C")
	o := Outcome{Where: c.ID, Demand: need, Capacity: capacity, Unit: "N", Steps: w}
	o.Sentence = c.ID + " needs " + percent(need/most) + " " + what + "; the limit is " + percent(limit) + "."
	if need > most*(1+Edge) {
		o.Sentence = c.ID + " would need " + percent(need/most) + " " + what + ": it cannot lift its part." + atLimit(f)
	}
	if least < -1e-9*f.Model.Weight() {
		o.Status = Fail
		o.Where = f.Model.Craft[pull].ID
		o.Sentence = "By this policy a rotor of " + o.Where + " would have to pull down with " + say(-least, "N") + ", which it cannot."
	}
	return o
}

// washed names the wash in the source of the thrust needed.
func washed(c share.Craft) string {
	if c.Near == nil || c.Near.Share() == 0 {
		return ""
	}
	return " with (22.2)"
}

// available works out the thrust available, in one rotor or all; lift is what the wakes of others leave of it.
func available(w *working, f Facts, c share.Craft, most, lift float64) {
	w.air(f.Plan.Site)
	class, rotors := f.Plan.Vehicles[c.Class], float64(len(c.Rotors))
	if c.Rigid {
		rotors = 1
	}
	if c.Near == nil || c.Near.Ground == 1 && lift == 1 {
		w.add("T", most, "N", "THEORY (4.3), "+given, "%v*%v*rho/1.225", rotors, class.RotorThrustMax)
		return
	}
	w.add("T_0", most/(c.Near.Ground*lift), "N", "THEORY (4.3), "+given, "%v*%v*rho/1.225", rotors, class.RotorThrustMax)
	w.add("r_g", c.Near.Ground, "1", "THEORY (22.1): the ground", "%v", c.Near.Ground)
	w.add("x", lift, "1", "THEORY (22.7): wakes of others", "%v", lift)
	w.add("T", most, "N", "at the same power", "T_0*r_g*x")
}

// atLimit says who of a team that is too weak works hardest, and so what runs out.
func atLimit(f Facts) string {
	var who []string
	for i, p := range f.Answer.Parts {
		if p.Utilisation >= f.Answer.T*(1-1e-4) {
			who = append(who, f.Model.Craft[i].ID)
		}
	}
	switch n := len(f.Answer.Parts); {
	case n == 1 || f.Answer.Policy != plan.EvenEffort:
		return ""
	case len(who) == n:
		return " All are at the same limit: what runs out is lift, and " + say(lacking(f), "N") + " more of it would do."
	}
	return " " + share.List(who) + " work hardest while others have thrust left: the load lies too far to their side."
}

// lacking is the thrust that the whole team lacks to be at its full thrust, N, each as short as the worst.
func lacking(f Facts) float64 {
	total := 0.0
	for _, c := range f.Model.Craft {
		total += c.Vehicle.ThrustMax
	}
	return (f.Answer.T - 1) * total
}

// rotorAtWorst is the thrust needed and available at the rotor with the highest utilisation, and what wakes of others leave of the latter.
func rotorAtWorst(c share.Craft, p share.Part) (need, most, lift float64) {
	best := math.Inf(-1)
	lift = 1
	for j, r := range c.Rotors {
		if x := p.Rotor[j] / r.Max; x > best {
			best, need, most = x, p.Rotor[j], r.Max
			if c.Near != nil && c.Near.Lift != nil {
				lift = c.Near.Lift[j]
			}
		}
	}
	return need, most, lift
}
