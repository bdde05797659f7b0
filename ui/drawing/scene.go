package drawing

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/vec"
	"cohoist/ui/figure"
)

// Scene is a plan with its report, placed: level axes, metres, newtons. What cannot be placed is
// left out and named in Missing.
type Scene struct {
	Turn     vec.M3 // payload axes to level axes: the lean of a rigid team in wind
	Bodies   []body
	Craft    []Craft
	COM      vec.V3 // of the payload
	HasCOM   bool
	TeamCOM  vec.V3 // of payload and vehicles, for a team with rigid holds
	HasTeam  bool
	Weight   float64 // of the payload, N; NaN when not known
	Wind     vec.V3  // direction it blows towards, times m/s
	Limit    float64 // utilisation the crew accepts
	Lean     float64 // of the body, degrees
	PayMin   vec.V3  // bounds of the solids, payload axes
	PayMax   vec.V3
	HasPay   bool
	Missing  []string
	Selected int // index into Craft, −1 for none

	keep *keep
}

// Craft is one vehicle, where it flies.
type Craft struct {
	Index       int // in the plan's team
	ID          string
	Cable       bool
	Attach      vec.V3
	Centre      vec.V3
	Axes        vec.M3 // vehicle axes to level axes
	Rotors      int
	Plus        bool
	Arm, Radius float64 // 0 when not known
	Force       vec.V3  // on the payload, N
	HasForce    bool
	Use         float64 // utilisation, NaN when not known
	Tilt        float64
}

const gravity = 9.80665 // m/s², standard (3rd CGPM, 1901), exact

// Limit on utilisation when the plan states none; the plan's own default.
const usualLimit = 0.8

// Over says that the vehicle is beyond what the crew accepts.
func (s *Scene) Over(c Craft) bool { return c.Use > s.Limit*(1+1e-9) }

func newScene(p plan.Plan, r report.Report, selected string, memory *keep) *Scene {
	s := &Scene{Turn: vec.Identity, Selected: -1, Weight: r.Payload.Mass * gravity, Limit: p.Limits.Utilisation}
	if !figure.Finite(s.Limit) || s.Limit <= 0 {
		s.Limit = usualLimit
	}
	if l := r.Team.Lean; usable3(l) {
		s.Lean = l.Norm()
		s.Turn = vec.Rot(l.Scale(math.Pi / 180))
	}
	pay := memory.payload(p.Payload.Solids, s.Turn)
	s.Bodies, s.PayMin, s.PayMax, s.HasPay, s.keep = pay.bodies, pay.min, pay.max, pay.any, memory
	s.Missing = append(s.Missing, pay.missing...)
	com := r.Payload.COM
	if p.Payload.COM != nil { // what the plan states is on the screen before the report catches up
		com = *p.Payload.COM
	}
	if usable3(com) {
		s.COM, s.HasCOM = s.Turn.Mul(com), true
	}
	rigid := false
	for i, m := range p.Team {
		rigid = rigid || m.Hold.Kind == plan.Rigid
		var v report.Vehicle
		known := i < len(r.Vehicles) && r.Vehicles[i].ID == m.ID
		if known {
			v = r.Vehicles[i]
		}
		s.addCraft(i, m, p.Vehicles[m.Vehicle], v, known)
		if n := len(s.Craft); n > 0 && s.Craft[n-1].Index == i && m.ID == selected && s.Selected < 0 {
			s.Selected = n - 1
		}
	}
	if c := r.Team.COM; rigid && usable3(c) {
		s.TeamCOM, s.HasTeam = s.Turn.Mul(c), true
	}
	if w := p.Site.Wind; usable(w) && w > 0 {
		a := or(p.Site.WindTo, 0) * math.Pi / 180
		s.Wind = vec.V3{w * math.Cos(a), w * math.Sin(a), 0}
	}
	return s
}

func (s *Scene) addCraft(i int, m plan.Member, class plan.Class, v report.Vehicle, known bool) {
	if !usable3(m.Attach) {
		s.Missing = append(s.Missing, "vehicle "+m.ID+", which has no attachment yet")
		return
	}
	c := Craft{Index: i, ID: m.ID, Cable: m.Hold.Kind == plan.Cable, Rotors: min(max(class.Rotors, 0), 12),
		Plus: class.Layout == plan.Plus, Use: math.NaN(), Tilt: math.NaN()}
	if usable(class.Arm) && class.Arm > 0 {
		c.Arm = class.Arm
	}
	if usable(class.RotorRadius) && class.RotorRadius > 0 {
		c.Radius = class.RotorRadius
	}
	c.Attach = s.Turn.Mul(m.Attach)
	c.Centre = c.Attach
	up := vec.V3{0, 0, 1}
	if known {
		c.Use, c.Tilt = v.Utilisation, v.Tilt
		if usable3(v.Force) {
			c.Force, c.HasForce = s.Turn.Mul(v.Force), true
		}
		if usable3(v.ThrustVector) && v.ThrustVector[2] > 0 {
			up = v.ThrustVector.Unit()
		}
	}
	yaw := or(m.Yaw, 0) * math.Pi / 180
	spin := vec.Rot(vec.V3{0, 0, yaw})
	if c.Cable {
		along := vec.V3{0, 0, 1}
		if c.HasForce && c.Force.Norm() > 0 && c.Force[2] > 0 {
			along = c.Force.Unit()
		}
		switch { // from the plan first: it is ahead of its report while something is dragged
		case usable(m.Hold.Length) && m.Hold.Length > 0:
			c.Centre = c.Attach.Add(along.Scale(m.Hold.Length))
		case known && usable3(v.Position):
			c.Centre = s.Turn.Mul(v.Position)
		}
		tip := vec.V3{0, 0, 1}.Cross(up) // about this the vehicle tips to thrust along up
		if n := tip.Norm(); n > 0 {
			tip = tip.Scale(math.Atan2(n, up[2]) / n)
		}
		c.Axes = s.Turn.MulM(vec.Rot(tip)).MulM(spin)
	} else {
		const d = math.Pi / 180
		lean := vec.V3{d * or(m.Hold.Lean[0], 0), d * or(m.Hold.Lean[1], 0), 0}
		c.Axes = s.Turn.MulM(vec.Rot(lean)).MulM(spin)
	}
	s.Craft = append(s.Craft, c)
}

// rotor returns the centre of rotor j.
func (c Craft) rotor(j int) vec.V3 {
	a := 2 * math.Pi * float64(j) / float64(c.Rotors)
	if !c.Plus {
		a += math.Pi / float64(c.Rotors)
	}
	return c.Centre.Add(c.Axes.Mul(vec.V3{c.Arm * math.Cos(a), c.Arm * math.Sin(a), 0}))
}

// reach is how far the vehicle extends from its centre.
func (c Craft) reach() float64 { return c.Arm + c.Radius }

// or returns x, or d when x was left out or cannot be used.
func or(x, d float64) float64 {
	if !figure.Finite(x) {
		return d
	}
	return x
}
