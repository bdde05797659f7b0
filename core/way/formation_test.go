package way

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"cohoist/core/formation"
	"cohoist/core/mass"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

var free = math.NaN()

// door is the crate on its way through somewhere narrow: as planned at both ends, a formation between.
func door(f Formation) Route {
	r := Route{Arm: 0.8}
	for i, at := range []vec.V3{{0, 0, 1}, {4, 0.5, 1.5}, {7, 0.5, 1.5}, {10, 0, 1}} {
		p := Point{At: at, Heading: 0.3 * float64(i%2), Time: free}
		if i == 1 || i == 2 {
			p.Formation, p.Heading = f, 0.3
		}
		r.Points = append(r.Points, p)
	}
	return r
}

// Two vehicles on one attachment, gathered to a distance d: sin γ = d/(2L), by hand.
func TestTwoGathered(t *testing.T) {
	const L, d = 2.0, 1.4
	c := plan.Class{Mass: 1.6, Rotors: 4, Layout: plan.Cross, Arm: 0.28, RotorRadius: 0.12, RotorThrustMax: 14, TorquePerThrust: 0.016, TiltMax: 30}
	p := plan.Plan{Vehicles: map[string]plan.Class{"v": c}, Policy: plan.EvenEffort,
		Limits: plan.Limits{Utilisation: 0.8, Cone: 35, TensionMin: 0.5, Separation: 0.9}}
	for _, id := range []string{"A", "B"} {
		p.Team = append(p.Team, plan.Member{ID: id, Vehicle: "v", Attach: vec.V3{0, 0, 0.2}, Hold: plan.Hold{Kind: plan.Cable, Length: L, WorkingLoad: 60}})
	}
	m := share.New(p, mass.Properties{Mass: 2, Inertia: vec.Diag(vec.V3{0.1, 0.1, 0.1})}, vec.V3{}, 1.225)
	s := solve.NewSolver()
	r := along(0, 1)
	r.Points[1].Formation = Formation{Shape: plan.Gather, Spacing: d, Width: free, Along: free}
	forms, err := r.forms(m, m.Share(s).Apart, unlimited, s)
	if err != nil {
		t.Fatal(err)
	}
	for _, part := range forms[1].Parts {
		near(t, "sin γ", math.Sin(part.CableAngle), d/(2*L), 1e-4) // the room of 1e-6 and of discs for half-planes
		near(t, "pull", part.Tension, share.Gravity/math.Cos(part.CableAngle), 1e-6)
	}
	near(t, "distance", forms[1].Spacing, d, 1e-4)
}

// In line the crate's team is as narrow as was asked, or narrower than planned when nothing was; gathered nearer to the middle;
// spread as far as was asked; and every formation balances and keeps its spacing.
func TestFormations(t *testing.T) {
	m, s := four(plan.Cable, 1), solve.NewSolver()
	plain := Formation{}
	for name, f := range map[string]Formation{
		"planned": plain,
		"gather":  {Shape: plan.Gather, Spacing: free, Width: free, Along: free},
		"spread":  {Shape: plan.Spread, Spacing: 1.5, Width: free, Along: free},
		"narrow":  {Shape: plan.InLine, Spacing: free, Width: free, Along: 0.3},
		"in 1.5":  {Shape: plan.InLine, Spacing: free, Width: 1.5, Along: 0.3},
		"across":  {Shape: plan.InLine, Spacing: free, Width: 1.7, Along: 0.3 + math.Pi/2},
	} {
		r := door(f)
		r.Points[0].Formation = Formation{Shape: plan.Spread, Spacing: 1.2, Width: free, Along: free}
		forms, err := r.forms(m, nil, unlimited, s)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		got := forms[1]
		force, turn := vec.V3{}, vec.V3{}
		for i, p := range got.Pulls {
			force, turn = force.Add(p), turn.Add(m.Craft[i].At.Sub(m.Body.COM).Cross(p))
		}
		near(t, name+": force", force.Sub(vec.V3{0, 0, 6 * share.Gravity}).Norm(), 0, 1e-9)
		near(t, name+": moment", turn.Norm(), 0, 1e-9)
		least := 0.9 * farther
		if f.Spacing > 0 {
			least = f.Spacing
		}
		if !f.planned() && !(got.Spacing >= least*(1-1e-6)) {
			t.Errorf("%s: spacing %g, want %g", name, got.Spacing, least)
		}
		switch name {
		case "spread":
			near(t, "spread to", got.Spacing, 1.5, 1e-4)
		case "in 1.5", "across":
			near(t, name, got.Width, f.Width, 1e-3) // wider is easier; the settling has a thousandth
		case "narrow":
			if !(got.Width < 1.5) {
				t.Errorf("narrowest is %g", got.Width)
			}
		}
		t.Logf("%s: spacing %.3f, width %.3f, utilisation %.3f", name, got.Spacing, got.Width, got.Utilisation)
	}
}

// A formation that cannot be held says which waypoint and why.
func TestFormationsThatAreNone(t *testing.T) {
	m, s := four(plan.Cable, 1), solve.NewSolver()
	for want, f := range map[string]Formation{
		"beyond their cone":          {Shape: plan.Spread, Spacing: 3, Width: free, Along: free},
		"narrow enough":              {Shape: plan.InLine, Spacing: free, Width: 0.5, Along: free},
		"not above the separation":   {Shape: plan.Gather, Spacing: 0.9, Width: free, Along: free},
		"to spread needs a spacing":  {Shape: plan.Spread, Spacing: free, Width: free, Along: free},
		"not above the separation o": {Shape: plan.Stacked, Spacing: 0.3, Width: free, Along: free},
	} {
		_, err := door(f).Shortest(m, nil, unlimited, s)
		var at *FormError
		if !errors.As(err, &at) || at.Point != 1 || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %q", err, want)
		}
	}
	if _, err := door(Formation{Shape: plan.Gather}).Shortest(four(plan.Rigid, 1), nil, unlimited, s); err != ErrRigid {
		t.Error(err)
	}
}

// Ways with formations: the balance of every instant, its utilisation with the vehicle's own acceleration by differences
// of its places, and every limit, multiplied out at five times as many instants as were looked at.
func TestHeldWays(t *testing.T) {
	for seed := range uint64(4) {
		d := rand.New(rand.NewPCG(seed, 30))
		m := four(plan.Cable, 1)
		if seed%2 == 1 {
			m = m.InWind(3, 120)
		}
		r, _ := random(seed, 5, 0)
		for i := range r.Points {
			if math.IsNaN(r.Points[i].Heading) {
				r.Points[i].Heading = 2 * d.Float64()
			}
			if i%2 == 1 { // from one narrow formation to another vehicles would pass too near to each other
				r.Points[i].Formation = []Formation{{Shape: plan.Gather}, {Shape: plan.InLine, Along: free}, {Shape: plan.InLine, Width: 1.6, Along: r.Points[i].Heading}, {Shape: plan.Spread, Spacing: 1.3}}[d.IntN(4)]
			}
		}
		f := shortest(t, r, m, unlimited)
		if !(f.Reach <= 1 && f.Reach > 0.98) { // the largest reach jumps from peak to peak
			t.Errorf("seed %d: reach %g", seed, f.Reach)
		}
		multiply(t, seed, m, f)
		t.Logf("seed %d: %.3g s, %d instants", seed, f.Duration(), f.Solved)
	}
}

func multiply(t *testing.T, seed uint64, m *share.Model, f Found) {
	t.Helper()
	const h = 5e-3
	wind := m.Wind
	watched, _ := Route{}.Watch(m, nil, f.Path, nil, nil, nil)
	for _, i := range Fly(m, nil, f.Path, 5*steps, solve.NewSolver()) {
		leg, s := i.Leg, (i.Time-f.starts[i.Leg])/f.Durations[i.Leg]
		step := h / f.Durations[leg]
		force, turn := vec.V3{}, vec.V3{}
		for k, part := range i.Parts {
			force, turn = force.Add(part.Force), turn.Add(m.Craft[k].At.Sub(m.Body.COM).Cross(part.Force))
		}
		down := i.Motion.Attitude.T()
		drag := m.Air(i.Motion.Attitude, i.State.Velocity)
		want := i.State.Acceleration.Add(vec.V3{0, 0, share.Gravity}).Scale(m.Body.Mass).Sub(drag)
		near(t, "force", i.Motion.Attitude.Mul(force).Sub(want).Norm(), 0, 1e-9)
		near(t, "moment", turn.Sub(vec.V3{0, 0, m.Body.Inertia[2][2] * i.State.TurnRate}).Norm(), 0, 1e-9)
		back, ahead := instantAt(m, nil, f.Path, leg, s-step, nil), instantAt(m, nil, f.Path, leg, s+step, nil)
		for k, part := range i.Parts {
			v := m.Craft[k].Vehicle
			a := ahead.Places[k].Add(back.Places[k]).Sub(i.Places[k].Scale(2)).Scale(1 / (h * h))
			air := wind.Sub(i.State.Velocity)
			own := a.Add(vec.V3{0, 0, share.Gravity}).Scale(v.Mass).Sub(air.Scale(0.5 * 1.225 * v.DragArea * air.Norm()))
			u := part.Force.Add(down.Mul(own)).Norm() / v.ThrustMax
			if math.Abs(u-part.Utilisation) > 2e-3 { // differences over 5 ms of what turns in a second
				t.Fatalf("seed %d: utilisation %g of %s at %g s, by differences %g", seed, part.Utilisation, m.Craft[k].ID, i.Time, u)
			}
			if !(part.Utilisation <= 0.8*(1+2e-4)) || !(part.Tilt <= v.TiltMax*(1+2e-4)) || !(part.CableAngle <= m.Plan.Limits.Cone*math.Pi/180*(1+2e-4)) {
				t.Fatalf("seed %d: utilisation %g, tilt %g, cable %g of %s at %g s", seed, part.Utilisation, part.Tilt, part.CableAngle, m.Craft[k].ID, i.Time)
			}
		}
		if !(i.Separation >= watched.Least-1e-6) { // the golden section leaves 1/1000 of the time between instants
			t.Fatalf("seed %d: %g m at %g s, less than the %g m at %g s", seed, i.Separation, i.Time, watched.Least, watched.When)
		}
		if !(i.Separation >= 0.9*(1-1e-4)) {
			t.Fatalf("seed %d: %g m at %g s", seed, i.Separation, i.Time)
		}
	}
}

// Places are continuous to their third derivative from leg to leg: by one-sided differences on either side of a waypoint.
func TestPlacesAreSmooth(t *testing.T) {
	m := four(plan.Cable, 0)
	f := shortest(t, door(Formation{Shape: plan.InLine, Width: 1.5, Along: 0.3}), m, unlimited)
	const h = 0.01
	at := func(leg int, time float64) []vec.V3 {
		return instantAt(m, nil, f.Path, leg, (time-f.starts[leg])/f.Durations[leg], nil).Places
	}
	for k := 1; k < len(f.Durations); k++ {
		for i := range m.Craft {
			for n := range 4 {
				u, v := difference(n, h, func(x float64) vec.V3 { return at(k-1, f.starts[k]+x)[i] }), difference(n, h, func(x float64) vec.V3 { return at(k, f.starts[k]+x)[i] })
				if d := u.Sub(v).Norm(); !(d <= 2e-3*(1+u.Norm())) { // h² of the fifth derivatives, which jump
					t.Errorf("waypoint %d, %s: derivative %d jumps from %v to %v", k+1, m.Craft[i].ID, n, u, v)
				}
			}
		}
	}
}

// difference is the n-th derivative at zero by central differences; polynomials go on beyond their legs.
func difference(n int, h float64, f func(float64) vec.V3) vec.V3 {
	switch n {
	case 0:
		return f(0)
	case 1:
		return f(h).Sub(f(-h)).Scale(1 / (2 * h))
	case 2:
		return f(h).Add(f(-h)).Sub(f(0).Scale(2)).Scale(1 / (h * h))
	}
	return f(2 * h).Sub(f(-2 * h)).Sub(f(h).Sub(f(-h)).Scale(2)).Scale(1 / (2 * h * h * h))
}

// The root of a bound is where a scan of the line from rest finds it broken first.
func TestReachOfABound(t *testing.T) {
	d := rand.New(rand.NewPCG(7, 20))
	for range 200 {
		var u, v vec.V3
		for k := range 3 {
			u[k], v[k] = d.NormFloat64(), d.NormFloat64()
		}
		c, e := u.Norm()+2*d.Float64(), d.NormFloat64()
		x := cone(u, v, c, e)
		holds := func(x float64) bool { return u.Scale(x).Add(v).Norm() <= x*c+e }
		if !holds(x*(1+1e-9)+1e-9) || x > 1e-6 && holds(x*(1-1e-6)) {
			t.Errorf("%v %v %g %g: %g", u, v, c, e, x)
		}
	}
}

// Ten points, four vehicles, in line at every second: the shortest way.
func BenchmarkTenFormations(b *testing.B) {
	m, s := four(plan.Cable, 1), solve.NewSolver()
	r, _ := random(1, 10, 3)
	for i := range r.Points {
		if i%2 == 1 {
			r.Points[i].Formation = Formation{Shape: plan.InLine, Along: free}
		}
	}
	for b.Loop() {
		if _, err := r.Shortest(m, nil, unlimited, s); err != nil {
			b.Fatal(err)
		}
	}
}

// Stacked, vehicles on long cables fly over those on short ones, as near as heights leave of the spacing (3-4-5), but
// out of each other's wake.
func TestStacked(t *testing.T) {
	m, s := four(plan.Cable, 0), solve.NewSolver()
	for _, i := range []int{0, 2} {
		m.Craft[i].Length = 2.72 // √(0.9² − 0.72²) = 0.54 m, less than what keeps out of the wake
	}
	for _, shape := range []string{plan.Gather, plan.Stacked} {
		r := door(Formation{Shape: shape, Spacing: 0.95, Width: free, Along: free})
		forms, err := r.forms(m, nil, unlimited, s)
		if err != nil {
			t.Fatal(err)
		}
		nearest := math.Inf(1)
		for i, a := range forms[1].Parts {
			for j, b := range forms[1].Parts[:i] {
				d := flat(a.Position.Sub(b.Position)).Norm()
				up, low, z := i, j, a.Position[2]-b.Position[2]
				if z < 0 {
					up, low, z = j, i, -z
				}
				if clear := formation.Clear(&m.Craft[up], &m.Craft[low], z); d < clear*(1-1e-5) {
					t.Errorf("%s: %s is %g m from %s, in its wake of %g m", shape, m.Craft[low].ID, d, m.Craft[up].ID, clear)
				}
				if math.Hypot(d, z) < 0.95*(1-1e-5) {
					t.Errorf("%s: %g m apart", shape, math.Hypot(d, z))
				}
				nearest = math.Min(nearest, d)
			}
		}
		if shape == plan.Gather {
			near(t, shape, nearest, 0.95, 1e-3) // a square of four; the settling has 1/10000
		} else {
			reach, rotor := 0.4, 0.12
			near(t, shape, nearest, reach+reach-(1-math.Sqrt2/2)*rotor, 1e-3) // (17.6)
		}
	}
}
