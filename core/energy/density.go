package energy

import (
	"math"

	"cohoist/core/air"
	"cohoist/core/plan"
)

// standard is the density of static tests and of a plan's thrusts, kg/m³.
const standard = air.SeaLevelDensity

// Constants of moist air.
const (
	zeroCelsius = 273.15
	vapourLack  = 0.378 // 1 − molar mass of water over that of dry air, 18.015/28.964
)

// Saturation is the vapour pressure of saturated air over water, Pa, at a temperature in K, (18.8). D. Sonntag 1990, the
// form that WMO recommends; −45 °C to 60 °C (range from memory).
func Saturation(kelvin float64) float64 {
	t := kelvin - zeroCelsius
	return 611.2 * math.Exp(17.62*t/(243.12+t)) // (18.8)
}

// Moist is how much lighter air of a pressure (Pa), temperature (K) and relative humidity is than dry air, as a factor, (18.7).
func Moist(pressure, kelvin, humidity float64) float64 {
	return 1 - vapourLack*humidity*Saturation(kelvin)/pressure // (18.7)
}

// Density is the air's density at a site with its humidity, kg/m³. ok is false outside core/air's range.
func Density(s plan.Site) (rho float64, ok bool) {
	dry, ok := air.Density(s.Altitude, s.TemperatureOffset)
	if !ok || !(s.Humidity > 0) {
		return dry, ok
	}
	t := air.Temperature(s.Altitude) + s.TemperatureOffset
	return dry * Moist(dry*air.GasConstant*t, t, s.Humidity), true
}
