package beam

import (
	"math"
	"math/rand/v2"
	"testing"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

func handrail() plan.Payload {
	p := plan.Blank().Payload
	s := plan.BlankSolid()
	s.Shape, s.Size, s.Mass, s.At, s.Turn = plan.Box, []float64{6, 0.06, 0.12}, 12, vec.V3{}, vec.V3{}
	q := plan.BlankSolid()
	q.Shape, q.Mass, q.At, q.Turn = plan.Point, 3, vec.V3{1.5, 0.1, 0.2}, vec.V3{}
	p.Solids = []plan.Solid{s, q}
	p.Beam.Material, p.Beam.Wall = "aluminium-6061-t6", 0.003
	return p
}

func TestPayloadAsBeam(t *testing.T) {
	m, ok := Of(handrail())
	if !ok || len(m.Needs) > 0 || m.Left != -3 || m.Right != 3 {
		t.Fatalf("%v %+v", ok, m)
	}
	// by hand: hollow 60 × 120 × 3: I = (0.06 × 0.12³ − 0.054 × 0.114³)/12
	near(t, "I", m.Section.Second[Upright], (0.06*0.12*0.12*0.12-0.054*0.114*0.114*0.114)/12, 1e-18)
	near(t, "W", m.Section.Modulus[Upright], m.Section.Second[Upright]/0.06, 1e-15)
	near(t, "A", m.Section.Area, 0.06*0.12-0.054*0.114, 1e-15)
	near(t, "allowable", m.Allowable, 80e6, 1e-6)
	l := m.Weight(vec.V3{0, 0, -10}) // g = 10
	l.Points = append(l.Points, m.Act(vec.V3{-2, 0, 0}, vec.V3{0, 0, 63.75}, vec.V3{}), m.Act(vec.V3{2, 0, 0}, vec.V3{0, 0, 86.25}, vec.V3{}))
	d := m.Bend(l, -2, 2) // by hand: 60 + 30 × 0.5/4, 60 + 30 × 3.5/4
	for i, r := range d.Residual {
		near(t, []string{"x", "y", "z", "level moment", "moment", "moment"}[i], r, 0, 1e-11)
	}
	near(t, "moment at the left hold", d.Planes[Upright].Moment.At(-2), -20*1*0.5, 1e-12)
	near(t, "sag at the holds", d.Planes[Upright].Deflection.At(2), 0, 1e-15)
	// largest: no shear where 63.75 = 20 (x + 3)
	peak := d.Planes[Upright].Moment.Worst()
	near(t, "place of the peak", peak.X, 63.75/20-3, 1e-12)
	near(t, "peak", peak.Value, 63.75*(peak.X+2)-20*(peak.X+3)*(peak.X+3)/2, 1e-12)
	stress := d.WorstStress()
	near(t, "its stress", stress.Stress, peak.Value/m.Section.Modulus[Upright], 1e-6)
	near(t, "its place", stress.X, peak.X, 1e-9)
	com := vec.V3{0.5, 0, 0} // measured: the weights' own moment must match
	p := handrail()
	p.COM = &com
	m, _ = Of(p)
	_, _, force, couple := m.curves(m.Weight(vec.V3{0, 0, -10}), Upright)
	near(t, "weight", force, -150, 1e-11)
	near(t, "moment about the right end", couple, -150*2.5, 1e-11)
}

func TestWhatABeamNeeds(t *testing.T) {
	p := handrail()
	p.Solids[0].Shape, p.Solids[0].Length = plan.Rod, 6
	if m, ok := Of(p); !ok || len(m.Needs) != 1 || m.Needs[0] != "payload.beam.depth_m" {
		t.Errorf("a rod: %v %v", ok, m.Needs)
	}
	p.Beam.Depth = 0.05
	m, _ := Of(p)
	near(t, "a full rod of 50 mm, hollow by the wall", m.Section.Second[0], math.Pi/4*(math.Pow(0.025, 4)-math.Pow(0.022, 4)), 1e-18)
	p.Beam.Material, p.Beam.Youngs = "", 1e9
	if m, _ := Of(p); len(m.Needs) != 1 || m.Needs[0] != "payload.beam.allowable_stress_pa" {
		t.Errorf("no strength: %v", m.Needs)
	}
	p = handrail()
	p.Solids[0].Turn[0] = 90 // on its side: depth and width change places
	m, _ = Of(p)
	near(t, "depth", m.Section.Size[Upright], 0.06, 0)
	p.Solids[0].Turn = vec.V3{0, 0, 30}
	if _, ok := Of(p); ok {
		t.Error("a bar that does not lie along x is no beam along x")
	}
	if _, ok := Of(plan.Blank().Payload); ok {
		t.Error("an empty plan is a beam")
	}
	q, _ := plan.FieldAt("payload.beam.material")
	for i, row := range Materials {
		if len(q.Choices) != len(Materials) || q.Choices[i] != row.Name {
			t.Errorf("the plan's choice %q is not the row %q", q.Choices[i], row.Name)
		}
	}
}

// An inclined cable above the axis: by hand. Two cables pull 5 N inwards and 10 N up at the ends of a
// bar of 2 m, hung 0.1 m above its centreline: compression 5 N, end couples 5 × 0.1 that sag it.
func TestInclinedCables(t *testing.T) {
	b := unit(2)
	b.Section = Pipe(0.02, 0)
	l := Loads{Spreads: []Spread{down(0, 2, 10)}, Points: []Point{
		b.Act(vec.V3{0, 0, 0.1}, vec.V3{5, 0, 10}, vec.V3{}), b.Act(vec.V3{2, 0, 0.1}, vec.V3{-5, 0, 10}, vec.V3{})}}
	d := b.Bend(l, 0, 2)
	near(t, "axial", d.Axial.At(1), -5, 1e-12)
	near(t, "end moment", d.Planes[Upright].Moment.At(0), 0.5, 1e-12)
	near(t, "mid moment", d.Planes[Upright].Moment.At(1), 0.5+10*4./8, 1e-12)
	s := d.WorstStress()
	near(t, "stress", s.Stress, 5/b.Section.Area+5.5/b.Section.Modulus[0], 1e-6)
	near(t, "place", s.X, 1, 1e-9)
	// Past an end, a grip's moment and its lever are taken to the end.
	q := b.Act(vec.V3{2.5, 0, 0}, vec.V3{0, 0, 4}, vec.V3{0, 1, 0})
	if q.X != 2 || math.Abs(q.Moment[1]-(1-0.5*4)) > 1e-15 {
		t.Errorf("beyond the end: %+v", q)
	}
}

// The largest stress is not missed between knots: random loads in both planes and along the bar, compared
// with 20 001 samples, which can only be smaller and not by much.
func TestWorstStressAgainstSamples(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 1))
	for range 40 {
		b := unit(3)
		b.Section = Rectangle(0.03, 0.05, 0)
		if rng.IntN(2) == 0 {
			b.Section = Pipe(0.03, 0.02)
		}
		v := func() vec.V3 { return vec.V3{3000 * rng.NormFloat64(), rng.NormFloat64(), rng.NormFloat64()} }
		l := Loads{Spreads: []Spread{{0, 3, v(), v()}, {0.5, 2, v(), v()}}, Points: []Point{{0.3, v(), v()}, {2.2, v(), v()}, {0, v(), v()}}}
		d := b.Bend(l, 0.3, 2.2)
		worst, sampled := d.WorstStress(), 0.0
		for i := range 20001 {
			sampled = math.Max(sampled, d.Stress(3*float64(i)/20000))
		}
		if worst.Stress < sampled*(1-1e-12) || worst.Stress > sampled*(1+1e-3) {
			t.Errorf("worst stress %g, sampled %g", worst.Stress, sampled)
		}
		near(t, "the stress stands where it says", d.Stress(worst.X), worst.Stress, 1e-9*worst.Stress)
	}
}
