package energy

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/share"
)

// Regime says what stays when a vehicle is made larger. Common practice, no source: dimensional analysis.
type Regime string

// The regimes.
const (
	TipSpeed Regime = "tip speed" // of the rotors (Mach): rotor speed 1/λ, thrust λ², acceleration 1/λ, angular 1/λ²
	Froude   Regime = "froude"    // thrust over weight: rotor speed 1/√λ, thrust λ³, acceleration 1, angular 1/λ
)

// Growth is the power of size by which something grows.
type Growth struct{ Mass, Inertia, Speed, Thrust, Power, Acceleration, Angular float64 }

// GrowthOf is how a vehicle's figures grow with its size, (18.28): mass λ³, inertia λ⁵, thrust Ω² λ⁴, power Ω³ λ⁵.
func GrowthOf(r Regime) Growth {
	speed := -1.0
	if r == Froude {
		speed = -0.5
	}
	return Growth{Mass: 3, Inertia: 5, Speed: speed, Thrust: 4 + 2*speed, Power: 5 + 3*speed, Acceleration: 1 + 2*speed, Angular: 2 * speed}
}

// Scaled is a class made size times as large in every way, its pack with it; avionics stay.
func Scaled(c plan.Class, size float64, r Regime) plan.Class {
	g := GrowthOf(r)
	by := func(n float64) float64 { return math.Pow(size, n) }
	c.Mass *= by(g.Mass)
	if c.Inertia != nil {
		j := c.Inertia.Scale(by(g.Inertia))
		c.Inertia = &j
	}
	c.Arm, c.RotorRadius, c.TorquePerThrust = c.Arm*size, c.RotorRadius*size, c.TorquePerThrust*size
	c.RotorThrustMax *= by(g.Thrust)
	c.DragArea *= by(2)
	c.Battery.Energy *= by(g.Mass)
	c.Battery.Charge *= by(g.Mass)
	c.Battery.Resistance /= by(g.Mass)
	rows := c.Bench
	c.Bench = nil
	for _, b := range rows {
		b.Thrust, b.Power, b.Speed = b.Thrust*by(g.Thrust), b.Power*by(g.Power), b.Speed*by(g.Speed)
		c.Bench = append(c.Bench, b)
	}
	return c
}

// Size is a team of vehicles that are just large enough.
type Size struct {
	Vehicles int
	Size     float64 // of each, over the class; NaN: no size is large enough
	Mass     float64 // kg, of all without payload
	Power    float64 // W, electric, in hover; NaN: figure of merit, drive or avionics left out
	Angular  float64 // angular acceleration of one alone over that of the class
}

// Sizes are teams of 1 to most vehicles of a class made larger or smaller until each carries its even part of a payload (kg) straight
// up, at a utilisation limit in air of a density: (18.29). Grips and cables weigh nothing.
func Sizes(c plan.Class, payload, limit, rho float64, most int, r Regime) []Size {
	out := make([]Size, most)
	for i := range out {
		n := float64(i + 1)
		s := Size{Vehicles: i + 1, Size: smallest(c, payload/n, limit*rho/standard, r)}
		one := Scaled(c, s.Size, r)
		s.Mass = n * one.Mass
		rotors := float64(one.Rotors)
		rotor := Rotor{Area: math.Pi * one.RotorRadius * one.RotorRadius, FigureOfMerit: one.FigureOfMerit, DriveEfficiency: one.DriveEfficiency}
		each := (payload/n + one.Mass) * share.Gravity / rotors
		s.Power = n * (rotors*rotor.Electric(each, rho, 0, 0) + one.Avionics)
		s.Angular = math.Pow(s.Size, GrowthOf(r).Angular)
		out[i] = s
	}
	return out
}

// smallest is the smallest size that carries a payload, kg, with a part of its sea-level thrust; NaN: none.
func smallest(c plan.Class, payload, part float64, r Regime) float64 {
	lift := part * float64(c.Rotors) * c.RotorThrustMax / share.Gravity // kg
	if r == Froude {
		return math.Cbrt(payload / math.Max(lift-c.Mass, 0)) // Inf: too weak at any size
	}
	best := 2 * lift / (3 * c.Mass) // where lift λ² − m λ³ is largest
	spare := func(x float64) float64 { return x*x*(lift-c.Mass*x) - payload }
	if !(spare(best) >= 0) {
		return math.NaN()
	}
	lo, hi := 0.0, best
	for hi-lo > 1e-13*hi {
		mid := lo + (hi-lo)/2
		if mid == lo || mid == hi {
			break
		}
		if spare(mid) < 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return hi
}

// Beats is the smallest team that takes less than a vehicle alone by a figure, such as Size.Power; 0: none, −1: the vehicle alone
// can't.
func Beats(sizes []Size, figure func(Size) float64) int {
	if len(sizes) == 0 || !(sizes[0].Size < math.Inf(1)) {
		return -1
	}
	const rounding = 1e-9
	for _, s := range sizes[1:] {
		if figure(s) < figure(sizes[0])*(1-rounding) {
			return s.Vehicles
		}
	}
	return 0
}
