package air

import (
	"math"
	"testing"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// Densities of the standard atmosphere by geopotential height; constants of ISO 2533 and the US
// Standard Atmosphere 1976 as quoted at crnslab.org/util/atmo.php, table figures computed from them.
func TestDensity(t *testing.T) {
	for _, c := range []struct{ altitude, offset, want float64 }{
		{-500, 0, 1.284891}, {0, 0, 1.225000}, {500, 0, 1.167269}, {1000, 0, 1.111643}, {1500, 0, 1.058067},
		{2000, 0, 1.006490}, {2500, 0, 0.956859}, {3000, 0, 0.909122}, {4000, 0, 0.819129}, {5000, 0, 0.736116},
		{0, 15, 1.164386}, {1500, 20, 0.987151}, {2000, 10, 0.971193}, {0, -20, 1.316367}, // hot and cold days
	} {
		got, ok := Density(c.altitude, c.offset)
		if !ok || math.Abs(got-c.want) > 6e-7 { // six decimals, rounded
			t.Errorf("density at %g m, %+g K: %.7f %v, want %.6f", c.altitude, c.offset, got, ok, c.want)
		}
	}
}

// Ratios in feet: C. Matthews, Aeronautical Engineer's Data Book, table 3.5 (its temperature column
// is about 0.2 K high and not tested). Four printed decimals.
func TestDensityRatios(t *testing.T) {
	for _, c := range []struct{ feet, want float64 }{
		{500, 0.9855}, {1000, 0.9711}, {2000, 0.9428}, {3000, 0.9151}, {5000, 0.8617}, {7500, 0.7983}, {10000, 0.7385},
	} {
		got, _ := Density(c.feet*0.3048, 0)
		if math.Abs(got/SeaLevelDensity-c.want) > 5.1e-5 {
			t.Errorf("ratio at %g ft: %.5f, want %.4f", c.feet, got/SeaLevelDensity, c.want)
		}
	}
}

// A second route: ρ = 1.225 (1 − h/44329)^4.255876, scipp.ucsc.edu 1976 standard atmosphere page,
// which rounds its constants: within 3e-5 to 5 000 m.
func TestShortFormula(t *testing.T) {
	for h := 0.0; h <= 5000; h += 250 {
		got, _ := Density(h, 0)
		if want := 1.225 * math.Pow(1-h/44329, 4.255876); math.Abs(got/want-1) > 3e-5 {
			t.Errorf("%g m: %.6f, short formula %.6f", h, got, want)
		}
	}
}

func TestOutside(t *testing.T) {
	for _, c := range [][2]float64{{-501, 0}, {11001, 0}, {math.NaN(), 0}, {0, -289}, {math.Inf(1), 0}} {
		if rho, ok := Density(c[0], c[1]); ok || !math.IsNaN(rho) {
			t.Errorf("%v: %g %v, want none", c, rho, ok)
		}
	}
}

// Drag coefficients: Aeronautical Engineer's Data Book, fig. 5.13(b), p. 95.
func TestArea(t *testing.T) {
	tube := plan.Solid{Shape: plan.Tube, Length: 1, OuterRadius: 0.1, InnerRadius: 0.09} // l/d 5
	for _, c := range []struct {
		name  string
		solid plan.Solid
		want  vec.V3
	}{
		{"square plate 1.17", plan.Solid{Shape: plan.Plate, Size: []float64{0.3, 0.3}}, vec.V3{0, 0, 1.17 * 0.09}},
		{"plate turned edge on to z", plan.Solid{Shape: plan.Plate, Size: []float64{0.3, 0.3}, Turn: vec.V3{0, 90, 0}}, vec.V3{1.17 * 0.09, 0, 0}},
		{"tube, l/d 5: across 0.74, along between 0.87 and 0.99", tube, vec.V3{(0.87 + 0.12/3) * math.Pi * 0.01, 0.74 * 0.2, 0.74 * 0.2}},
		{"upright cylinder, l/d 1: 0.63, 0.91", plan.Solid{Shape: plan.Cylinder, Length: 0.2, OuterRadius: 0.1}, vec.V3{0.63 * 0.04, 0.63 * 0.04, 0.91 * math.Pi * 0.01}},
		{"rod", plan.Solid{Shape: plan.Rod, Length: 3}, vec.V3{}},
	} {
		got := Area(plan.Payload{Solids: []plan.Solid{c.solid}})
		if got.Sub(c.want).Norm() > 1e-12 {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
	if got := inverse(acrossRows, math.Inf(1)); got != 1.20 {
		t.Errorf("endless cylinder %g, want 1.20", got)
	}
	own := vec.V3{1, 2, 3}
	if got := Area(plan.Payload{Solids: []plan.Solid{tube}, DragArea: &own}); got != own {
		t.Errorf("the measured value did not override: %v", got)
	}
}

// A 0.3 m square plate, C_d 1.17, at 8 m/s: 4.12776 N; a cube of C_d 1.05: 3.7044 N. Computed from
// the published coefficients, ρ 1.225.
func TestDrag(t *testing.T) {
	for _, c := range []struct{ cd, want float64 }{{1.17, 4.12776}, {1.05, 3.7044}} {
		a := c.cd * 0.09
		if got := Drag(1.225, vec.V3{a, a, a}, vec.V3{0, 8, 0}); math.Abs(got[1]-c.want) > 1e-12*c.want || got[0] != 0 || got[2] != 0 {
			t.Errorf("drag %v, want %g along y", got, c.want)
		}
	}
}
