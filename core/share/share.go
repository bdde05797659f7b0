package share

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Share answers how the team shares the load by the plan's policy; for equal endurance, which only core/energy knows, by
// even effort.
//
// The smallest worst utilisation (5.10) is found whatever the policy, for its bound and for the
// certificate when there is no balance; the other policies' own answers then stand beside it.
func (m *Model) Share(s *solve.Solver) Answer {
	if m.found.of == m {
		return m.found.a
	}
	a, p := m.shared(s)
	if a.Status == solve.Infeasible {
		a.None = m.explain(s, p, a.Even)
	}
	return a
}

// shared is Share without the reason why there is no balance, and the program of (5.10).
func (m *Model) shared(s *solve.Solver) (Answer, *solve.Program) {
	a := Answer{Policy: m.Plan.Policy}
	if !m.Settled {
		a.Status = solve.Unsolved
		return a, nil
	}
	p := m.Even(0)
	a.Even = keep(s.Solve(p))
	a.Status, a.Bound = a.Even.Status, a.Even.Bound
	if a.Status == solve.Optimal && !sound(a.Even) {
		a.Status, a.Bound = solve.Unsolved, math.NaN()
	}
	switch {
	case a.Policy == plan.LeastSquares:
		if r := solve.LeastSquares(p); len(r.U)+len(r.F) > 0 {
			a.Parts = m.parts(r.U, r.F)
		}
	case a.Policy == plan.Equal:
		a.Parts = m.parts(m.equal())
	case a.Status == solve.Optimal:
		r := s.Settle(p, a.Even.T) // (5.10), ties
		if !sound(r) {
			r = a.Even // as good, but with its ties as they fell
		}
		a.Parts = m.parts(r.U, r.F)
		m.spreadOut(s, &a)
	}
	if a.Parts != nil {
		m.weigh(&a)
	}
	return a, p
}

// sound tells that an answer has every force.
func sound(r solve.Result) bool {
	sum := r.T
	for _, u := range r.U {
		sum += u
	}
	for _, f := range r.F {
		sum += f[0] + f[1] + f[2]
	}
	return r.Status == solve.Optimal && !math.IsNaN(sum)
}

// keep copies an answer out of the solver's own memory.
func keep(r solve.Result) solve.Result {
	r.U = append([]float64(nil), r.U...)
	r.F = append([]vec.V3(nil), r.F...)
	r.LineLo = append([]float64(nil), r.LineLo...)
	r.LineHi = append([]float64(nil), r.LineHi...)
	r.PullZ = append([]float64(nil), r.PullZ...)
	r.Cones = append([]solve.Dual(nil), r.Cones...)
	return r
}

// equal gives every vehicle the same part of the load, (5.12): each the same vertical force on the
// payload, net of its own weight, its rotors equal; on cables the drag in equal parts too. What
// that leaves unbalanced shows in the residual.
func (m *Model) equal() (u []float64, cable []vec.V3) {
	k := float64(len(m.Craft))
	payload := m.Payload.Mass * Gravity
	for _, c := range m.Craft {
		if !c.Rigid {
			f := vec.V3{0, 0, payload}.Sub(m.Drag).Scale(1 / k)
			cable = append(cable, f.Add(c.itself().Scale(c.Wash))) // (22.3)
			continue
		}
		up := 0.0 // vertical part of 1 N from every rotor
		for _, r := range c.Rotors {
			up += r.Force.Dot(m.Up)
		}
		each := (payload/k + c.Vehicle.Mass*Gravity) / up
		for range c.Rotors {
			u = append(u, each)
		}
	}
	return u, cable
}

// InLine tells that everything hangs on cables from attachments in one line (seen from above, the
// line's direction is returned) or in one point (the zero vector), so that the load hangs freely
// about that line.
func (m *Model) InLine() (vec.V3, bool) {
	if m.Rigid {
		return vec.V3{}, false
	}
	far, line := 0.0, vec.V3{}
	for _, c := range m.Craft {
		d := c.At.Sub(m.Craft[0].At)
		d[2] = 0
		if d.Norm() > far {
			far, line = d.Norm(), d.Unit()
		}
	}
	for _, c := range m.Craft {
		d := c.At.Sub(m.Craft[0].At)
		d[2] = 0
		if d.Cross(line).Norm() > 1e-9*far {
			return vec.V3{}, false
		}
	}
	return line, true
}
