package share

import (
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Placed are the parts of the vehicles that an answer of one of this model's programs means.
func (m *Model) Placed(r solve.Result) []Part { return m.parts(r.U, r.F) }

// With is an answer with other parts, their residual and worst utilisation. Its bound and certificate stay.
func (m *Model) With(a Answer, parts []Part) Answer {
	a.Parts = parts
	m.weigh(&a)
	return a
}

// Pulls are the forces of the cables of parts, N, in the order of a program.
func (m *Model) Pulls(parts []Part) []vec.V3 {
	var out []vec.V3
	for i, p := range parts {
		if !m.Craft[i].Rigid {
			out = append(out, p.Force)
		}
	}
	return out
}
