package hang

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/solve"
)

// Of is the rig of a plan on cables only: the vehicles stand where the answer puts them, and each line is as long at rest as
// it must be to have the plan's length under the answer's tension, so that the level payload is an equilibrium, (12.14). It returns
// false when someone holds rigidly or there is no answer.
func Of(m *share.Model, parts []share.Part) (Rig, bool) {
	if m.Rigid || !m.Cables || len(parts) != len(m.Craft) || !(m.Payload.Mass > 0) {
		return Rig{}, false
	}
	if bare := m.Bare(); bare != m { // no wash on a payload that turns
		if m, parts = bare, bare.Share(solve.NewSolver()).Parts; parts == nil {
			return Rig{}, false
		}
	}
	r := Rig{Load: Load{Mass: m.Payload.Mass, COM: m.Payload.COM, Inertia: m.Payload.Inertia, Force: m.Drag}}
	weight := r.Load.weight().Norm()
	for i, c := range m.Craft {
		axial := Axial(m.Plan.Team[i].Hold)
		line := Line{Top: parts[i].Position, At: c.At}
		if math.IsInf(axial, 1) {
			line.Stiffness = axial
			line.Length = c.Length - parts[i].Tension/Line{Length: c.Length, Stiffness: axial}.stiffness(weight) // (12.14)
		} else {
			line.Length = c.Length / (1 + parts[i].Tension/axial) // (12.14)
			line.Stiffness = axial / line.Length
		}
		if math.IsNaN(line.Length) {
			return Rig{}, false
		}
		r.Lines = append(r.Lines, line)
	}
	return r, true
}
