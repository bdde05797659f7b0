package rehearse

import (
	"math"
	"testing"

	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
	"cohoist/core/way"
)

// ring is a rigid team of n field quads around a plate of so many kg.
func ring(t testing.TB, n int, kg float64, change func(*plan.Plan)) (*share.Model, share.Answer) {
	t.Helper()
	return modelOf(t, ringPlan(t, n, kg, change))
}

func ringPlan(t testing.TB, n int, kg float64, change func(*plan.Plan)) plan.Plan {
	t.Helper()
	p, faults := example.Plan("lattice-panel")
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	one := p.Team[0]
	p.Team = nil
	box := p.Payload.Solids[0]
	box.Shape, box.Size, box.Mass, box.At = "box", []float64{1.6, 1.6, 0.1}, kg, vec.V3{}
	p.Payload.Solids = []plan.Solid{box}
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		m := one
		m.ID, m.Attach = string(rune('A'+i)), vec.V3{cos * 1.2, sin * 1.2, 0.1}
		p.Team = append(p.Team, m)
	}
	if change != nil {
		change(&p)
	}
	return p
}

// In calm air a rigid team stays where it is, its rotors as planned.
func TestRigidHoverStays(t *testing.T) {
	for _, name := range []string{"lattice-panel", "sensor-plate"} {
		m, a := liftOf(t, name)
		f := rehearsal(t, m, Hover(m, a.Parts, 5), Options{}).Fly()
		if p := f.Peaks; !(p.Off <= 1e-9 && p.Sink <= 1e-9 && p.Swing <= 1e-9 && math.IsNaN(p.Crash)) {
			t.Errorf("%s moves: %+v", name, p)
		}
		for i, part := range a.Parts {
			if got := f.Peaks.Used[i]; !(math.Abs(got-part.Utilisation) <= 1e-9) {
				t.Errorf("%s: vehicle %d works at %g, planned %g", name, i, got, part.Utilisation)
			}
			force, moment := f.Peaks.Force[i], f.Peaks.Moment[i]
			if !(math.Abs(force-part.Force.Norm()) <= 1e-8 && math.Abs(moment-part.Moment.Norm()) <= 1e-8) {
				t.Errorf("%s: grip %d bears %g N and %g N m, by (5.15) %g N and %g N m", name, i, force, moment, part.Force.Norm(), part.Moment.Norm())
			}
		}
	}
}

// Planned for calm air and flown in a steady wind, a rigid team finds the lean of (5.9) by itself, and its place again.
func TestRigidLeansIntoTheWind(t *testing.T) {
	calm, a := ring(t, 6, 6, nil)
	m, _ := ring(t, 6, 6, func(p *plan.Plan) { p.Site.Wind, p.Site.WindTo = 8, 30 })
	r := rehearsal(t, m, Hover(calm, a.Parts, 40), Options{})
	r.Fly()
	got, want := Matrix(r.World.Poses[0].Attitude).Mul(m.Axis), m.Attitude.Mul(m.Axis)
	if lean := m.Lean.Norm(); !(got.Sub(want).Norm() <= 1e-4 && lean > 0.09) { // what is left of the integrals after 40 s
		t.Errorf("leans towards %v, by (5.9) %v", got, want)
	}
	if d := r.World.Poses[0].At.Norm(); !(d <= 2e-3) {
		t.Errorf("%g m off", d)
	}
	// planned for that wind, it stands still in it
	_, a = ring(t, 6, 6, func(p *plan.Plan) { p.Site.Wind, p.Site.WindTo = 8, 30 })
	if p := rehearsal(t, m, Hover(m, a.Parts, 5), Options{}).Fly().Peaks; !(p.Off <= 1e-9 && math.Abs(p.Swing-m.Lean.Norm()) <= 1e-9) {
		t.Errorf("%+v", p)
	}
}

// Eight less one hold on: the others do not know, and their integrals make up for it. Four less one have no balance and fall.
func TestRigidVehicleLost(t *testing.T) {
	m, a := ring(t, 8, 4, nil)
	r := rehearsal(t, m, Hover(m, a.Parts, 20), Options{Fail: &Failure{Vehicle: 1, Time: 1, Cut: true}})
	p := r.Fly().Peaks
	if !(math.IsNaN(p.Crash) && p.Recovery < 4 && p.Sink < 0.3 && p.Sink > 0.05 && p.Swing < 0.06) {
		t.Errorf("eight less one: %+v", p)
	}
	up := 0.0
	for i := range r.crew {
		up += push(m, i, r.crew[i].holder.thrust).Force[2]
	}
	if w := m.Body.Mass * share.Gravity; !(math.Abs(up-w) <= 1e-5*w && r.used(1) < 1e-9) {
		t.Errorf("the others give %g N of %g N, the lost one works at %g", up, w, r.used(1))
	}
	// at nine tenths of what the rest can give rotors are at their most on the way; it takes longer, and does not shoot over
	m, a = ring(t, 8, 16, nil)
	f := rehearsal(t, m, Hover(m, a.Parts, 20), Options{Fail: &Failure{Vehicle: 1, Time: 1}}).Fly()
	over := 0.0
	for _, s := range f.Samples {
		over = max(over, s.Payload.At[2])
	}
	if p := f.Peaks; !(p.End == Flown && p.Recovery < 8 && p.Sink < 1 && over < 0.05 && p.Used[0] > 0.999) {
		t.Errorf("eight less one, heavy: %g m over, %+v", over, p)
	}
	m, a = liftOf(t, "lattice-panel")
	p = rehearsal(t, m, Hover(m, a.Parts, 20), Options{Fail: &Failure{Vehicle: 1, Time: 1}}).Fly().Peaks
	if !(p.Crash < 6 && p.Sink > 5 && math.IsNaN(p.Recovery)) {
		t.Errorf("four less one: %+v", p)
	}
	for _, x := range []float64{p.Off, p.Sink, p.Swing, p.Used[0], p.Used[2], p.Force[1], p.Moment[3]} {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			t.Errorf("a peak of the fall is %g", x)
		}
	}
}

// A rigid team flies a way in calm air as planned, leaning as it goes and turning freely: slowly within 5e-3 of full thrust (yaw needs much of it), the
// fastest way within 3e-2; and it comes to rest at the end.
func TestRigidWayAsPlanned(t *testing.T) {
	m, a := liftOf(t, "lattice-panel")
	s, nan := solve.NewSolver(), math.NaN()
	route := way.Route{Arm: 1, Points: []way.Point{{Heading: 0, Time: nan}, {At: vec.V3{5, 2, 1}, Heading: nan, Time: nan}, {At: vec.V3{8, 0, 0}, Heading: 0.4, Time: nan}}}
	found, err := route.Shortest(m, a.Apart, way.Limits{Utilisation: 0.8, Speed: math.Inf(1)}, s)
	if err != nil {
		t.Fatal(err)
	}
	slow, err := route.Path([]float64{10, 10})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		path        *way.Path
		thrust, far float64
	}{{slow, 5e-3, 1e-3}, {found.Path, 0.03, 0.01}} {
		score, ok := Along(m, a.Apart, c.path, 2, s)
		if !ok {
			t.Fatal("no score")
		}
		r := rehearsal(t, m, score, Options{})
		worst := 0.0
		for r.World.Time < score.Duration()-0.01 {
			r.Advance()
			s := score.stand(r.lifts, r.World.Time-motorLag) // whose thrusts are those of now
			for i := range r.crew {
				for j, u := range r.crew[i].holder.thrust {
					now, next := score.mark(s.mark).Thrusts[i][j], score.mark(s.mark + 1).Thrusts[i][j]
					worst = max(worst, math.Abs(u-now-s.part*(next-now))/m.Craft[i].Rotors[j].Max)
				}
			}
		}
		p := rehearsal(t, m, score, Options{}).Fly().Peaks
		rest := r.World.Poses[0]
		t.Logf("in %.3g s thrusts within %.2g; %.2g m off, %.2g m below, leaning by up to %.3g°, at the end %.2g m/s", c.path.Duration(), worst, p.Off, p.Sink, p.Swing*180/math.Pi, rest.Velocity.Norm())
		if !(worst <= c.thrust && p.Off <= c.far && p.Sink <= c.far && p.Swing > 0.01 && rest.Velocity.Norm() <= c.far && math.IsNaN(p.Crash)) {
			t.Errorf("thrusts within %.2g; %+v", worst, p)
		}
	}
}

// Without a balance from the beginning, or turned over, a flight ends with the time of it and numbers.
func TestRigidTurnsOver(t *testing.T) {
	m, a := ring(t, 3, 6, nil)
	f := rehearsal(t, m, Hover(m, a.Parts, 20), Options{Fail: &Failure{Vehicle: 0, Time: 0.5}}).Fly()
	last := f.Samples[len(f.Samples)-1]
	if !(f.Peaks.Crash > 0.5 && f.Peaks.Crash < 5 && f.Peaks.Swing > math.Pi/4 && last.Time <= f.Peaks.Crash+aftermath+0.1 && last.Payload.At.Norm() < 1e3) {
		t.Errorf("%+v", f.Peaks)
	}
}

// A rigid hold works with its own pose and plan alone: what another does, or that it is lost, changes nothing now.
func TestHoldersKnowOnlyTheirOwn(t *testing.T) {
	m, a := ring(t, 6, 6, nil)
	told := func(lost bool) []float64 {
		r := rehearsal(t, m, Hover(m, a.Parts, 1), Options{})
		if lost {
			r.crew[1].failed = true
			clear(r.crew[1].holder.thrust)
			r.World.Bodies[0].push = Push{}
		}
		r.World.Poses[0].At = vec.V3{0.1, 0.05, -0.1}
		r.World.Poses[0].Spin = vec.V3{0.1, 0, 0.2}
		r.Advance()
		return r.crew[0].holder.target
	}
	one, other := told(false), told(true)
	for j := range one {
		if one[j] != other[j] || one[j] == a.Parts[0].Rotor[j] {
			t.Errorf("rotor %d is told %g N and %g N, planned %g N", j, one[j], other[j], a.Parts[0].Rotor[j])
		}
	}
}

// The mixer makes what is asked for, by the least Σ (Δu/u_max)²: what it adds is orthogonal, so weighted, to all that makes
// nothing. Leant rotors and two sizes of vehicle.
func TestMixer(t *testing.T) {
	m, _ := shareOf(t, ringPlan(t, 5, 5, func(p *plan.Plan) {
		big := p.Vehicles["field-quad"]
		big.RotorThrustMax *= 2
		p.Vehicles["big"] = big
		p.Team[0].Vehicle = "big"
		for i := range p.Team {
			p.Team[i].Hold.Lean = [2]float64{3 * float64(i), -4}
		}
	}))
	mix := spread(m)
	made := func(u func(i, j int) float64) demand {
		var sum Push
		for i := range m.Craft {
			own := make([]float64, len(mix.rows[i]))
			for j := range own {
				own[j] = u(i, j)
			}
			sum.add(push(m, i, own))
		}
		return demand{sum.Force.Dot(m.Axis), sum.Moment[0], sum.Moment[1], sum.Moment[2]}
	}
	some := func(i, j int) float64 { return math.Sin(float64(7*i + 3*j*j + 1)) }
	in := made(some)
	for k := range 4 {
		got := made(func(i, j int) float64 { return mix.rows[i][j][k] })
		inner, size := 0.0, 0.0
		for i := range m.Craft {
			for j, row := range mix.rows[i] {
				idle := some(i, j) // less what makes as much
				for x := range in {
					idle -= row[x] * in[x]
				}
				most := m.Craft[i].Rotors[j].Max
				inner += row[k] * idle / (most * most)
				size += math.Abs(row[k]*idle) / (most * most)
			}
		}
		got[k]--
		for x := range got {
			if !(math.Abs(got[x]) <= 1e-10) {
				t.Errorf("asked for %d, off by %v", k, got)
			}
		}
		if !(math.Abs(inner) <= 1e-10*size) {
			t.Errorf("demand %d could be had for less: %g of %g", k, inner, size)
		}
	}
}
