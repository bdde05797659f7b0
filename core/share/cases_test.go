package share_test

import (
	"math"
	"testing"

	"cohoist/core/certify"
	"cohoist/core/mass"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Teams for the cases: one class "v" whose whole thrust is thrust newtons, without drag.

func class(mass, thrust float64) plan.Class {
	return plan.Class{Mass: mass, Rotors: 4, Layout: plan.Cross, Arm: 0.1, RotorRadius: 0.05,
		RotorThrustMax: thrust / 4, TorquePerThrust: 0.01, TiltMax: 60}
}

func team(class plan.Class, members ...plan.Member) plan.Plan {
	for i := range members {
		members[i].ID = string(rune('A' + i))
		members[i].Vehicle = "v"
	}
	return plan.Plan{Vehicles: map[string]plan.Class{"v": class}, Team: members, Policy: plan.EvenEffort,
		Limits: plan.Limits{Utilisation: 1, Cone: 30, TensionMin: 0, Separation: 0, COMError: 0.02, TurnReserve: 2}}
}

func cable(x, y float64) plan.Member {
	return plan.Member{Attach: vec.V3{x, y, 0}, Hold: plan.Hold{Kind: plan.Cable, Length: 3, WorkingLoad: math.NaN()}}
}

// leg is a rigid hold that pushes along a sling leg: at angle a (degrees) from the horizontal,
// leaning towards the vertical through the origin.
func leg(x, y, a float64) plan.Member {
	tip, in := 90-a, vec.V3{-x, -y, 0}.Unit()
	return plan.Member{Attach: vec.V3{x, y, 0}, Hold: plan.Hold{Kind: plan.Rigid, Lean: [2]float64{-tip * in[1], tip * in[0]}}}
}

// weighing is a point payload of the given weight (N) at c.
func weighing(weight float64, c vec.V3) mass.Properties {
	return mass.Properties{Mass: weight / share.Gravity, COM: c}
}

func model(p plan.Plan, payload mass.Properties) *share.Model {
	return share.New(p, payload, vec.V3{}, 1.225)
}

func answer(t *testing.T, m *share.Model) share.Answer {
	t.Helper()
	a := m.Share(solve.NewSolver())
	if a.Status != solve.Optimal || a.Parts == nil {
		t.Fatalf("status %v, want an answer", a.Status)
	}
	if a.Residual > share.Balanced {
		t.Errorf("residual %g", a.Residual)
	}
	p := m.Even(0) // multiplied out by other code than the solver's
	proof := certify.Forces(p, a.Even.U, a.Even.F, a.Even.T)
	proof.Duals(p, &a.Even)
	if bound := proof.Bound(1); proof.Imbalance > 1e-9 || proof.Broken > 1e-8 || proof.Stray > 1e-9 || math.Abs(bound-a.Bound) > 1e-9*(1+bound) || bound < a.Even.T-1e-7 {
		t.Errorf("proof %+v of %.12g, bound %.12g", proof, a.Even.T, a.Bound)
	}
	return a
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.10g, want %.10g within %g", what, got, want, tol)
	}
}

const light = 1e-9 // kg, a vehicle that weighs nothing beside its load

// Angle factor of a sling leg: 13 printed rows, sling tension chart, rigging supplier's page
// ashleysling.com/calculating-sling-angles. Printed factors are 1/(rounded reduction), so that 65,
// 40 and 35 degrees are off by up to 0.0014: tolerance 0.002 to the printed, 1e-7 to 1/sin a.
func TestAngleFactor(t *testing.T) {
	rows := []struct{ angle, factor float64 }{{90, 1}, {85, 1.004}, {80, 1.015}, {75, 1.035}, {70, 1.064}, {65, 1.104},
		{60, 1.155}, {55, 1.221}, {50, 1.305}, {45, 1.414}, {40, 1.555}, {35, 1.742}, {30, 2}}
	for _, r := range rows {
		m := model(team(class(light, 1000), leg(1, 0, r.angle), leg(-1, 0, r.angle)), weighing(200, vec.V3{}))
		for _, p := range answer(t, m).Parts {
			near(t, "factor", p.Effort/100, r.factor, 0.002)
			near(t, "factor", p.Effort/100, 1/math.Sin(r.angle*math.Pi/180), 1e-7)
		}
	}
}

// Two legs under 1 000 lb: US Navy training manual 14080, p. 3-23 f. (bridle hitch; 90 and 30
// degrees) and kwrs.com/products/212-determining-lifting-load-capacity-of-a-sling (60 and 45).
func TestTwoLegs(t *testing.T) {
	for _, r := range []struct{ angle, tension float64 }{{90, 500}, {60, 577}, {45, 707}, {30, 1000}} {
		m := model(team(class(light, 4000), leg(1, 0, r.angle), leg(-1, 0, r.angle)), weighing(1000, vec.V3{}))
		near(t, "leg", answer(t, m).Parts[1].Effort, r.tension, 0.5) // printed in whole pounds
	}
}

// Two legs carry 2 R sin a and three 3 R sin a: grade 80 alloy chain sling table,
// wcwr.com/catalog/cat/710.htm, rounded there to 50 or 100 lb (tolerance 1.1 %).
func TestLegsCapacity(t *testing.T) {
	rows := []struct {
		rating     float64
		two, three [3]float64
	}{
		{2100, [3]float64{3600, 3000, 2100}, [3]float64{5450, 4450, 3150}},
		{7100, [3]float64{12300, 10000, 7100}, [3]float64{18400, 15100, 10600}},
		{12000, [3]float64{20800, 17000, 12000}, [3]float64{31200, 25500, 18000}},
		{28300, [3]float64{49000, 40000, 28300}, [3]float64{73500, 60000, 42400}},
		{47700, [3]float64{82600, 67400, 47700}, [3]float64{123900, 101200, 71500}},
	}
	for _, r := range rows {
		for i, angle := range [3]float64{60, 45, 30} {
			two := model(team(class(light, r.rating), leg(1, 0, angle), leg(-1, 0, angle)), weighing(1, vec.V3{}))
			three := model(team(class(light, r.rating), leg(1, 0, angle), leg(-0.5, math.Sqrt(0.75), angle), leg(-0.5, -math.Sqrt(0.75), angle)), weighing(1, vec.V3{}))
			sin := math.Sin(angle * math.Pi / 180)
			for n, m := range map[float64]*share.Model{2: two, 3: three} {
				got := m.Largest(solve.NewSolver(), share.Answer{}).Mass * share.Gravity
				printed := r.two[i]
				if n == 3 {
					printed = r.three[i]
				}
				near(t, "capacity", got, printed, 0.011*printed)
				near(t, "capacity", got, n*r.rating*sin, 1e-6*r.rating)
			}
		}
	}
}

// Leg factors n cos b, truncated in print: EN 13414-1:2003, Table 4.
func TestLegFactors(t *testing.T) {
	for _, r := range []struct{ n, fromVertical, factor float64 }{{2, 45, 1.4}, {2, 60, 1}, {3, 45, 2.1}, {3, 60, 1.5}} {
		var legs []plan.Member
		for i := range int(r.n) {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / r.n)
			legs = append(legs, leg(cos, sin, 90-r.fromVertical))
		}
		m := model(team(class(light, 1), legs...), weighing(0.1, vec.V3{}))
		got := m.Largest(solve.NewSolver(), share.Answer{}).Mass * share.Gravity
		near(t, "leg factor", math.Floor(got*10+1e-6)/10, r.factor, 1e-9)
	}
}

// Off-centre load on two vertical legs, 8 ft and 2 ft from the centre of gravity: 2 000 and 8 000 lb,
// certifiedslings.com/load-limits/center-of-gravity-and-sling-loading.
func TestOffCentre(t *testing.T) {
	m := model(team(class(light, 20000), cable(8, 0), cable(-2, 0)), weighing(10000, vec.V3{}))
	a := answer(t, m)
	near(t, "far leg", a.Parts[0].Tension, 2000, 1e-4)
	near(t, "near leg", a.Parts[1].Tension, 8000, 1e-4)
}

// Beam on two vertical cables at ±0.6 m, 2 kg, centre of mass 0.2 m off: the lever rule,
// 19.6133 × 0.4/1.2 and × 0.8/1.2. By hand.
func TestLever(t *testing.T) {
	m := model(team(class(1, 40), cable(-0.6, 0), cable(0.6, 0)), mass.Properties{Mass: 2, COM: vec.V3{0.2, 0, 0}})
	a := answer(t, m)
	near(t, "left", a.Parts[0].Tension, 6.537767, 1e-6)
	near(t, "right", a.Parts[1].Tension, 13.075533, 1e-6)
}

// Three vertical cables share by barycentric coordinates; exact, by hand.
func TestBarycentric(t *testing.T) {
	var three []plan.Member
	for i := range 3 {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / 3)
		three = append(three, cable(0.5*cos, 0.5*sin))
	}
	m := model(team(class(1, 60), three...), mass.Properties{Mass: 3, COM: vec.V3{0.1, 0.05, 0}})
	for i, want := range []float64{13.729310, 9.543882, 6.146758} {
		near(t, "tension", answer(t, m).Parts[i].Tension, want, 1e-6)
	}
	m = model(team(class(1, 60), three...), mass.Properties{Mass: 3, COM: vec.V3{0.4, 0.4, 0}})
	if got := m.Share(solve.NewSolver()); got.Status != solve.Infeasible || got.None == nil {
		t.Errorf("outside the triangle: status %v, want no balance", got.Status)
	}
}

// Four vertical legs on a rectangle: what statics leaves open. Equal springs (least squares) 37.5,
// 27.5, 12.5, 22.5; smallest possible largest leg 32.5; exact, two routes (pseudo-inverse, linear
// program). The problem is Euler's, 1773; see Garcia, Wood, Barrera-Mora, Applied Mathematics 6
// (2015) 599-616.
func TestFourLegs(t *testing.T) {
	four := []plan.Member{cable(1, 0.5), cable(1, -0.5), cable(-1, -0.5), cable(-1, 0.5)}
	p := team(class(light, 100), four...)
	m := model(p, weighing(100, vec.V3{0.3, 0.1, 0}))
	near(t, "largest leg", answer(t, m).T, 0.325, 1e-7)
	p.Policy = plan.LeastSquares
	a := answer(t, model(p, weighing(100, vec.V3{0.3, 0.1, 0})))
	for i, want := range []float64{37.5, 27.5, 12.5, 22.5} {
		near(t, "spring leg", a.Parts[i].Force[2], want, 1e-9)
	}
	a = answer(t, model(p, weighing(100, vec.V3{0.7, 0.3, 0})))
	for i, want := range []float64{57.5, 27.5, -7.5, 22.5} { // a cable cannot: the check says slack
		near(t, "spring leg", a.Parts[i].Force[2], want, 1e-9)
	}
}

// One vehicle of a ring drops out, load at the centre: the largest share of the rest. Exact, linear
// program by another route (scipy linprog, HiGHS).
func TestDropOut(t *testing.T) {
	for k, want := range map[int]float64{3: 0, 4: 0.5, 5: (5 + math.Sqrt(5)) / 20, 6: 0.25, 8: 1.0 / 6} {
		var ring []plan.Member
		for i := range k - 1 {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(k))
			ring = append(ring, cable(cos, sin))
		}
		m := model(team(class(light, 1), ring...), weighing(1, vec.V3{}))
		if k == 3 {
			if got := m.Share(solve.NewSolver()); got.Status != solve.Infeasible {
				t.Errorf("three without one: status %v, want no balance", got.Status)
			}
			continue
		}
		near(t, "worst share", answer(t, m).T, want, 1e-7)
	}
}

// Four vehicles (1 kg, own inertia 0.02 about x) on a ring of 1 m under a 2 kg disc of 0.5 m, axis
// through two of them: 4 × 0.02 + 2 × 1 × 1² + 2 × 0.25/4 = 2.205 kg m². By hand.
func TestCombinedInertia(t *testing.T) {
	c := class(1, 40)
	c.Inertia = &vec.V3{0.02, 0.02, 0.04}
	m := model(team(c, leg(1, 0, 90), leg(0, 1, 90), leg(-1, 0, 90), leg(0, -1, 90)),
		mass.Properties{Mass: 2, Inertia: vec.Diag(vec.V3{0.125, 0.125, 0.25})})
	near(t, "inertia", m.Body.Inertia[0][0], 2.205, 1e-12)
	near(t, "10 N m", 10/m.Body.Inertia[0][0], 4.5351, 5e-5) // printed to five figures
}
