package share

import (
	"math"

	"cohoist/core/mass"
	"cohoist/core/plan"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Largest is the largest payload with its reason when there is none.
type Largest struct {
	Mass   float64 // kg; NaN: not computed; 0: not even an empty payload
	Reason string  // why Mass is NaN or 0
}

// Largest finds the payload mass at which limits.utilisation is just reached, shape, centre of mass
// and drag kept, (5.14); cables that a leans apart stay so. Where the balance is linear in the mass it is one program; a leaning team in
// wind, and the other policies, are solved by root-finding on the utilisation.
func (m *Model) Largest(s *solve.Solver, a Answer) Largest {
	switch {
	case !m.Settled:
		return Largest{math.NaN(), "the body finds no steady lean in this wind"}
	case plan.WithinLimits(m.Plan.Policy) && (m.Cables || m.Drag == vec.V3{} && m.still()):
		return m.largestLinear(s, a.Apart)
	case m.Plan.Policy == plan.Equal && m.over(s) == math.Inf(1):
		return Largest{math.NaN(), "equal parts leave this payload unbalanced, whatever it weighs"}
	}
	return m.largestRoot(s)
}

// still tells that no drag acts on anything.
func (m *Model) still() bool {
	for _, c := range m.Craft {
		if c.Drag != (vec.V3{}) {
			return false
		}
	}
	return true
}

// rounding is what differences of wrenches leave of nothing, of the largest force, and at 1 m.
const rounding = 1e-14

// largestLinear asks for the most kilograms at the payload's centre of mass.
func (m *Model) largestLinear(s *solve.Solver, apart *Apart) Largest {
	p := m.Within(m.Plan.Limits.Utilisation)
	kilogram := m.Up.Scale(Gravity)
	p.WrenchT = wrench(kilogram, m.Payload.COM.Sub(m.Body.COM).Cross(kilogram))
	size := math.Max(math.Abs(p.Wrench[0]), math.Max(math.Abs(p.Wrench[1]), math.Abs(p.Wrench[2])))
	for i := range 6 {
		p.Wrench[i] -= float64(m.Payload.Mass * p.WrenchT[i]) // from an empty payload up
		if math.Abs(p.Wrench[i]) <= rounding*size {           // or what is left of nothing could be out of reach
			p.Wrench[i] = 0
		}
	}
	m.keepApart(p, apart)
	r := s.Solve(p)
	switch {
	case r.Status == solve.Infeasible, r.Status == solve.Optimal && r.T <= 1e-9*m.Mass:
		return Largest{0, "within its limits the team holds no payload of this shape, however light"}
	case r.Status != solve.Optimal:
		return Largest{math.NaN(), "not solved"}
	}
	return Largest{Mass: r.T}
}

// largestRoot brackets the largest payload that the team holds, then narrows it.
func (m *Model) largestRoot(s *solve.Solver) Largest {
	over := func(kg float64) float64 { return m.weighing(kg).over(s) }
	lo, hi := 0.0, math.Max(m.Payload.Mass, 0.01*m.Mass)
	flo, fhi := over(lo), over(hi)
	for fhi <= 0 && hi < 1e9 {
		lo, flo, hi = hi, fhi, 2*hi
		fhi = over(hi)
	}
	none := Largest{0, "within its limits the team holds no payload of this shape, however light"}
	if flo > 0 {
		return none
	}
	for i := 0; i < 100 && hi-lo > 1e-10*hi; i++ {
		mid := lo + (hi-lo)/2
		if !math.IsInf(fhi, 1) && i%3 != 2 { // secant; every third round bisects, for safety
			mid = lo + (hi-lo)*(-flo)/(fhi-flo)
		}
		f := over(mid)
		if math.Abs(f) <= rootTolerance {
			return Largest{Mass: mid}
		}
		if f < 0 {
			lo, flo = mid, f
		} else {
			hi, fhi = mid, f
		}
	}
	if lo == 0 {
		return none
	}
	return Largest{Mass: lo}
}

// rootTolerance is how near to the limit the utilisation must come: the solver's own accuracy.
const rootTolerance = 1e-9

// weighing is the model with another payload mass, inertia in proportion.
func (m *Model) weighing(kg float64) *Model {
	body := mass.Properties{Mass: kg, COM: m.Payload.COM}
	if m.Payload.Mass > 0 {
		for i := range 3 {
			body.Inertia[i] = m.Payload.Inertia[i].Scale(kg / m.Payload.Mass)
		}
	}
	return New(m.Plan, body, m.DragArea, m.Density)
}

// over is how far the policy's worst utilisation is above the limit; +Inf when the team cannot hold
// the payload by its policy at all.
func (m *Model) over(s *solve.Solver) float64 {
	if plan.WithinLimits(m.Plan.Policy) {
		r := s.Solve(m.Even(0))
		if r.Status != solve.Optimal {
			return math.Inf(1)
		}
		return r.T - m.Plan.Limits.Utilisation
	}
	a := m.Share(s)
	if a.Parts == nil || a.Residual > Balanced || !m.pushes(a) {
		return math.Inf(1)
	}
	return a.T - m.Plan.Limits.Utilisation
}

// Balanced is the largest residual (5.13) that counts as balanced.
const Balanced = 1e-9

// pushes tells that no rotor would have to pull and no cable to push.
func (m *Model) pushes(a Answer) bool {
	for i, p := range a.Parts {
		if !m.Craft[i].Rigid && p.Force[2] < -1e-9*m.Weight() {
			return false
		}
		for _, u := range p.Rotor {
			if u < -1e-9*m.Weight() {
				return false
			}
		}
	}
	return true
}
