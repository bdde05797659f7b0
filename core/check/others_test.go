package check_test

import (
	"math"
	"strings"
	"testing"

	"cohoist/core/energy"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
)

// The working of power, hold and route of every plan is evaluated again as those of the checks are, at rest and in a wind, and ends in
// what the study says.
func TestWorkingOfHolds(t *testing.T) {
	steps := 0
	for name, p := range plans(t) {
		for _, wind := range []float64{p.Site.Wind, 4} {
			p := p.Clone()
			p.Site.Wind = wind
			s, m, a := hold(p)
			if a.Parts == nil {
				continue
			}
			for i, v := range s.Vehicles {
				w := s.Working(i, a.Parts[i])
				steps += evaluated(t, name+" "+v.ID, w)
				if n := len(w); n > 0 && v.By != energy.FromStart && !math.IsNaN(v.Time) && math.Abs(w[n-1].Value-v.Time) > 0 {
					t.Errorf("%s %s: the working ends in %+v", name, v.ID, w[n-1])
				}
			}
			r := s.Route(solve.NewSolver(), []energy.Leg{{To: 20, Distance: 90, Speed: 3}, {To: 200, Distance: 80, Speed: 2}})
			steps += evaluated(t, name+" route", r.Working(&s))
			for class, c := range p.Vehicles {
				for _, r := range []energy.Regime{energy.TipSpeed, energy.Froude} {
					for _, z := range energy.Sizes(c, m.Payload.Mass, 0.8, 1.1, 6, r) {
						w := z.Working(c, m.Payload.Mass, 0.8, 1.1, r)
						steps += evaluated(t, name+" "+class, w)
						if len(w) > 4 && math.Abs(w[3].Value-w[4].Value) > 1e-9*w[4].Value {
							t.Errorf("%s %s: lift %g N, weight %g N", name, class, w[3].Value, w[4].Value)
						}
					}
				}
			}
		}
	}
	if steps < 800 {
		t.Errorf("only %d steps were evaluated", steps)
	}
}

func hold(p plan.Plan) (energy.Study, *share.Model, share.Answer) {
	m, err := share.Of(p)
	if err != nil {
		return energy.Study{}, nil, share.Answer{}
	}
	s := solve.NewSolver()
	a := m.Share(s)
	return energy.Of(m, s, a), m, a
}

// evaluated evaluates every step.
func evaluated(t *testing.T, name string, steps []energy.Step) int {
	names := map[string]float64{"pi": math.Pi}
	for _, s := range steps {
		got, scale, err := evaluate(s.Expression, names)
		if err != nil || !(math.Abs(got-s.Value) <= stepTolerance*math.Abs(s.Value)+1e-15*scale) || s.Source == "" || strings.Contains(s.Expression, "NaN") {
			t.Errorf("%s: %s = %s is %.17g, the sheet says %.17g, %v", name, s.Symbol, s.Expression, got, s.Value, err)
		}
		names[s.Symbol] = s.Value
	}
	return len(steps)
}
