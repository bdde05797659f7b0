package check

import "math"

// Tilt asks whether every vehicle can lean as far as it must.
var Tilt = Check{
	ID: "tilt", Title: "Tilt of the vehicles",
	Doc:      "Angle between a vehicle's thrust and the vertical, against the most its maker allows.",
	Limits:   []Limit{air, leanRange},
	Examples: []Example{{Plan: "beam-pair", Utilisation: 0, Tol: 1e-3, Source: "by hand: vertical thrusts, (8.3)"}},
	Run:      tilt,
}

func tilt(f Facts) Outcome {
	if f.Answer.Parts == nil {
		return noBalance()
	}
	at := worst(len(f.Answer.Parts), func(i int) float64 {
		return f.Answer.Parts[i].Tilt / f.Model.Craft[i].Vehicle.TiltMax
	})
	c, p := f.Model.Craft[at], f.Answer.Parts[at]
	up := p.Thrust
	source := "THEORY (5.6)"
	if c.Rigid {
		up = f.Model.Attitude.MulM(c.Axes).Mul([3]float64{0, 0, 1})
		source = "THEORY (5.9)"
	}
	var w working
	w.add("h", math.Hypot(up[0], up[1]), "", source, "hypot(%v, %v)", up[0], up[1])
	angle := w.add("θ", degrees(p.Tilt), "°", source, "atan2(h, %v)*180/pi", up[2])
	limit := w.add("Θ", degrees(c.Vehicle.TiltMax), "°", given, "%v", degrees(c.Vehicle.TiltMax))
	w.add("n", angle/limit, "1", "THEORY (8.3)", "θ/Θ")
	return Outcome{Where: c.ID, Demand: angle, Capacity: limit, Unit: "°", Steps: w,
		Sentence: c.ID + " leans " + say(angle, "°") + "; " + say(limit, "°") + " is allowed."}
}
