// Package share answers how a team shares the load (THEORY chapter 5).
//
// Restriction: steady flight about hover; payload and rigid holds are one stiff body; cables are
// straight, weightless and do not stretch; a payload on cables is held level.
// Geometry: payload frame, z up, level unless a rigid team leans; moments about the centre of mass
// of the body that moves as one (the payload with the vehicles that hold it rigidly).
// Calculation: rotors are forces along lines, cables are force vectors with cones, and six balance
// rows join them, (5.1) to (5.8); the policies are (5.10) to (5.12).
// Verification: cases closed by hand and published ones in the tests; every answer carries its
// residual (5.13) and a bound that core/certify multiplies out again.
// References: THEORY chapter 5.
package share

import (
	"math"

	"cohoist/core/mass"
	"cohoist/core/near"
	"cohoist/core/plan"
	"cohoist/core/vec"
	"cohoist/core/vehicle"
)

// Gravity is the standard acceleration of free fall, m/s², exact (ISO 80000-3).
const Gravity = 9.80665

// Model is a plan with everything that its balance needs. Build it with New; nothing changes it after.
type Model struct {
	Plan     plan.Plan // with its defaults filled in
	Payload  mass.Properties
	DragArea vec.V3  // C_d A of the payload for wind along payload x, y, z, m²
	Density  float64 // of the air, kg/m³
	Craft    []Craft // in the order of the team
	Rigid    bool    // someone holds rigidly
	Cables   bool    // someone pulls a cable
	Wind     vec.V3  // velocity of the air, m/s, level axes
	Hung     []Hung  // dead weights below the body: lost vehicles on their cables

	Lean     vec.V3          // rotation vector of the body, radians, level axes
	Attitude vec.M3          // body axes → level axes
	Up       vec.V3          // the vertical, in body axes
	Settled  bool            // the lean was found
	Axis     vec.V3          // full-thrust axis of the rigid holds, body axes
	Mass     float64         // payload and all vehicles, kg
	Body     mass.Properties // what moves as one: the payload and the vehicles that hold it rigidly
	Drag     vec.V3          // on the payload at its centre of mass, N, body axes
	Need     vec.V3          // force that the team must give the body, N, body axes
	NeedTurn vec.V3          // moment that it must give about Body.COM, N m, body axes

	NearRounds  int  // of the fixed point (22.9)
	NearSettled bool // it came to rest, or there was none to find
	found       found
}

// found is the answer that the fixed point (22.9) ended with, of the model that it is of.
type found struct {
	of *Model
	a  Answer
}

// Craft is one vehicle at its place.
type Craft struct {
	ID          string
	Class       string
	Rigid       bool
	Vehicle     vehicle.Vehicle
	At          vec.V3       // attachment; rigid: the vehicle's centre. Payload frame
	Axes        vec.M3       // vehicle axes → body axes
	Rotors      []Rotor      // body axes
	Drag        vec.V3       // on the vehicle, N, body axes
	Length      float64      // of the cable, m
	Radius      float64      // of a rotor, m
	Wash        float64      // φ: part of the thrust with which the wakes of a vehicle on a cable press on the payload, (22.3)
	Under       vec.V3       // where they press, payload frame
	Near        *near.Effect // what is near; nil: all is left out
	WorkingLoad float64      // of the cable, N; NaN: not given
}

// Hung is a dead weight that hangs from the body.
type Hung struct {
	At       vec.V3  // payload frame
	Mass     float64 // kg
	DragArea float64 // C_d A, m²
}

// Rotor is one rotor in body axes.
type Rotor struct {
	At   vec.V3  // from the vehicle's centre
	Axis vec.V3  // unit vector of its thrust
	Turn vec.V3  // moment of 1 N about the vehicle's centre, m: arm and drag torque, (5.1)
	Max  float64 // N

	Force  vec.V3  // of 1 N on the body: along Axis, less what the wake presses on the payload with, (22.2)
	Moment vec.V3  // of the same about the vehicle's centre, m
	Wash   float64 // φ: part of the thrust with which the wake presses on the payload
	Under  vec.V3  // where, payload frame
}

// New places the team of an assumed plan (plan.Assume) and finds how the body leans.
func New(p plan.Plan, payload mass.Properties, dragArea vec.V3, density float64) *Model {
	m := &Model{Plan: p, Payload: payload, DragArea: dragArea, Density: density,
		Attitude: vec.Identity, Up: vec.V3{0, 0, 1}, Settled: true, NearSettled: true, Wind: wind(p.Site)}
	made := map[string]vehicle.Vehicle{}
	m.Craft = make([]Craft, len(p.Team))
	for i, member := range p.Team {
		v, ok := made[member.Vehicle]
		if !ok {
			v = vehicle.New(p.Vehicles[member.Vehicle], density)
			made[member.Vehicle] = v
		}
		m.Craft[i] = place(member, v)
		m.Craft[i].Radius = p.Vehicles[member.Vehicle].RotorRadius
		m.Rigid = m.Rigid || m.Craft[i].Rigid
		m.Cables = m.Cables || !m.Craft[i].Rigid
	}
	m.join()
	m.surroundings()
	return m
}

// place turns a vehicle's rotors into body axes.
func place(member plan.Member, v vehicle.Vehicle) Craft {
	c := Craft{ID: member.ID, Class: member.Vehicle, Rigid: member.Hold.Kind == plan.Rigid, Vehicle: v,
		At: member.Attach, Axes: vehicle.Attitude(member),
		Length: member.Hold.Length, WorkingLoad: member.Hold.WorkingLoad}
	c.Rotors = make([]Rotor, len(v.Rotors))
	for j, r := range v.Rotors {
		at, axis := c.Axes.Mul(r.At), c.Axes.Mul(r.Axis)
		turn := at.Cross(axis)
		if !math.IsNaN(r.Torque) { // no cable needs it, so that it may be left out
			turn = turn.Add(axis.Scale(r.Torque))
		}
		c.Rotors[j] = Rotor{At: at, Axis: axis, Turn: turn, Max: r.Max, Force: axis, Moment: turn} // (5.1)
	}
	return c
}

// join makes the body of payload and rigid holds, by the parallel-axis theorem (2.2).
func (m *Model) join() {
	parts := []mass.Properties{m.Payload}
	m.Mass = m.Payload.Mass
	for _, c := range m.Craft {
		m.Mass += c.Vehicle.Mass
		if c.Rigid {
			turned := c.Axes.MulM(c.Vehicle.Inertia).MulM(c.Axes.T())
			parts = append(parts, mass.Properties{Mass: c.Vehicle.Mass, COM: c.At, Inertia: turned})
		}
	}
	m.Body = mass.Combine(parts)
}
