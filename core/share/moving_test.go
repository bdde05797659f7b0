package share_test

import (
	"math"
	"testing"

	"cohoist/core/mass"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

func trio(kind string) *share.Model {
	j := vec.V3{0.02, 0.02, 0.04}
	c := plan.Class{Mass: 1.5, Rotors: 4, Layout: plan.Cross, Arm: 0.3, RotorRadius: 0.1, RotorThrustMax: 30,
		TorquePerThrust: 0.02, Inertia: &j, TiltMax: 80}
	p := plan.Plan{Vehicles: map[string]plan.Class{"v": c}, Policy: plan.EvenEffort,
		Limits: plan.Limits{Utilisation: 1, Cone: 80, TensionMin: 0.1}}
	for i, at := range []vec.V3{{1, 0, 0}, {-0.5, math.Sqrt(0.75), 0}, {-0.5, -math.Sqrt(0.75), 0}} {
		p.Team = append(p.Team, plan.Member{ID: string(rune('A' + i)), Vehicle: "v", Attach: at,
			Hold: plan.Hold{Kind: kind, Length: 2, WorkingLoad: math.NaN()}})
	}
	return share.New(p, mass.Properties{Mass: 3, Inertia: vec.Diag(vec.V3{0.5, 0.6, 0.9})}, vec.V3{}, 1.225)
}

// A level circle flown at 2 g, a = √3 g inwards, asks for twice the thrust of hover: the payload's pull and every
// vehicle's thrust lean by 60°, whose cosine is ½ (statics of a banked turn). Attachments level with the centre of mass,
// so that parallel pulls balance.
func TestCircleAtTwoG(t *testing.T) {
	s := solve.NewSolver()
	inwards := vec.V3{math.Sqrt(3) * share.Gravity, 0, 0}
	for _, kind := range []string{plan.Cable, plan.Rigid} {
		m := trio(kind)
		hover := m.Share(s).T
		v := share.Motion{Acceleration: inwards, Attitude: m.Upright(0.7, inwards.Add(vec.V3{0, 0, share.Gravity}))}
		at := m.Moving(v)
		r := s.Solve(at.Even(0))
		if r.Status != solve.Optimal || !(math.Abs(r.T-2*hover) <= 1e-9) {
			t.Errorf("%s: %v, utilisation %.12g, in hover %.12g", kind, r.Status, r.T, hover)
		}
		for i, p := range at.Placed(r) {
			thrust := v.Attitude.Mul(p.Thrust)
			if lean := math.Atan2(math.Hypot(thrust[0], thrust[1]), thrust[2]); !(math.Abs(lean-math.Pi/3) <= 1e-8) {
				t.Errorf("%s: thrust of vehicle %d leans by %g rad, want π/3", kind, i, lean)
			}
		}
	}
}

// A turn about the vertical alone asks for J_zz ψ̈ and no force; every vehicle on a cable for its own inertia as well:
// the moment is (J_zz + Σ m_i r²) ψ̈ in all. By hand: 0.9 + 3 × 1.5 kg m². Rates about two axes add ω × Jω.
func TestTurning(t *testing.T) {
	m := trio(plan.Cable)
	at := m.Moving(share.Motion{Attitude: vec.Identity, SpinRate: vec.V3{0, 0, 2}})
	w := at.Wrench()
	if !(math.Abs(w[5]-1.8) <= 1e-12 && math.Abs(w[0])+math.Abs(w[3]) <= 1e-12) {
		t.Errorf("wrench %v for 2 rad/s²", w)
	}
	yaw := 0.0
	for i, p := range at.Placed(solve.NewSolver().Solve(at.Even(0))) {
		r := m.Craft[i].At
		yaw += p.Thrust.Dot(vec.V3{-r[1], r[0], 0})
	}
	if want := 2 * (0.9 + 3*1.5); !(math.Abs(yaw-want) <= 1e-8) {
		t.Errorf("moment of the thrusts about the attachments %g, want %g", yaw, want)
	}
	if r := trio(plan.Rigid).Body.Inertia[2][2]; !(math.Abs(r-(0.9+3*(1.5+0.04))) <= 1e-12) {
		t.Errorf("rigid team: J_zz %g", r)
	}
	spun := m.Moving(share.Motion{Attitude: vec.Identity, Spin: vec.V3{0, 1, 2}}).Wrench()
	if want := (0.9 - 0.6) * 1 * 2; !(math.Abs(spun[3]-want) <= 1e-12) {
		t.Errorf("ω × Jω about x %g, want %g", spun[3], want)
	}
}

// At rest a moving model is the model; flying with the wind it meets no air.
func TestMovingAtRest(t *testing.T) {
	m := trio(plan.Cable)
	windy := share.New(func() plan.Plan { p := m.Plan; p.Site.Wind = 6; return p }(), m.Payload, vec.V3{0.2, 0.2, 0.3}, 1.225)
	if got, want := windy.Moving(share.Motion{Attitude: vec.Identity}).Wrench(), windy.Wrench(); got != want {
		t.Errorf("at rest %v, want %v", got, want)
	}
	if got := windy.Moving(share.Motion{Attitude: vec.Identity, Velocity: vec.V3{6, 0, 0}}).Wrench(); got != m.Wrench() {
		t.Errorf("with the wind %v, want %v", got, m.Wrench())
	}
}

// A beam on two cables, held 0.3 m above its centre of mass, swings about the line through its attachments: sideways it needs
// what a load on one point does, |f| = (m/2 + m_v) √(g² + a²) a vehicle, whatever the height of the line. By hand.
func TestHinge(t *testing.T) {
	m := trio(plan.Cable)
	p := m.Plan
	p.Team = append([]plan.Member(nil), p.Team[:2]...)
	p.Team[0].Attach, p.Team[1].Attach = vec.V3{1, 0, 0.3}, vec.V3{-1, 0, 0.3}
	m = share.New(p, m.Payload, vec.V3{}, 1.225)
	const a = 3.0
	at := m.Moving(share.Motion{Attitude: vec.Identity, Acceleration: vec.V3{0, a, 0}})
	r := solve.NewSolver().Solve(at.Even(0))
	want := (1.5 + 1.5) * math.Hypot(share.Gravity, a) / 120
	if r.Status != solve.Optimal || !(math.Abs(r.T-want) <= 1e-9) {
		t.Errorf("%v, utilisation %g, want %g", r.Status, r.T, want)
	}
	if line, arm, ok := m.Hinge(); !ok || line != (vec.V3{-1, 0, 0}) || arm != (vec.V3{0, 0, 0.3}) {
		t.Errorf("hinge %v, %v, %v", line, arm, ok)
	}
	if _, _, ok := trio(plan.Cable).Hinge(); ok {
		t.Error("three attachments in a triangle are a hinge")
	}
}
