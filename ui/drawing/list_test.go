package drawing

import (
	"math"
	"testing"
)

func TestNumbersInAttributes(t *testing.T) {
	for x, want := range map[float64]string{0: "0", math.Copysign(0, -1): "0", -0.001: "0", 1: "1", 1.5: "1.5", -1.234: "-1.23", 0.05: "0.05",
		-0.05: "-0.05", 12.999: "13", 1e5: "100000", math.NaN(): "0", math.Inf(1): "0", 99.999: "100", 10.1: "10.1"} {
		if got := str(x); got != want {
			t.Errorf("%g is written %q, want %q", x, got, want)
		}
	}
}

func TestPathData(t *testing.T) {
	p := newPen()
	p.line("a", Point{0, 0}, Point{1, 2})
	p.line("a", Point{1, 2}, Point{3, 4}) // goes on
	p.line("a", Point{9, 9}, Point{3.25, -4})
	p.line("a", Point{math.NaN(), 0}, Point{1, 1})
	p.poly("b", Point{0, 0}, Point{1, 0}, Point{1, 1})
	p.poly("b", Point{0, 0}, Point{1e9, 0}, Point{1, 1})
	p.circle("c", Point{5, 5}, 2)
	want := []string{"M0 0L1 2L3 4M9 9L3.25 -4", "M0 0L1 0L1 1Z", "M3 5A2 2 0 0 1 7 5A2 2 0 0 1 3 5Z"}
	for i, s := range p.done() {
		if got := data(s.Path); got != want[i] {
			t.Errorf("%s: %q, want %q", s.Class, got, want[i])
		}
	}
}

func TestRoundNumbers(t *testing.T) {
	for x, want := range map[float64]float64{1: 1, 1.9: 1, 2: 2, 4.9: 2, 5: 5, 9.99: 5, 10: 10, 0.3: 0.2, 0.001: 0.001, 731: 500} {
		if got := round125(x); math.Abs(got-want) > 1e-12*want {
			t.Errorf("round125(%g) = %g, want %g", x, got, want)
		}
	}
	for x, want := range map[float64]float64{1: 1, 1.13: 1.12, 95: 90, 0.0318: 0.0315, 1000: 1000} { // ISO 3, series R20
		if got := preferred(x); math.Abs(got-want) > 1e-12*want {
			t.Errorf("preferred(%g) = %g, want %g", x, got, want)
		}
	}
}
