package scatter

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// Every stratum of every error is drawn once: the sorted deviates are the strata themselves.
func TestStrata(t *testing.T) {
	for _, n := range []int{1, 2, 3, 64, 1000, 1023, 1025} {
		s := study(t, given(t, "sensor-plate", nil), n)
		for d, e := range s.Errors {
			got := make([]float64, n)
			for i := range n {
				got[i] = s.Offsets(i)[d]
			}
			slices.Sort(got)
			for k := range got {
				if got[k] != e.SD*s.strata[k] {
					t.Fatalf("%d samples, %s %s: stratum %d has %v, want %v", n, e.Kind, e.Who, k, got[k], e.SD*s.strata[k])
				}
			}
		}
	}
}

// Permutations of different errors are not alike: correlations of 1000 ranks stay below 4.5/√1000, which
// of 780 pairs one would pass with a chance of 0.5 %.
func TestDealsAreUnlike(t *testing.T) {
	const n, of = 1000, 40
	var ranks [of][n]float64
	for d := range of {
		k := newDeal(1, d, n)
		for i := range n {
			ranks[d][i] = float64(k.at(i)) - (n-1)/2.0
		}
	}
	for a := range of {
		for b := range a {
			sum, square := 0.0, 0.0
			for i := range n {
				sum += ranks[a][i] * ranks[b][i]
				square += ranks[a][i] * ranks[a][i]
			}
			if c := sum / square; math.Abs(c) > 4.5/math.Sqrt(n) {
				t.Errorf("permutations %d and %d have a correlation of %.3f", a, b, c)
			}
		}
	}
}

// The strata are those of a normal cut off at 3: variance (16.2), and Φ of the middle one of a part.
func TestCutNormal(t *testing.T) {
	x := strata(20001)
	square := 0.0
	for _, v := range x {
		square += v * v
	}
	if got := square / float64(len(x)); math.Abs(got-Variance) > 1e-4 || math.Abs(Variance-0.97334) > 1e-5 {
		t.Errorf("variance %v, want %v", got, Variance) // 1 − 6 φ(3)/0.9973002, φ(3) = 0.0044318 (standard tables)
	}
	if x[10000] != 0 || x[0] != -x[20000] || !(x[20000] < 3) {
		t.Errorf("from %v over %v to %v", x[0], x[10000], x[20000])
	}
}

// The same, sample by sample and sum by sum, in whatever parts a study is run.
func TestParts(t *testing.T) {
	for _, name := range []string{"mixed-team", "lattice-panel", "lens-too-heavy"} {
		s := study(t, given(t, name, blow), 300)
		whole := s.Run(0, 300)
		parts := Merge(s.Run(170, 171), s.Run(171, 300), s.Run(0, 1), s.Run(1, 170))
		if !reflect.DeepEqual(whole, parts) {
			t.Errorf("%s: not the same in parts", name)
		}
		text := whole.Bytes()
		if back, ok := ReadPart(text); !ok || !reflect.DeepEqual(back, whole) {
			t.Errorf("%s: not the same from bytes", name)
		}
		for _, bad := range [][]byte{nil, text[:len(text)-1], text[:8], append([]byte{1}, text...)} {
			if _, ok := ReadPart(bad); ok {
				t.Errorf("%s: %d bytes are a part", name, len(bad))
			}
		}
		sum := s.Summary(whole)
		n := sum.Histogram.None + sum.Histogram.Above
		for _, k := range sum.Histogram.Bins {
			n += k
		}
		why := 0
		for _, k := range whole.Why {
			why += k
		}
		if n != 300 || why != 300 || len(whole.T) != 300 {
			t.Errorf("%s: the histogram has %d, the causes %d of 300", name, n, why)
		}
	}
}

// only leaves a plan with one kind of error.
func only(e plan.Errors) func(*plan.Plan) {
	return func(p *plan.Plan) { p.Errors = e }
}

// Equal vehicles on a ring share a heavier load equally: t = (m (1 + x)/k + m_v) g/T, so that t is a
// normal, cut off at three, of a known mean and deviation. By hand.
func TestClosedForm(t *testing.T) {
	for _, rigid := range []bool{false, true} {
		const n = 4000
		p := ring(6, rigid)
		p.Errors = plan.Errors{PayloadMass: 0.05}
		s := study(t, p, n)
		sum := s.Summary(s.Run(0, n))
		top := 4 * 20 * s.model.Density / 1.225
		mean, sd := (12.0/6+3)*9.80665/top, 0.05*12/6*9.80665/top
		if math.Abs(sum.Mean-mean) > 1e-9 || math.Abs(sum.SD-sd*math.Sqrt(Variance)) > 2e-3*sd {
			t.Errorf("rigid %v: mean %v and deviation %v, want %v and %v", rigid, sum.Mean, sum.SD, mean, sd*math.Sqrt(Variance))
		}
		phi := func(x float64) float64 { return (1 + math.Erf(x/math.Sqrt2)/math.Erf(Cut/math.Sqrt2)) / 2 }
		for i, q := range Levels { // strata are exact to half of their width
			if got := phi((sum.Quantiles[i] - mean) / sd); math.Abs(got-q) > 0.5/n {
				t.Errorf("rigid %v: quantile %v is at %v", rigid, q, got)
			}
		}
		s.Plan.Limits.Utilisation = mean + 1.2*sd
		c := s.Summary(s.Run(0, n)).Limits[0]
		if want := 1 - phi(1.2); math.Abs(c.P-want) > 0.5/n || want < c.Low || want > c.Top {
			t.Errorf("rigid %v: chance %v (%v to %v), want %v", rigid, c.P, c.Low, c.Top, want)
		}
		f := sum.Matters[0]
		if f.Kind != PayloadMass || math.Abs(f.Gradient-1) > 1e-2 || math.Abs(f.Linear-1) > 1e-6 || f.Ratio < 0.97 {
			t.Errorf("rigid %v: %+v", rigid, f)
		}
		if w := s.Worst(); math.Abs(w.T-(mean+3*sd)) > 1e-9 || math.Abs(w.Bound-w.T) > 1e-9 {
			t.Errorf("rigid %v: worst %v, bound %v, want %v", rigid, w.T, w.Bound, mean+3*sd)
		}
	}
}

// ring is k vehicles of 3 kg and 80 N around a 12 kg payload in calm air at sea level.
func ring(k int, rigid bool) plan.Plan {
	p := plan.Blank()
	p.Payload.Solids = []plan.Solid{{Shape: plan.Box, Size: []float64{1, 1, 0.2}, Mass: 12}}
	p.Vehicles = map[string]plan.Class{"v": {Mass: 3, Rotors: 4, Layout: plan.Cross, Arm: 0.3, RotorRadius: 0.15, RotorThrustMax: 20,
		TorquePerThrust: 0.02, DragArea: 0.05, TiltMax: 30}}
	hold := plan.Hold{Kind: plan.Cable, Length: 3, WorkingLoad: math.NaN()}
	if rigid {
		hold.Kind = plan.Rigid
	}
	for i := range k {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(k))
		p.Team = append(p.Team, plan.Member{ID: string(rune('A' + i)), Vehicle: "v", Attach: vec.V3{2 * cos, 2 * sin, 0}, Hold: hold})
	}
	return p
}

// Newcombe, Statistics in Medicine 17, 1998, table I, method 3, to its four places (from memory).
func TestWilson(t *testing.T) {
	for _, c := range []struct {
		times, n int
		low, top float64
	}{{81, 263, 0.2553, 0.3662}, {15, 148, 0.0624, 0.1605}, {0, 20, 0, 0.1611}, {1, 29, 0.0061, 0.1718}} {
		got := Wilson("", c.times, c.n)
		if math.Abs(got.Low-c.low) > 5e-5 || math.Abs(got.Top-c.top) > 5e-5 {
			t.Errorf("%d of %d: %.4f to %.4f, want %.4f to %.4f", c.times, c.n, got.Low, got.Top, c.low, c.top)
		}
	}
}
