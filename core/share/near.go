package share

import (
	"math"

	"cohoist/core/near"
	"cohoist/core/plan"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// nearRounds bounds the fixed point of places and what is near, (22.9).
const nearRounds = 60

// Beside is what is near every vehicle at an answer of the model, counted or not.
func (m *Model) Beside(parts []Part, terms plan.Near) []near.Effect {
	q := nearQuestion{m: m, bare: m.Craft, scene: near.NewScene(terms, m.Plan.Payload.Solids, m.Density)}
	q.move(parts)
	return q.look()
}

// surroundings finds what is near every vehicle, and how the body leans with it. The shares of a rigid hold's wakes are geometry; where
// cables or thrusts decide it is a fixed point: share the load, look where the vehicles fly, count again, (22.9).
func (m *Model) surroundings() {
	scene := near.NewScene(m.Plan.Near, m.Plan.Payload.Solids, m.Density)
	if scene == nil {
		m.lean()
		return
	}
	q := nearQuestion{m: m, bare: append([]Craft(nil), m.Craft...), scene: scene}
	q.move(nil)
	now, moves := q.look(), false
	for i := range now { // cables lean, and a wake on another vehicle is as strong as the thrust
		moves = moves || !m.Craft[i].Rigid || now[i].Blower >= 0
	}
	var rest near.Rest
	rest.Next(now)
	q.count(now)
	m.lean()
	if !moves {
		return
	}
	s := solve.NewSolver()
	m.NearSettled = false
	for m.NearRounds = 1; m.NearRounds < nearRounds; m.NearRounds++ {
		a, _ := m.shared(s)
		if a.Parts == nil {
			m.NearSettled = true // nobody flies: as if the vehicles hung straight above
			return
		}
		q.move(a.Parts)
		now = q.look()
		if rest.Next(now) <= near.Settled {
			m.NearSettled, m.found = true, found{m, a}
			return
		}
		q.count(now)
		m.lean()
	}
}

// nearQuestion is what is near, in the making.
type nearQuestion struct {
	m     *Model
	bare  []Craft // far from everything
	scene *near.Scene
	team  []near.Flyer
}

// move takes the vehicles to where parts have them; without parts those on cables straight above their attachments, each with the
// part of an equal share.
func (q *nearQuestion) move(parts []Part) {
	if q.team == nil {
		q.team = make([]near.Flyer, len(q.bare))
	}
	for i := range q.bare {
		c, f := &q.bare[i], &q.team[i]
		n, up := len(c.Rotors), vec.V3{0, 0, 1}
		first := f.Places == nil
		if first {
			class := q.m.Plan.Vehicles[c.Class]
			f.Radius, f.Reach, f.DragArea, f.Merit = class.RotorRadius, c.Vehicle.Reach, c.Vehicle.DragArea, class.FigureOfMerit
			f.Places, f.Thrusts, f.Most = make([]vec.V3, n), make([]float64, n), make([]float64, n)
		}
		switch {
		case c.Rigid:
			f.At, up = c.At, c.Axes.Mul(up)
		case parts == nil:
			f.At = c.At.Add(vec.V3{0, 0, c.Length})
		default:
			f.At, up = parts[i].Position, parts[i].Thrust.Unit()
		}
		f.Down = up.Scale(-1)
		if parts != nil {
			copy(f.Thrusts, parts[i].Rotor)
		}
		if c.Rigid && !first {
			continue
		}
		axes := c.Axes
		if !c.Rigid {
			axes = Align(vec.V3{0, 0, 1}, up).MulM(vec.Rot(vec.V3{0, 0, q.m.Plan.Team[i].Yaw * math.Pi / 180}))
		}
		for j := range c.Rotors {
			f.Places[j], f.Most[j] = axes.Mul(c.Vehicle.Rotors[j].At), c.Rotors[j].Max
			if parts == nil {
				f.Thrusts[j] = (q.m.Payload.Mass/float64(len(q.bare)) + c.Vehicle.Mass) * Gravity / float64(n)
			}
		}
	}
}

// look is what is near where the vehicles fly now. What wakes turn a load about the line or point that it hangs from, it tips by: they press
// below that.
func (q *nearQuestion) look() []near.Effect {
	now := q.scene.Look(q.team)
	if line, ok := q.m.InLine(); ok {
		for i := range now {
			now[i].Onto(q.bare[i].At, line)
		}
	}
	return now
}

// count makes what is near part of the vehicles: thrust available by (22.1) and (22.7), wakes on the payload by (22.2), (22.3).
func (q *nearQuestion) count(now []near.Effect) {
	for i := range q.bare {
		c, n := q.bare[i], &now[i]
		c.Near = n
		worst := n.Worst() // on a cable its rotors are alike
		c.scale(func(j int) float64 {
			if c.Rigid && n.Lift != nil {
				return n.Ground * n.Lift[j]
			}
			return n.Ground * worst
		})
		switch {
		case n.Shadows == nil:
		case !c.Rigid:
			c.Wash, c.Under = n.Share(), n.Under(c.At)
		default:
			for j := range c.Rotors {
				c.Rotors[j].press(c.At, &n.Shadows[j])
			}
		}
		q.m.Craft[i] = c
	}
}

// press makes a wake on the payload part of a rotor of a vehicle at a place, (22.2).
func (r *Rotor) press(at vec.V3, s *near.Shadow) {
	back := r.Axis.Scale(-s.Share)
	r.Wash, r.Under = s.Share, s.At
	r.Force, r.Moment = r.Axis.Add(back), r.Turn.Add(s.At.Sub(at).Cross(back)) // (22.2)
}

// Moved are the rotors of a rigid hold that stands at another place, their wakes on the faces of the payload found there, in the room of a call
// before.
func (c *Craft) Moved(faces []near.Face, at vec.V3, room []Rotor) []Rotor {
	room = append(room[:0], c.Rotors...)
	f := near.Rotors{At: at, Down: c.Axes.Mul(vec.V3{0, 0, -1}), Places: make([]vec.V3, 1), Reach: c.Vehicle.Reach, Radius: c.Radius}
	for j := range room {
		f.Places[0] = room[j].At
		s := f.Shadow(0, faces)
		room[j].press(at, &s)
	}
	return room
}

// scale makes the thrust available of each rotor so many times what it is, in rotors of the craft's own.
func (c *Craft) scale(times func(j int) float64) {
	c.Rotors, c.Vehicle.Rotors = append([]Rotor(nil), c.Rotors...), append(c.Vehicle.Rotors[:0:0], c.Vehicle.Rotors...)
	c.Vehicle.ThrustMax = 0
	for j := range c.Rotors {
		x := times(j)
		c.Rotors[j].Max *= x
		c.Vehicle.Rotors[j].Max *= x
		c.Vehicle.ThrustMax += c.Rotors[j].Max
	}
}
