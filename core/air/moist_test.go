package air

import (
	"math"
	"testing"

	"cohoist/core/plan"
)

// Saturation over water: the medical table of 4.58, 17.5, 22.38, 28.35 and 55.3 mmHg, adda.com.tw fan notes, vapour table, to 0.4 %, the last digit
// of its smallest figure and the difference of two formulas at 0 °C.
func TestSaturation(t *testing.T) {
	const mmHg = 133.322
	for c, want := range map[float64]float64{0: 4.58, 20: 17.5, 24: 22.38, 28: 28.35, 40: 55.3} {
		if got := saturation(zeroCelsius+c) / mmHg; math.Abs(got-want) > 0.004*want {
			t.Errorf("%g °C: %.3f mmHg, printed %g", c, got, want)
		}
	}
}

// Density at 760 mmHg with the dew point at 10 °C: 1.241 at 10 °C, 1.199 at 20 °C, 1.122 at 40 °C (constructionwork.com, density of
// moist air), to the last digit; its constants, 1.2929 at 273.13 K, are a tenth of a thousandth off. Its sites are those of a plan: the offset makes the temperature.
func TestMoistTable(t *testing.T) {
	vapour := saturation(zeroCelsius + 10)
	for c, want := range map[float64]float64{10: 1.241, 20: 1.199, 40: 1.122} {
		d, ok := Of(plan.Site{TemperatureOffset: c - 15, Humidity: vapour / saturation(zeroCelsius+c)})
		if !ok || math.Abs(d.Density-want) > 1.1e-3 || math.Abs(d.Temperature-zeroCelsius-c) > 1e-9 {
			t.Errorf("%g °C: %+v, printed %g", c, d, want)
		}
	}
}

// Dry air, said or left out, has the very number of the standard; moisture counts in proportion, and moist air hotter than the formula goes has
// no density, while dry air has.
func TestSite(t *testing.T) {
	for _, dryness := range []float64{0, math.NaN()} {
		s := plan.Site{Altitude: 1500, TemperatureOffset: 20, Humidity: dryness}
		want, _ := dry(1500, 20)
		if got, ok := Density(s); !ok || got != want {
			t.Errorf("humidity %g: %g, dry %g", dryness, got, want)
		}
	}
	full, _ := Density(plan.Site{TemperatureOffset: 15, Humidity: 1})
	half, _ := Density(plan.Site{TemperatureOffset: 15, Humidity: 0.5})
	none, _ := Density(plan.Site{TemperatureOffset: 15})
	if math.Abs(full+none-2*half) > 1e-12 || full/none < 0.982 || full/none > 0.986 { // 1 − 0.378 × 42.4/1013
		t.Errorf("30 °C: %g saturated, %g half, %g dry", full, half, none)
	}
	hot := plan.Site{TemperatureOffset: 46}
	if _, ok := Density(hot); !ok {
		t.Error("dry air of 61 °C has no density")
	}
	hot.Humidity = 0.1
	if rho, ok := Density(hot); ok || !math.IsNaN(rho) {
		t.Errorf("moist air of 61 °C: %g", rho)
	}
	if _, ok := Density(plan.Site{Altitude: 12000, Humidity: 0.5}); ok {
		t.Error("a density above the troposphere")
	}
}
