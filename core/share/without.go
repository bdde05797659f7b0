package share

import (
	"slices"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// Without is the model after vehicles of m are lost, by their places in m.Craft, (13.1), (13.2). A lost
// rigid vehicle stays in Craft without rotors, for it is still part of the body. A lost vehicle on a
// cable leaves Craft; unless limits.lost has it cut away, it then hangs from its attachment. The rest must hold without the ground, for it may
// sink or rise; wakes on the payload stay those of hover.
func (m *Model) Without(lost ...int) *Model {
	m = m.Aloft()
	n := *m
	n.Craft = make([]Craft, 0, len(m.Craft))
	n.Hung = slices.Clone(m.Hung)
	n.Cables = false
	for i, c := range m.Craft {
		switch {
		case !slices.Contains(lost, i):
			n.Cables = n.Cables || !c.Rigid
		case c.Rigid:
			c.Rotors = nil
		case m.Plan.Limits.Lost == plan.CutAway:
			n.Mass -= c.Vehicle.Mass
			continue
		default:
			n.Hung = append(n.Hung, Hung{At: c.At, Mass: c.Vehicle.Mass, DragArea: c.Vehicle.DragArea})
			continue
		}
		n.Craft = append(n.Craft, c)
	}
	n.trim()
	return &n
}

// fewest is how many rotors a vehicle must have to fly on when one is lost: below, nothing is left to
// balance it about all of roll, pitch and height (common practice, no source).
const fewest = 6

// WithoutRotor is the model after vehicle i of m.Craft loses its rotor j, (13.3). Held rigidly, the
// others make up for it. On a cable the vehicle flies by itself: with six rotors or more it shuts one
// more down and keeps (n − 2)/n of its thrust, with fewer it is lost. It tells which.
func (m *Model) WithoutRotor(i, j int) (n *Model, vehicleLost bool) {
	m = m.Aloft()
	c := m.Craft[i]
	rotors := len(c.Rotors)
	if !c.Rigid && rotors < fewest {
		return m.Without(i), true
	}
	left := *m
	left.Craft = slices.Clone(m.Craft)
	if c.Rigid {
		left.Craft[i].Rotors = slices.Delete(slices.Clone(c.Rotors), j, j+1)
		left.trim()
	} else {
		left.Craft[i].Vehicle.ThrustMax *= float64(rotors-2) / float64(rotors) // (13.3)
	}
	return &left, false
}

// InWind is the model in another steady wind, m/s, towards a direction in degrees, anticlockwise from x.
func (m *Model) InWind(speed, to float64) *Model {
	n := *m
	n.Plan.Site.Wind, n.Plan.Site.WindTo = speed, to
	n.Wind = wind(n.Plan.Site)
	n.Craft = slices.Clone(m.Craft)
	n.trim()
	return &n
}

// trim finds the lean anew, from level.
func (m *Model) trim() {
	m.Lean, m.Attitude, m.Up, m.Settled = vec.V3{}, vec.Identity, vec.V3{0, 0, 1}, true
	m.lean()
}

// Blow is what a steady wind of 1 m/s towards a direction in degrees does to a team that is held level:
// the wrench that it asks of the team, and the shift of every vehicle's thrust, N, in the order of
// Craft. Drag grows with the square of the speed, so that t times this is a wind of √t m/s, (15.1).
func (m *Model) Blow(to float64) (force, moment vec.V3, drags []vec.V3) {
	n := m.InWind(1, to)
	n.Body.Mass, n.Hung = 0, slices.Clone(m.Hung) // nothing weighs, so that only drag is left
	for i := range n.Craft {
		n.Craft[i].Vehicle.Mass, n.Craft[i].Near = 0, nil
	}
	for i := range n.Hung {
		n.Hung[i].Mass = 0
	}
	n.load()
	for _, c := range n.Craft {
		drags = append(drags, c.Drag)
	}
	return n.Need, n.NeedTurn, drags
}
