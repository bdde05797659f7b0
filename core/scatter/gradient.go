package scatter

import "cohoist/core/solve"

// gradient is dt/dx of every error at the present offset and answer, per its unit, (16.8): the program's data are
// differenced, forces and duals stay.
func (r *runner) gradient(errors []Error, a *solve.Result) []float64 {
	out := make([]float64, len(errors))
	for d, e := range errors {
		x, h := r.x[e.at], 1e-4*e.SD // rounding and curvature both far below the rate
		var l [2]float64
		ok := true
		for k, sign := range [2]float64{1, -1} {
			r.x[e.at] = x + sign*h
			ok = r.rig.set(r.x) && ok
			l[k] = solve.Lagrangian(r.rig.p, a)
		}
		r.x[e.at] = x
		if ok {
			out[d] = (l[0] - l[1]) / (2 * h) // (16.8)
		}
	}
	return out
}

// rates are the gradient as planned.
func (s *Study) rates() []float64 {
	r := newRunner(s.model)
	r.rig.set(r.x)
	a := r.solver.Solve(r.rig.p)
	return r.gradient(s.Errors, &a)
}
