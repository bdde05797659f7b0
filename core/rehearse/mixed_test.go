package rehearse

import (
	"math"
	"testing"

	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/vec"
)

// mixed is the ring around the crate with every second vehicle on a rigid hold.
func mixed(t testing.TB) (*share.Model, share.Answer) {
	t.Helper()
	p, faults := example.Plan("crate-ring")
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	for i := 0; i < len(p.Team); i += 2 {
		p.Team[i].Hold = plan.BlankMember().Hold
		p.Team[i].Hold.Kind = plan.Rigid
		p.Team[i].Attach = vec.V3{1.8 * p.Team[i].Attach[0], 1.8 * p.Team[i].Attach[1], p.Team[i].Attach[2] + 0.2}
	}
	return modelOf(t, p)
}

// balance is what is left of all forces on the body but its weight and the drag of a mean wind at rest, N: nothing in the end.
func balance(r *Rehearsal) vec.V3 {
	m, turn := r.m, Matrix(r.World.Poses[0].Attitude)
	sum := m.Air(turn, vec.V3{}).Sub(vec.V3{0, 0, m.Weight()})
	for i := range r.crew {
		if h := r.crew[i].holder; h != nil {
			sum = sum.Add(turn.Mul(push(m, i, h.thrust).Force))
		} else {
			sum = sum.Sub(r.feel(i))
		}
	}
	return sum
}

// In the plan's steady wind a mixed team comes to rest: cables and rotors together hold weight less drag; level, and near its
// place. With a vehicle on a cable let go the rigid holds make up for it.
func TestMixedHolds(t *testing.T) {
	m, a := mixed(t)
	for _, fail := range []*Failure{nil, {Vehicle: 1, Time: 1, Cut: true}} {
		r := rehearsal(t, m, Hover(m, a.Parts, 40), Options{Fail: fail})
		f := r.Fly()
		p := f.Peaks
		last := f.Samples[len(f.Samples)-1]
		if d := balance(r).Norm(); !(d <= 1e-3*m.Weight()) {
			t.Errorf("%g N are left of %g N", d, m.Weight())
		}
		if !(math.IsNaN(p.Crash) && last.Payload.At.Norm() < 0.15 && last.Payload.Velocity.Norm() < 1e-3 && p.Swing < 0.08 && p.Sink < 0.1) {
			t.Errorf("%+v", p)
		}
		for i := range r.crew {
			if math.IsNaN(p.Tension[i]) == math.IsNaN(p.Force[i]) {
				t.Errorf("vehicle %d has pull %g N and grip %g N", i, p.Tension[i], p.Force[i])
			}
		}
	}
}

// In the wind that was planned for a mixed team stays where it is, lines and rotors as planned.
func TestMixedHoverStays(t *testing.T) {
	m, a := mixed(t)
	r := rehearsal(t, m, Hover(m, a.Parts, 5), Options{})
	if p := r.Fly().Peaks; !(p.Off <= 1e-9 && p.Sink <= 1e-9 && p.Swing <= 1e-9) {
		t.Errorf("moves: %+v", p)
	}
	for i, part := range a.Parts {
		if got := r.used(i); !(math.Abs(got-part.Utilisation) <= 1e-6) {
			t.Errorf("vehicle %d works at %g, planned %g", i, got, part.Utilisation)
		}
		if got := r.tension(i); !m.Craft[i].Rigid && !(math.Abs(got-part.Tension) <= 1e-6*part.Tension) {
			t.Errorf("line %d pulls with %g N, planned %g N", i, got, part.Tension)
		}
	}
}

// What all grips and lines pass to the payload, with the air on it, is what moves it: Newton and Euler for the payload alone, in
// gusts and in the middle of a loss.
func TestJointsMoveThePayload(t *testing.T) {
	for name, team := range map[string]func(testing.TB) (*share.Model, share.Answer){"mixed": mixed, "rigid": func(t testing.TB) (*share.Model, share.Answer) {
		return ring(t, 6, 6, func(p *plan.Plan) { p.Site.Wind, p.Site.GustFactor = 6, 1.5 })
	}} {
		m, a := team(t)
		r := rehearsal(t, m, Hover(m, a.Parts, 5), Options{Gusts: true, Fail: &Failure{Vehicle: 0, Time: 2.8}})
		r.Run(3)
		w := r.World
		s, rate, turn := &w.now[0], &w.rates[0][0], w.turns[0]
		spin, change := vec.V3{s[10], s[11], s[12]}, vec.V3{rate[10], rate[11], rate[12]}
		arm := m.Payload.COM.Sub(m.Body.COM)
		felt := turn.T().Mul(vec.V3{rate[7], rate[8], rate[9] + share.Gravity}).Add(change.Cross(arm)).Add(spin.Cross(spin.Cross(arm)))
		j := m.Payload.Inertia
		force := felt.Scale(-m.Payload.Mass)
		moment := j.Mul(change).Add(spin.Cross(j.Mul(spin))).Scale(-1)
		air := w.Wind(w.Time)
		force = force.Add(turn.T().Mul(w.blown(0, s, &Sail{arm, m.DragArea}, &air, &end{})))
		for i := range r.crew {
			at := m.Craft[i].At.Sub(m.Payload.COM)
			f, turned := turn.T().Mul(vec.V3{}), vec.V3{}
			if m.Craft[i].Rigid {
				f, turned = r.joint(i)
			} else {
				f = turn.T().Mul(r.feel(i)).Scale(-1)
			}
			force, moment = force.Add(f), moment.Add(turned).Add(at.Cross(f))
		}
		if !(force.Norm() <= 1e-9*m.Weight() && moment.Norm() <= 1e-9*m.Weight() && spin.Norm() > 1e-3) {
			t.Errorf("%s: %v N and %v N m move nothing", name, force, moment)
		}
	}
}

// Every example is rehearsed: from the ground, in gusts where the plan has them, and to the ground; or it has no balance.
func TestEveryExample(t *testing.T) {
	for _, e := range example.All {
		p, _ := example.Plan(e.Name)
		m, a := shareOf(t, p)
		if len(a.Parts) == 0 {
			if e.Name != "lens-too-heavy" {
				t.Errorf("%s has no balance", e.Name)
			}
			continue
		}
		score := Hover(m, a.Parts, 3)
		feet := Feet(m.Plan.Payload)
		low := m.Body.COM[2] - feet[0][2]
		score.FromGround(1.5, low)
		score.ToGround(1.5, low)
		f := rehearsal(t, m, score, Options{Feet: feet, Gusts: true}).Fly()
		last := f.Samples[len(f.Samples)-1]
		if q := f.Peaks; a.T <= 1 && !(math.IsNaN(q.Crash) && q.Off < 0.3 && q.Swing < 0.2) {
			t.Errorf("%s: %+v", e.Name, q)
		}
		if d := last.Payload.At[2] - low - score.Ground; a.T <= 1 && !(math.Abs(d) < 0.02) {
			t.Errorf("%s: ends %g m above the ground", e.Name, d)
		}
		if a.T > 1 && math.IsNaN(f.Peaks.Crash) && !(f.Peaks.Sink > 0.5 || last.Payload.At[2]-low-score.Ground < 0.1) {
			t.Errorf("%s, too weak, flies: %+v", e.Name, f.Peaks)
		}
		t.Logf("%s: %.3g of its thrust; off %.3g m, sink %.3g m, tilt %.3g°", e.Name, a.T, f.Peaks.Off, f.Peaks.Sink, f.Peaks.Swing*180/math.Pi)
	}
}
