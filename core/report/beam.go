package report

import (
	"math"

	"cohoist/core/beam"
	"cohoist/core/check"
)

// Beam is a long payload along x under its weight and the team's forces, body axes (THEORY chapter 9).
type Beam struct {
	From      float64     `json:"from_m"` // payload x of its ends
	To        float64     `json:"to_m"`
	Youngs    float64     `json:"youngs_modulus_pa"`
	Second    [2]float64  `json:"second_moment_m4"` // about y, about z
	Allowable float64     `json:"allowable_stress_pa"`
	Points    []BeamPoint `json:"points"` // for drawing, both sides of every jump
	Holds     []BeamHold  `json:"holds"`
	Shear     BeamPeak    `json:"shear_peak"`      // N, upright
	Moment    BeamPeak    `json:"moment_peak"`     // N m, upright
	Deflect   BeamPeak    `json:"deflection_peak"` // m, in the plane that bends more
	Stress    BeamPeak    `json:"stress_peak"`     // Pa
}

// BeamPoint is one point of the diagrams. Shear, moment and deflection are those in x and z; moment and deflection in x
// and y follow. A positive moment sags; axial force is positive in tension.
type BeamPoint struct {
	X           float64 `json:"x_m"`
	Shear       float64 `json:"shear_n"`
	Moment      float64 `json:"moment_n_m"`
	Axial       float64 `json:"axial_n"`
	Deflection  float64 `json:"deflection_m"`
	MomentLevel float64 `json:"moment_level_n_m"`
	Sideways    float64 `json:"deflection_level_m"`
	Stress      float64 `json:"stress_pa"`
}

// BeamHold is where a vehicle holds the beam, and the upright force it gives, N.
type BeamHold struct {
	ID    string  `json:"id"`
	X     float64 `json:"x_m"`
	Force float64 `json:"force_n"`
}

// BeamPeak is a largest value, with its sign, and its place.
type BeamPeak struct {
	X     float64 `json:"x_m"`
	Value float64 `json:"value"`
}

// Held is what every vehicle would carry if the team held places instead of thrusts, N upwards.
type Held struct {
	Stated bool      `json:"stiffness_stated"` // else all hold stiffly
	Bends  bool      `json:"payload_bends"`
	Tips   bool      `json:"tips"`
	Force  []float64 `json:"force_n"`
	Least  []float64 `json:"least_n"`
	Most   []float64 `json:"most_n"`
	Slack  []bool    `json:"slack"`
}

// steps is how many steps the diagrams take between two knots.
const steps = 12

// bend fills in the beam and the team that holds places.
func (r *Report) bend(f check.Facts) {
	if h := f.Held; h != nil {
		r.Held = &Held{h.Stated, h.Bends, h.Tips, h.Force, h.Least, h.Most, h.Slack}
	}
	if f.Bent == nil {
		return
	}
	m, d := f.Bent.Model, f.Bent.Diagram
	up, level := d.Planes[beam.Upright], d.Planes[beam.Level]
	b := &Beam{From: m.Left, To: m.Right, Youngs: m.Youngs, Second: m.Section.Second, Allowable: m.Allowable}
	for i := range up.Moment.P {
		h := up.Moment.X[i+1] - up.Moment.X[i]
		for j := range steps + 1 {
			s := h * float64(j) / steps
			b.Points = append(b.Points, BeamPoint{up.Moment.X[i] + s, up.Shear.P[i].At(s), up.Moment.P[i].At(s), d.Axial.P[i].At(s),
				up.Deflection.P[i].At(s), level.Moment.P[i].At(s), level.Deflection.P[i].At(s), d.StressIn(i, s)})
		}
	}
	for i, p := range f.Answer.Parts {
		x := math.Min(math.Max(f.Model.Craft[i].At[0], m.Left), m.Right)
		b.Holds = append(b.Holds, BeamHold{f.Model.Craft[i].ID, x, f.Model.Up.Dot(p.Force)})
	}
	peak := func(p beam.Peak) BeamPeak { return BeamPeak{p.X, p.Value} }
	b.Shear, b.Moment = peak(up.Shear.Worst()), peak(up.Moment.Worst())
	w, _ := f.Bent.Worst()
	worst := d.WorstStress()
	b.Deflect, b.Stress = peak(w), BeamPeak{worst.X, worst.Stress}
	r.Beam = b
	r.Notes = append(r.Notes, m.Notes...)
}
