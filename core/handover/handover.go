// Package handover writes a lift for other programs: tables for a spreadsheet, the matrix of the balance with its
// pseudo-inverse, set-points for the controllers, and the lift as a scene for open simulators.
//
// Restriction: that of the report (THEORY chapter 5): the forces of steady flight, without a controller.
// Geometry: payload frame, z up, origin at the centre of the first solid; level axes are the payload frame as it stands
// when nothing leans. Everything is SI, angles are degrees where a key says _deg.
// Calculation: the numbers are the report's; the matrix is (5.1) to (5.3) written out, its inverse is by singular
// values.
// Verification: the matrix against the report's forces, the four Penrose conditions and NumPy; the scene in a
// rigid-body engine (core/crosscheck); files against golden ones.
// References: the formats' own, named where they are written.
package handover

import (
	"errors"
	"math"

	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/share"
)

// Lift is a lift that can be handed on.
type Lift struct {
	Plan   plan.Plan // with its defaults filled in
	Report report.Report
	Model  *share.Model
}

// ErrNoForces means that the report has no forces: the plan lacks a number, is outside the model, or has no balance.
var ErrNoForces = errors.New("the lift has no forces to hand on: its report says why")

// Of works out what there is to hand on. Any plan that plan.Validate accepts has its checks; the forces are there
// when the error is nil, else it is ErrNoForces and Model is nil.
func Of(p plan.Plan) (Lift, error) {
	l := Lift{Report: report.Build(p)}
	l.Plan, _ = plan.Assume(p)
	if len(l.Report.Vehicles) == 0 {
		return l, ErrNoForces
	}
	for _, v := range l.Report.Vehicles {
		if math.IsNaN(v.Thrust) || math.IsNaN(v.Position[0]) {
			return l, ErrNoForces
		}
	}
	m, err := share.Of(l.Plan)
	if err != nil {
		return l, ErrNoForces
	}
	l.Model = m
	return l, nil
}

// File is one document.
type File struct {
	Name string // with its ending, the same for every lift
	Line string // what it is, for a list
	Data []byte
}

// Files are all documents of a lift that has forces, in the order in which they are listed.
func (l Lift) Files() []File {
	b := l.Allocation()
	inverse, _ := b.Inverse()
	files := []File{
		{"checks.csv", "the checks: demand, capacity, utilisation", ChecksCSV(l.Report)},
		{"vehicles.csv", "the vehicles: forces, thrust, tilt, place", VehiclesCSV(l.Report)},
		{"formation.csv", "set-points: place, heading, thrust and cable of each vehicle", l.FormationCSV()},
		{"allocation.csv", "what each newton does to force and moment", b.CSV()},
		{"allocation.npy", "the same for NumPy", b.NPY()},
		{"allocation-inverse.csv", "its pseudo-inverse: the least thrusts for a force and moment", inverse.CSV()},
		{"allocation-inverse.npy", "the same for NumPy", inverse.NPY()},
		{"lift.mjcf.xml", "the lift as a scene, MJCF", l.MJCF()},
		{"lift.sdf", "the lift as a scene, SDF 1.9", l.SDF()},
	}
	if l.Report.Beam != nil {
		files = append(files, File{"beam.csv", "the payload as a beam: its diagrams", BeamCSV(*l.Report.Beam)})
	}
	return files
}
