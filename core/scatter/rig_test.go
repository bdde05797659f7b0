package scatter

import (
	"math"
	"math/rand/v2"
	"testing"

	"cohoist/core/air"
	"cohoist/core/example"
	"cohoist/core/mass"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// given reads an example and changes it.
func given(t testing.TB, name string, change func(*plan.Plan)) plan.Plan {
	t.Helper()
	p, faults := example.Plan(name)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	if change != nil {
		change(&p)
	}
	return p
}

// study prepares a study or fails.
func study(t testing.TB, p plan.Plan, n int) *Study {
	t.Helper()
	s, why := New(p, n)
	if s == nil {
		t.Fatal(why)
	}
	return s
}

// slow is the utilisation of the plan with its numbers off by x, the long way round.
func slow(t testing.TB, s *Study, x offset) float64 {
	t.Helper()
	p := s.Plan.Clone()
	body, err := mass.Of(p.Payload)
	if err != nil {
		t.Fatal(err)
	}
	body.Mass *= 1 + x[atMass]
	body.COM = body.COM.Add(vec.V3{x[atCOM], x[atCOM+1], x[atCOM+2]})
	p.Site.Wind = math.Max(0, p.Site.Wind+x[atWind])
	p.Site.WindTo += x[atWindTo]
	for i := range p.Team {
		o := x[atCraft+perCraft*i:]
		m := &p.Team[i]
		m.Attach = m.Attach.Add(vec.V3{o[1], o[2], o[3]})
		c := p.Vehicles[m.Vehicle]
		c.RotorThrustMax *= 1 + o[0]
		m.Vehicle = "of " + m.ID
		p.Vehicles[m.Vehicle] = c
	}
	density, _ := air.Density(p.Site)
	m := share.New(p, body, air.Area(p.Payload), density*(1+x[atDensity]))
	if !m.Settled {
		return math.Inf(1)
	}
	r := solve.NewSolver().Solve(m.Even(0))
	switch r.Status {
	case solve.Optimal:
		return r.T
	case solve.Infeasible:
		return math.Inf(1)
	}
	t.Fatal(r.Reason)
	return 0
}

// blow is wind on a plan.
func blow(p *plan.Plan) { p.Site.Wind, p.Site.WindTo = 6, 30 }

// The program whose numbers are put off in place answers as a plan with those numbers does: to 1e-9, the
// accuracy of the solver.
func TestRigIsShare(t *testing.T) {
	leant := func(p *plan.Plan) {
		blow(p)
		for i := range p.Team {
			p.Team[i].Hold.Lean = [2]float64{float64(3*i - 2), 4}
		}
	}
	for _, c := range []struct {
		name   string
		change func(*plan.Plan)
	}{
		{"crate-ring", nil}, {"crate-ring", blow}, {"deck-of-eight", nil}, {"deck-of-eight", blow}, {"lattice-panel", nil},
		{"lattice-panel", blow}, {"lattice-panel", leant}, {"sensor-plate", nil}, {"mixed-team", nil}, {"mixed-team", blow},
	} {
		s := study(t, given(t, c.name, c.change), 64)
		r := newRunner(s.model)
		r.rig.set(r.x)
		if got, why := r.ask(); math.Abs(got-s.Nominal) > 1e-9 {
			t.Errorf("%s: %v as planned (%v), want %v", c.name, got, why, s.Nominal)
		}
		balanced := 0
		for i := range s.N {
			for d, x := range s.Offsets(i) {
				r.x[s.Errors[d].at] = x
			}
			got, _ := r.ask()
			want := slow(t, s, r.x)
			if math.Abs(got-want) > 1e-9*math.Max(1, want) {
				t.Errorf("%s, sample %d: %v, the plan with these numbers gives %v", c.name, i, got, want)
			}
			if !math.IsInf(got, 1) {
				balanced++
			}
		}
		if balanced == 0 {
			t.Errorf("%s: nothing was compared", c.name)
		}
	}
}

// A load on a line of cables tips: what lies across the line moves nothing, what lies along it as in
// core/share. 1e-9 as above.
func TestAlongTheLine(t *testing.T) {
	s := study(t, given(t, "beam-pair", nil), 100)
	r := newRunner(s.model)
	random := rand.New(rand.NewPCG(1, 1))
	for i := range 40 {
		x := newOffset(2)
		x[atMass], x[atCOM], x[atDensity] = 0.05*random.NormFloat64(), 0.05*random.NormFloat64(), 0.02*random.NormFloat64()
		x[atCraft], x[atCraft+1], x[atCraft+5] = 0.03*random.NormFloat64(), 0.02*random.NormFloat64(), 0.02*random.NormFloat64()
		copy(r.x, x)
		along, _ := r.ask()
		if want := slow(t, s, x); math.Abs(along-want) > 1e-9 {
			t.Errorf("%d: %v along the line, want %v", i, along, want)
		}
		r.x[atCOM+1], r.x[atCOM+2], r.x[atCraft+2], r.x[atCraft+7] = 0.03, 0.01, 0.02, 0.01
		if across, _ := r.ask(); math.Abs(across-along) > 1e-9 {
			t.Errorf("%d: %v with errors across the line, %v without", i, across, along)
		}
	}
}
