package formation

import (
	"math"
	"testing"

	"cohoist/core/air"
	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// model makes a plan's model.
func model(t testing.TB, p plan.Plan) *share.Model {
	t.Helper()
	m, err := share.Of(p)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// hung is a 6 kg payload on cables of the lengths given, at the attachments given, under 3 kg vehicles of 80 N.
func hung(lengths []float64, at ...vec.V3) plan.Plan {
	p := plan.Blank()
	p.Payload.Solids = []plan.Solid{{Shape: plan.Box, Size: []float64{1, 1, 0.2}, Mass: 6}}
	p.Vehicles = map[string]plan.Class{"v": {Mass: 3, Rotors: 4, Layout: plan.Cross, Arm: 0.3, RotorRadius: 0.15, RotorThrustMax: 20,
		TorquePerThrust: 0.02, TiltMax: 30}}
	p.Limits.Separation = 1.4
	for i, l := range lengths {
		a := vec.V3{0, 0, 0.1}
		if i < len(at) {
			a = at[i]
		}
		p.Team = append(p.Team, plan.Member{ID: string(rune('A' + i)), Vehicle: "v", Attach: a,
			Hold: plan.Hold{Kind: plan.Cable, Length: l, WorkingLoad: math.NaN()}})
	}
	return p
}

// checked multiplies out what a formation claims: the least distance, the utilisation of its parts, the order of
// bound, free and found.
func checked(t *testing.T, name string, m *share.Model, f Formation) {
	t.Helper()
	if f.Parts == nil {
		if f.Status == AsHung || f.Status == Apart {
			t.Errorf("%s: %v without parts", name, f.Status)
		}
		return
	}
	worst := 0.0
	force := m.Need.Scale(-1)
	for i, p := range f.Parts {
		worst = math.Max(worst, p.Utilisation)
		if m.Craft[i].Rigid {
			force = force.Add(p.Thrust)
		} else {
			force = force.Add(p.Force)
		}
		for j := range i {
			d := p.Position.Sub(f.Parts[j].Position)
			if !(m.Craft[i].Rigid && m.Craft[j].Rigid) && d.Norm() < m.Plan.Limits.Separation*(1-1e-9) {
				t.Errorf("%s: %s and %s are %v m apart", name, m.Craft[i].ID, m.Craft[j].ID, d.Norm())
			}
		}
	}
	if math.Abs(worst-f.T) > 2*spare || force.Norm() > 1e-9*m.Weight() { // ties are broken with t let off by spare
		t.Errorf("%s: parts have %v, said %v; %v N are left", name, worst, f.T, force.Norm())
	}
	if f.Bound > f.Free+1e-9 || f.Free > f.T+1e-9 || math.Abs(f.Cost-(f.T-f.Free)) > 1e-15 {
		t.Errorf("%s: bound %v, free %v, found %v, cost %v", name, f.Bound, f.Free, f.T, f.Cost)
	}
}

// k vehicles on one attachment lean by γ to stand on a ring whose neighbours are d apart: sin γ = d/(2 L sin(π/k)), and
// each thrusts √((F sin γ)² + (F cos γ + m g)²), F cos γ = M g/k. By hand; 1e-5 is the room that (17.2) leaves.
func TestOneAttachment(t *testing.T) {
	for _, k := range []int{2, 3} {
		lengths := make([]float64, k)
		for i := range lengths {
			lengths[i] = 3.2
		}
		m := model(t, hung(lengths))
		f := Find(m, solve.NewSolver(), nil)
		checked(t, "one attachment", m, f)
		sin := 1.4 / (2 * 3.2 * math.Sin(math.Pi/float64(k)))
		tan := sin / math.Sqrt(1-sin*sin)
		up, g := 6/float64(k)*share.Gravity, share.Gravity
		want := math.Hypot(up*tan, up+3*g) / (80 * m.Density / air.SeaLevelDensity)
		if f.Status != Apart || math.Abs(f.T-want) > 1e-5*want {
			t.Errorf("%d: %v at %v, want %v", k, f.Status, f.T, want)
		}
		for _, p := range f.Parts {
			if math.Abs(math.Sin(p.CableAngle)-sin) > 1e-4 {
				t.Errorf("%d: leans by %v°, want %v°", k, p.CableAngle*180/math.Pi, math.Asin(sin)*180/math.Pi)
			}
		}
		if free := (6/float64(k) + 3) * g / (80 * m.Density / air.SeaLevelDensity); math.Abs(f.Free-free) > 1e-8 || math.Abs(f.Cost-(want-free)) > 2e-5 {
			t.Errorf("%d: free %v, want %v; cost %v", k, f.Free, free, f.Cost)
		}
	}
}

// The cone is the most they can lean: just room and just none.
func TestNoRoom(t *testing.T) {
	p := hung([]float64{3, 3})
	p.Limits.Separation = 2 * 3 * math.Sin(30*math.Pi/180) * 0.99
	if f := Find(model(t, p), solve.NewSolver(), nil); f.Status != Apart {
		t.Errorf("just room: %v, %s", f.Status, f.Reason)
	}
	p.Limits.Separation *= 1.02 / 0.99
	if f := Find(model(t, p), solve.NewSolver(), nil); f.Status != None || f.Parts != nil || !math.IsNaN(f.T) {
		t.Errorf("just none: %v, %v, %s", f.Status, f.T, f.Reason)
	} else {
		t.Log(f.Reason)
	}
}

// Vehicles that hang far enough apart stay as they are, at no cost.
func TestFarEnough(t *testing.T) {
	m := model(t, hung([]float64{3, 3, 3}, vec.V3{1, 0, 0}, vec.V3{-0.5, 0.9, 0}, vec.V3{-0.5, -0.9, 0}))
	f := Find(m, solve.NewSolver(), nil)
	checked(t, "far enough", m, f)
	if f.Status != AsHung || f.Cost != 0 || len(f.Flags) > 0 {
		t.Errorf("%v at a cost of %v, flags %v", f.Status, f.Cost, f.Flags)
	}
}

// A square whose sides are too short opens evenly: (17.2) finds the ring, each vehicle leaning outwards by the same
// angle, sin γ = (d/√2 − r)/L. By hand.
func TestSquareOpens(t *testing.T) {
	const r = 0.6
	m := model(t, hung([]float64{3, 3, 3, 3}, vec.V3{r, 0, 0}, vec.V3{0, r, 0}, vec.V3{-r, 0, 0}, vec.V3{0, -r, 0}))
	f := Find(m, solve.NewSolver(), nil)
	checked(t, "square", m, f)
	sin := (1.4/math.Sqrt2 - r) / 3
	up := 1.5 * share.Gravity
	want := math.Hypot(up*sin/math.Sqrt(1-sin*sin), up+3*share.Gravity) / (80 * m.Density / air.SeaLevelDensity)
	if f.T > want*(1+1e-5) {
		t.Errorf("%v, the even square gives %v", f.T, want)
	}
	t.Logf("found %v, even square %v, %d of %d starts", f.T, want, f.Held, f.Tried)
}

// Cables of unlike length on one attachment: seen from above d apart, F₁ sin γ₁ = F₂ sin γ₂ and Σ F cos γ = M g; the best
// angle and share from a fine scan, a second route. Stacked, they need no angle once the lengths differ by
// the separation.
func TestUnlikeLengths(t *testing.T) {
	p := hung([]float64{3, 3.8})
	m := model(t, p)
	f := Find(m, solve.NewSolver(), nil)
	checked(t, "unlike", m, f)
	want := scan(3, 3.8, 1.4, 80*m.Density/air.SeaLevelDensity)
	if math.Abs(f.T-want) > 2e-5 {
		t.Errorf("found %v, a scan gives %v", f.T, want)
	}
	stacked := Stack(m, solve.NewSolver(), nil)
	checked(t, "unlike, stacked", m, stacked)
	if !(stacked.T <= f.T+1e-9) {
		t.Errorf("with heights %v, without %v", stacked.T, f.T)
	}
	m = model(t, hung([]float64{3, 4.5}))
	f = Stack(m, solve.NewSolver(), nil)
	checked(t, "above each other", m, f)
	if f.Status != AsHung || f.Cost != 0 || !f.Stacked || len(f.Flags) != 3 || f.Flags[0].Upper != "B" || f.Flags[1].Kind != InWake || f.Flags[2].Kind != Reached {
		t.Errorf("%v at a cost of %v, %+v", f.Status, f.Cost, f.Flags)
	}
}

// scan is the least worst utilisation of two cables of lengths a and b on one attachment, d apart seen from above.
func scan(a, b, d, top float64) float64 {
	best := math.Inf(1)
	weight := 6 * share.Gravity
	for i := 1; i < 20000; i++ {
		x := d * float64(i) / 20000 // of the first, to one side
		s1, s2 := x/a, (d-x)/b
		if s1 > 0.5 || s2 > 0.5 { // the cone of 30°
			continue
		}
		t1, t2 := s1/math.Sqrt(1-s1*s1), s2/math.Sqrt(1-s2*s2)
		u1 := weight * t2 / (t1 + t2) // u₁ tan γ₁ = u₂ tan γ₂
		u2 := weight - u1
		f1 := math.Hypot(u1*t1, u1+3*share.Gravity)
		f2 := math.Hypot(u2*t2, u2+3*share.Gravity)
		best = math.Min(best, math.Max(f1, f2)/top)
	}
	return best
}

// All examples: what is claimed multiplies out, and it is no worse than how core/share leans the cables apart, which
// aims at 1.13 times the separation.
func TestExamples(t *testing.T) {
	for _, e := range example.All {
		p, _ := example.Plan(e.Name)
		m := model(t, p)
		s := solve.NewSolver()
		f := Find(m, s, nil)
		checked(t, e.Name, m, f)
		a := m.Share(s)
		if m.Cables && a.Apart != nil && !(f.T <= a.T+1e-9) {
			t.Errorf("%s: %v, core/share has %v", e.Name, f.T, a.T)
		}
		t.Logf("%s: %v, %.5f (share %.5f), cost %.5f, %d of %d, flags %d: %s", e.Name, f.Status, f.T, a.T, f.Cost, f.Held, f.Tried, len(f.Flags), f.Reason)
	}
}

// The same plan gives the same formation, and turning everything about the vertical turns it along, its
// utilisation kept: 1e-6 of it, the room that (17.2) leaves, for the starts turn along.
func TestLaws(t *testing.T) {
	at := func(turn float64) plan.Plan {
		var places []vec.V3
		for i, r := range []float64{0.5, 0.7, 0.4, 0.6, 0.5} {
			sin, cos := math.Sincos(turn + 2*math.Pi*float64(i)/5 + 0.1*float64(i))
			places = append(places, vec.V3{r * cos, r * sin, 0.1})
		}
		p := hung([]float64{4, 4.2, 4, 4.1, 4}, places...)
		p.Limits.Separation = 1.2
		return p
	}
	s := solve.NewSolver()
	m := model(t, at(0))
	f := Find(m, s, nil)
	checked(t, "five", m, f)
	if again := Find(m, solve.NewSolver(), nil); f.T != again.T || f.Nearest != again.Nearest || f.Status != Apart {
		t.Errorf("%v: %v and %v", f.Status, f.T, again.T)
	}
	turned := Find(model(t, at(0.7)), s, nil)
	if math.Abs(turned.T-f.T) > 1e-6*f.T {
		t.Errorf("turned by 0.7 rad: %v, before %v", turned.T, f.T)
	}
	t.Logf("%.6f and %.6f, cost %.6f, %d of %d starts", f.T, turned.T, f.Cost, f.Held, f.Tried)
}

// BenchmarkFind times the whole search.
func BenchmarkFind(b *testing.B) {
	for _, name := range []string{"crate-ring", "mixed-team"} {
		p, _ := example.Plan(name)
		m := model(b, p)
		s := solve.NewSolver()
		b.Run(name, func(b *testing.B) {
			for range b.N {
				Find(m, s, nil)
			}
		})
	}
}

// A search that is broken off says so, and keeps what it had.
func TestBrokenOff(t *testing.T) {
	m := model(t, hung([]float64{3, 3, 3}))
	whole := Find(m, solve.NewSolver(), nil)
	if whole.Stopped || whole.Status != Apart {
		t.Fatalf("%v", whole.Status)
	}
	for _, most := range []int{0, 1, 30} {
		asked := 0
		f := Find(m, solve.NewSolver(), func() bool { asked++; return asked <= most })
		if !f.Stopped || asked != most+1 || f.Held > 0 && !(f.T >= whole.T-1e-9 && f.Parts != nil) || f.Held == 0 && f.Status != NotAsked {
			t.Errorf("broken off after %d: asked %d times, %d held, %v, %g", most, asked, f.Held, f.Status, f.T)
		}
	}
}
