package share_test

import (
	"math"
	"testing"

	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Slings whose directions are given: each is a line of force on the point or body that they hold.

// pulls answers with the tensions of slings along the directions at the points, under a weight at c.
func pulls(t *testing.T, weight float64, c vec.V3, at, along []vec.V3, most float64) (solve.Result, *solve.Program) {
	t.Helper()
	p := &solve.Program{Wrench: solve.Wrench{2: weight}, Goal: 1}
	for i := range at {
		d := along[i].Unit()
		turn := at[i].Sub(c).Cross(d)
		p.Lines = append(p.Lines, solve.Line{Column: solve.Wrench{d[0], d[1], d[2], turn[0], turn[1], turn[2]}, HiT: most})
	}
	return solve.NewSolver().Solve(p), p
}

func TestSlings(t *testing.T) {
	rows := []struct {
		name      string
		weight    float64
		at, along []vec.V3 // at nil: all in the loaded point
		want      []float64
		tol       float64
	}{
		{"unequal legs, hook over the centre of gravity; furleyengineering.co.uk/Sling_Load (kg; printed 1650 for the short leg, the other is 400/sin 45)",
			2000, []vec.V3{{-0.8, 0, 0}, {0.2, 0, 0}}, []vec.V3{{0.8, 0, 0.8}, {-0.2, 0, 0.8}}, []float64{565.685425, 1649.242250}, 1e-4},
		{"122 N at 37 and 53 degrees; figure 5.10a of a college physics text, assignmentexpert.com question-102636 (printed 73.4 and 97.4)",
			122, nil, []vec.V3{angle(180 - 37), angle(53)}, []float64{73.4214, 97.4335}, 1e-4},
		{"294 N at 53 and 37 degrees; cramster.com/physics-answers-5-442504, fig. 9-52",
			294, nil, []vec.V3{angle(180 - 53), angle(37)}, []float64{234.79884, 176.9336}, 1e-4},
		{"three cables in space, 784 N; SUNY Broome physics module 3, example 1, web.sunybroome.edu/~biegen_j/phys1/modules/threeDequil/mod3_3Ex1.htm",
			784, nil, []vec.V3{{0.2, -0.15, 0.8}, {-0.1, -0.15, 0.8}, {-0.1, 0.3, 0.8}}, []float64{273.7968, 267.8866, 281.0092}, 1e-3},
		{"150 lb on three cables, one horizontal; R. C. Hibbeler, Engineering Mechanics: Statics, 14th ed., F3-11; result 2100/13, 3150/13, 4500/13",
			150, nil, []vec.V3{{-6, 3, 2}, {-6, -2, 3}, {1, 0, 0}}, []float64{2100.0 / 13, 3150.0 / 13, 4500.0 / 13}, 1e-5},
	}
	for _, r := range rows {
		if r.at == nil {
			r.at = make([]vec.V3, len(r.along))
		}
		got, _ := pulls(t, r.weight, vec.V3{}, r.at, r.along, r.weight)
		if got.Status != solve.Optimal {
			t.Errorf("%s: status %v", r.name, got.Status)
			continue
		}
		for i, want := range r.want {
			near(t, r.name, got.U[i], want, r.tol)
		}
	}
}

// Junction A (0, 6, 0), anchors B (-3, 0, 2), C (2, 0, 3), D (0, 9, 4) m, z up, no cable above
// 250 N: the largest load is 265 N, with AD = 250, AB = 70, AC = 105. Inputs: statics textbook
// example, wizeprep.com/textbooks/undergrad/engineering/22748/sections/2872761; result exact.
func TestOneCableLimits(t *testing.T) {
	along := []vec.V3{{-3, -6, 2}, {2, -6, 3}, {0, 3, 4}}
	p := &solve.Program{WrenchT: solve.Wrench{2: 1}, Goal: -1}
	for _, d := range along {
		d = d.Unit()
		p.Lines = append(p.Lines, solve.Line{Column: solve.Wrench{d[0], d[1], d[2]}, Hi: 250})
	}
	got := solve.NewSolver().Solve(p)
	near(t, "load", got.T, 265, 1e-5)
	for i, want := range []float64{70, 105, 250} {
		near(t, "cable", got.U[i], want, 1e-4)
	}
}

// angle is the direction at a degrees from +x, in the xz plane.
func angle(a float64) vec.V3 { return vec.Rot(vec.V3{0, -a * math.Pi / 180, 0}).Mul(vec.V3{1, 0, 0}) }
