package agility_test

import (
	"math"
	"testing"

	"cohoist/core/agility"
	"cohoist/core/mass"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

const g = share.Gravity

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-7*(1+math.Abs(want))) {
		t.Errorf("%s = %.10g, want %.10g", what, got, want)
	}
}

func lift(c plan.Class, payload mass.Properties, team ...plan.Member) *share.Model {
	for i := range team {
		team[i].ID, team[i].Vehicle = string(rune('A'+i)), "v"
	}
	return share.New(plan.Plan{Vehicles: map[string]plan.Class{"v": c}, Team: team, Policy: plan.EvenEffort,
		Limits: plan.Limits{Utilisation: 0.8, Cone: 20, TensionMin: 0.1}}, payload, vec.V3{}, 1.225)
}

func moves(t *testing.T, m *share.Model) agility.Moves {
	t.Helper()
	s := solve.NewSolver()
	a := m.Share(s)
	if a.Status != solve.Optimal {
		t.Fatalf("status %v", a.Status)
	}
	return agility.Of(m, a, s)
}

var hold = plan.Hold{Kind: plan.Rigid}

// One vehicle alone, weight W, arm a, rotors that can each give at least W/2. By hand: all thrust on
// one side without yaw. Cross: M = a W/√2. Plus: two rotors on the axis must carry W/2 against the
// torque of the other two, M = a W/2. Yaw: all thrust on one pair, κ W. Climb Σ u_max − W.
func TestOneVehicleByHand(t *testing.T) {
	const m, arm, kappa, thrust = 2.0, 0.3, 0.02, 15.0
	j := vec.V3{0.03, 0.05, 0.07}
	c := plan.Class{Mass: m, Rotors: 4, Layout: plan.Cross, Arm: arm, RotorRadius: 0.1, RotorThrustMax: thrust,
		TorquePerThrust: kappa, Inertia: &j, TiltMax: 30}
	w := m * g
	cross := moves(t, lift(c, mass.Properties{}, plan.Member{Hold: hold}))
	for way := range 2 {
		near(t, "roll", cross.Roll[way], arm*w/math.Sqrt2)
		near(t, "pitch", cross.Pitch[way], arm*w/math.Sqrt2)
		near(t, "yaw", cross.Yaw[way], kappa*w)
		near(t, "roll acceleration", cross.RollAcc[way], arm*w/math.Sqrt2/j[0])
		near(t, "pitch acceleration", cross.PitchAcc[way], arm*w/math.Sqrt2/j[1])
		near(t, "yaw acceleration", cross.YawAcc[way], kappa*w/j[2])
	}
	near(t, "climb", cross.Climb, 4*thrust-w)
	near(t, "climb acceleration", cross.ClimbAcc, (4*thrust-w)/m)
	near(t, "side, tilt governs", cross.SideAcc, g*math.Tan(math.Pi/6))
	c.Layout, c.TiltMax = plan.Plus, 89
	plus := moves(t, lift(c, mass.Properties{}, plan.Member{Hold: hold}))
	near(t, "roll, plus", plus.Roll[0], arm*w/2)
	near(t, "side, thrust governs", plus.SideAcc, math.Sqrt(float64(4*thrust*4*thrust)-w*w)/m)
}

// One vehicle on a cable, 2 kg with 1 kg below, 45 N. By hand: climb until |f| = T, so a = T/3 − g;
// sideways the cable leans with tan γ = a/g, to the cone of 20°: √(a² + g²) × 3 kg = 31.3 N is below 45 N.
func TestOneCableByHand(t *testing.T) {
	c := plan.Class{Mass: 2, Rotors: 4, Layout: plan.Cross, Arm: 0.3, RotorRadius: 0.1, RotorThrustMax: 45.0 / 4,
		TorquePerThrust: 0.02, TiltMax: 30}
	m := lift(c, mass.Properties{Mass: 1, Inertia: vec.Identity}, plan.Member{Hold: plan.Hold{Kind: plan.Cable, Length: 2, WorkingLoad: math.NaN()}})
	v := moves(t, m)
	near(t, "climb acceleration", v.ClimbAcc, 45.0/3-g)
	near(t, "climb", v.Climb, 45-3*g)
	near(t, "side", v.SideAcc, g*math.Tan(math.Pi/9))
	for way := range 2 {
		near(t, "roll about a single point", v.Roll[way], 0)
	}
	if !math.IsNaN(v.TurnFull[0]) || !math.IsNaN(v.TurnSmall[2]) {
		t.Errorf("turning times %v %v of a load on one cable", v.TurnSmall, v.TurnFull)
	}
}

// A ring of three cables climbs with the vehicles in tow: by hand T_each/(m/3 + m_v) − g.
func TestThreeCablesClimb(t *testing.T) {
	c := plan.Class{Mass: 2, Rotors: 6, Layout: plan.Plus, Arm: 0.3, RotorRadius: 0.1, RotorThrustMax: 7.5, TiltMax: 30}
	var team []plan.Member
	for i := range 3 {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / 3)
		team = append(team, plan.Member{Attach: vec.V3{cos, sin, 0}, Hold: plan.Hold{Kind: plan.Cable, Length: 2, WorkingLoad: math.NaN()}})
	}
	v := moves(t, lift(c, mass.Properties{Mass: 3, Inertia: vec.Identity}, team...))
	near(t, "climb acceleration", v.ClimbAcc, 45.0/3-g)
	if !(v.RollAcc[0] > 0 && v.YawAcc[0] > 0 && v.YawAcc[1] > 0) {
		t.Errorf("three cables turn the load: roll %v, yaw %v", v.RollAcc, v.YawAcc)
	}
}

// Turning by bang-bang: α = 2 both ways, half a turn in √(2π(1/2 + 1/2)); unequal ways by (7.6).
func TestTurn(t *testing.T) {
	near(t, "even", agility.Turn(math.Pi, [2]float64{2, 2}), math.Sqrt(2*math.Pi))
	// 3 rad/s² for 1 s gives 1.5 rad at 3 rad/s; 1 rad/s² stops it in 3 s after 4.5 rad: 6 rad in 4 s.
	near(t, "uneven", agility.Turn(6, [2]float64{3, 1}), 4)
	if !math.IsNaN(agility.Turn(1, [2]float64{0, 1})) {
		t.Error("what cannot turn has a turning time")
	}
}

// A pocket vehicle turns through 360° in less than half a second; k equal vehicles lift k times
// what one does and turn more slowly. Common practice, no source.
func TestSmallIsQuick(t *testing.T) {
	j := vec.V3{4.5e-5, 4.5e-5, 8e-5}
	c := plan.Class{Mass: 0.075, Rotors: 4, Layout: plan.Cross, Arm: 0.06, RotorRadius: 0.032, RotorThrustMax: 0.42,
		TorquePerThrust: 0.006, Inertia: &j, TiltMax: 40}
	one := moves(t, lift(c, mass.Properties{}, plan.Member{Hold: hold}))
	if !(one.TurnFull[0] < 0.5 && one.TurnFull[0] > 0.05) {
		t.Errorf("360° in %g s", one.TurnFull[0])
	}
	four := moves(t, lift(c, mass.Properties{Mass: 0.1, Inertia: vec.Diag(vec.V3{1e-4, 1e-4, 2e-4})},
		plan.Member{Attach: vec.V3{0.15, 0, 0}, Hold: hold}, plan.Member{Attach: vec.V3{0, 0.15, 0}, Hold: hold},
		plan.Member{Attach: vec.V3{-0.15, 0, 0}, Hold: hold}, plan.Member{Attach: vec.V3{0, -0.15, 0}, Hold: hold}))
	if !(four.RollAcc[0] < one.RollAcc[0] && four.YawAcc[0] < one.YawAcc[0]) {
		t.Errorf("the team turns with %v %v, one with %v %v", four.RollAcc, four.YawAcc, one.RollAcc, one.YawAcc)
	}
	r := agility.Ratio(four, one)
	near(t, "ratio", r.RollAcc[0], four.RollAcc[0]/one.RollAcc[0])
}
