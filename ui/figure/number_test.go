package figure

import (
	"math"
	"testing"
)

func TestNumbersInAttributes(t *testing.T) {
	for x, want := range map[float64]string{0: "0", math.Copysign(0, -1): "0", -0.001: "0", 1: "1", 1.5: "1.5", -1.234: "-1.23", 0.05: "0.05",
		-0.05: "-0.05", 12.999: "13", 1e5: "100000", math.NaN(): "0", math.Inf(1): "0", 99.999: "100", 10.1: "10.1"} {
		if got := Num(x); got != want {
			t.Errorf("%g is written %q, want %q", x, got, want)
		}
	}
}

func TestRoundNumbers(t *testing.T) {
	for x, want := range map[float64]float64{1: 1, 1.9: 1, 2: 2, 4.9: 2, 5: 5, 9.99: 5, 10: 10, 0.3: 0.2, 0.001: 0.001, 731: 500} {
		if got := Round125(x); math.Abs(got-want) > 1e-12*want {
			t.Errorf("Round125(%g) = %g, want %g", x, got, want)
		}
	}
	for x, want := range map[float64]float64{1: 1, 1.13: 1.12, 95: 90, 0.0318: 0.0315, 1000: 1000} { // ISO 3, series R20
		if got := Preferred(x); math.Abs(got-want) > 1e-12*want {
			t.Errorf("Preferred(%g) = %g, want %g", x, got, want)
		}
	}
}
