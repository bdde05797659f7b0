package study

import (
	"math"
	"strings"
	"testing"

	"cohoist/core/plan"
	"cohoist/ui/talk"
)

// A propeller by its coefficients, by hand: C_T 0.1, C_P 0.04, 0.38 m at 6000 rpm, 100 turns a second: 0.1 × 1.225 × 10⁴ × 0.38⁴ = 25.543 N with
// 0.04 × 1.225 × 10⁶ × 0.38⁵ = 388.25 W, a figure of merit of √(2/π) 0.1^1.5/0.04 = 0.63078, torque per thrust 0.04 × 0.38/(0.2 π) = 24.192 mm.
func TestCoefficients(t *testing.T) {
	g := opened(t, named(t, "beam-pair"), talk.Energy)
	if got := g.pieces["energy-coef-0"]; strings.Contains(got, "button") {
		t.Error(got)
	}
	key := "energy.coef." + digest([]string{"field-quad"}) + "."
	says := func(set map[string]string) string {
		g.set(set)
		return letters(g.pieces["energy-coef-0"])
	}
	if got := says(map[string]string{key + "ct": "0,1"}); !strings.Contains(got, "Both C_T and C_P are wanted.") {
		t.Error(got)
	}
	if got := says(map[string]string{key + "ct": "0.1", key + "cp": "0.02"}); !strings.Contains(got, "figure of merit would be 1.26, above 1") {
		t.Error(got)
	}
	if got := says(map[string]string{key + "ct": "0.1", key + "cp": "x"}); !strings.Contains(got, "A number above is none.") || g.pieces["fault "+key+"cp"] == "" {
		t.Error(got)
	}
	set := map[string]string{key + "ct": "0.1", key + "cp": "0.04", key + "d": "0.38"}
	if got := says(set); !strings.Contains(got, "Figure of merit 0.631, torque per thrust 0.0242\u202fm, rotor radius 0.19\u202fm.") || !strings.Contains(got, "Use these three for field-quad") {
		t.Error(got)
	}
	set[key+"n"] = "6000"
	if got := says(set); !strings.Contains(got, "25.5\u202fN of thrust with 388\u202fW at the shaft") || !strings.Contains(got, "sqrt(2/pi)*C_T*sqrt(C_T)/C_P") {
		t.Error(got)
	}
	g.Hear(Message{Do: "energy coef field-quad"})
	g.settle()
	if g.plan == nil {
		t.Fatal("not taken")
	}
	c := g.plan.Vehicles["field-quad"]
	for what, x := range map[string][2]float64{"figure of merit": {c.FigureOfMerit, 0.6307831}, "torque": {c.TorquePerThrust, 0.02419155}, "thrust": {c.RotorThrustMax, 25.54292}, "radius": {c.RotorRadius, 0.19}} {
		if math.Abs(x[0]-x[1]) > 1e-6*x[1] {
			t.Errorf("%s %.9g, by hand %.9g", what, x[0], x[1])
		}
	}
}

// Without a static test the curve is that of figure of merit and drive, with where each vehicle works; without those there is none.
func TestCurveByFigures(t *testing.T) {
	p := named(t, "beam-pair")
	got := opened(t, p, talk.Energy).pieces["energy-bench-0"]
	if text := letters(got); !strings.Contains(got, "<svg") || !strings.Contains(text, "By figure of merit and drive, in standard air at rest, up to 19\u202fN.") || !strings.Contains(text, "A works at 13.2\u202fN") {
		t.Error(letters(got))
	}
	c := p.Vehicles["field-quad"]
	c.DriveEfficiency = math.NaN()
	p.Vehicles["field-quad"] = c
	if got := opened(t, p, talk.Energy).pieces["energy-bench-0"]; strings.Contains(got, "<svg") {
		t.Error(got)
	}
}

// What works outside the rows of a test is said, once for those alike, and is not drawn.
func TestOutsideTheRows(t *testing.T) {
	p := named(t, "beam-pair")
	c := p.Vehicles["field-quad"]
	c.Bench = []plan.Bench{{Thrust: 2, Power: 15}, {Thrust: 6, Power: 60}, {Thrust: 10, Power: 130}}
	p.Vehicles["field-quad"] = c
	text := letters(opened(t, p, talk.Energy).pieces["energy-bench-0"])
	if !strings.Contains(text, "A and B need 13.2\u202fN, outside the rows: the power would not be known.") || strings.Contains(text, "works at") || strings.Contains(text, "in the lift") {
		t.Error(text)
	}
}

// Where one large vehicle can carry the payload at all, its figure is drawn as the line that the teams fall below.
func TestOneLargeIsDrawn(t *testing.T) {
	g := opened(t, named(t, "crate-ring"), talk.Sizes)
	if strings.Contains(g.pieces[talk.Sizes], "one large</text>") {
		t.Error("one that can't is drawn")
	}
	g.set(map[string]string{"sizes.law": "froude"})
	if piece := g.pieces[talk.Sizes]; !strings.Contains(piece, "one large") || !strings.Contains(piece, "they beat one large, as strong") {
		t.Error(letters(piece))
	}
}
