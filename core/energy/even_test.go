package energy

import (
	"math"
	"testing"

	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
)

// Every example with one weak pack: with every vehicle capped at the thrust that it holds a thousandth longer than the share for equal endurance,
// there is none: the proven bound on t is above 1. That is so where all hang on cables; a rigid vehicle's rotors
// need not be alike, and may hold longer than their caps say.
func TestEvenIsLongest(t *testing.T) {
	asked := 0
	for _, e := range example.All {
		p, faults := example.Plan(e.Name)
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		for name, c := range p.Vehicles {
			c.FigureOfMerit, c.DriveEfficiency, c.Avionics = 0.6, 0.8, 3
			c.Battery = plan.Battery{Energy: 45 * c.Mass, Charge: math.NaN(), Cells: 6, Voltage: math.NaN(), Resistance: 0.02, Usable: 0.9, Peukert: 1.04}
			p.Vehicles[name] = c
		}
		weak := p.Vehicles[p.Team[0].Vehicle]
		weak.Battery.Energy *= 0.6
		p.Vehicles["weak"] = weak
		p.Team[0].Vehicle = "weak"
		m, err := share.Of(p)
		if err != nil {
			t.Fatal(err)
		}
		solver := solve.NewSolver()
		a := m.Share(solver)
		s := Of(m, solver, a)
		if s.Even == nil || m.Rigid || a.T > 1 {
			continue
		}
		asked++
		q := &quest{study: &s, solver: solver, parts: a.Parts, held: make([]float64, len(m.Craft)), limit: math.Max(a.T, m.Plan.Limits.Utilisation)}
		q.program = m.Even(0)
		m.SpreadFor(q.program, a.Apart, m.Pulls(a.Parts))
		q.at(s.Even.Hold * 1.001)
		if r := solver.Solve(q.program); !(r.Bound > 1) {
			t.Errorf("%s: a share that holds %g s is not ruled out, bound %.9g", e.Name, s.Even.Hold*1.001, r.Bound)
		}
		for i := range m.Craft { // the caps turned over
			for _, tau := range []float64{0.5 * s.Hold, s.Hold, 1.5 * s.Hold} {
				near(t, "time of a cap", q.holdAt(i, q.thrustFor(i, tau)), tau, 1e-8)
			}
		}
	}
	if asked < 3 {
		t.Errorf("only %d examples asked", asked)
	}
}
