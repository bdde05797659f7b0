package rehearse

import (
	"math"
	"testing"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// Odd rigid teams: one vehicle alone, two rotors each, six, no torque known, leant rotors, one very light payload. In gusts, and
// with a vehicle lost: a flight that ends or a crash with its time, never a number that is none.
func TestOddTeams(t *testing.T) {
	class := func(p *plan.Plan, change func(*plan.Class)) {
		c := p.Vehicles["field-quad"]
		change(&c)
		p.Vehicles["field-quad"] = c
	}
	for name, c := range map[string]struct {
		n      int
		kg     float64
		change func(*plan.Plan)
	}{
		"alone": {1, 1, func(p *plan.Plan) { p.Team[0].Attach = vec.V3{0, 0, 0.2} }},
		"two rotors": {4, 1, func(p *plan.Plan) {
			class(p, func(c *plan.Class) { c.Rotors, c.RotorThrustMax, c.Inertia = 2, 40, nil })
		}},
		"six rotors": {3, 2, func(p *plan.Plan) { class(p, func(c *plan.Class) { c.Rotors = 6 }) }},
		"no torque":  {4, 2, func(p *plan.Plan) { class(p, func(c *plan.Class) { c.TorquePerThrust = 0 }) }},
		"leant": {4, 2, func(p *plan.Plan) {
			for i := range p.Team {
				lean := vec.Rot(vec.V3{0, 0, float64(i) * math.Pi / 2}).Mul(vec.V3{0, 5, 0})
				p.Team[i].Hold.Lean = [2]float64{lean[0], lean[1]}
			}
		}},
		"light": {4, 0.01, nil},
	} {
		m, a := shareOf(t, ringPlan(t, c.n, c.kg, func(p *plan.Plan) {
			p.Site.Wind, p.Site.GustFactor = 4, 1.5
			if c.change != nil {
				c.change(p)
			}
		}))
		if len(a.Parts) == 0 {
			t.Errorf("%s: %v", name, a.Status)
			continue
		}
		for _, fail := range []*Failure{nil, {Vehicle: 0, Time: 2}} {
			f := rehearsal(t, m, Hover(m, a.Parts, 12), Options{Gusts: true, Fail: fail}).Fly()
			p := f.Peaks
			t.Logf("%s %v: %.3g of its thrust; off %.3g m, sink %.3g m, tilt %.3g°, ends %d at %.3g s", name, fail != nil, a.T, p.Off, p.Sink, p.Swing*180/math.Pi, p.End, p.Crash)
			for _, s := range f.Samples {
				if x := s.Payload.At.Norm() + s.Payload.Velocity.Norm() + s.Payload.Spin.Norm(); math.IsNaN(x) || x > 1e3 {
					t.Fatalf("%s: at %g s the body is at %v with %v m/s, %v rad/s", name, s.Time, s.Payload.At, s.Payload.Velocity, s.Payload.Spin)
				}
			}
			if fail == nil && !(p.End == Flown && p.Off < 0.5 && p.Sink < 0.3 && p.Swing < 0.3) {
				t.Errorf("%s: %+v", name, p)
			}
			if (p.End == Flown) != math.IsNaN(p.Crash) {
				t.Errorf("%s: ends %d at %g s", name, p.End, p.Crash)
			}
		}
	}
}
