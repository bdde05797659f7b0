package air

import (
	"math"
	"testing"
)

const constants = "constants of ISO 2533 and the US Standard Atmosphere 1976 as quoted at crnslab.org/util/atmo.php; figures computed from them"

// sixth is half a unit of the sixth decimal, the last one printed.
const sixth = 5.1e-7

// The standard atmosphere by geopotential height. Every printed digit counts.
func TestStandard(t *testing.T) {
	for _, c := range []struct{ altitude, temperature, pressure, density float64 }{
		{-500, 291.400, 107477.5, 1.284891}, {0, 288.150, 101325.0, 1.225000}, {500, 284.900, 95460.8, 1.167269},
		{1000, 281.650, 89874.6, 1.111643}, {1500, 278.400, 84556.0, 1.058067}, {2000, 275.150, 79495.2, 1.006490},
		{2500, 271.900, 74682.5, 0.956859}, {3000, 268.650, 70108.5, 0.909122}, {4000, 262.150, 61640.2, 0.819129},
		{5000, 255.650, 54019.9, 0.736116},
	} {
		temperature, pressure := standard(c.altitude)
		if math.Abs(temperature-c.temperature) > 5.1e-4 || math.Abs(pressure-c.pressure) > 0.051 {
			t.Errorf("%g m: %.4f K and %.2f Pa, want %.3f and %.1f (%s)", c.altitude, temperature, pressure, c.temperature, c.pressure, constants)
		}
		if got, ok := dry(c.altitude, 0); !ok || math.Abs(got-c.density) > sixth {
			t.Errorf("%g m: %.7f kg/m³ %v, want %.6f (%s)", c.altitude, got, ok, c.density, constants)
		}
	}
	if got, _ := dry(0, 0); math.Abs(got/SeaLevelDensity-1) > 1.6e-8 {
		t.Errorf("at sea level %.12g, want 1.225 within what the constants of the standard are rounded to, 1.5e-8", got)
	}
}

// Hot and cold days: the pressure of the height, the temperature shifted.
func TestHotAndCold(t *testing.T) {
	for _, c := range []struct{ altitude, offset, want float64 }{
		{0, 15, 1.164386}, {1500, 20, 0.987151}, {2000, 10, 0.971193}, {0, -20, 1.316367},
	} {
		if got, ok := dry(c.altitude, c.offset); !ok || math.Abs(got-c.want) > sixth {
			t.Errorf("density at %g m, %+g K: %.7f %v, want %.6f (%s)", c.altitude, c.offset, got, ok, c.want, constants)
		}
	}
}

// Geometric heights z lie at H = r z/(r + z), r = 6 356 766 m; taking one for the other is wrong by
// at most 0.043 % of density up to 5 000 m, as the documentation of dry says.
func TestGeometric(t *testing.T) {
	for _, c := range []struct{ z, want float64 }{{1000, 1.111660}, {2000, 1.006554}, {3000, 0.909254}, {5000, 0.736429}} {
		got, _ := dry(6356766*c.z/(6356766+c.z), 0)
		if math.Abs(got-c.want) > sixth {
			t.Errorf("density at geometric %g m: %.7f, want %.6f (%s)", c.z, got, c.want, constants)
		}
		if taken, _ := dry(c.z, 0); !(taken < got && got/taken-1 < 4.3e-4) {
			t.Errorf("%g m taken as geopotential: %.7f instead of %.7f", c.z, taken, got)
		}
	}
}

// Ratios in feet: C. Matthews, Aeronautical Engineer's Data Book, table 3.5 (erratum: its temperature
// column is about 0.2 K high and not tested). Four printed decimals.
func TestRatios(t *testing.T) {
	for _, c := range []struct{ feet, pressure, density float64 }{
		{500, 0.9821, 0.9855}, {1000, 0.9644, 0.9711}, {2000, 0.9298, 0.9428}, {3000, 0.8962, 0.9151},
		{5000, 0.8320, 0.8617}, {7500, 0.7571, 0.7983}, {10000, 0.6877, 0.7385},
	} {
		_, pressure := standard(c.feet * 0.3048)
		density, _ := dry(c.feet*0.3048, 0)
		if math.Abs(density/SeaLevelDensity-c.density) > 5.1e-5 || math.Abs(pressure/seaLevelPressure-c.pressure) > 5.1e-5 {
			t.Errorf("ratios at %g ft: %.5f and %.5f, want %.4f and %.4f", c.feet, pressure/seaLevelPressure, density/SeaLevelDensity, c.pressure, c.density)
		}
	}
}

// A second route: ρ = 1.225 (1 − h/44329)^4.255876, scipp.ucsc.edu 1976 standard atmosphere page,
// which rounds its constants: within 3e-5 to 5 000 m.
func TestShortFormula(t *testing.T) {
	for h := 0.0; h <= 5000; h += 250 {
		got, _ := dry(h, 0)
		if want := 1.225 * math.Pow(1-h/44329, 4.255876); math.Abs(got/want-1) > 3e-5 {
			t.Errorf("%g m: %.6f, short formula %.6f", h, got, want)
		}
		_, p := standard(h)
		if want := 101325 * math.Pow(1-h/44329, 5.255876); math.Abs(p/want-1) > 3e-5 {
			t.Errorf("%g m: %.1f Pa, short formula %.1f", h, p, want)
		}
	}
}

func TestOutside(t *testing.T) {
	for _, c := range [][2]float64{{-501, 0}, {11001, 0}, {math.NaN(), 0}, {0, -289}, {math.Inf(1), 0}} {
		if rho, ok := dry(c[0], c[1]); ok || !math.IsNaN(rho) {
			t.Errorf("%v: %g %v, want none", c, rho, ok)
		}
	}
}
