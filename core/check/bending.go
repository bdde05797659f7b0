package check

import (
	"math"

	"cohoist/core/beam"
)

// Bending asks whether a long payload bears its own weight where the team holds it.
var Bending = Check{
	ID: "bending", Title: "Bending of the payload",
	Doc:      "The largest normal stress along the payload as a beam, from bending in both planes and the axial force that inclined cables bring, against the stress it may bear. Torsion and local stress at the holds are not in it.",
	Limits:   []Limit{air, straight, linear},
	Examples: []Example{{"handrail-beam", 0.0159348973, 1e-7, "by hand: 1.7 kg over 6 m on three equal forces, largest moment over an outer hold, w 0.9²/2; pipe 35 × 1 mm; 240 MPa over 3"}},
	Run:      bending,
}

func bending(f Facts) Outcome {
	if o := unbent(f, "payload.beam.allowable_stress_pa", "payload.beam.depth_m", "payload.beam.width_m"); o != nil {
		return *o
	}
	m, at := f.Bent.Model, f.Bent.Diagram.WorstStress()
	c := m.Section
	var w working
	w.add("x", at.X, "m", "THEORY (9.8)", "%v", at.X)
	w.add("N", at.Axial, "N", "THEORY (9.3)", "%v", at.Axial)
	w.add("My", at.Moment[beam.Upright], "N m", "THEORY (9.2)", "%v", at.Moment[beam.Upright])
	w.add("Mz", at.Moment[beam.Level], "N m", "THEORY (9.2)", "%v", at.Moment[beam.Level])
	w.add("A", c.Area, "m²", "THEORY (9.6), (9.7)", "%v", c.Area)
	w.add("Wy", c.Modulus[beam.Upright], "m³", "THEORY (9.6), (9.7)", "%v", c.Modulus[beam.Upright])
	w.add("Wz", c.Modulus[beam.Level], "m³", "THEORY (9.6), (9.7)", "%v", c.Modulus[beam.Level])
	expression := "abs(N)/A + abs(My)/Wy + abs(Mz)/Wz"
	switch {
	case c.Round:
		expression = "abs(N)/A + hypot(My, Mz)/Wy"
	case !(c.Modulus[beam.Level] > 0) && at.Moment[beam.Level] == 0:
		expression = "abs(N)/A + abs(My)/Wy"
	}
	stress := w.add("σ", at.Stress, "Pa", "THEORY (9.8)", expression)
	p := f.Plan.Payload.Beam
	if row, ok := beam.MaterialOf(p.Material); ok && !(p.Allowable > 0) {
		strength, source := row.Strength, row.Source
		if p.Strength > 0 {
			strength, source = p.Strength, given
		}
		w.add("R", strength, "Pa", source, "%v", strength)
		w.add("S", p.Factor, "1", given, "%v", p.Factor)
		w.add("σmax", m.Allowable, "Pa", "THEORY (9.8)", "R/S")
	} else {
		w.add("σmax", m.Allowable, "Pa", given, "%v", m.Allowable)
	}
	w.add("n", stress/m.Allowable, "1", "THEORY (9.8)", "σ/σmax")
	return Outcome{Demand: stress, Capacity: m.Allowable, Unit: "Pa", Steps: w,
		Sentence: "The payload is stressed most " + place(at.X) + ": " + say(stress/1e6, "MPa") + " of the " + say(m.Allowable/1e6, "MPa") + " it may bear; the moment there is " +
			say(math.Hypot(at.Moment[0], at.Moment[1]), "N m") + "."}
}

// place says where along the payload.
func place(x float64) string { return "at x = " + say(x, "m") }
