package scatter

import (
	"math"

	"cohoist/core/near"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// rig is the even-effort program of a lift whose numbers can be put off in place: the same as
// share.New and Even of a plan with those numbers, about a fixed moment point, without building either.
type rig struct {
	m      *share.Model
	p      *solve.Program
	origin vec.V3      // the moment point: Body.COM as planned
	hangs  bool        // the load tips freely about along, or about a point
	along  vec.V3      // the line of the attachments, or zero
	at     vec.V3      // a point of that line
	leans  bool        // a rigid team, which leans in wind
	even   bool        // its rotors push along one axis
	want   vec.V3      // where the full-thrust axis points as planned, level axes
	area   vec.V3      // drag area of all that moves as one, m²
	grip   float64     // mass of the rigid holds, kg
	up     vec.V3      // body axes
	wind   vec.V3      // body axes
	axis   vec.V3      // full-thrust axis
	faces  []near.Face // of the payload, when wakes on it are counted
	room   []share.Rotor
}

func newRig(m *share.Model) *rig {
	g := &rig{m: m, p: m.Even(0), origin: m.Body.COM, leans: m.Rigid && !m.Cables, even: m.Aligned(),
		axis: m.Axis, want: m.Attitude.Mul(m.Axis), area: m.DragArea}
	if m.Plan.Near.Download == plan.Counted {
		g.faces = near.Faces(m.Plan.Payload.Solids)
	}
	for _, c := range m.Craft {
		if c.Rigid {
			a := c.Vehicle.DragArea
			g.area = g.area.Add(vec.V3{a, a, a})
			g.grip += c.Vehicle.Mass
		}
	}
	g.hangs, g.at, g.along = hang(m)
	return g
}

// hang tells that everything hangs on cables from one line (or one point: along is zero), so that
// the load tips about it until it balances, and no forces can or need hold it level, (16.7).
func hang(m *share.Model) (ok bool, at, along vec.V3) {
	if m.Rigid {
		return false, at, along
	}
	at = m.Craft[0].At
	far := 0.0
	for _, c := range m.Craft {
		if d := c.At.Sub(at); d.Norm() > far {
			far, along = d.Norm(), d.Unit()
		}
	}
	for _, c := range m.Craft {
		if c.At.Sub(at).Cross(along).Norm() > 1e-9*far {
			return false, at, along
		}
	}
	return true, at, along
}

// set puts the numbers off by x; false when a rigid team finds no steady lean.
func (g *rig) set(x offset) bool {
	m := g.m
	rho := m.Density * (1 + x[atDensity])
	speed := math.Max(0, m.Plan.Site.Wind+x[atWind])
	mass := m.Payload.Mass * (1 + x[atMass])
	com := vec.V3{x[atCOM], x[atCOM+1], x[atCOM+2]}.Add(m.Payload.COM)
	if !g.turn(x, rho, speed, mass) {
		return false
	}
	q := rho / 2 * speed
	d := vec.V3{q * m.DragArea[0] * g.wind[0], q * m.DragArea[1] * g.wind[1], q * m.DragArea[2] * g.wind[2]} // (3.4)
	load := g.up.Scale(mass * share.Gravity).Sub(d)
	need, turn := load, com.Sub(g.origin).Cross(load) // (5.3)
	line, pull := 0, 0
	for i := range m.Craft {
		c := &m.Craft[i]
		o := x[atCraft+perCraft*i : atCraft+perCraft*(i+1) : atCraft+perCraft*(i+1)]
		thrust := (1 + o[0]) * (1 + x[atDensity]) // (4.3)
		r := g.moved(vec.V3{o[1], o[2], o[3]}).Add(c.At.Sub(g.origin))
		drag := g.wind.Scale(q * c.Vehicle.DragArea)
		if c.Near != nil {
			drag = drag.Add(c.Near.Push) // (22.8)
		}
		if !c.Rigid {
			if c.Wash != 0 { // (22.3): where its wake presses moves with it
				under := r.Add(c.Under.Sub(c.At))
				press := vec.V3{0, 0, c.Vehicle.Mass * share.Gravity}.Sub(drag).Scale(c.Wash)
				need, turn = need.Add(press), turn.Add(under.Cross(press))
				r = r.Sub(under.Scale(c.Wash)).Scale(1 / c.Keep())
			}
			g.cable(&g.p.Pulls[pull], c, r, drag, thrust)
			pull++
			continue
		}
		own := g.up.Scale(c.Vehicle.Mass * share.Gravity).Sub(drag)
		need, turn = need.Add(own), turn.Add(r.Cross(own))
		rotors := c.Rotors
		if g.faces != nil && c.Near != nil && c.Near.Shadows != nil { // where it stands its wakes meet the payload otherwise
			g.room = c.Moved(g.faces, r.Add(g.origin), g.room)
			rotors = g.room
		}
		for j := range rotors {
			rotor, l := &rotors[j], &g.p.Lines[line]
			copy(l.Column[:3], rotor.Force[:])
			t := r.Cross(rotor.Force).Add(rotor.Moment) // (5.1), (22.2)
			l.Column[3], l.Column[4], l.Column[5] = t[0], t[1], t[2]
			l.HiT = rotor.Max * thrust
			line++
		}
	}
	if g.hangs {
		turn = g.hung(need, turn)
	}
	g.p.Wrench = solve.Wrench{need[0], need[1], need[2], turn[0], turn[1], turn[2]}
	return true
}

// cable sets the bounds of one cable.
func (g *rig) cable(q *solve.Pull, c *share.Craft, at, drag vec.V3, thrust float64) {
	own := vec.V3{0, 0, c.Vehicle.Mass * share.Gravity}.Sub(drag).Scale(c.Keep()) // (5.4), (22.3)
	q.At = at
	q.Cones[0].B, q.Cones[0].T = own, c.Vehicle.ThrustMax*thrust*c.Keep() // (5.5)
	q.Cones[1].B, q.Cones[1].C = own, q.Cones[1].Z*own[2]                 // (5.6)
}

// moved is what counts of an attachment's error: of a load that tips, what lies along the line.
func (g *rig) moved(d vec.V3) vec.V3 {
	if g.hangs {
		return g.along.Scale(d.Dot(g.along))
	}
	return d
}

// hung takes from a moment what the load tips until it is gone, (16.7).
func (g *rig) hung(force, turn vec.V3) vec.V3 {
	held := g.at.Sub(g.origin).Cross(force)
	if g.along == (vec.V3{}) {
		return held
	}
	return turn.Sub(g.along.Scale(turn.Sub(held).Dot(g.along)))
}
