package share

import (
	"cohoist/core/air"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Motion is how the body moves at one instant.
type Motion struct {
	Attitude     vec.M3 // body axes → level axes
	Velocity     vec.V3 // of the body's centre of mass, m/s, level axes
	Acceleration vec.V3 // of the same, m/s², level axes
	Spin         vec.V3 // rad/s, body axes
	SpinRate     vec.V3 // rad/s², body axes
}

// Moving is the model at one instant of a motion: its balance is that of rest with every mass times its acceleration
// counted as one more drag, (20.8). Drag is that of the air as the body meets it. A vehicle on a cable shares the
// acceleration of its attachment, as in (7.4). What hangs from one line or point alone swings about it: no moment is asked
// for there, but what the forces make, (20.16).
func (m *Model) Moving(v Motion) *Model {
	n := new(Model)
	m.MoveTo(n, v)
	return n
}

// MoveTo makes n the model in a motion, like Moving, in the room that n has from a call before.
func (m *Model) MoveTo(n *Model, v Motion) {
	craft := append(n.Craft[:0], m.Craft...)
	*n = *m
	n.Craft = craft
	n.Attitude, n.Up, n.Settled = v.Attitude, v.Attitude.T().Mul(vec.V3{0, 0, 1}), true
	n.Wind = m.Wind.Sub(v.Velocity)
	n.load()
	a := v.Attitude.T().Mul(v.Acceleration)
	at := func(point vec.V3) vec.V3 {
		r := point.Sub(m.Body.COM)
		return a.Add(v.SpinRate.Cross(r)).Add(v.Spin.Cross(v.Spin.Cross(r)))
	}
	j := m.Body.Inertia
	n.Need = n.Need.Add(a.Scale(m.Body.Mass))
	n.NeedTurn = n.NeedTurn.Add(j.Mul(v.SpinRate)).Add(v.Spin.Cross(j.Mul(v.Spin)))
	for i := range n.Craft {
		c := &n.Craft[i]
		own := at(c.At).Scale(c.Vehicle.Mass)
		c.Drag = c.Drag.Sub(own)
		if c.Wash != 0 {
			press, turn := m.press(c, own)
			n.Need, n.NeedTurn = n.Need.Add(press), n.NeedTurn.Add(turn) // (22.3)
		}
	}
	for _, h := range m.Hung {
		f := at(h.At).Scale(h.Mass)
		n.Need = n.Need.Add(f)
		n.NeedTurn = n.NeedTurn.Add(h.At.Sub(m.Body.COM).Cross(f))
	}
	if line, arm, hinged := m.Hinge(); hinged {
		free := arm.Cross(n.Need)
		if line == (vec.V3{}) {
			n.NeedTurn = free
			return
		}
		n.NeedTurn = n.NeedTurn.Add(line.Scale(line.Dot(free.Sub(n.NeedTurn)))) // (20.16)
	}
}

// Hinge tells that everything hangs on cables from attachments in one straight line (its direction is returned) or in one
// point (the zero vector), and how it lies from the centre of mass: the nearest point of it, body axes.
func (m *Model) Hinge() (line, arm vec.V3, hinged bool) {
	if m.Rigid || !m.Cables {
		return line, arm, false
	}
	first, far := m.Craft[0].At, 0.0
	for _, c := range m.Craft {
		if d := c.At.Sub(first); d.Norm() > far {
			far, line = d.Norm(), d.Unit()
		}
	}
	for _, c := range m.Craft {
		if c.At.Sub(first).Cross(line).Norm() > 1e-9*far {
			return vec.V3{}, arm, false
		}
	}
	arm = first.Sub(m.Body.COM)
	return line, arm.Sub(line.Scale(line.Dot(arm))), true
}

// Air is the drag on what moves as one at a motion, N, level axes.
func (m *Model) Air(attitude vec.M3, velocity vec.V3) vec.V3 {
	v := attitude.T().Mul(m.Wind.Sub(velocity))
	d := air.Drag(m.Density, m.DragArea, v)
	for i := range m.Craft {
		if c := &m.Craft[i]; c.Rigid {
			a := c.Vehicle.DragArea
			d = d.Add(air.Drag(m.Density, vec.V3{a, a, a}, v))
		}
	}
	return attitude.Mul(d)
}

// Upright is the attitude of a team that heads by yaw, radians, and gives the body a force, N, level axes: level with
// cables; else leant by the smallest turn that takes the full-thrust axis to the force, (5.9).
func (m *Model) Upright(yaw float64, force vec.V3) vec.M3 {
	turn := vec.Rot(vec.V3{0, 0, yaw})
	if m.Cables {
		return turn
	}
	return Align(turn.Mul(m.Axis), force.Unit()).MulM(turn)
}

// Spread adds to a program of the same cables the leaning of an answer that keeps the vehicles apart, (5.18), for
// pulls that are factor times those of the answer.
func (m *Model) Spread(p *solve.Program, apart *Apart, factor float64) {
	m.spread(p, apart, func(int, float64) float64 { return factor })
}

// SpreadFor is Spread for pulls of given lengths, N, in the order of the program.
func (m *Model) SpreadFor(p *solve.Program, apart *Apart, pulls []vec.V3) {
	m.spread(p, apart, func(i int, radius float64) float64 { return pulls[i].Norm() * flatness / radius })
}

func (m *Model) spread(p *solve.Program, apart *Apart, factor func(i int, radius float64) float64) {
	if apart == nil {
		return
	}
	for i, discs := range apart.cones {
		for _, d := range discs {
			f := factor(i, d.C)
			p.Pulls[i].Cones = append(p.Pulls[i].Cones, solve.Cone{Flat: true, B: d.B.Scale(f), C: float64(d.C * f)})
		}
	}
}
