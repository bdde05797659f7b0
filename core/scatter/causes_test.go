package scatter

import (
	"math"
	"testing"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// pair is 12 kg on two vehicles of 3 kg and 80 N, their cables 1 m to both sides of the middle.
func pair() plan.Plan {
	p := ring(2, false)
	p.Team[0].Attach, p.Team[1].Attach = vec.V3{1, 0, 0}, vec.V3{-1, 0, 0}
	p.Limits.TensionMin = 0.5
	return p
}

// phi is the chance that a cut normal is below x, (16.2).
func phi(x float64) float64 {
	x = math.Max(-Cut, math.Min(Cut, x))
	return (1 + math.Erf(x/math.Sqrt2)/math.Erf(Cut/math.Sqrt2)) / 2
}

// Each cable carries m g (1 + x)/2: the chance that it is above its working load, or below the least tension, in closed
// form, and the certain cause. Strata count to half a sample at each edge.
func TestLoadCauses(t *testing.T) {
	const n, half = 2000, 6 * 9.80665
	p := pair()
	p.Errors = plan.Errors{PayloadMass: 0.05}
	for i := range p.Team {
		p.Team[i].Hold.WorkingLoad = 1.06 * half
	}
	p.Limits.TensionMin = 0.93 * half
	s := study(t, p, n)
	part := s.Run(0, n)
	for _, c := range []struct {
		why  Cause
		want float64
	}{{WorkingLoad, 1 - phi(0.06/0.05)}, {Slack, phi(-0.07 / 0.05)}, {NoBalance, 0}, {CableAngle, 0}, {Tilt, 0}, {Unsolved, 0}} {
		if got := float64(part.Why[c.why]); math.Abs(got-n*c.want) > 1 {
			t.Errorf("%v: %v of %d, want %v", c.why, got, n, n*c.want)
		}
	}
	for _, l := range s.Summary(part).Limits {
		want := map[string]float64{"slack cable": phi(-1.4), "working load": 1 - phi(1.2), "no balance": phi(-1.4) + 1 - phi(1.2)}[l.What]
		if want > 0 && (want < l.Low || want > l.Top) {
			t.Errorf("%s: %v to %v, want %v", l.What, l.Low, l.Top, want)
		}
	}
}

// A centre of mass off by x leaves m g (1 ± x)/2: beyond the attachments nothing balances, and just before a cable is slack.
func TestCentreBeyond(t *testing.T) {
	const n, weight = 3000, 12 * 9.80665
	p := pair()
	p.Limits.TensionMin = 0.1 * weight
	p.Errors = plan.Errors{COM: 0.5}
	s := study(t, p, n)
	part := s.Run(0, n)
	none, edge := 2*phi(-1/0.5), 2*phi(-0.8/0.5) // m g (1 − x)/2 < 0.1 m g from x = 0.8
	if got := float64(part.Why[NoBalance]); math.Abs(got-n*none) > 2 {
		t.Errorf("no balance: %v, want %v", got, n*none)
	}
	if got := float64(part.Why[Slack]); math.Abs(got-n*(edge-none)) > 2 {
		t.Errorf("slack: %v, want %v", got, n*(edge-none))
	}
	if w := s.Worst(); !math.IsInf(w.T, 1) || w.Why != NoBalance || !math.IsInf(w.Bound, 1) {
		t.Errorf("worst %v, %v, bound %v", w.T, w.Why, w.Bound)
	}
}

// With the centre of mass 0.2 m off, A works hardest whatever small errors do: t = (0.6 m (1 + x) + 0.5 m c + m_v) g/(T (1 + τ) (1 + ρ)).
// Shares of its variance by hand, from the rates: m 0.6, c 0.5 a metre, and t itself for τ and ρ. 0.01 for the
// gradient, whose variance below it is that of the samples; 0.03, two deviations of a correlation over 4000 samples, for the others.
func TestMatters(t *testing.T) {
	const n = 4000
	p := pair()
	c := vec.V3{0.2, 0, 0}
	p.Payload.COM = &c
	p.Errors = plan.Errors{PayloadMass: 0.01, COM: 0.01, Thrust: 0.01, Density: 0.005}
	s := study(t, p, n)
	top := 80 * s.model.Density / 1.225
	load := 12 * 9.80665 / top
	at := 0.6*load + 3*9.80665/top
	want := map[string]float64{PayloadMass: 0.6 * load * 0.01, COM + "x": 0.5 * load * 0.01, Thrust + "A": at * 0.01, Density: at * 0.005}
	sum := 0.0
	for _, v := range want {
		sum += v * v
	}
	got := s.Summary(s.Run(0, n))
	total := 0.0
	for _, f := range got.Matters {
		v := want[f.Kind+f.Who+f.Axis]
		share := v * v / sum
		total += f.Ratio
		if math.Abs(f.Gradient-share) > 0.01 || math.Abs(f.Linear-share) > 0.03 || math.Abs(f.Ratio-share) > 0.03 {
			t.Errorf("%s %s%s: gradient %.4f, linear %.4f, ratio %.4f, want %.4f", f.Kind, f.Who, f.Axis, f.Gradient, f.Linear, f.Ratio, share)
		}
	}
	if math.Abs(total-1) > 0.05 || got.Matters[0].Kind != PayloadMass && got.Matters[0].Kind != Thrust || len(got.Kinds) != 4 {
		t.Errorf("%v in all, %+v first, kinds %+v", total, got.Matters[0], got.Kinds)
	}
}
