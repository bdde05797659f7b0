package check

import (
	"math"

	"cohoist/core/beam"
)

// Deflection asks how far a long payload bends.
var Deflection = Check{
	ID: "deflection", Title: "Deflection of the payload",
	Doc:      "The largest deflection of the payload as a beam, up or down or sideways, from the straight line through its outermost holds, against a part of its length.",
	Limits:   []Limit{air, slender, straight, linear},
	Examples: []Example{{"handrail-beam", 0.0086559635, 1e-7, "quadrature of M/EI on two million points"}},
	Run:      deflection,
}

func deflection(f Facts) Outcome {
	if o := unbent(f, "payload.beam.youngs_modulus_pa", "payload.beam.depth_m", "payload.beam.width_m"); o != nil {
		return *o
	}
	m := f.Bent.Model
	at, plane := f.Bent.Worst()
	way := map[beam.Plane]string{beam.Upright: " up", beam.Level: " to the left"}[plane]
	if at.Value < 0 {
		way = map[beam.Plane]string{beam.Upright: " down", beam.Level: " to the right"}[plane]
	}
	ratio, size := f.Plan.Payload.Beam.DeflectionMax, math.Abs(at.Value)
	var w working
	w.add("x", at.X, "m", "THEORY (9.5)", "%v", at.X)
	w.add("E", m.Youngs, "Pa", source(f), "%v", m.Youngs)
	w.add("I", m.Section.Second[plane], "m⁴", "THEORY (9.6), (9.7)", "%v", m.Section.Second[plane])
	w.add("EI", m.Stiffness(plane), "N m²", "THEORY (9.4)", "E*I")
	w.add("w", at.Value, "m", "THEORY (9.4), (9.5)", "%v", at.Value)
	w.add("L", m.Right-m.Left, "m", given, "%v - %v", m.Right, m.Left)
	limit := w.add("wmax", ratio*(m.Right-m.Left), "m", given, "%v*L", ratio)
	w.add("n", size/limit, "1", "THEORY (9.5)", "abs(w)/wmax")
	return Outcome{Demand: size, Capacity: limit, Unit: "m", Steps: w,
		Sentence: "The payload bends " + say(1000*size, "mm") + way + " at most, " + place(at.X) + "; " + say(1000*limit, "mm") + " is allowed."}
}

// source says where Young's modulus comes from.
func source(f Facts) string {
	p := f.Plan.Payload.Beam
	if row, ok := beam.MaterialOf(p.Material); ok && !(p.Youngs > 0) {
		return row.Source
	}
	return given
}
