package format

import (
	"math"
	"testing"
)

func TestTextReadsBack(t *testing.T) {
	for _, u := range []Units{SI, {"cm", "g", "kgf"}, {"ft", "lb", "lbf"}, {"in", "oz", "gf"}} {
		for _, q := range []Quantity{Plain, Length, Mass, Force, Angle, Speed, Percent, Inertia} {
			for _, x := range []float64{0, 1, -2.5, 0.125, 1234.5} {
				got, err := u.Parse(q, u.Text(q, x))
				if err != nil || math.Abs(got-x) > 5e-6*math.Abs(x) { // six figures are written
					t.Errorf("%v %v: %v was written %q and read %v, %v", u, q, x, u.Text(q, x), got, err)
				}
			}
		}
	}
}

func TestWhatPeopleRead(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{SI.Show(Force, 53.04), "53\u202fN"},
		{SI.Show(Angle, 12.345), "12.3°"},
		{SI.Show(Mass, math.NaN()), "–"},
		{SI.Text(Mass, math.NaN()), ""},
		{SI.In("1", 1e-17), "0"},
		{Units{"m", "kg", "kgf"}.In("N", 9.80665), "1\u202fkgf"},
		{Share(0.8707), "87\u202f%"},
		{Share(-0.3), "−30\u202f%"},
		{Share(math.NaN()), "–"},
		{Span(42.9), "42\u202fs"},
		{Span(450.5), "7\u202fmin 30\u202fs"},
		{Span(1500), "25\u202fmin"},
		{Span(3900), "1\u202fh 5\u202fmin"},
		{Span(math.NaN()), "–"},
		{Span(math.Inf(1)), "> 99\u202fh"},
		{Share(1e9), "> 9999\u202f%"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

func TestParse(t *testing.T) {
	if x, err := SI.Parse(Mass, " "); err != nil || !math.IsNaN(x) {
		t.Errorf("nothing typed is %v, %v", x, err)
	}
	if x, err := SI.Parse(Mass, "1,5 lb"); err != nil || math.Abs(x-0.680388555) > 1e-12 { // 1.5 × 0.45359237 exactly
		t.Errorf("1,5 lb is %v, %v", x, err)
	}
	if _, err := SI.Parse(Speed, "fast"); err == nil {
		t.Error("“fast” is a speed")
	}
}
