package bench

import (
	"math"
	"testing"

	"cohoist/core/plan"
)

const inch, rpm = 0.0254, 2 * math.Pi / 60

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol*math.Abs(want)) {
		t.Errorf("%s = %.10g, want %.10g within %g of it", what, got, want, tol)
	}
}

const uiuc = "UIUC Propeller Data Site (Brandt and Selig, AIAA 2011-1255; Deters, Ananda and Selig, AIAA 2014-2151), static tests, read as tables in public source files; thrust, power and figure of merit computed from them with the nominal diameter"

// Static rows of open propeller data: thrust, shaft power and figure of merit to the digits written down.
func TestCoefficients(t *testing.T) {
	for _, c := range []struct {
		name                               string
		inches, rpm, ct, cp, thrust, p, fm float64
	}{
		{"apcsf_10x4.7 kt0835", 10, 2377, 0.1059, 0.0431, 0.84747, 3.47069, 0.6380},
		{"apcsf_10x4.7 kt0835", 10, 4029, 0.1158, 0.0466, 2.66239, 18.27379, 0.6747},
		{"apcsf_10x4.7 kt0835", 10, 5147, 0.1237, 0.0500, 4.64137, 40.87742, 0.6943},
		{"apcsf_10x4.7 kt0835", 10, 6528, 0.1299, 0.0531, 7.84039, 88.56984, 0.7035},
		{"apcsf_11x4.7 pg0526", 11, 1666, 0.0986, 0.0392, 0.56750, 1.75035, 0.6302},
		{"apcsf_11x4.7 pg0526", 11, 6021, 0.1259, 0.0493, 9.46460, 103.91235, 0.7230},
		{"apcsf_10x7 kt0827", 10, 2283, 0.1409, 0.0678, 1.04014, 4.83725, 0.6224},
		{"apcsf_10x7 kt0827", 10, 5987, 0.1606, 0.0797, 8.15328, 102.55032, 0.6443},
		{"da4002 9x6.75", 9, 1546.667, 0.125931, 0.088432, 0.27994, 1.15841, 0.4032},
		{"da4002 9x6.75", 9, 3940, 0.134936, 0.082488, 1.94652, 17.86253, 0.4794},
		{"da4002 9x6.75", 9, 5943.333, 0.140450, 0.080081, 4.61021, 59.52277, 0.5244},
		{"apcff_4.2x4 0615rd", 4.2, 1490, 0.125114, 0.13544, 0.01224, 0.03511, 0.2607},
		{"apcff_4.2x4 0615rd", 4.2, 9880, 0.129241, 0.106961, 0.55601, 8.08339, 0.3466},
	} {
		k := Coefficients{c.ct, c.cp}
		thrust, p := k.At(c.inches*inch, c.rpm*rpm, 1.225)
		if math.Abs(thrust-c.thrust) > 0.51e-5 || math.Abs(p-c.p) > 0.51e-5 || math.Abs(k.FigureOfMerit()-c.fm) > 0.51e-4 {
			t.Errorf("%s at %g/min: %.6f N, %.6f W, %.5f; want %g, %g, %g (%s)", c.name, c.rpm, thrust, p, k.FigureOfMerit(), c.thrust, c.p, c.fm, uiuc)
		}
		back := CoefficientsOf(thrust, p, c.inches*inch, c.rpm*rpm, 1.225)
		near(t, "C_T back", back.Thrust, c.ct, 1e-13)
		near(t, "C_P back", back.Power, c.cp, 1e-13)
	}
}

// Means of whole sweeps as thrust over speed squared and torque over thrust: a public data note on the same site, volume 2, printed to
// four figures; efficiencies of apcsf_10x4.7_rd0841_6512 to 0.002.
func TestLumped(t *testing.T) {
	for _, c := range []struct{ inches, ct, cp, k, q float64 }{
		{10, 0.1185, 0.0480, 1.5305e-5, 0.01637}, {5, 0.1483, 0.1032, 1.1971e-6, 0.01407},
		{5, 0.1085, 0.0622, 8.758e-7, 0.01159}, {5, 0.1799, 0.1174, 1.4522e-6, 0.01319},
	} {
		k, q := Coefficients{c.ct, c.cp}.Lumped(c.inches*inch, 1.225)
		near(t, "k", k, c.k, 1e-4)
		near(t, "Q/T", q, c.q, 5e-4)
	}
	for _, c := range []struct{ j, ct, cp, want float64 }{{0.308, 0.0833, 0.0454, 0.566}, {0.445, 0.0562, 0.0381, 0.657}} {
		if got := (Coefficients{c.ct, c.cp}).Efficiency(c.j); math.Abs(got-c.want) > 0.002 {
			t.Errorf("efficiency at J %g: %.4f, printed %g", c.j, got, c.want)
		}
	}
}

// sweep is apcsf_10x4.7_static_kt0835 of the same site: rpm, C_T, C_P.
var sweep = [][3]float64{{2377, .1059, .0431}, {2676, .1079, .0437}, {2947, .1079, .0437}, {3234, .1104, .0444}, {3494, .1117, .0450},
	{3762, .1143, .0460}, {4029, .1158, .0466}, {4319, .1177, .0474}, {4590, .1200, .0484}, {4880, .1223, .0494}, {5147, .1237, .0500},
	{5417, .1252, .0508}, {5715, .1263, .0513}, {5960, .1278, .0520}, {6226, .1286, .0524}, {6528, .1299, .0531}}

func tested(skip int) []plan.Bench {
	var rows []plan.Bench
	for i, r := range sweep {
		if i%skip == 0 {
			thrust, p := Coefficients{r[1], r[2]}.At(10*inch, r[0]*rpm, 1.225)
			rows = append(rows, plan.Bench{Throttle: r[0] / 6528, Thrust: thrust, Power: p, Speed: r[0] * rpm, Voltage: math.NaN()})
		}
	}
	return rows
}

// Between every second row of the sweep the curve meets the rows left out: to the scatter of the measurement, a hundredth. The mean
// coefficient is wrong by up to a tenth there.
func TestBetweenRows(t *testing.T) {
	half, err := New(tested(3))
	if err != nil {
		t.Fatal(err)
	}
	all := tested(1)
	for _, r := range all {
		p, ok := half.Power(r.Thrust)
		v, _ := half.Speed(r.Thrust)
		if !ok {
			t.Fatalf("no power at %g N", r.Thrust)
		}
		near(t, "power", p, r.Power, 0.01)
		near(t, "speed", v, r.Speed, 0.01)
	}
	whole, _ := New(all)
	for _, r := range all {
		p, _ := whole.Power(r.Thrust)
		thrust, _ := whole.Thrust(r.Throttle)
		throttle, _ := whole.Throttle(r.Thrust)
		near(t, "power at a row", p, r.Power, 1e-12)
		near(t, "thrust at a row", thrust, r.Thrust, 1e-12)
		near(t, "throttle at a row", throttle, r.Throttle, 1e-12)
	}
	least, most := whole.Span()
	last := 0.0
	for x := least; x <= most; x += (most - least) / 5000 {
		p, ok := whole.Power(x)
		if !ok || p < last {
			t.Fatalf("power %g at %g N after %g", p, x, last)
		}
		last = p
	}
}

// Outside the rows, and of what the rows do not hold, there is no answer.
func TestOutside(t *testing.T) {
	table, err := New(tested(1))
	if err != nil {
		t.Fatal(err)
	}
	least, most := table.Span()
	for _, x := range []float64{least - 1e-9, most + 1e-9, math.NaN(), math.Inf(1)} {
		if p, ok := table.Power(x); ok || !math.IsNaN(p) {
			t.Errorf("power %g at %g N", p, x)
		}
	}
	if v, ok := table.Voltage(least); ok || !math.IsNaN(v) {
		t.Errorf("a voltage of %g that nobody measured", v)
	}
	for says, rows := range map[string][]plan.Bench{
		"A static test needs at least two rows with thrust and power; there are 1.":         {{Thrust: 1, Power: 1}, {Thrust: 1, Power: 3}, {Thrust: math.NaN(), Power: 1}},
		"Power falls from 5 W to 4 W while thrust rises from 1 N to 2 N. Check these rows.": {{Thrust: 2, Power: 4}, {Thrust: 1, Power: 5}},
	} {
		if _, err := New(rows); err == nil || err.Error() != says {
			t.Errorf("%v, want %s", err, says)
		}
	}
}
