package check

import (
	"math"

	"cohoist/core/beam"
	"cohoist/core/share"
	"cohoist/core/vec"
)

// Bent is the payload as a beam under its weight, its drag and the forces of the team as it shares them.
type Bent struct {
	Model   beam.Model
	Diagram beam.Diagram
	From    float64 // m, payload x of the outermost holds, from which deflection is measured
	To      float64
}

// Bend computes the beam of a plan; nil when the plan has none or there are no forces. Everything counts in
// body axes; drag is borne in proportion to mass (THEORY chapter 9).
func Bend(f Facts) *Bent {
	if f.Model == nil || f.Answer.Parts == nil || !f.Plan.Payload.Beam.Given() {
		return nil
	}
	m, ok := beam.Of(f.Plan.Payload)
	if !ok {
		return nil
	}
	perKg := f.Model.Up.Scale(-share.Gravity)
	if kg := f.Model.Payload.Mass; kg > 0 {
		perKg = perKg.Add(f.Model.Drag.Scale(1 / kg))
	}
	l := m.Weight(perKg)
	b := &Bent{Model: m, From: math.Inf(1), To: math.Inf(-1)}
	for i, p := range f.Answer.Parts {
		hold := m.Act(f.Model.Craft[i].At, p.Force, p.Moment) // (9.3), (5.15)
		l.Points = append(l.Points, hold)
		if p.Download != (vec.V3{}) {
			l.Points = append(l.Points, m.Act(p.Under, p.Download, vec.V3{})) // (22.2)
		}
		b.From, b.To = math.Min(b.From, hold.X), math.Max(b.To, hold.X)
	}
	b.Diagram = m.Bend(l, b.From, b.To)
	return b
}

// unbent is what the checks of a beam say when there is none, or it lacks something; nil otherwise.
func unbent(f Facts, needs ...string) *Outcome {
	say := func(o Outcome) *Outcome { return &o }
	switch {
	case !f.Plan.Payload.Beam.Given():
		return say(none(NotApplicable, "The plan does not say what beam the payload is; give payload.beam.material to have it checked."))
	case f.Answer.Parts == nil:
		return say(noBalance())
	case f.Bent == nil:
		return say(none(NotApplicable, "No box, rod, tube or plate of the payload lies along x, so that it is no beam along x."))
	}
	for _, lack := range f.Bent.Model.Needs {
		for _, n := range needs {
			if lack == n {
				return say(none(NeedsInput, "Give "+lack+" to have the beam checked."))
			}
		}
	}
	return nil
}

// The restrictions of chapter 9, as data.
var (
	slender = Limit{"length over depth of the beam", 10, math.Inf(1), "", func(f Facts) float64 {
		if f.Bent == nil {
			return math.NaN()
		}
		return f.Bent.Model.Slender()
	}}
	straight = Limit{"compression over the buckling load of the beam", 0, 0.1, "", func(f Facts) float64 {
		if f.Bent == nil {
			return math.NaN()
		}
		return f.Bent.Diagram.Buckling() // (9.13)
	}}
	linear = Limit{"deflection over length of the beam", 0, 0.1, "", func(f Facts) float64 {
		if f.Bent == nil {
			return math.NaN()
		}
		w, _ := f.Bent.Worst()
		return math.Abs(w.Value) / (f.Bent.Model.Right - f.Bent.Model.Left)
	}}
)

// Worst is the largest deflection from the line through the outermost holds, and in which plane.
func (b *Bent) Worst() (beam.Peak, beam.Plane) {
	up, level := b.Diagram.Planes[beam.Upright].Deflection.Worst(), b.Diagram.Planes[beam.Level].Deflection.Worst()
	if math.Abs(level.Value) > math.Abs(up.Value) {
		return level, beam.Level
	}
	return up, beam.Upright
}

// upright is the vertical part of a force in body axes, N.
func upright(f Facts, force vec.V3) float64 { return f.Model.Up.Dot(force) }
