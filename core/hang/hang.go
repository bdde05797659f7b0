// Package hang tells how a payload hangs from fixed points on lines that stretch, and how it swings
// (THEORY chapter 12).
//
// Restriction: the vehicles keep their places; lines are straight, weightless and linear elastic, pull and
// never push, and pass through payload and each other; the horizontal force is constant and acts at the
// centre of mass; small motions without damping.
// Geometry: level axes, z up; the payload's own axes are its frame, which the attitude turns into level axes.
// Calculation: an equilibrium is a stationary point of the energy (12.1), found by Newton's method with
// exact derivatives, (12.4) to (12.7); the modes are those of (12.12).
// Verification: pendulums, slings and cable cases with their sources in the tests; hung payloads of a
// rigid-body engine in core/crosscheck.
// References: THEORY chapter 12.
package hang

import (
	"math"

	"cohoist/core/vec"
)

// Gravity is the standard acceleration of free fall, m/s², exact (ISO 80000-3).
const Gravity = 9.80665

// Line hangs the payload from a point that does not move.
type Line struct {
	Top       vec.V3  // the vehicle's place, level axes, m
	At        vec.V3  // the attachment, payload frame, m
	Length    float64 // at rest, m
	Stiffness float64 // E A / Length, N/m; +Inf: does not stretch, see inextensible; 0: no line
}

// Load is what hangs.
type Load struct {
	Mass    float64 // kg
	COM     vec.V3  // centre of mass, payload frame, m
	Inertia vec.M3  // about it, payload axes, kg m²
	Force   vec.V3  // constant, at the centre of mass, level axes, N: drag
}

// Rig is a load on its lines. It is given, and nothing changes it.
type Rig struct {
	Load  Load
	Lines []Line
}

// Pose is where the payload is.
type Pose struct {
	Origin   vec.V3 // of the payload frame, level axes, m
	Attitude vec.M3 // payload axes → level axes
}

// Level is the pose in which the payload frame is the level axes.
var Level = Pose{Attitude: vec.Identity}

// Place is a point of the payload frame in level axes, m.
func (p Pose) Place(a vec.V3) vec.V3 { return p.Origin.Add(p.Attitude.Mul(a)) }

// Tilt is the angle of the payload's z axis from the vertical, radians.
func (p Pose) Tilt() float64 {
	z := vec.V3{p.Attitude[0][2], p.Attitude[1][2], p.Attitude[2][2]}
	return math.Atan2(math.Hypot(z[0], z[1]), z[2])
}

// State is an equilibrium.
type State struct {
	Pose     Pose
	Tension  []float64 // of each line, N, in the order of Rig.Lines
	Slack    []bool    // pulls with less than rounding, 1e-8 of the weight
	Tilt     float64   // of the payload's z axis from the vertical, radians
	Stable   bool      // every small motion is held back or neutral, (12.9)
	Neutral  int       // motions that nothing holds back, (12.9)
	Energy   float64   // (12.1), J
	Residual float64   // what is left unbalanced over weight, and over weight × 1 m, (12.8)
}

// inextensible is the strain of a line that counts as one that does not stretch when it carries the whole
// weight alone, (12.3). Pose and tensions are off by about as much; a stiffer line loses more to rounding,
// 1e-16 of its length times its stiffness, than it gains.
const inextensible = 1e-7

// stiffness is what a line is computed with, N/m, (12.3).
func (l Line) stiffness(weight float64) float64 {
	if math.IsInf(l.Stiffness, 1) {
		return weight / (inextensible * math.Max(l.Length, 1e-3)) // (12.3)
	}
	return l.Stiffness
}

// weight is the pull on the load as a whole, N: gravity and the constant force.
func (l Load) weight() vec.V3 {
	return l.Force.Sub(vec.V3{0, 0, float64(l.Mass * Gravity)})
}
