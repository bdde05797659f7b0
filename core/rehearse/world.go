// Package rehearse flies a lift in time (THEORY chapter 21).
//
// Restriction: rigid bodies, of which the payload is one with the vehicles that hold it rigidly; lines without weight,
// springs that only pull; drag of bluff bodies; gusts that reach everything at once. Wakes and blade dynamics are left out.
// Control is one that a careful crew could fly, not that of any autopilot.
// Geometry: level axes that do not move, z up; body axes with their origin at the centre of mass.
// Calculation: the classical Runge–Kutta rule in fixed steps, (21.1) to (21.6); control (21.7) to (21.19).
// Verification: scenes without control of a rigid-body engine, closed motions, energy and momentum, steps halved.
// References: THEORY chapter 21.
package rehearse

import (
	"math"

	"cohoist/core/vec"
)

// Body is a rigid body.
type Body struct {
	Mass     float64
	Inertia  vec.M3   // about its centre of mass, body axes
	DragArea vec.V3   // C_d A along its axes, m², at its centre of mass
	Sails    []Sail   // more drag, elsewhere
	Feet     []vec.V3 // points that stand on the ground, from the centre of mass, body axes

	push   Push // now
	was    Push // a step ago
	target Push // what push tends to
	lag    float64
	inv    vec.M3
	reach  float64 // of the farthest foot, m
	firm   float64 // of a foot, N/m
	dull   float64 // of a foot, N s/m
}

// Sail is a part of a body that the air meets at a place of its own.
type Sail struct {
	At   vec.V3 // from the centre of mass, body axes
	Area vec.V3 // C_d A along the body's axes, m²
}

// Push is what a body's own rotors do: a force, N, and a moment about its centre of mass, N m, body axes.
type Push struct{ Force, Moment vec.V3 }

// Line pulls two points together when it is longer than Length. Body −1 is the ground.
type Line struct {
	A, B      int
	AtA, AtB  vec.V3  // from the centre of mass, body axes; of the ground: level axes
	Length    float64 // at rest, m
	Stiffness float64 // N/m
	Damping   float64 // N s/m, of a taut line; it never pushes
	Cut       bool
}

// Pose is place and motion of a body.
type Pose struct {
	At       vec.V3     // of the centre of mass, m
	Attitude [4]float64 // unit quaternion w x y z, body axes → level axes
	Velocity vec.V3     // m/s
	Spin     vec.V3     // rad/s, body axes
}

// World is bodies and lines at an instant.
type World struct {
	Time    float64
	Gravity float64
	Density float64 // of the air, kg/m³; 0: no air
	Wind    func(t float64) vec.V3
	Ground  float64 // height of the ground, m; −Inf: none
	Bodies  []Body
	Lines   []Line
	Poses   []Pose
	Tension []float64 // of the lines, N

	ahead, lag, left   float64 // the last exponential of after
	later              Push
	now, stage, before []state
	rates              [4][]state
	taut               uint64 // a bit a line, at the last slope
	turns              []vec.M3
	force              []vec.V3
	moment             []vec.V3
	ends               [2]end
}

// Friction between feet and ground (common practice, no source).
const Friction = 0.5

// sinking is by how much feet give under the body's weight, m: firm, and soft enough for the steps.
const sinking = 0.002

// quickest is how fast a body may rock on its feet, rad/s: feet are softer on what is very slender.
const quickest = mostSteps * motorRate

// light is the mass that a foot feels at least, kg: of the body's shift, or of its turn about a level axis.
func (b *Body) light() float64 {
	least := b.Mass / float64(len(b.Feet))
	for a := range 2 {
		square := 0.0
		for _, f := range b.Feet {
			square += float64(f[1-a] * f[1-a])
		}
		if j := b.Inertia[a][a]; j > 0 && square > 0 {
			least = math.Min(least, j/square)
		}
	}
	return least
}

// Ready makes room and must be called once before the first step.
func (w *World) Ready() {
	n := len(w.Bodies)
	w.now, w.stage, w.before = make([]state, n), make([]state, n), make([]state, n)
	for i := range w.rates {
		w.rates[i] = make([]state, n)
	}
	w.turns, w.force, w.moment = make([]vec.M3, n), make([]vec.V3, n), make([]vec.V3, n)
	w.Tension = make([]float64, len(w.Lines))
	for i := range w.Bodies {
		b := &w.Bodies[i]
		b.inv = inverse(b.Inertia)
		for _, f := range b.Feet {
			b.reach = math.Max(b.reach, f.Norm())
		}
		if len(b.Feet) > 0 {
			light := b.light()
			b.firm = math.Min(b.Mass*w.Gravity/(float64(len(b.Feet))*sinking), light*quickest*quickest)
			b.dull = 2 * 0.7 * sqrt(b.firm*light)
		}
	}
	for i := range w.Poses {
		w.now[i].of(&w.Poses[i])
	}
	w.load(w.now, 0)
}
