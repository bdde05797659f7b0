package beam

import (
	"encoding/json"
	"errors"
	"math"
	"os"
	"testing"

	"cohoist/core/vec"
)

// Twenty random beams by finite elements with scipy, frozen with their script in testdata/beams: spans, stiff
// and springy supports with length errors, loads that grow along the bar, couples, slack supports. Both
// sides are exact up to rounding, so 1e-6 of the largest value is what the condition of the finite-element system leaves.
func TestFiniteElements(t *testing.T) {
	data, err := os.ReadFile("../../testdata/beams/answers.json")
	if err != nil {
		t.Fatal(err)
	}
	var cases []struct {
		Length, EI, Total float64
		Spreads           []struct{ From, To, A, B float64 }
		Points            []struct{ X, Force, Couple float64 }
		Supports          []struct{ X, Rise, Stiffness float64 }
		TwoSided          []float64 `json:"two_sided"`
		Reactions         []float64
		Slack             []int
		Probes            []struct{ X, Shear, Moment, W float64 }
	}
	if err := json.Unmarshal(data, &cases); err != nil {
		t.Fatal(err)
	}
	slack, tips := 0, 0
	for i, c := range cases {
		b := unit(c.Length)
		b.Youngs = c.EI
		var l Loads
		for _, s := range c.Spreads {
			l.Spreads = append(l.Spreads, Spread{s.From, s.To, vec.V3{0, 0, s.A}, vec.V3{0, 0, s.B}})
		}
		for _, p := range c.Points {
			l.Points = append(l.Points, Point{p.X, vec.V3{0, 0, p.Force}, vec.V3{0, p.Couple, 0}})
		}
		var supports []Support
		for _, s := range c.Supports {
			if s.Stiffness == 0 {
				s.Stiffness = math.Inf(1)
			}
			supports = append(supports, Support{s.X, s.Stiffness, s.Rise})
		}
		two := carry(t, b, l, supports, false)
		for j, r := range two.Reactions {
			near(t, "pushing allowed", r/c.Total, c.TwoSided[j]/c.Total, 1e-6)
		}
		one, err := b.Carry(l, supports, true)
		if c.Reactions == nil {
			tips++
			if !errors.Is(err, ErrTips) {
				t.Errorf("beam %d tips, but got %v", i, one.Reactions)
			}
			continue
		}
		if err != nil {
			t.Fatalf("beam %d: %v", i, err)
		}
		for j, r := range one.Reactions {
			near(t, "reaction", r/c.Total, c.Reactions[j]/c.Total, 1e-6)
		}
		for _, j := range c.Slack {
			slack++
			if !one.Slack[j] || one.Gap[j] < 0 {
				t.Errorf("beam %d: support %d is not slack", i, j)
			}
		}
		moment, w := 0.0, 0.0
		for _, p := range c.Probes {
			moment, w = math.Max(moment, math.Abs(p.Moment)), math.Max(w, math.Abs(p.W))
		}
		for _, p := range c.Probes {
			near(t, "shear", one.Bending.Shear.At(p.X)/c.Total, p.Shear/c.Total, 1e-6)
			near(t, "moment", one.Bending.Moment.At(p.X)/moment, p.Moment/moment, 1e-6)
			near(t, "deflection", one.Bending.Deflection.At(p.X)/w, p.W/w, 1e-6)
		}
		if least, most := one.Bending.Moment.Extremes(); math.Max(-least.Value, most.Value) < moment*(1-1e-9) {
			t.Errorf("beam %d: the peak moment %g, %g is less than %g at a node", i, least.Value, most.Value, moment)
		}
	}
	if len(cases) != 20 || slack < 5 || tips == len(cases) {
		t.Errorf("%d beams with %d slack supports, %d tip: too tame a set", len(cases), slack, tips)
	}
}
