package way

import (
	"errors"
	"math"
	"strings"
	"testing"

	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// crate is the outline of the invented crate.
var crate = [][]vec.V3{{{0.7, 0.6, 0.2}, {-0.7, 0.6, 0.2}, {-0.7, -0.6, 0.2}, {0.7, -0.6, 0.2}, {0.7, 0.6, -0.2}, {-0.7, 0.6, -0.2}, {-0.7, -0.6, -0.2}, {0.7, -0.6, -0.2}}}

// slow is a straight way at a crawl, 10 m along x in 200 s.
func slow(f Formation) Route {
	r := Route{Arm: 0.8}
	for i, x := range []float64{0, 3, 7, 10} {
		p := Point{At: vec.V3{x, 0, 1}, Heading: 0, Time: 50 * float64(i)}
		if i == 1 || i == 2 {
			p.Formation = f
		}
		r.Points = append(r.Points, p)
	}
	return r
}

// An opening, by hand: the vehicles stand above their attachments, 0.5 m from the middle and 2.2 m above the centre of mass, and
// reach 0.4 m; the crate's lower side is 0.2 m below it. In line they take the width that was asked for.
func TestOpening(t *testing.T) {
	m, s := four(plan.Cable, 0), solve.NewSolver()
	for _, row := range []struct {
		f     Formation
		width float64
	}{{Formation{}, 1.8}, {Formation{Shape: plan.InLine, Width: 1.5, Along: 0}, 1.5}} {
		r := slow(row.f)
		r.Openings = []Opening{{At: vec.V3{5, 0.1, 2.2}, Width: 2.2, Height: 4}, {At: vec.V3{5, 5, 1}, Normal: math.Pi / 2, Width: 1, Height: 1}}
		f, err := r.Shortest(m, nil, unlimited, s)
		if err != nil {
			t.Fatal(err)
		}
		got, ok := r.Watch(m, nil, f.Path, crate, s, nil)
		if !ok {
			t.Fatal("ended")
		}
		p := got.Passes[0]
		near(t, "width", p.Width(), row.width, 5e-3) // discs lean with the cables, by 8°: 1 − cos of 0.4 m at either side
		near(t, "right", p.Right, -row.width/2-0.1, 5e-3)
		near(t, "low", p.Low, -1.4, 1e-9)
		near(t, "room", p.Room, 1.1-row.width/2-0.1, 5e-3)
		if p.Side != "right" || p.What != "C" && p.What != "D" || p.Cable {
			t.Errorf("nearest is %q at the %s side", p.What, p.Side)
		}
		if row.f.planned() {
			near(t, "high", p.High, 2.2-1.2, 1e-3)
			near(t, "from", f.Path.At(p.From).At[0], 5-0.6-0.4, 2*fine) // the instants looked at
			near(t, "to", f.Path.At(p.To).At[0], 5+0.7, 2*fine+0.3)
		}
		if aside := got.Passes[1]; aside.From <= aside.To {
			t.Errorf("%+v, but it does not come there", aside)
		}
	}
}

// The least distance on a way is not above that of five times as many instants, with formations and without.
func TestWatched(t *testing.T) {
	s := solve.NewSolver()
	for seed := range uint64(4) {
		m := four(plan.Cable, 1)
		r, _ := random(seed, 5, 1)
		if seed > 1 {
			r.Points[2].Formation = Formation{Shape: plan.InLine, Width: 1.5, Along: free}
		}
		f := shortest(t, r, m, unlimited)
		got, _ := r.Watch(m, nil, f.Path, crate, s, nil)
		least := math.Inf(1)
		for _, i := range Fly(m, nil, f.Path, 5*closely, s) {
			least = math.Min(least, i.Separation)
		}
		if !(least >= got.Least-1e-5) { // between instants by golden section, to a thousandth of their time
			t.Errorf("seed %d: %.9g m, said %.9g m at %g s", seed, least, got.Least, got.When)
		}
		at := InstantAt(m, nil, f.Path, got.When, s)
		near(t, "then", at.Separation, got.Least, 1e-9)
		blown := 0
		for _, x := range got.Flags {
			if x.Kind == Blown {
				blown++
			}
		}
		if blown != 4 { // every vehicle hangs above a corner of the crate
			t.Errorf("seed %d: %d wakes on the payload", seed, blown)
		}
	}
}

// The waypoints of an approach take the crate through an opening with the clearance that it asks for, from either side, in a wall that
// stands askew, as planned where there is room and in line where there is not; what is too narrow says so.
func TestApproach(t *testing.T) {
	m, s := four(plan.Cable, 0), solve.NewSolver()
	for _, row := range []struct {
		width, normal float64
		from          vec.V3
		line          bool
	}{{2.3, 0, vec.V3{-6, 0, 1}, false}, {1.8, 0, vec.V3{-6, 0, 1}, true}, {1.8, 0, vec.V3{6, 1, 1}, true}, {1.8, 0.5, vec.V3{-6, 0, 1}, true}} {
		o := Opening{At: vec.V3{0, 0.5, 2}, Normal: row.normal, Width: row.width, Height: 3.6, Clearance: 0.1}
		r := Route{Arm: 0.8, Openings: []Opening{o}}
		points, box, err := r.Approach(o, row.from, 0.4, m, nil, crate, unlimited, s)
		if err != nil {
			t.Fatal(err)
		}
		if got := points[1].Formation.Shape == plan.InLine; got != row.line {
			t.Errorf("%g m: in line %v", row.width, got)
		}
		end := points[2].At.Scale(2).Sub(points[1].At)
		r.Points = append([]Point{{At: row.from, Heading: 0.4, Time: free}}, append(points[:], Point{At: end, Heading: points[2].Heading, Time: free})...)
		for leg := 1; leg < 3; leg++ {
			box.Leg = leg
			r.Boxes = append(r.Boxes, box)
		}
		f := shortest(t, r, m, Limits{Utilisation: 0.8, Speed: 1})
		got, _ := r.Watch(m, nil, f.Path, crate, s, nil)
		p := got.Passes[0]
		if !(p.From < p.To) || !(p.Room >= 0.1) {
			t.Errorf("%g m, %g rad: %+v", row.width, row.normal, p)
		}
		if !(math.Abs(p.High+p.Low) < 0.15) { // the middle, but for the lean of discs and of the payload's way
			t.Errorf("it passes from %g to %g m of the middle's height", p.Low, p.High)
		}
	}
	_, _, err := Route{}.Approach(Opening{Width: 1, Height: 4}, vec.V3{-5, 0, 0}, 0, m, nil, crate, unlimited, s)
	var at *FormError
	if !errors.As(err, &at) || !strings.Contains(at.Why, "narrow enough") {
		t.Error(err)
	}
}

// Two vehicles on a beam, whose payload hangs from one line: it spreads on its way, forces balance, and no vehicle is beyond its limit.
func TestTwoOnABeam(t *testing.T) {
	m, s := four(plan.Cable, 1), solve.NewSolver()
	m.Craft = m.Craft[:2]
	m.Craft[0].At, m.Craft[1].At = vec.V3{0.6, 0, 0.2}, vec.V3{-0.6, 0, 0.2}
	m.Body.Mass, m.Payload.Mass = 3, 3
	m = m.InWind(2, 50)
	r := door(Formation{Shape: plan.Spread, Spacing: 1.6, Width: free, Along: free})
	f := shortest(t, r, m, unlimited)
	if !(f.Reach <= 1 && f.Reach > 0.99) {
		t.Errorf("reach %g", f.Reach)
	}
	near(t, "spread", f.Formed[1].Spacing, 1.6, 1e-4)
	for _, i := range Fly(m, nil, f.Path, 40, s) {
		sum := vec.V3{}
		for _, part := range i.Parts {
			sum = sum.Add(part.Force)
		}
		level := m.Upright(i.State.Heading, vec.V3{})
		want := i.State.Acceleration.Add(vec.V3{0, 0, share.Gravity}).Scale(3).Sub(m.Air(level, i.State.Velocity))
		near(t, "force", level.Mul(sum).Sub(want).Norm(), 0, 1e-9)
		if !(i.Utilisation <= 0.8*(1+2e-4)) {
			t.Fatalf("utilisation %g at %g s", i.Utilisation, i.Time)
		}
	}
}
