// Package air gives the density of the day and drag (THEORY chapter 3).
//
// Restriction: the troposphere, −500 m to 11 000 m geopotential height, moist air up to 60 °C; drag coefficients of bluff
// bodies, which do not depend on speed. Geometry: payload axes.
package air

import (
	"math"

	"cohoist/core/vec"
)

// Constants of the standard atmosphere, exact by definition (ISO 2533:1975).
const (
	SeaLevelDensity     = 1.225     // kg/m³
	seaLevelTemperature = 288.15    // K
	seaLevelPressure    = 101325.0  // Pa
	lapse               = 0.0065    // K/m
	gasConstant         = 287.05287 // J/(kg K), of dry air
	exponent            = 9.80665 / (lapse * gasConstant)
	lowest, highest     = -500, 11000 // m
)

// dry is the density of dry air, kg/m³, at a geopotential altitude (m) with the temperature off the
// standard atmosphere by offset (K) and the pressure as in it, (3.1) to (3.3). ok is false outside
// −500 m to 11 000 m, or where there is no temperature left. A height above the sea counts as the
// geopotential one: at 5 000 m that is 4 m and 0.04 % of density too low, below anything that matters.
// At sea level the constants give 1.225 and 1.5e-8 of it.
func dry(altitude, offset float64) (rho float64, ok bool) {
	if !(altitude >= lowest && altitude <= highest) {
		return math.NaN(), false
	}
	temperature, pressure := standard(altitude)
	t := temperature + offset
	if !(t > 0) || math.IsInf(t, 1) {
		return math.NaN(), false
	}
	return pressure / (gasConstant * t), true // (3.3)
}

// standard is the temperature (K) and pressure (Pa) of the standard atmosphere, (3.1) and (3.2).
func standard(altitude float64) (temperature, pressure float64) {
	temperature = seaLevelTemperature - float64(lapse*altitude)                                // (3.1)
	return temperature, seaLevelPressure * math.Pow(temperature/seaLevelTemperature, exponent) // (3.2)
}

// Drag is the force of a wind v (m/s, payload axes) on a body with drag areas C_d A (m²), N, in the
// direction of the wind: ½ρ (C_d A)_j |v| v_j, (3.4).
func Drag(rho float64, area, v vec.V3) vec.V3 {
	q := rho / 2 * v.Norm()
	return vec.V3{q * area[0] * v[0], q * area[1] * v[1], q * area[2] * v[2]}
}
