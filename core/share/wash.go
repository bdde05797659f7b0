package share

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// Keep is the part of a vehicle's thrust that its wakes leave: on a cable the pull that counts for the payload over the pull, (22.3).
func (c *Craft) Keep() float64 { return 1 - c.Wash }

// Arm is where that pull acts, payload frame: the attachment, moved away from where the wakes press, (22.3).
func (c *Craft) Arm() vec.V3 {
	if c.Wash == 0 {
		return c.At
	}
	return c.At.Sub(c.Under.Scale(c.Wash)).Scale(1 / c.Keep()) // (22.3)
}

// Own is the thrust that a vehicle on a cable needs for itself, N, (5.4), in the measure of the pull that counts.
func (c *Craft) Own() vec.V3 { return c.itself().Scale(c.Keep()) }

// itself is the thrust that a vehicle on a cable needs for itself, N, (5.4).
func (c *Craft) itself() vec.V3 { return vec.V3{0, 0, float64(c.Vehicle.Mass * Gravity)}.Sub(c.Drag) }

// pressed is what the wakes of vehicles on cables press with for their own sake alone, on the body, N and N m about its centre of
// mass: φ times what each thrusts for itself, (22.3).
func (m *Model) pressed() (force, moment vec.V3) {
	for i := range m.Craft {
		if c := &m.Craft[i]; c.Wash != 0 {
			f, turn := m.press(c, c.itself())
			force, moment = force.Add(f), moment.Add(turn)
		}
	}
	return force, moment
}

// press is φ times a thrust of a vehicle on a cable, where its wakes press on the body, N, N m about its centre of mass, (22.3).
func (m *Model) press(c *Craft, thrust vec.V3) (force, moment vec.V3) {
	force = thrust.Scale(c.Wash)
	return force, c.Under.Sub(m.Body.COM).Cross(force) // (22.3)
}

// download is the force of a rigid hold's wakes on the payload, N, and where it acts, (22.2).
func (c *Craft) download(u []float64) (force, at vec.V3) {
	whole := 0.0
	for j := range c.Rotors {
		r := &c.Rotors[j]
		x := r.Wash * u[j]
		force, at, whole = force.Sub(r.Axis.Scale(x)), at.Add(r.Under.Scale(x)), whole+x
	}
	if whole == 0 {
		return force, c.At
	}
	return force, at.Scale(1 / whole)
}

// Bare is the model with nothing near it.
func (m *Model) Bare() *Model {
	if len(m.Craft) == 0 || m.Craft[0].Near == nil {
		return m
	}
	p := m.Plan
	p.Near = plan.Near{}
	return New(p, m.Payload, m.DragArea, m.Density)
}

// Aloft is the model far from the ground, whose effect is counted in hover alone: what moves, or may sink, must do without it.
func (m *Model) Aloft() *Model {
	if len(m.Craft) == 0 || m.Craft[0].Near == nil || m.Plan.Near.Ground != plan.Counted {
		return m
	}
	n := *m
	n.Plan.Near.Ground = plan.LeftOut
	n.Craft = append([]Craft(nil), m.Craft...)
	for i := range n.Craft {
		c := &n.Craft[i]
		c.scale(func(int) float64 { return 1 / m.Craft[i].Near.Ground })
		near := *c.Near
		near.Ground, near.Height = 1, math.NaN()
		c.Near = &near
	}
	n.trim()
	return &n
}
