// Package way plans how a team takes its payload from place to place (THEORY chapter 20).
//
// Restriction: the payload's centre of mass follows a piecewise polynomial of the seventh degree; a team with cables
// holds it level, a rigid team leans. What the team must give at every instant is that of core/share for the wrench of
// that instant; lines do not stretch and motors follow at once. Core/rehearse gives up both.
// Geometry: points in level axes that do not move, z up; the payload's heading ψ turns its x axis from theirs.
// Calculation: least integral of the squared fourth derivative, exactly, boxes by the polynomials' control points
// (20.1) to (20.7); utilisation by (20.8) to (20.11); durations by (20.12) to (20.14).
// Verification: published polynomials, another solver of quadratic programs, statics of a level circle, laws.
// References: THEORY chapter 20.
package way

import (
	"cohoist/core/vec"
)

// Point is a place that the payload's centre of mass passes, at rest at the first and at the last. A heading left out is free
// between the ends; at the first it is 0, at the last that of the last point which has one.
type Point struct {
	At      vec.V3  // m
	Heading float64 // of the payload's x axis, radians, not reduced: from 0 to 2π is a full turn; NaN: left out
	Time    float64 // s from the start; NaN: as soon as allowed
	Stop    bool    // at rest there, (20.4)

	Formation Formation // of the team there
}

// Box is where the centre of mass must stay on one leg, m. Sides may be infinite.
type Box struct {
	Leg      int // 0 is from point 0 to point 1
	Min, Max vec.V3
}

// Route is what a way must pass. Arm is the length in m that makes a turn comparable with a shift: a point at that
// distance moves by Arm dψ.
type Route struct {
	Points   []Point
	Boxes    []Box
	Arm      float64
	Openings []Opening
	GoOn     func(solved int) bool // asked now and then in a search, unless it is nil: false ends it
	held     *held
}

// State is the motion at one instant, derivatives by time up to the fourth.
type State struct {
	At, Velocity, Acceleration, Jerk, Snap vec.V3
	Heading, Turn, TurnRate                float64 // ψ, ψ̇, ψ̈
}
