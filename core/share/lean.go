package share

import (
	"math"

	"cohoist/core/air"
	"cohoist/core/plan"
	"cohoist/core/vec"
)

// leanTolerance is where the fixed point (5.9) has settled: change of the wanted direction per round.
const leanTolerance = 1e-14

// leanRounds bounds the rounds of the fixed point. In winds that vehicles fly in, ten are enough.
const leanRounds = 200

// LeanMax is the lean in degrees up to which drag areas per payload axis still say something (common practice, no
// source).
const LeanMax = 30

// wind is the velocity of the air in level axes.
func wind(s plan.Site) vec.V3 {
	sin, cos := math.Sincos(s.WindTo * math.Pi / 180)
	return vec.V3{s.Wind * cos, s.Wind * sin, 0}
}

// lean finds the attitude in which the rigid team's full-thrust axis points along weight minus
// drag, by repeating (5.9), and with it drag and the wrench that the team must give. A team with
// cables is held level.
func (m *Model) lean() {
	m.Axis = m.fullThrustAxis()
	m.load()
	if !m.Rigid || m.Cables {
		return
	}
	change, step := math.Inf(1), 1.0
	want := m.Axis
	for range leanRounds {
		aim := m.Attitude.Mul(m.weightInBody().Sub(m.bodyDrag())).Unit()
		next := want.Scale(1 - step).Add(aim.Scale(step)).Unit()
		moved := next.Sub(want).Norm()
		if moved > change { // swinging about the fixed point: take half steps
			step = math.Max(step/2, 0.125)
		}
		change, want = moved, next
		m.Lean = between(m.Axis, want)
		m.Attitude = vec.Rot(m.Lean)
		m.Up = m.Attitude.T().Mul(vec.V3{0, 0, 1})
		m.load()
		if change < leanTolerance {
			m.Settled = true
			return
		}
	}
	m.Settled = change < 1e-9
}

// load sets drag and the wrench that the team must give the body, (5.3), at the present attitude.
func (m *Model) load() {
	v := m.Attitude.T().Mul(m.Wind)
	m.Drag = air.Drag(m.Density, m.DragArea, v)
	m.Need = m.weightInBody().Sub(m.Drag)
	m.NeedTurn = m.Payload.COM.Sub(m.Body.COM).Cross(m.Drag).Scale(-1)
	for i := range m.Craft {
		c := &m.Craft[i]
		a := c.Vehicle.DragArea
		c.Drag = air.Drag(m.Density, vec.V3{a, a, a}, v)
		if c.Near != nil {
			c.Drag = c.Drag.Add(c.Near.Push) // (22.8)
		}
		if c.Rigid {
			m.Need = m.Need.Sub(c.Drag)
			m.NeedTurn = m.NeedTurn.Sub(c.At.Sub(m.Body.COM).Cross(c.Drag))
		}
	}
	for _, h := range m.Hung {
		pull := m.Up.Scale(h.Mass * Gravity).Sub(air.Drag(m.Density, vec.V3{h.DragArea, h.DragArea, h.DragArea}, v))
		m.Need = m.Need.Add(pull) // (13.2)
		m.NeedTurn = m.NeedTurn.Add(h.At.Sub(m.Body.COM).Cross(pull))
	}
	press, turn := m.pressed()
	m.Need, m.NeedTurn = m.Need.Add(press), m.NeedTurn.Add(turn) // (22.3)
}

// weightInBody is the force that holds up the weight of the body, N, body axes.
func (m *Model) weightInBody() vec.V3 { return m.Up.Scale(m.Body.Mass * Gravity) }

// bodyDrag is the drag on everything that moves as one, N, body axes.
func (m *Model) bodyDrag() vec.V3 { return m.weightInBody().Sub(m.Need) }

// fullThrustAxis is the direction in which the rigid holds push when all their rotors give all they
// can; straight up when they cancel or there are none.
func (m *Model) fullThrustAxis() vec.V3 {
	var sum vec.V3
	var total float64
	for _, c := range m.Craft {
		for _, r := range c.Rotors {
			if c.Rigid {
				sum = sum.Add(r.Force.Scale(r.Max))
				total += r.Max
			}
		}
	}
	if sum.Norm() <= 1e-9*total {
		return vec.V3{0, 0, 1}
	}
	return sum.Unit()
}

// between is the rotation vector of the smallest turn that takes unit vector a to unit vector b.
func between(a, b vec.V3) vec.V3 {
	n := a.Cross(b)
	angle := math.Atan2(n.Norm(), a.Dot(b))
	if n.Norm() == 0 {
		if a.Dot(b) >= 0 {
			return vec.V3{}
		}
		n = a.Cross(vec.V3{1, 0, 0})
		if n.Norm() < 0.5 {
			n = a.Cross(vec.V3{0, 1, 0})
		}
	}
	return n.Unit().Scale(angle)
}

// Align is the smallest turn that takes unit vector a to unit vector b, as a matrix.
func Align(a, b vec.V3) vec.M3 { return vec.Rot(between(a, b)) }

// Aligned tells that all rotors of the rigid holds push along one axis.
func (m *Model) Aligned() bool {
	for _, c := range m.Craft {
		for _, r := range c.Rotors {
			if c.Rigid && r.Axis.Cross(m.Axis).Norm() > 1e-9 {
				return false
			}
		}
	}
	return true
}
