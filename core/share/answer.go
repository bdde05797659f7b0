package share

import (
	"math"

	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Part is one vehicle's part of the lift. Body axes, which are level when there are cables.
type Part struct {
	Rotor       []float64 // thrust of each rotor, N; on cables the thrust in equal parts
	Thrust      vec.V3    // N; rigid: the sum of its rotors
	Effort      float64   // N: cable |f|; rigid: the sum of its rotors' thrusts
	Force       vec.V3    // on the payload, N; rigid: net of its own weight and drag, (5.15)
	Download    vec.V3    // with which its wakes press on the payload, N, (22.2)
	Under       vec.V3    // where, payload frame
	Moment      vec.V3    // on the payload at the vehicle's place, N m, (5.15); zero on cables
	Tension     float64   // N; NaN: no cable
	CableAngle  float64   // from vertical, radians; NaN: no cable
	Utilisation float64   // thrust needed / available, (5.5)
	Tilt        float64   // of its thrust axis from vertical, radians
	Position    vec.V3    // of its centre, payload frame, (5.16)
}

// Answer is a shared load with its evidence.
type Answer struct {
	Status   solve.Status // Optimal: Parts hold; Infeasible: NoBalance says why
	Policy   string
	T        float64 // utilisation of the worst vehicle
	Bound    float64 // proven lower bound on the smallest worst utilisation
	Residual float64 // largest imbalance over weight, and over weight × 1 m, (5.13)
	Force    vec.V3  // what is left unbalanced, N, body axes
	Moment   vec.V3  // the same, N m about the body's centre of mass
	Parts    []Part
	None     *NoBalance
	Apart    *Apart       // how the cables lean to keep the vehicles apart
	Even     solve.Result // the solver's own answer, with its certificate
}

// parts turns forces along the rotors and on the cables into the parts of the vehicles.
func (m *Model) parts(u []float64, cable []vec.V3) []Part {
	parts := make([]Part, len(m.Craft))
	rotors := 0
	for _, c := range m.Craft {
		rotors += len(c.Rotors)
	}
	room := make([]float64, rotors)
	line, pull := 0, 0
	for i := range m.Craft {
		c := &m.Craft[i]
		n := len(c.Rotors)
		if c.Rigid {
			copy(room, u[line:line+n])
			parts[i] = m.rigidPart(c, room[:n:n])
			line += n
		} else {
			parts[i] = m.cablePart(c, cable[pull].Scale(1/c.Keep()), room[:n:n]) // (22.3)
			pull++
		}
		room = room[n:]
	}
	return parts
}

// rigidPart is the part of a vehicle that holds the payload rigidly.
func (m *Model) rigidPart(c *Craft, u []float64) Part {
	p := Part{Rotor: u, Tension: math.NaN(), CableAngle: math.NaN(), Position: c.At, Utilisation: math.Inf(-1)}
	for j := range c.Rotors {
		r := &c.Rotors[j]
		p.Thrust = p.Thrust.Add(r.Axis.Scale(u[j]))
		p.Moment = p.Moment.Add(r.Turn.Scale(u[j])) // (5.15)
		p.Effort += u[j]
		p.Utilisation = math.Max(p.Utilisation, u[j]/r.Max) // (5.5)
	}
	p.Force = p.Thrust.Sub(m.Up.Scale(c.Vehicle.Mass * Gravity)).Add(c.Drag) // (5.15)
	p.Tilt = m.Tilt(c)
	if c.Near != nil {
		p.Download, p.Under = c.download(u)
	}
	return p
}

// Tilt is the angle of a rigid vehicle's own thrust axis from the vertical, radians.
func (m *Model) Tilt(c *Craft) float64 {
	return fromVertical(m.Attitude.Mul(c.Axes.Mul(vec.V3{0, 0, 1})))
}

// cablePart is the part of a vehicle that pulls the payload with force f.
func (m *Model) cablePart(c *Craft, f vec.V3, rotors []float64) Part {
	p := Part{Force: f, Tension: f.Norm(), CableAngle: fromVertical(f), Rotor: rotors}
	p.Thrust = f.Add(vec.V3{0, 0, float64(c.Vehicle.Mass * Gravity)}).Sub(c.Drag) // (5.4)
	p.Effort = p.Thrust.Norm()
	if c.Wash != 0 {
		p.Download, p.Under = p.Thrust.Scale(-c.Wash), c.Under // (22.3)
	}
	p.Utilisation = p.Effort / c.Vehicle.ThrustMax // (5.5)
	p.Tilt = fromVertical(p.Thrust)
	p.Position = c.At.Add(f.Unit().Scale(c.Length)) // (5.16)
	if p.Tension == 0 {
		p.CableAngle = 0
		p.Position = c.At.Add(vec.V3{0, 0, c.Length})
	}
	for j := range rotors {
		rotors[j] = p.Effort / float64(len(rotors))
	}
	return p
}

// fromVertical is the angle of a vector from straight up, radians.
func fromVertical(v vec.V3) float64 { return math.Atan2(math.Hypot(v[0], v[1]), v[2]) }

// weigh fills in what is left unbalanced, from the parts alone, and the worst utilisation.
func (m *Model) weigh(a *Answer) {
	press, turn := m.pressed() // part of what the program asks for; here it is in the downloads
	force, moment := press.Sub(m.Need), turn.Sub(m.NeedTurn)
	a.T = math.Inf(-1)
	for i, p := range a.Parts {
		c := &m.Craft[i]
		f, turn := p.Force, vec.V3{}
		if c.Rigid {
			f, turn = p.Thrust, p.Moment
		}
		force, moment = force.Add(p.Download), moment.Add(p.Under.Sub(m.Body.COM).Cross(p.Download)) // (22.2)
		force = force.Add(f)
		moment = moment.Add(c.At.Sub(m.Body.COM).Cross(f)).Add(turn)
		a.T = math.Max(a.T, p.Utilisation)
	}
	a.Force, a.Moment = force, moment
	w := m.Weight()
	a.Residual = math.Max(force.Norm()/w, moment.Norm()/w) // (5.13)
}

// Weight is the weight that imbalances are measured by, N: of the body, or of the whole team when
// the body weighs nothing.
func (m *Model) Weight() float64 {
	if m.Body.Mass > 0 {
		return m.Body.Mass * Gravity
	}
	return m.Mass * Gravity
}
