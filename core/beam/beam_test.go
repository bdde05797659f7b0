package beam

import (
	"math"
	"testing"

	"cohoist/core/vec"
)

// uniform is a bar of length l with load w (N/m, downwards) and EI = 1.
func uniform(l, w float64) (Bar, Loads) {
	return unit(l), Loads{Spreads: []Spread{down(0, l, w)}}
}

func unit(l float64) Bar {
	return Bar{Right: l, Youngs: 1, Section: Section{Area: 1, Second: [2]float64{1, 1}, Modulus: [2]float64{1, 1}}}
}

func down(from, to, w float64) Spread { return Spread{from, to, vec.V3{0, 0, -w}, vec.V3{0, 0, -w}} }

func stiff(xs ...float64) []Support {
	out := make([]Support, len(xs))
	for i, x := range xs {
		out[i] = Support{X: x, Stiffness: math.Inf(1)}
	}
	return out
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %.12g, want %.12g ± %g", what, got, want, tol)
	}
}

func carry(t *testing.T, b Bar, l Loads, s []Support, oneSided bool) Carried {
	t.Helper()
	c, err := b.Carry(l, s, oneSided)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// Uniform load over equal spans: T. G. Hicks, Civil Engineering Formulas, Table 2.1, p. 50,
// https://digilib.universitaspertamina.ac.id/ebook/Civil%20Engineering%20Formulas/files/basic-html/page96.html
// Reactions in w L over the common denominator; the exact fractions allow rounding of the arithmetic only.
func TestContinuousBeams(t *testing.T) {
	for _, c := range []struct {
		over      float64
		reactions []float64
		moments   []float64 // at the supports, w L² over the same denominator
		spans     []float64 // largest in the first spans, as printed
		at        []float64 // where, from the span's left end, as printed
	}{
		{2, []float64{1, 1}, []float64{0, 0}, []float64{0.125}, []float64{0.5}},
		{8, []float64{3, 10, 3}, []float64{0, -1, 0}, []float64{0.0703}, []float64{0.375}},
		{10, []float64{4, 11, 11, 4}, []float64{0, -1, -1, 0}, []float64{0.080, 0.025}, []float64{0.4, 0.5}},
		{28, []float64{11, 32, 26, 32, 11}, []float64{0, -3, -2, -3, 0}, []float64{0.0772, 0.0364}, []float64{0.393, 0.536}},
		{38, []float64{15, 43, 37, 37, 43, 15}, []float64{0, -4, -3, -3, -4, 0}, []float64{0.0779, 0.0332, 0.0461}, []float64{0.395, 0.526, 0.5}},
		{104, []float64{41, 118, 100, 106, 100, 118, 41}, []float64{0, -11, -8, -9, -8, -11, 0}, []float64{0.0777, 0.0341, 0.0433}, nil},
		{142, []float64{56, 161, 137, 143, 143, 137, 161, 56}, []float64{0, -15, -11, -12, -12, -11, -15, 0}, []float64{0.0778, 0.0338, 0.0440, 0.0405}, nil},
	} {
		n := len(c.reactions)
		b, l := uniform(float64(n-1), 1)
		var xs []float64
		for i := range n {
			xs = append(xs, float64(i))
		}
		got := carry(t, b, l, stiff(xs...), true)
		for i := range n {
			near(t, "reaction", got.Reactions[i], c.reactions[i]/c.over, 1e-10)
			near(t, "support moment", got.Bending.Moment.At(float64(i)), c.moments[i]/c.over, 1e-10)
			near(t, "on its support", got.Bending.Deflection.At(float64(i)), 0, 1e-10)
		}
		for i, m := range c.spans {
			span := Curve{got.Bending.Moment.X[i : i+2], got.Bending.Moment.P[i : i+1]}
			_, most := span.Extremes()
			near(t, "span moment", most.Value, m, 0.5e-4)
			if c.at != nil {
				near(t, "its place", most.X-float64(i), c.at[i], 0.5e-3)
			}
		}
	}
	// Second source for four supports, its sag too: https://novasolver.jp/en/tools/continuous-3span.html
	b, l := uniform(3, 1)
	least, _ := carry(t, b, l, stiff(0, 1, 2, 3), true).Bending.Deflection.Extremes()
	near(t, "sag of three spans", least.Value, -0.0069, 0.5e-4)
}

// Alternate spans loaded: https://piping-designer.com/disciplines/civil/structural/2408-four-span-continuous-beam-equal-spans-uniform-load-on-two-spans
// (it prints 0.805 for 0.0805, and one copy loses the minus sign of the last reaction).
func TestSlackSupport(t *testing.T) {
	b := unit(4)
	l := Loads{Spreads: []Spread{down(0, 1, 1), down(2, 3, 1)}}
	two := carry(t, b, l, stiff(0, 1, 2, 3, 4), false)
	for i, want := range []float64{0.446, 0.572, 0.464, 0.572, -0.054} {
		near(t, "reaction, pushing allowed", two.Reactions[i], want, 1e-3)
	}
	near(t, "the one that pushes", two.Reactions[4], -0.053571428571, 1e-10)
	for i, want := range []float64{-0.0536, -0.0357, -0.0536} {
		near(t, "support moment", two.Bending.Moment.At(float64(i+1)), want, 0.5e-4)
	}
	first := Curve{two.Bending.Moment.X[:2], two.Bending.Moment.P[:1]}
	_, most := first.Extremes()
	near(t, "span moment", most.Value, 0.0996, 0.5e-4)
	near(t, "its place", most.X, 0.446, 0.5e-3)

	one := carry(t, b, l, stiff(0, 1, 2, 3, 4), true)
	if !one.Slack[4] || one.Reactions[4] != 0 || !(one.Gap[4] > 0) {
		t.Errorf("the last support is not slack: %+v", one)
	}
	four := carry(t, b, l, stiff(0, 1, 2, 3), false) // the same with the last support taken away
	for i := range 4 {
		near(t, "without the slack one", one.Reactions[i], four.Reactions[i], 1e-10)
	}
	near(t, "gap", one.Gap[4], four.Bending.Deflection.At(4), 1e-10)
	// Three spans, two of them loaded: exact by the three-moment equation.
	b = unit(3)
	two = carry(t, b, Loads{Spreads: []Spread{down(0, 2, 1)}}, stiff(0, 1, 2, 3), false)
	for i, want := range []float64{23. / 60, 1.2, 0.45, -1. / 30} {
		near(t, "three spans, 1 and 2", two.Reactions[i], want, 1e-10)
	}
	two = carry(t, b, Loads{Spreads: []Spread{down(0, 1, 1), down(2, 3, 1)}}, stiff(0, 1, 2, 3), false)
	for i, want := range []float64{0.45, 0.55, 0.55, 0.45} {
		near(t, "three spans, 1 and 3", two.Reactions[i], want, 1e-10)
	}
}

// Three supports that share evenly, 300 N/m, 3 m apart: https://www.mathalino.com/tag/reviewer/three-moment-equation
// prints 1.319 m, −207 N m and 863.8 N; 0.75 x² + x − 2.625 = 0 gives the figures beyond.
func TestThreeEqualReactions(t *testing.T) {
	reaction := func(x float64) (outer, middle, moment float64) {
		b, l := uniform(6+2*x, 300)
		c := carry(t, b, l, stiff(x, x+3, x+6), true)
		return c.Reactions[0], c.Reactions[1], c.Bending.Moment.At(x + 3)
	}
	x := find(0.5, 2.5, func(x float64) float64 { o, m, _ := reaction(x); return o - m })
	near(t, "overhang", x, 1.319396, 1e-6)
	o, m, moment := reaction(x)
	near(t, "outer", o, 863.879, 1e-3)
	near(t, "middle", m, 863.879, 1e-3)
	near(t, "moment", moment, -206.940, 1e-3)
}

// find is bisection for a rising or falling f.
func find(a, b float64, f func(float64) float64) float64 {
	for rising := f(b) > f(a); b-a > 1e-13; {
		if c := (a + b) / 2; (f(c) < 0) == rising {
			a = c
		} else {
			b = c
		}
	}
	return (a + b) / 2
}

// Where to hold a bar of length 1 with w = EI = 1 on two supports. Airy: spacing 1/√3,
// https://de.scribd.com/document/442629217/Airy-Points-pdf. Bessel: spacing 0.5594,
// https://wikihirencode11.blogspot.com/2011/09/bessel-points-airy-points.html. Smallest moment: (√2 − 1)/2; overhang .414 of
// half the length in A Text-Book of Mechanical Engineering, Appendix L p. 761,
// http://archive.org/stream/ATextBookOfMechanicalEngineering/TXT/00000816.txt. The others, and the decimals
// beyond, are exact mathematics by a second route: quadrature on 200 001 points.
func TestPlacesOfTwoSupports(t *testing.T) {
	hold := func(a float64) Bending {
		b, l := uniform(1, 1)
		return carry(t, b, l, stiff(a, 1-a), true).Bending
	}
	for _, c := range []struct {
		name string
		want float64
		f    func(float64) float64
	}{
		{"smallest moment", (math.Sqrt2 - 1) / 2, func(a float64) float64 { h := hold(a); return h.Moment.At(a) + h.Moment.At(0.5) }},
		{"Airy: level ends", (1 - 1/math.Sqrt(3)) / 2, func(a float64) float64 { return hold(a).Slope.At(0) }},
		{"Bessel: least shortening", 0.220310, func(a float64) float64 { return shortening(hold(a+1e-5)) - shortening(hold(a-1e-5)) }},
		{"least largest sag", 0.223149, func(a float64) float64 { h := hold(a); return h.Deflection.At(0) - h.Deflection.At(0.5) }},
		{"no sag in the middle", 0.238613, func(a float64) float64 { return hold(a).Deflection.At(0.5) }},
	} {
		near(t, c.name, find(0.15, 0.3, c.f), c.want, 1e-6)
	}
	worst := hold((math.Sqrt2 - 1) / 2).Moment.Worst()
	near(t, "smallest largest moment", math.Abs(worst.Value), 0.0214466, 1e-7)
	near(t, "less than end supports", math.Abs(hold(0).Moment.Worst().Value/worst.Value), 5.828, 1e-3)
	for _, c := range []struct{ a, end, mid float64 }{
		{(math.Sqrt2 - 1) / 2, 0.0002037, -0.0006133}, {(1 - 1/math.Sqrt(3)) / 2, 0.0000831, -0.0005164}, {0, 0, -5. / 384}} {
		near(t, "end", hold(c.a).Deflection.At(0), c.end, 1e-7)
		near(t, "mid", hold(c.a).Deflection.At(0.5), c.mid, 1e-7)
	}
}

// shortening of the distance between the ends is half the integral of the squared slope.
func shortening(b Bending) float64 {
	sum := 0.0
	for i, p := range b.Slope.P {
		sum += p.times(p).integral(0).At(b.Slope.X[i+1]-b.Slope.X[i]) / 2
	}
	return sum
}

// Single spans: https://piping-designer.com/index.php/disciplines/civil/structural/2379-overhanging-beam-uniformly-distributed-load-overhanging-both-supports
// and its neighbours 2380 and 2395.
func TestSingleSpans(t *testing.T) {
	b, l := uniform(5, 7)
	c := carry(t, b, l, stiff(0, 5), true)
	near(t, "w L²/8", c.Bending.Moment.Worst().Value, 7*25./8, 1e-11)
	near(t, "5 w L⁴/384", c.Bending.Deflection.Worst().Value, -5*7*625./384, 1e-10)

	const a, cc, span, w = 1.2, 0.7, 3.1, 40.
	const all = a + span + cc
	b, l = uniform(all, w)
	c = carry(t, b, l, stiff(a, a+span), true)
	r1, r2 := w*all*(all-2*cc)/(2*span), w*all*(all-2*a)/(2*span)
	near(t, "R1", c.Reactions[0], r1, 1e-10)
	near(t, "R2", c.Reactions[1], r2, 1e-10)
	near(t, "M1", c.Bending.Moment.At(a), -w*a*a/2, 1e-11)
	near(t, "M2", c.Bending.Moment.At(a+span), -w*cc*cc/2, 1e-10)
	_, most := c.Bending.Moment.Extremes()
	near(t, "M3", most.Value, r1*(r1/(2*w)-a), 1e-10)
	near(t, "its place: no shear", most.X, r1/w, 1e-12)

	const p, pa, pb = 90., 2., 1.
	b = unit(pa + pb)
	c = carry(t, b, Loads{Points: []Point{{X: pa, Force: vec.V3{0, 0, -p}}}}, stiff(0, pa+pb), true)
	near(t, "P a b/L", c.Bending.Moment.Worst().Value, p*pa*pb/(pa+pb), 1e-11)
	near(t, "sag under it", c.Bending.Deflection.At(pa), -p*pa*pa*pb*pb/(3*(pa+pb)), 1e-10)
	near(t, "place of the largest sag", c.Bending.Deflection.Worst().X, math.Sqrt(pa*(pa+2*pb)/3), 1e-12)
}
