// Package solve is the load-share solver: one structured convex program, primal–dual, whose cost
// grows linearly with the number of vehicles.
//
// A Program has scalar forces along fixed lines (rotors of rigid holds), force vectors at points
// (cables), one shared scalar t, and six balance rows. The wrench rows are force x y z, moment
// x y z about the origin of whatever axes the caller uses.
package solve

import "cohoist/core/vec"

// Wrench is force x y z (N) and moment x y z (N m).
type Wrench [6]float64

// Line is a scalar force u along a fixed line: a rotor.
//
//	Lo ≤ u ≤ Hi + HiT t
type Line struct {
	Column Wrench // the wrench of u = 1
	Lo     float64
	Hi     float64
	HiT    float64
}

// Pull is a force vector F applied at a point: a cable.
// Its wrench is (F, At × F). Every bound is one Cone or the half-line F_z ≥ MinZ.
type Pull struct {
	At    vec.V3
	MinZ  float64 // −Inf: none
	Cones []Cone
	level bool // F_z is left out of the balance and stays 0: stage two, (6.20)
}

// Cone is a second-order cone: | F + B + t D | over x y z, or over x y only when Flat, is at most
// Z F_z + T t + C.
type Cone struct {
	Flat    bool
	B, D    vec.V3
	Z, T, C float64
}

// Program asks for the forces that balance Σ wrench = Wrench + t WrenchT.
//
// Goal +1 makes t as small as possible, −1 as large as possible.
type Program struct {
	Lines   []Line
	Pulls   []Pull
	Wrench  Wrench
	WrenchT Wrench
	Goal    float64
}
