package patch_test

import (
	"math"
	"strings"
	"testing"

	"cohoist/core/mass"
	"cohoist/core/patch"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

func class(mass, thrust, arm float64) plan.Class {
	return plan.Class{Mass: mass, Rotors: 4, Layout: plan.Cross, Arm: arm, RotorRadius: 0.05,
		RotorThrustMax: thrust / 4, TiltMax: 60}
}

func team(c plan.Class, members ...plan.Member) plan.Plan {
	for i := range members {
		members[i].ID = string(rune('A' + i))
		members[i].Vehicle = "v"
	}
	return plan.Plan{Vehicles: map[string]plan.Class{"v": c}, Team: members, Policy: plan.EvenEffort,
		Limits: plan.Limits{Utilisation: 0.8, Cone: 30, Lost: plan.CutAway}}
}

func on(kind string, x, y float64) plan.Member {
	return plan.Member{Attach: vec.V3{x, y, 0.2}, Hold: plan.Hold{Kind: kind, Length: 3, WorkingLoad: math.NaN()}}
}

func square(c plan.Class, kind string, a float64) plan.Plan {
	return team(c, on(kind, a, a), on(kind, -a, a), on(kind, -a, -a), on(kind, a, -a))
}

func of(p plan.Plan, kg float64, c vec.V3) patch.Patch {
	return patch.Of(model(p, kg, c), solve.NewSolver())
}

func model(p plan.Plan, kg float64, c vec.V3) *share.Model {
	return share.New(p, mass.Properties{Mass: kg, COM: c}, vec.V3{}, 1.225)
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.12g, want %.12g within %g", what, got, want, tol)
	}
}

// exact is how near closed forms must come, m: the solver's t and its bound are within 1e-7 of each other,
// and mostly within 1e-9.
const exact = 1e-8

// Two rigid lifters that push at one point each, at x = ±a, by hand: u₁ + u₂ = M g and a (u₁ − u₂) = m g x.
// Once thrust ends it, u ≤ U T, and once a lifter that only is in the way, u ≥ 0.
func TestTwoPoints(t *testing.T) {
	const a, kg, own = 1.5, 5.0, 2.0
	all := (kg + 2*own) * share.Gravity
	for _, thrust := range []float64{70, 400} {
		p := team(class(own, thrust, 0), on(plan.Rigid, a, 0), on(plan.Rigid, -a, 0))
		got := of(p, kg, vec.V3{0.1, 0, 0})
		want := a * math.Min(2*0.8*thrust-all, all) / (kg * share.Gravity)
		if got.Status != solve.Optimal || len(got.Inner) != 2 || len(got.Outer) != 2 {
			t.Fatalf("%+v", got)
		}
		for _, ends := range [2][]patch.XY{got.Inner, got.Outer} {
			near(t, "left", min(ends[0][0], ends[1][0]), -want, exact)
			near(t, "right", max(ends[0][0], ends[1][0]), want, exact)
			near(t, "across", math.Abs(ends[0][1])+math.Abs(ends[1][1]), 0, exact)
		}
		near(t, "edge", got.Edge, want-0.1, exact)
		near(t, "towards x", got.Toward[0], 1, exact)
		aside := of(p, kg, vec.V3{0.1, 0.3, 0})
		near(t, "beside the line", aside.Edge, -0.3, exact)
		near(t, "towards −y", aside.Toward[1], -1, exact)
	}
}

// Four equal cables on a square of half side a, still air, by hand. Each pulls from 0 to F = U T − m g, and
// c = Σ F_i a_i/W. Two corners give at most 2 F, so |x| ≤ a (4F/W − 1), and one F, so |x| + |y| ≤ 2 a F/W. With
// F = 0.4 W: an octagon, |x| and |y| ≤ 0.6 a, |x| + |y| ≤ 0.8 a.
func TestSquare(t *testing.T) {
	const a, kg, own = 0.7, 5.0, 2.0
	thrust := (0.4*kg + own) * share.Gravity / 0.8
	got := of(square(class(own, thrust, 0.2), plan.Cable, a), kg, vec.V3{})
	if got.Status != solve.Optimal || len(got.Inner) < 8 || len(got.Outer) < 8 {
		t.Fatalf("%+v", got)
	}
	near(t, "area", got.Area(), (1.44-4*0.08)*a*a, exact)
	near(t, "gap", got.Gap, 0, exact)
	for _, c := range got.Inner {
		x, y := math.Abs(c[0])/a, math.Abs(c[1])/a
		near(t, "corner", math.Min(math.Abs(x-0.6)+math.Abs(y-0.2), math.Abs(x-0.2)+math.Abs(y-0.6)), 0, 2*exact)
	}
	near(t, "edge", got.Edge, 0.8*a/math.Sqrt2, exact)
	near(t, "least", got.Least, (kg/4+own)*share.Gravity/thrust, 1e-8)
	far := of(square(class(own, thrust, 0.2), plan.Cable, a), kg, vec.V3{a, 0, 0})
	near(t, "outside", far.Edge, -0.4*a, exact)
	near(t, "towards −x", far.Toward[0], -1, exact)
	if !strings.Contains(far.Sentence(), "outside") || !strings.Contains(far.Sentence(), "towards 180°") {
		t.Error(far.Sentence())
	}

	// Without a corner the three others: the triangle with 0 ≤ F_i ≤ 0.4 W; what all four leave is by hand
	// x, y with every F within: of a triangle's three F, opposite the lost one F = (1 ∓ …). Losing corner 3 leaves
	// F₁ = W (x + y)/(2a), F₂ = W (1 − x/a)/2 and F₄ = W (1 − y/a)/2, so 0 ≤ x + y ≤ 0.8 a, x and y ≥ 0.2 a.
	left := patch.AnyLost(model(square(class(own, thrust, 0.2), plan.Cable, a), kg, vec.V3{}), solve.NewSolver(), nil)
	if len(left.Empty) > 0 || left.All.Status != solve.Infeasible || len(left.All.Outer) > 0 {
		t.Errorf("%+v", left)
	}
	for i, want := range []patch.XY{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}} {
		for _, c := range left.Each[i].Inner {
			x, y := c[0]*want[0]/a, c[1]*want[1]/a
			if x < 0.2-exact || y < 0.2-exact || x+y > 0.8+exact {
				t.Errorf("without %d: corner %v", i, c)
			}
		}
		near(t, "area", left.Each[i].Area(), 0.4*0.4/2*a*a, exact)
	}
	// with thrust to spare, F = W, any loss leaves the triangle of the others, and all four share their middle: the point 0
	thrust = (kg + own) * share.Gravity / 0.8
	left = patch.AnyLost(model(square(class(own, thrust, 0.2), plan.Cable, a), kg, vec.V3{}), solve.NewSolver(), nil)
	for _, c := range left.All.Outer {
		near(t, "middle", math.Hypot(c[0], c[1]), 0, 1e-6) // clipped with 1e-8 of the size let out, twice
	}
	if left.All.Status != solve.Optimal || len(left.All.Outer) == 0 {
		t.Errorf("%+v", left.All)
	}
}

// One cable holds its load in one place only. A ring of three leaves two in line whichever is lost, three lines
// that share no point. What is too heavy is held nowhere. A payload without weight has no patch.
func TestNoWidth(t *testing.T) {
	one := of(team(class(1, 100, 0.1), on(plan.Cable, 0.3, 0.1)), 2, vec.V3{})
	if len(one.Inner) != 1 || math.Hypot(one.Inner[0][0]-0.3, one.Inner[0][1]-0.1) > exact {
		t.Errorf("%+v", one)
	}
	near(t, "one cable", one.Edge, -math.Hypot(0.3, 0.1), exact)

	three := team(class(1, 100, 0.1), on(plan.Cable, 1, 0), on(plan.Cable, -0.5, 0.8), on(plan.Cable, -0.5, -0.8))
	left := patch.AnyLost(model(three, 2, vec.V3{}), solve.NewSolver(), nil)
	for _, p := range left.Each {
		if len(p.Inner) != 2 {
			t.Errorf("%+v", p)
		}
	}
	if left.All.Status == solve.Optimal && len(left.All.Outer) > 2 || !strings.HasPrefix(left.Sentence(), "No place serves") {
		t.Errorf("%s %+v", left.Sentence(), left.All)
	}

	heavy := of(three, 40, vec.V3{})
	near(t, "too heavy", heavy.Least, (40./3+1)*share.Gravity/100, 1e-8)
	if heavy.Status != solve.Infeasible || len(heavy.Outer) > 0 || !strings.Contains(heavy.Sentence(), "above its limit") {
		t.Errorf("%+v %s", heavy, heavy.Sentence())
	}
	if p := of(three, 0, vec.V3{}); p.Status != solve.NotRun || p.Sentence() != "There is no safe patch: the payload weighs nothing." {
		t.Errorf("%+v", p)
	}
	stopped := patch.AnyLost(model(three, 2, vec.V3{}), solve.NewSolver(), func(done, all int) bool { return done < 1 })
	if !stopped.Stopped || len(stopped.Each) != 1 {
		t.Errorf("%+v", stopped)
	}
}
