package way

import (
	"math"
	"math/rand/v2"
	"testing"

	"cohoist/core/mass"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// four is an invented crate of 6 kg on four cables, or gripped.
func four(kind string, drag float64) *share.Model {
	c := plan.Class{Mass: 1.6, Rotors: 4, Layout: plan.Cross, Arm: 0.28, RotorRadius: 0.12, RotorThrustMax: 14,
		TorquePerThrust: 0.016, TiltMax: 30, DragArea: 0.02 * drag}
	p := plan.Plan{Vehicles: map[string]plan.Class{"v": c}, Policy: plan.EvenEffort,
		Limits: plan.Limits{Utilisation: 0.8, Cone: 30, TensionMin: 0.5, Separation: 0.9}}
	for i, at := range []vec.V3{{0.6, 0.5, 0.2}, {-0.6, 0.5, 0.2}, {-0.6, -0.5, 0.2}, {0.6, -0.5, 0.2}} {
		p.Team = append(p.Team, plan.Member{ID: string(rune('A' + i)), Vehicle: "v", Attach: at,
			Hold: plan.Hold{Kind: kind, Length: 2, WorkingLoad: 60}})
	}
	body := mass.Properties{Mass: 6, Inertia: vec.Diag(vec.V3{0.3, 0.4, 0.6})}
	return share.New(p, body, vec.V3{0.1, 0.12, 0.2}.Scale(drag), 1.225)
}

var unlimited = Limits{Utilisation: 0.8, Speed: math.Inf(1)}

func shortest(t *testing.T, r Route, m *share.Model, limits Limits) Found {
	t.Helper()
	f, err := r.Shortest(m, nil, limits, solve.NewSolver())
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// Straight up, one leg, no drag: by statics all vehicles give U T when (m + Σ m_i)(g + a) = 4 U T, and the peak of the
// polynomial is 84√5/25 A/T² (references 9.1), so the time is √(7.513188 A/a).
func TestStraightUp(t *testing.T) {
	const A = 5.0
	r := Route{Arm: 0.7, Points: []Point{{Time: math.NaN(), Heading: 0}, {At: vec.V3{0, 0, A}, Heading: 0, Time: math.NaN()}}}
	a := 4*0.8*4*14/(6+4*1.6) - share.Gravity
	want := math.Sqrt(84 * math.Sqrt(5) / 25 * A / a)
	f := shortest(t, r, four(plan.Cable, 0), unlimited)
	near(t, "time", f.Duration(), want, 1e-5)                                                                   // the reach is met from below to 1e-5
	near(t, "when", f.At/f.Duration(), (5-math.Sqrt(5))/10, 1e-3)                                               // a flat peak
	near(t, "doubled", shortest(t, twice(r), four(plan.Cable, 0), unlimited).Duration(), want*math.Sqrt2, 1e-5) // T ∝ √A
	slow := shortest(t, r, four(plan.Cable, 0), Limits{Utilisation: 0.8, Speed: 0.5})
	near(t, "speed governs", slow.Duration(), 35.0/16*A/0.5, 1e-5)
	legs := Legs(four(plan.Cable, 0), nil, slow.Path, Limits{Utilisation: 0.8, Speed: 0.5}, solve.NewSolver())
	if legs[0].Limit != Speed {
		t.Errorf("limit %v, want speed", legs[0].Limit)
	}
	up := Legs(four(plan.Cable, 0), nil, f.Path, unlimited, solve.NewSolver())
	if up[0].Limit != Utilisation || len(up[0].Who) != 4 {
		t.Errorf("limit %v of %v, want utilisation of all four", up[0].Limit, up[0].Who)
	}
}

func twice(r Route) Route {
	out := r
	out.Points = append([]Point(nil), r.Points...)
	for i := range out.Points {
		out.Points[i].At = out.Points[i].At.Scale(2)
	}
	return out
}

// A shortest way is at a limit; keeps them at five times as many instants, each by the program of the smallest worst
// utilisation, which shares nothing with the reach but the solver; and no random split of its time is shorter by more
// than one in a hundred.
func TestShortestKeepsLimits(t *testing.T) {
	s := solve.NewSolver()
	for seed := range uint64(4) {
		kind := []string{plan.Cable, plan.Rigid}[seed%2]
		m := four(kind, 1)
		if seed > 1 {
			m = m.InWind(4, 70)
		}
		r, _ := random(seed, 6, 2)
		f := shortest(t, r, m, unlimited)
		if !(f.Reach <= 1 && f.Reach > 1-1e-4) {
			t.Errorf("seed %d: reach %g", seed, f.Reach)
		}
		for _, i := range Fly(m, nil, f.Path, 5*steps, s) {
			if !(i.Utilisation <= 0.8*(1+2e-4)) { // peaks between the instants looked at
				t.Fatalf("seed %d, %s: utilisation %g at %g s of %g", seed, kind, i.Utilisation, i.Time, f.Duration())
			}
			if kind == plan.Rigid && lean(m, i.Motion) > 1+2e-4 {
				t.Fatalf("seed %d: leans by %g of its limit at %g s", seed, lean(m, i.Motion), i.Time)
			}
		}
		if seed > 1 {
			continue
		}
		d := rand.New(rand.NewPCG(seed, 21))
		groups, _, err := r.groups()
		if err != nil {
			t.Fatal(err)
		}
		for range 12 {
			moved := append([]float64(nil), f.Durations...)
			for k := range moved {
				moved[k] *= math.Exp(0.1 * d.NormFloat64())
			}
			find := &search{Route: r, groups: groups, judge: &judge{question: newQuestion(m, nil, 0.8), s: s, limits: unlimited}}
			p := path(t, r, moved)
			find.all(find.survey(p))
			other, err := find.scale(moved, true)
			if err != nil {
				t.Fatal(err)
			}
			if total(other) < 0.99*f.Duration() {
				t.Errorf("seed %d: %g s, found %g s", seed, total(other), f.Duration())
			}
		}
	}
}

// Ways of a centimetre and of a hundred metres, with points that stand twice and headings left out, in wind: every one has
// an answer within the limits.
func TestAnyWay(t *testing.T) {
	d := rand.New(rand.NewPCG(5, 20))
	for n := range 16 {
		r, size := Route{Arm: 1}, math.Pow(10, 4*d.Float64()-2)
		for k := range 2 + d.IntN(9) {
			p := Point{At: vec.V3{size * d.Float64(), size * d.Float64(), size * d.Float64()}, Heading: math.NaN(), Time: math.NaN()}
			if d.IntN(3) == 0 {
				p.Heading = 12 * (d.Float64() - 0.5)
			}
			if k > 1 && d.IntN(4) == 0 {
				p.At = r.Points[k-1].At
			}
			r.Points = append(r.Points, p)
		}
		m := four(plan.Cable, 1)
		if n%2 == 0 {
			m = m.InWind(5*d.Float64(), 360*d.Float64())
		}
		f, err := r.Shortest(m, nil, Limits{Utilisation: 0.8, Speed: 10}, solve.NewSolver())
		if err != nil || !(f.Reach <= 1 && f.Reach > 0.95) { // the largest reach jumps from peak to peak
			t.Errorf("way %d of %g m: %v, reach %g", n, size, err, f.Reach)
		}
	}
}

// Points with times keep them; what follows is as fast as allowed. Turning the whole way about the vertical changes
// nothing in calm air.
func TestTimesAndTurning(t *testing.T) {
	r, _ := random(3, 5, 0)
	r.Points[2].Time = 14
	f := shortest(t, r, four(plan.Cable, 1), unlimited)
	near(t, "time at the point", f.Start(2), 14, 1e-12)
	near(t, "place then", f.Path.At(14).At.Sub(r.Points[2].At).Norm(), 0, 1e-9)
	turned := r
	turned.Points = append([]Point(nil), r.Points...)
	for i := range turned.Points {
		p := &turned.Points[i]
		p.At = vec.Rot(vec.V3{0, 0, 1}).Mul(p.At)
		p.Heading++
	}
	near(t, "turned", shortest(t, turned, four(plan.Cable, 1), unlimited).Duration(), f.Duration(), 1e-3) // searches differ in rounding
	r.Points[3].Time = 2
	if _, err := r.Shortest(four(plan.Cable, 1), nil, unlimited, solve.NewSolver()); err != ErrTimes {
		t.Errorf("%v, want %v", err, ErrTimes)
	}
}

// A team that is at its limit in hover goes nowhere.
func TestNoWay(t *testing.T) {
	r := along(0, 1)
	if _, err := r.Shortest(four(plan.Cable, 0), nil, Limits{Utilisation: 0.5, Speed: math.Inf(1)}, solve.NewSolver()); err != ErrHover {
		t.Errorf("%v, want %v", err, ErrHover)
	}
}

// Ten points, four vehicles: the shortest way.
func BenchmarkTenPoints(b *testing.B) {
	m, s := four(plan.Cable, 1), solve.NewSolver()
	r, _ := random(1, 10, 3)
	for b.Loop() {
		if _, err := r.Shortest(m, nil, unlimited, s); err != nil {
			b.Fatal(err)
		}
	}
}

// A search ends when it may not go on, however far it is; let go on, it finds the same as one that nobody watches.
func TestStopped(t *testing.T) {
	m, s := four(plan.Cable, 1), solve.NewSolver()
	r, _ := random(1, 5, 1)
	want := shortest(t, r, m, unlimited)
	for _, after := range []int{0, 1, 30, want.Solved / 2, want.Solved - 1} {
		r.GoOn = func(solved int) bool { return solved < after }
		if f, err := r.Shortest(m, nil, unlimited, s); err != ErrStopped {
			t.Errorf("after %d of %d programs: %v, %v", after, want.Solved, f.Path, err)
		}
	}
	r.GoOn = func(int) bool { return true }
	near(t, "duration", shortest(t, r, m, unlimited).Duration(), want.Duration(), 1e-12)
	f, p := InstantAt(m, nil, want.Path, want.Duration(), s), want.Path
	all := Fly(m, nil, p, 2, s)
	near(t, "at the end", f.Utilisation, all[len(all)-1].Utilisation, 1e-9)
	near(t, "in the middle of leg 2", InstantAt(m, nil, p, p.Start(1)+p.Durations[1]/2, s).State.At.Sub(all[3].State.At).Norm(), 0, 1e-12)
}

// Slow legs with a time given before one that is free, whose first guess has their pace: there is a way. What is too fast says so.
func TestSlowThenFree(t *testing.T) {
	r := along(0, 0.5, 3.5, 6, 8.5, 10.5, 11)
	for i := range r.Points {
		r.Points[i].At[2] = 1 + math.Sin(float64(i))
	}
	r.Points[5].Time = 60
	f := shortest(t, r, four(plan.Cable, 1), unlimited)
	near(t, "time at the point", f.Start(5), 60, 1e-12)
	if !(f.Reach <= 1) {
		t.Errorf("reach %g", f.Reach)
	}
	r.Points[5].Time = 4
	if _, err := r.Shortest(four(plan.Cable, 1), nil, unlimited, solve.NewSolver()); err != ErrTimed {
		t.Errorf("%v, want %v", err, ErrTimed)
	}
}
