package way

import (
	"math"
	"testing"

	"cohoist/core/plan"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// corners is up, along and down, with stops at the corners or without.
func corners(stop bool) Route {
	r := Route{Arm: 0.7}
	for i, at := range []vec.V3{{0, 0, 0}, {0, 0, 2}, {6, 0, 2}, {6, 0, 0}} {
		r.Points = append(r.Points, Point{At: at, Heading: math.NaN(), Time: math.NaN(), Stop: stop && (i == 1 || i == 2)})
	}
	r.Points[3].Heading = 1
	return r
}

// Between stops a leg is the move from rest to rest, 35, −84, 70, −20 (references 9.1), straight, and its cost the sum of those of
// the legs alone; a heading that is left out stays free.
func TestStops(t *testing.T) {
	r, durations := corners(true), []float64{1.5, 3, 2}
	p, err := r.Path(durations)
	if err != nil {
		t.Fatal(err)
	}
	for leg := range durations {
		a, b := r.Points[leg].At, r.Points[leg+1].At
		for k := range 21 {
			s := float64(k) / 20
			want := a.Add(b.Sub(a).Scale(s * s * s * s * (35 + s*(-84+s*(70-20*s)))))
			if off := p.on(leg, s).At.Sub(want).Norm(); off > 1e-12 {
				t.Fatalf("leg %d at %g: %g m off", leg, s, off)
			}
		}
		at := p.At(p.Start(leg + 1))
		if n := at.Velocity.Norm() + at.Acceleration.Norm() + at.Jerk.Norm() + math.Abs(at.Turn) + math.Abs(at.TurnRate); n > 1e-9 {
			t.Errorf("after leg %d it moves: %g", leg, n)
		}
	}
	flat := r
	flat.Points = append([]Point(nil), r.Points...)
	flat.Points[3].Heading = 0
	straight, _ := flat.Path(durations)
	sum := 0.0
	for leg, T := range durations {
		one, err := Route{Arm: 0.7, Points: []Point{{At: r.Points[leg].At, Heading: 0}, {At: r.Points[leg+1].At, Heading: 0}}}.Path([]float64{T})
		if err != nil {
			t.Fatal(err)
		}
		sum += one.Cost
	}
	near(t, "cost", straight.Cost, sum, 1e-12)
	if turned := p.At(p.Start(1)).Heading; !(turned > 0 && turned < 1) {
		t.Errorf("a free heading stands at %g", turned)
	}
}

// A plan's stops are kept by the shortest way, which then keeps to its corners; without them it swings out.
func TestTheShortestWayStops(t *testing.T) {
	p := plan.Plan{Way: plan.Way{Points: []plan.Waypoint{{Pass: plan.Stop}, {Pass: plan.Through}, {}}}}
	m := four(plan.Cable, 0)
	if r, _ := Of(p, m); !r.Points[0].Stop || r.Points[1].Stop || r.Points[2].Stop {
		t.Errorf("read as %v", r.Points)
	}
	highest := map[bool]float64{}
	for _, stop := range []bool{false, true} {
		f, err := corners(stop).Shortest(m, nil, unlimited, solve.NewSolver())
		if err != nil {
			t.Fatal(err)
		}
		for k := range 400 {
			highest[stop] = math.Max(highest[stop], f.Path.At(f.Duration() * float64(k) / 400).At[2])
		}
		near(t, "reach", f.Reach, 1, 1e-4)
	}
	if highest[true] > 2+1e-9 || highest[false] < 2.1 {
		t.Errorf("highest %v", highest)
	}
}
