package bench

import (
	"math"
	"math/rand/v2"
	"sort"
	"testing"

	"gonum.org/v1/gonum/interp"

	"cohoist/core/plan"
)

// The curve is gonum's interp.FritschButland through the same points, rising, wavy and two only, to rounding; and it passes through the points.
func TestCurveIsTheLibrarys(t *testing.T) {
	r := rand.New(rand.NewPCG(19, 1))
	for n := range 60 {
		var rows []plan.Bench
		var xs, ys []float64
		for range 2 + n%9 {
			xs, ys = append(xs, 10*r.Float64()), append(ys, r.NormFloat64())
		}
		sort.Float64s(xs)
		if n%2 == 0 {
			sort.Float64s(ys)
		}
		for i := range xs {
			rows = append(rows, plan.Bench{Thrust: xs[i], Power: ys[i]})
		}
		c := through(rows, func(b plan.Bench) float64 { return b.Thrust }, func(b plan.Bench) float64 { return b.Power })
		var f interp.FritschButland
		f.Fit(xs, ys)
		for i, x := range xs {
			if y, ok := c.at(x); !ok || math.Abs(y-ys[i]) > 1e-13 {
				t.Errorf("%d: %g at point %g, want %g", n, y, x, ys[i])
			}
		}
		for k := range 200 {
			x := xs[0] + (xs[len(xs)-1]-xs[0])*float64(k)/200
			if y, _ := c.at(x); math.Abs(y-f.Predict(x)) > 1e-11*(1+math.Abs(y)) {
				t.Errorf("%d: %.15g at %g, the library %.15g", n, y, x, f.Predict(x))
			}
		}
		if _, ok := c.at(xs[0] - 1e-9); ok {
			t.Error("a value outside the points")
		}
	}
}
