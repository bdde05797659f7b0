package bench

import "math"

// Coefficients are those of a propeller test, of diameter and speed in rev/s.
type Coefficients struct {
	Thrust float64 // C_T = T/(ρ n² D⁴), (19.3)
	Power  float64 // C_P = P/(ρ n³ D⁵), P at the shaft, (19.4)
}

// At is thrust (N) and shaft power (W) at a speed (rad/s) of a propeller of a diameter (m) in air of a
// density (kg/m³).
func (c Coefficients) At(diameter, speed, rho float64) (thrust, power float64) {
	n, d2 := speed/(2*math.Pi), diameter*diameter
	thrust = c.Thrust * rho * n * n * d2 * d2              // (19.3)
	power = c.Power * rho * n * n * n * d2 * d2 * diameter // (19.4)
	return thrust, power
}

// CoefficientsOf are the coefficients of a measured thrust (N) and shaft power (W) at a speed (rad/s).
func CoefficientsOf(thrust, power, diameter, speed, rho float64) Coefficients {
	t, p := Coefficients{1, 1}.At(diameter, speed, rho)
	return Coefficients{thrust / t, power / p}
}

// FigureOfMerit is the ideal power of the thrust over the power at the shaft, static: √(2/π) C_T^1.5/C_P, (19.5).
func (c Coefficients) FigureOfMerit() float64 {
	return math.Sqrt(2/math.Pi) * c.Thrust * math.Sqrt(c.Thrust) / c.Power
}

// Efficiency is thrust power over shaft power at an advance ratio J = V/(n D): J C_T/C_P, (19.6).
func (c Coefficients) Efficiency(advance float64) float64 { return advance * c.Thrust / c.Power }

// Lumped are thrust over speed squared, N/(rad/s)², and torque over thrust, m.
func (c Coefficients) Lumped(diameter, rho float64) (perSpeed, torquePerThrust float64) {
	d2 := diameter * diameter
	return c.Thrust * rho * d2 * d2 / (4 * math.Pi * math.Pi), c.Power * diameter / (2 * math.Pi * c.Thrust) // (19.7)
}
