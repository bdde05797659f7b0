package share

import "cohoist/core/solve"

// Placed are the parts of the vehicles that an answer of one of this model's programs means.
func (m *Model) Placed(r solve.Result) []Part { return m.parts(r.U, r.F) }

// With is an answer with other parts, their residual and worst utilisation. Its bound and certificate stay.
func (m *Model) With(a Answer, parts []Part) Answer {
	a.Parts = parts
	m.weigh(&a)
	return a
}
