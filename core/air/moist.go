package air

import (
	"math"

	"cohoist/core/plan"
)

// Constants of moist air.
const (
	zeroCelsius = 273.15
	hottest     = 60.0  // °C, up to which (3.10) holds (range from memory)
	vapourLack  = 0.378 // 1 − molar mass of water over that of dry air, 18.015/28.964
)

// Day is the air of a site.
type Day struct {
	Temperature float64 // K
	Pressure    float64 // Pa
	Vapour      float64 // Pa: of saturated air, (3.10)
	Density     float64 // kg/m³
}

// Of is the air of a site, with its humidity. ok is false outside the range of dry, and for moist air above 60 °C.
func Of(s plan.Site) (d Day, ok bool) {
	temperature, pressure := standard(s.Altitude)
	d = Day{Temperature: temperature + s.TemperatureOffset, Pressure: pressure, Vapour: math.NaN()}
	d.Density, ok = dry(s.Altitude, s.TemperatureOffset)
	if !ok || !(s.Humidity > 0) {
		return d, ok
	}
	if d.Temperature > zeroCelsius+hottest {
		d.Density = math.NaN()
		return d, false
	}
	d.Vapour = saturation(d.Temperature)
	d.Density *= moist(d.Pressure, d.Vapour, s.Humidity)
	return d, true
}

// Density is that of the air of a site, with its humidity, kg/m³; ok as in Of.
func Density(s plan.Site) (rho float64, ok bool) {
	d, ok := Of(s)
	return d.Density, ok
}

// saturation is the vapour pressure of saturated air over water, Pa, at a temperature in K, (3.10). D. Sonntag 1990, the
// form that WMO recommends.
func saturation(kelvin float64) float64 {
	t := kelvin - zeroCelsius
	return 611.2 * math.Exp(17.62*t/(243.12+t)) // (3.10)
}

// moist is the density of air of a pressure, the vapour pressure of its saturation (Pa) and relative humidity over that of
// dry air, (3.9).
func moist(pressure, vapour, humidity float64) float64 {
	return 1 - vapourLack*humidity*vapour/pressure // (3.9)
}
