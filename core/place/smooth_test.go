package place

import (
	"math"
	"testing"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

var outline = []vec.V3{{-1.2, -0.8, 0.05}, {1.2, -0.8, 0.05}, {1.2, 0.8, 0.05}, {-1.2, 0.8, 0.05}}

func TestInRegion(t *testing.T) {
	for _, c := range []struct {
		name   string
		q      Question
		region Region
		gap    float64 // of the bound, relative
	}{
		{"hover, anywhere", Question{Plan: panel(4)}, Region{Area: outline}, 1e-6},
		{"hover, along the edges", Question{Plan: panel(4)}, Region{Path: outline, Closed: true}, 1e-6},
		{"off, anywhere", Question{Plan: panel(4), Cases: Cases{Off: 0.05}}, Region{Area: outline}, 0.05},
		{"six, one lost", Question{Plan: panel(6), Cases: Cases{Lost: true}}, Region{Area: outline}, 0.2},
		{"five, off and lost, kept out", Question{Plan: panel(5), Cases: Cases{Off: 0.03, Lost: true}, Spacing: 0.7},
			Region{Area: outline, KeepOut: []Zone{{Points: []vec.V3{{0.8, -0.4, 0}}, Radius: 0.3}}}, 0.3},
	} {
		a, err := InRegion(c.q, c.region, nil)
		if err != nil {
			t.Fatal(err)
		}
		holes, _ := OnHoles(c.q, Outside(forty(), c.region.KeepOut), nil)
		t.Logf("%s: %.6f at %.3v, bound %.6f, forty holes %.6f, evaluated %d", c.name, a.Value, a.Places, a.Proof.Bound, holes.Value, a.Proof.Evaluated)
		if len(c.region.Area) > 0 && a.Value > holes.Value*(1+1e-9) {
			t.Errorf("%s: %g, worse than on holes in the region, %g", c.name, a.Value, holes.Value)
		}
		if a.Proof.Bound > a.Value*(1+1e-9) || a.Proof.Bound < a.Value*(1-c.gap) {
			t.Errorf("%s: %g with a bound of %g", c.name, a.Value, a.Proof.Bound)
		}
		p := c.q.Plan.Clone()
		for i := range p.Team {
			p.Team[i].Attach = a.Places[i]
			if len(c.region.Area) > 0 && !(Zone{Points: outline}).Contains(a.Places[i]) {
				t.Errorf("%s: %v lies outside", c.name, a.Places[i])
			}
			for _, z := range c.region.KeepOut {
				if z.Contains(a.Places[i]) {
					t.Errorf("%s: %v lies where it must not", c.name, a.Places[i])
				}
			}
			for j := range i {
				if d := a.Places[i].Sub(a.Places[j]).Norm(); d < c.q.Spacing-1e-9 {
					t.Errorf("%s: %g m apart", c.name, d)
				}
			}
		}
		q := c.q
		q.Plan = p
		if v, _, err := Value(q); err != nil || math.Abs(v-a.Value) > 1e-9 {
			t.Errorf("%s: the plan with these places has %g, not %g, %v", c.name, v, a.Value, err)
		}
	}
}

// beamOn is an invented beam of 6 m and 5 kg that k field quads carry on a line of holes every 150 mm.
func beamOn(k int) (plan.Plan, []vec.V3) {
	p := panel(k)
	p.Payload.Solids = p.Payload.Solids[:1]
	p.Payload.Solids[0].Size, p.Payload.Solids[0].Mass = []float64{6, 0.1, 0.1}, 5
	p.Payload.Beam.Material = "softwood-c24"
	return p, InRow(vec.V3{-3, 0, 0.05}, vec.V3{3, 0, 0.05}, 0.15)
}

// Continuous places of two for the smallest bending moment are (√2 − 1)/2 of the length from the ends; overhang
// .414 of half the length in A Text-Book of Mechanical Engineering, Appendix L p. 761,
// http://archive.org/stream/ATextBookOfMechanicalEngineering/TXT/00000816.txt.
func TestSmallestMomentOfTwo(t *testing.T) {
	p, holes := beamOn(2)
	q := Question{Plan: p, Goal: Moment}
	a, err := InRegion(q, Region{Path: []vec.V3{holes[0], holes[len(holes)-1]}}, nil)
	if err != nil {
		t.Fatal(err)
	}
	w, l := 5*9.80665/6, 6.
	if math.Abs(a.Value-0.0214466*w*l*l) > 1e-4*a.Value {
		t.Errorf("moment %g, want %g", a.Value, 0.0214466*w*l*l)
	}
	want := l/2 - (math.Sqrt2-1)/2*l
	x := math.Min(math.Abs(a.Places[0][0]), math.Abs(a.Places[1][0]))
	if math.Abs(x-want) > 1e-3 || math.Abs(a.Places[0][0]+a.Places[1][0]) > 2e-3 {
		t.Errorf("places %v, want ±%g", a.Places, want)
	}
	on, err := OnHoles(q, holes, nil)
	if err != nil {
		t.Fatal(err)
	}
	best, _ := brute(t, q, holes)
	t.Logf("on holes %g at %v, brute %g, evaluated %d of %g", on.Value, on.Holes, best, on.Proof.Evaluated, on.Proof.Candidates)
	if math.Abs(on.Value-best) > 1e-9*best || on.Value < a.Value*(1-1e-6) || !on.Proof.Proved {
		t.Errorf("on holes %g, by brute force %g", on.Value, best)
	}
}

// A search in a region is stopped within few placements, and keeps what it has.
func TestStopInRegion(t *testing.T) {
	for _, after := range []int{1, 7} {
		calls, at := 0, 0
		a, err := InRegion(Question{Plan: panel(6), Cases: Cases{Lost: true}}, Region{Area: outline}, func(p Progress) bool {
			at = p.Evaluated
			calls++
			return calls < after
		})
		if err != nil || calls != after || a.Proof.Proved {
			t.Errorf("%d calls, %+v, %v", calls, a.Proof, err)
		}
		if a.Proof.Evaluated > at+2*tellLooks && after > 1 {
			t.Errorf("%d placements were solved, stopped at %d", a.Proof.Evaluated, at)
		}
	}
}
