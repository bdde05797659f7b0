package share_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"cohoist/core/certify"
	"cohoist/core/mass"
	beside "cohoist/core/near"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// nearTeam is k vehicles of one class at places, over a plate.
func nearTeam(hold string, size [2]float64, kg float64, places ...vec.V3) plan.Plan {
	p := plan.Blank()
	s := plan.BlankSolid()
	s.Shape, s.Size, s.Mass, s.At, s.Turn = plan.Plate, size[:], kg, vec.V3{}, vec.V3{}
	p.Payload.Solids = []plan.Solid{s}
	c := plan.BlankClass()
	c.Mass, c.Rotors, c.Layout, c.Arm, c.RotorRadius, c.RotorThrustMax, c.TorquePerThrust = 1, 4, plan.Cross, 0.25, 0.12, 12, 0.015
	c.DragArea, c.TiltMax, c.FigureOfMerit = 0.04, 40, 0.6
	p.Vehicles = map[string]plan.Class{"q": c}
	for i, at := range places {
		m := plan.BlankMember()
		m.ID, m.Vehicle, m.Attach, m.Yaw, m.Hold.Kind = string(rune('A'+i)), "q", at, 0, hold
		if hold == plan.Cable {
			m.Hold.Length = 1
		}
		p.Team = append(p.Team, m)
	}
	p.Limits.Separation = 0
	return p
}

func nearModel(t *testing.T, p plan.Plan) *share.Model {
	t.Helper()
	if lack := plan.Missing(p); len(lack) > 0 {
		t.Fatal(lack)
	}
	p, _ = plan.Assume(p)
	body, err := mass.Of(p.Payload)
	if err != nil {
		t.Fatal(err)
	}
	return share.New(p, body, vec.V3{}, 1.225)
}

// One vehicle over a plate needs T = W/(1 − φ), whether it grips the plate or hangs it on a cable, where only the plate's part is between them; wide
// plates take C_d/2 of the thrust, (22.2). By hand.
func TestOneOverAPlate(t *testing.T) {
	const g = share.Gravity
	for _, hold := range []string{plan.Rigid, plan.Cable} {
		at := vec.V3{}
		if hold == plan.Rigid {
			at[2] = 0.3
		}
		p := nearTeam(hold, [2]float64{2, 2}, 0.8, at)
		p.Near.Download = plan.Counted
		m := nearModel(t, p)
		a := m.Share(solve.NewSolver())
		want := 1.8 * g / (1 - 1.17/2)
		if got := a.Parts[0].Effort; a.Status != solve.Optimal || math.Abs(got-want) > 1e-9*want || a.Residual > 1e-12 {
			t.Errorf("%s: thrust %.12g N, want %.12g; residual %g", hold, got, want, a.Residual)
		}
		if d := a.Parts[0].Download; math.Abs(d[2]+want*1.17/2) > 1e-9*want {
			t.Errorf("%s: download %v", hold, d)
		}
		if hold == plan.Cable { // F = φ f + m g, by hand
			if f := a.Parts[0].Tension; math.Abs(f-(want-1*g)) > 1e-9*want {
				t.Errorf("pull %g, want %g", f, want-g)
			}
		}
	}
}

// Four on a square over a plate that reaches under half of their rotors: the same load for all, T = W/(4 (1 − φ)) each when their wakes press
// evenly, and no moment. A quarter turn changes nothing.
func TestFourOverAPlate(t *testing.T) {
	p := nearTeam(plan.Rigid, [2]float64{1, 1}, 2, vec.V3{0.5, 0.5, 0.2}, vec.V3{-0.5, 0.5, 0.2}, vec.V3{-0.5, -0.5, 0.2}, vec.V3{0.5, -0.5, 0.2})
	p.Near.Download = plan.Counted
	m := nearModel(t, p)
	a := m.Share(solve.NewSolver())
	r := beside.Contraction * 0.12
	d := 0.25 * math.Sqrt(0.5) // inner rotors at 0.5 − d from the middle, wholly over the plate; the outer ones beside it
	if d < r {
		t.Fatal("the outer ones reach the plate")
	}
	up, press := 0.0, 0.0
	for i, q := range a.Parts {
		up += q.Effort
		press -= q.Download[2]
		for j, u := range q.Rotor {
			if want := m.Craft[i].Rotors[j].Wash; want != 0 && math.Abs(want-1.17/2) > 1e-12 && math.Abs(want-1.17/4) > 1e-12 {
				t.Errorf("%s rotor %d: φ = %g", m.Craft[i].ID, j, want)
			}
			if math.Abs(u-a.Parts[(i+1)%4].Rotor[(j+1)%4]) > 1e-9*up {
				t.Errorf("%d.%d: %g N, turned %g N", i, j, u, a.Parts[(i+1)%4].Rotor[(j+1)%4])
			}
		}
	}
	if w := 6 * share.Gravity; math.Abs(up-press-w) > 1e-9*w || a.Residual > 1e-12 {
		t.Errorf("%g N up, %g N down, weight %g N, residual %g", up, press, w, a.Residual)
	}
	bare := p
	bare.Near = plan.Near{Clearance: math.NaN()}
	if b := nearModel(t, bare).Share(solve.NewSolver()); !(a.T > b.T) {
		t.Errorf("the wash costs nothing: %g, %g", a.T, b.T)
	}
}

// One above the other, both gripping: the lower flies in the upper's wake, its thrust available that of (22.7) in discs over discs. By hand from the
// thrusts of the answer.
func TestStackedPair(t *testing.T) {
	p := nearTeam(plan.Rigid, [2]float64{0.01, 0.01}, 1, vec.V3{0, 0, 1}, vec.V3{0, 0, 0.2})
	p.Near.Wakes = plan.Counted
	m := nearModel(t, p)
	a := m.Share(solve.NewSolver())
	if a.Status != solve.Optimal || !m.NearSettled {
		t.Fatalf("%v after %d rounds", a.Status, m.NearRounds)
	}
	area := math.Pi * 0.12 * 0.12
	for j := range 4 {
		w := beside.WakeSpeed(a.Parts[0].Rotor[j], 0.12, 1.225) / 2 // half of the disc is in it
		want := 12 * beside.InWake(12, area, 0.6, 1.225, w)
		if got := m.Craft[1].Rotors[j].Max; math.Abs(got-want) > 1e-7*want {
			t.Errorf("rotor %d: most %.10g N, want %.10g", j, got, want)
		}
		if m.Craft[0].Rotors[j].Max != 12 {
			t.Error("the upper one is blown")
		}
	}
	w := beside.WakeSpeed(a.Parts[0].Effort/4, 0.12, 1.225)
	push := 1.225 / 2 * 0.04 * w * w / 2
	if got := m.Craft[1].Drag[2]; math.Abs(got+push) > 1e-6*push {
		t.Errorf("pushed with %g N, want %g", -got, push)
	}
	sum := a.Parts[0].Effort + a.Parts[1].Effort - push
	if weight := 3 * share.Gravity; math.Abs(sum-weight) > 1e-6*weight {
		t.Errorf("%g N up, weight %g N", sum, weight)
	}
}

// Random teams, rigid, on cables and mixed, over plates, with everything counted: the balance multiplied out from rotors and pulls, with every
// download as a force at its place found here again, to 1e-9 of the weight; certificates hold; the fixed point comes to rest.
func TestNearRandom(t *testing.T) {
	rng := rand.New(rand.NewPCG(22, 5))
	s := solve.NewSolver()
	held, most := 0, 0
	for n := range 120 {
		p := randomNear(rng)
		m := nearModel(t, p)
		a := m.Share(s)
		most = max(most, m.NearRounds)
		if !m.NearSettled {
			t.Errorf("plan %d does not settle", n)
			continue
		}
		if a.Status != solve.Optimal {
			continue
		}
		held++
		program := m.Even(0)
		proof := certify.Forces(program, a.Even.U, a.Even.F, a.Even.T)
		proof.Duals(program, &a.Even)
		if !(proof.Bound(1) >= a.T-2e-7*a.T) {
			t.Errorf("plan %d: bound %g, answer %g", n, proof.Bound(1), a.T)
		}
		force, moment := weighed(m, p, a)
		if w := m.Weight(); force.Norm() > 1e-9*w || moment.Norm() > 1e-9*w {
			t.Errorf("plan %d (%d rounds): %g N and %g N m are left, the answer says %g", n, m.NearRounds, force.Norm(), moment.Norm(), a.Residual*w)
		}
	}
	t.Logf("%d held, at most %d rounds", held, most)
	if held < 60 {
		t.Errorf("only %d are held", held)
	}
}

func randomNear(rng *rand.Rand) plan.Plan {
	k := 3 + rng.IntN(4)
	var places []vec.V3 // far enough apart for their rotors
	for i := range k {
		reach := 0.85 + 0.4*rng.Float64()
		sin, cos := math.Sincos(2 * math.Pi * (float64(i) + 0.15*rng.Float64()) / float64(k))
		places = append(places, vec.V3{reach * cos, reach * sin, 0})
	}
	p := nearTeam(plan.Rigid, [2]float64{0.5 + 2*rng.Float64(), 0.5 + 2*rng.Float64()}, 0.5+rng.Float64(), places...)
	kind := rng.IntN(3)
	for i := range p.Team {
		m := &p.Team[i]
		m.Yaw = 360 * rng.Float64()
		if kind == 0 || kind == 1 && i%2 == 0 {
			m.Hold.Kind, m.Hold.Length = plan.Cable, 0.6+2.5*rng.Float64()
			continue
		}
		m.Attach[2] = 0.1 + 0.3*rng.Float64()
		m.Hold.Lean = [2]float64{8 * rng.NormFloat64(), 8 * rng.NormFloat64()}
	}
	p.Near = plan.Near{Ground: plan.Counted, Download: plan.Counted, Wakes: plan.Counted, Clearance: 0.1 + rng.Float64()}
	return p
}

// weighed is what is left of the balance of everything about the payload's origin, N and N m in body axes.
func weighed(m *share.Model, p plan.Plan, a share.Answer) (force, moment vec.V3) {
	add := func(at, f vec.V3) { force, moment = force.Add(f), moment.Add(at.Cross(f)) }
	add(m.Payload.COM, m.Up.Scale(-m.Payload.Mass*share.Gravity))
	faces := beside.Faces(p.Payload.Solids)
	for i, part := range a.Parts {
		c := &m.Craft[i]
		v := beside.Rotors{At: part.Position, Radius: 0.12, Reach: 0.37}
		own := m.Up.Scale(-c.Vehicle.Mass * share.Gravity).Add(c.Drag)
		if !c.Rigid {
			up := part.Thrust.Unit()
			v.Down = up.Scale(-1)
			turn := share.Align(vec.V3{0, 0, 1}, up).MulM(vec.Rot(vec.V3{0, 0, p.Team[i].Yaw * math.Pi / 180}))
			for _, r := range c.Vehicle.Rotors {
				v.Places = append(v.Places, turn.Mul(r.At))
			}
			add(c.At, part.Thrust.Add(own)) // what is left of the thrust pulls the payload
		} else {
			v.Down = c.Axes.Mul(vec.V3{0, 0, -1})
			for j, r := range c.Rotors {
				v.Places = append(v.Places, r.At)
				f := r.Axis.Scale(part.Rotor[j])
				add(c.At.Add(r.At), f)
				moment = moment.Add(f.Scale(c.Vehicle.Rotors[j].Torque))
			}
			add(c.At, own)
		}
		for j := range v.Places {
			s := v.Shadow(j, faces)
			add(s.At, v.Down.Scale(s.Share*part.Rotor[j]))
		}
	}
	return force, moment
}

// What one vehicle over a wide plate can do, rigid and on a cable, by hand with φ = C_d/2: the most payload is (1 − φ) U T/g − m_v, going up with a
// it needs (m + m_v)(g + a)/(1 − φ), and at full thrust a is (1 − φ) T/(m + m_v) − g. Policies: equal parts and least squares thrust the same.
func TestWashElsewhere(t *testing.T) {
	const g, phi, most = share.Gravity, 1.17 / 2, 4 * 12.0
	s := solve.NewSolver()
	for _, hold := range []string{plan.Rigid, plan.Cable} {
		for _, policy := range []string{plan.EvenEffort, plan.LeastSquares, plan.Equal} {
			at := vec.V3{}
			if hold == plan.Rigid {
				at[2] = 0.3
			}
			p := nearTeam(hold, [2]float64{3, 3}, 0.5, at)
			p.Near.Download, p.Policy = plan.Counted, policy
			m := nearModel(t, p)
			a := m.Share(s)
			name := hold + ", " + policy
			near(t, name+": thrust", a.Parts[0].Effort, 1.5*g/(1-phi), 1e-7)
			near(t, name+": residual", a.Residual, 0, 1e-9)
			near(t, name+": largest payload", m.Largest(s, a).Mass, (1-phi)*0.8*most/g-1, 1e-7)
			if policy != plan.EvenEffort {
				continue
			}
			up := m.Moving(share.Motion{Attitude: vec.Identity, Acceleration: vec.V3{0, 0, 0.7}})
			near(t, name+": going up", s.Solve(up.Even(0)).T, 1.5*(g+0.7)/(1-phi)/most, 1e-7)
			q := m.Within(1)
			m.Accelerate(q, vec.V3{0, 0, 1}, vec.V3{})
			near(t, name+": at full thrust", s.Solve(q).T, (1-phi)*most/1.5-g, 1e-6)
		}
	}
}

// Close to the ground the same team has 1/(1 − (R/4z)²) times the thrust; off the ground, lost or moving, it has not. By hand: rotors 0.3 m up, R 0.12 m.
func TestGroundOnlyInHover(t *testing.T) {
	p := nearTeam(plan.Rigid, [2]float64{0.01, 0.01}, 0.5, vec.V3{0, 0, 0.2}, vec.V3{1, 0, 0.2}, vec.V3{-1, 0, 0.2})
	p.Near.Ground, p.Near.Clearance = plan.Counted, 0.1
	m := nearModel(t, p)
	near(t, "thrust available", m.Craft[0].Vehicle.ThrustMax, 48/(1-0.01), 1e-12)
	near(t, "a rotor's", m.Craft[1].Rotors[2].Max, 12/(1-0.01), 1e-12)
	for name, n := range map[string]*share.Model{"aloft": m.Aloft(), "bare": m.Bare(), "one lost": m.Without(2)} {
		near(t, name, n.Craft[0].Vehicle.ThrustMax, 48, 1e-12)
		near(t, name, n.Craft[1].Rotors[2].Max, 12, 1e-12)
	}
	near(t, "and the plan's own is as it was", m.Craft[0].Vehicle.ThrustMax, 48/(1-0.01), 1e-12)
}
