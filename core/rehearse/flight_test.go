package rehearse

import (
	"fmt"
	"math"
	"testing"

	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
	"cohoist/core/way"
)

// liftOf is the model and the share of an example.
func liftOf(t testing.TB, name string) (*share.Model, share.Answer) {
	t.Helper()
	p, faults := example.Plan(name)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return modelOf(t, p)
}

// modelOf is the model and the share of a plan that has a balance.
func modelOf(t testing.TB, p plan.Plan) (*share.Model, share.Answer) {
	t.Helper()
	m, a := shareOf(t, p)
	if a.Status != solve.Optimal {
		t.Fatal(a.Status)
	}
	return m, a
}

func shareOf(t testing.TB, p plan.Plan) (*share.Model, share.Answer) {
	t.Helper()
	m, err := share.Of(p)
	if err != nil {
		t.Fatal(err)
	}
	return m, m.Share(solve.NewSolver())
}

func rehearsal(t testing.TB, m *share.Model, c *Score, o Options) *Rehearsal {
	t.Helper()
	r, err := New(m, c, o)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// In calm air and in the steady wind that was planned for nothing moves: the planned pulls are those of lines of the planned
// length, (12.14).
func TestHoverStays(t *testing.T) {
	for _, name := range []string{"beam-pair", "deck-of-eight", "handrail-beam", "crate-ring"} {
		m, a := liftOf(t, name)
		f := rehearsal(t, m, Hover(m, a.Parts, 3), Options{}).Fly()
		if p := f.Peaks; !(p.Off <= 1e-9 && p.Sink <= 1e-9 && p.Swing <= 1e-9 && math.IsNaN(p.Crash)) {
			t.Errorf("%s moves: %+v", name, p)
		}
		for i, part := range a.Parts {
			if got := f.Peaks.Tension[i]; !(math.Abs(got-part.Tension) <= 1e-6*part.Tension) {
				t.Errorf("%s: line %d pulls with %g N, planned %g N", name, i, got, part.Tension)
			}
		}
	}
}

// A steady wind first carries the team off; then every vehicle is back where it should be, and the lines' pulls with the drag
// hold the payload: Σ F = W − D.
func TestHoldsAgainstWind(t *testing.T) {
	m, a := liftOf(t, "crate-ring")
	r := rehearsal(t, m, Hover(m, a.Parts, 25), Options{})
	for i := range r.crew {
		r.crew[i].pilot.wind = vec.V3{} // nobody told them
	}
	f := r.Fly()
	last := f.Samples[len(f.Samples)-1]
	if d := last.Payload.At.Sub(last.Wanted).Norm(); !(d <= 0.02) {
		t.Errorf("the payload stays %g m off", d)
	}
	var sum vec.V3
	for i := range m.Craft {
		sum = sum.Sub(r.feel(i))
	}
	want := vec.V3{0, 0, m.Payload.Mass * share.Gravity}.Sub(m.Drag)
	if d := sum.Sub(want).Norm(); !(d <= 0.01*want.Norm()) { // what swing is left after 25 s
		t.Errorf("lines pull with %v N, want %v N", sum, want)
	}
}

// The same rehearsal twice is the same to the last bit; another seed gives other gusts; half the step moves the payload by
// less than 1e-4 m after eight seconds of gusts with a vehicle lost. On cables, on rigid holds, and on both.
func TestDeterministic(t *testing.T) {
	onCables, _ := liftOf(t, "crate-ring")
	onBoth, _ := mixed(t)
	allRigid, _ := ring(t, 8, 6, func(p *plan.Plan) { p.Site.Wind, p.Site.GustFactor = 5, 1.5 })
	for k, m := range []*share.Model{onCables, allRigid, onBoth} {
		a := m.Share(solve.NewSolver())
		o := Options{Gusts: true, Fail: &Failure{Vehicle: []int{4, 4, 1}[k], Time: 3, Cut: true}}
		fly := func(m *share.Model, finer int) *Flight {
			r := rehearsal(t, m, Hover(m, a.Parts, 8), o)
			r.steps *= finer
			return r.Fly()
		}
		first := fly(m, 1)
		end := len(first.Samples) - 1
		if again := fly(m, 1); fmt.Sprint(first.Samples[end]) != fmt.Sprint(again.Samples[end]) {
			t.Errorf("%d: the same plan flies another way", k)
		}
		at := first.Samples[end].Payload.At
		if d := fly(m, 2).Samples[end].Payload.At.Sub(at).Norm(); !(d <= 1e-4) {
			t.Errorf("%d: half the step moves the payload by %g m", k, d)
		}
		other := *m
		other.Plan.Seed++
		if d := fly(&other, 1).Samples[end].Payload.At.Sub(at).Norm(); !(d > 1e-3) {
			t.Errorf("%d: another seed moves the payload by only %g m", k, d)
		}
	}
}

// A vehicle whose line is let go leaves the others with the whole weight, and they hold it; it falls to its end. A team of
// two does not hold a beam with one.
func TestVehicleLost(t *testing.T) {
	m, a := liftOf(t, "deck-of-eight")
	r := rehearsal(t, m, Hover(m, a.Parts, 12), Options{Fail: &Failure{Vehicle: 1, Time: 1, Cut: true}})
	f := r.Fly()
	if p := f.Peaks; !(math.IsNaN(p.Crash) && p.Recovery < 5 && p.Sink < 0.2 && p.Sink > 0.001) {
		t.Errorf("eight less one: crash %g, recovery %g s, sink %g m", p.Crash, p.Recovery, p.Sink)
	}
	up := 0.0
	for i := range m.Craft {
		up -= r.feel(i)[2]
	}
	if w := m.Payload.Mass * share.Gravity; !(math.Abs(up-w) <= 1e-3*w) {
		t.Errorf("seven lines hold %g N of %g N", up, w)
	}
	m, a = liftOf(t, "beam-pair")
	if p := rehearsal(t, m, Hover(m, a.Parts, 12), Options{Fail: &Failure{Vehicle: 1, Time: 1}}).Fly().Peaks; math.IsNaN(p.Crash) {
		t.Errorf("one of two holds a beam: %+v", p)
	}
}

// Up from the ground, along a way, and down again: off the score by decimetres, on the ground at the end with slack lines.
func TestWholeLift(t *testing.T) {
	m, a := liftOf(t, "crate-ring")
	s := solve.NewSolver()
	nan := math.NaN()
	route := way.Route{Arm: 1, Points: []way.Point{{At: vec.V3{0, 0, 3}, Heading: 0, Time: nan}, {At: vec.V3{5, 2, 4}, Heading: 0.5, Time: nan}, {At: vec.V3{8, 0, 3}, Heading: 0, Time: nan}}}
	found, err := route.Shortest(m, a.Apart, way.Limits{Utilisation: 0.8, Speed: 2}, s)
	if err != nil {
		t.Fatal(err)
	}
	score, ok := Along(m, a.Apart, found.Path, 2, s)
	if !ok {
		t.Fatal("no score")
	}
	feet := Feet(m.Plan.Payload)
	low := m.Payload.COM[2] - feet[0][2]
	score.FromGround(2, low)
	score.ToGround(2, low)
	r := rehearsal(t, m, score, Options{Feet: feet})
	f := r.Fly()
	p := f.Peaks
	t.Logf("swing %.3g°, off %.3g m, sink %.3g m, separation %.3g m", p.Swing*180/math.Pi, p.Off, p.Sink, p.Separation)
	if !(p.Off < 0.3 && p.Sink < 0.15 && p.Swing < 0.15 && math.IsNaN(p.Crash) && p.Separation > 0.9*m.Plan.Limits.Separation) {
		t.Errorf("peaks %+v", p)
	}
	last := f.Samples[len(f.Samples)-1]
	if d := last.Payload.At.Sub(vec.V3{8, 0, 1}); !(d.Norm() < 0.3 && last.Payload.Velocity.Norm() < creep/4 && // the wind makes friction creep
		math.Abs(d[2]) < 0.005) {
		t.Errorf("set down %v m off, at %v m/s", d, last.Payload.Velocity)
	}
	for i, x := range last.Tension {
		if x > 0.05*p.Tension[i] {
			t.Errorf("line %d still pulls with %g N", i, x)
		}
	}
}

// Flown slowly in calm air the rehearsal is what the plan of the way says: pulls, place and level.
func TestSlowWayAsPlanned(t *testing.T) {
	m, a := liftOf(t, "deck-of-eight")
	s := solve.NewSolver()
	nan := math.NaN()
	route := way.Route{Arm: 1, Points: []way.Point{{Heading: 0, Time: nan}, {At: vec.V3{4, 1, 1}, Heading: nan, Time: nan}, {At: vec.V3{8, 0, 0}, Heading: 0.4, Time: nan}}}
	p, err := route.Path([]float64{10, 10})
	if err != nil {
		t.Fatal(err)
	}
	score, ok := Along(m, a.Apart, p, 1, s)
	if !ok {
		t.Fatal("no score")
	}
	r := rehearsal(t, m, score, Options{})
	worst := 0.0
	for r.World.Time < score.Duration()-0.01 {
		r.Advance()
		for i := range m.Craft {
			want := score.aim(i, r.World.Time).pull.Norm()
			worst = math.Max(worst, math.Abs(r.World.Tension[i]-want)/want)
		}
	}
	f := rehearsal(t, m, score, Options{}).Fly()
	if q := f.Peaks; !(worst <= 1e-3 && q.Off <= 0.005 && q.Sink <= 0.001 && q.Swing <= 1e-3) { // found: 5e-5, 0.002 m, 0.0003 m, 4e-5
		t.Errorf("pulls within %.2g, off %.3g m, sink %.3g m, swing %.3g rad", worst, q.Off, q.Sink, q.Swing)
	}
}
