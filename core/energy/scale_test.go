package energy

import (
	"math"
	"testing"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

func class() plan.Class {
	c := plan.BlankClass()
	c.Mass, c.Rotors, c.Arm, c.RotorRadius, c.RotorThrustMax, c.TorquePerThrust = 1, 4, 0.2, 0.127, 5, 0.01
	c.Inertia = &vec.V3{0.01, 0.01, 0.02}
	c.FigureOfMerit, c.DriveEfficiency, c.Avionics = 0.6, 0.8, 0
	c.Bench = []plan.Bench{{Throttle: 0.5, Thrust: 2, Power: 20, Speed: 400, Voltage: 12}}
	return c
}

// Growth with size: mass λ³, inertia λ⁵, T ~ Ω² λ⁴; tip speed constant: acceleration 1/λ, angular 1/λ²; Froude: 1 and 1/λ (common
// practice, no source: dimensional analysis). Angular acceleration is thrust times arm over inertia.
func TestGrowth(t *testing.T) {
	for r, want := range map[Regime]Growth{
		TipSpeed: {3, 5, -1, 2, 2, -1, -2}, Froude: {3, 5, -0.5, 3, 3.5, 0, -1},
	} {
		if g := GrowthOf(r); g != want {
			t.Errorf("%s: %+v, want %+v", r, g, want)
		}
		c := class()
		one := Scaled(c, 1.7, r)
		angular := func(c plan.Class) float64 { return c.RotorThrustMax * c.Arm / c.Inertia[0] }
		near(t, "angular", angular(one)/angular(c), math.Pow(1.7, want.Angular), 1e-12)
		near(t, "acceleration", one.RotorThrustMax/one.Mass/(c.RotorThrustMax/c.Mass), math.Pow(1.7, want.Acceleration), 1e-12)
		rotor := func(c plan.Class) *Rotor {
			return &Rotor{Area: math.Pi * c.RotorRadius * c.RotorRadius, FigureOfMerit: 0.6, DriveEfficiency: 1}
		}
		p := rotor(one).Electric(one.RotorThrustMax, rho, 0, 0) / rotor(c).Electric(c.RotorThrustMax, rho, 0, 0)
		near(t, "power", p, math.Pow(1.7, want.Power), 1e-12) // T^1.5/R is Ω³ λ⁵ again
		near(t, "test rows", one.Bench[0].Power/c.Bench[0].Power, p, 1e-12)
		if c.Bench[0].Power != 20 || c.Inertia[0] != 0.01 {
			t.Error("the class itself was changed")
		}
	}
}

// Sizes put back: each team lifts its payload at the limit exactly, and no smaller one does. With thrust over weight kept
// the vehicles weigh the same however many there are, power goes as k^(−1/6) and angular acceleration as k^(1/3): small ones win.
func TestSizes(t *testing.T) {
	c := class()
	const payload, limit = 0.5, 0.8
	for _, r := range []Regime{TipSpeed, Froude} {
		sizes := Sizes(c, payload, limit, rho, 8, r)
		for _, s := range sizes {
			one := Scaled(c, s.Size, r)
			near(t, "lift", limit*4*one.RotorThrustMax, (payload/float64(s.Vehicles)+one.Mass)*9.80665, 1e-9)
			if r == Froude {
				k := float64(s.Vehicles)
				near(t, "mass", s.Mass, sizes[0].Mass, 1e-12)
				near(t, "power", s.Power/sizes[0].Power, math.Pow(k, -1.0/6), 1e-12)
				near(t, "angular", s.Angular/sizes[0].Angular, math.Cbrt(k), 1e-12)
			}
		}
		if Beats(sizes, func(s Size) float64 { return s.Power }) != 2 && r == Froude {
			t.Error("two small ones take less power with thrust over weight kept")
		}
	}
}

// With tip speed kept a vehicle cannot grow for ever: lift λ² − m λ³ is largest at 4 lift³/(27 m²); beyond, only several do.
func TestTooLarge(t *testing.T) {
	c := class()
	lift := 0.8 * 20 / 9.80665
	most := 4 * lift * lift * lift / 27
	if s := Sizes(c, most*1.001, 0.8, rho, 2, TipSpeed); !math.IsNaN(s[0].Size) || math.IsNaN(s[1].Size) || Beats(s, func(s Size) float64 { return s.Power }) != -1 {
		t.Errorf("%+v", s)
	}
	if s := Sizes(c, most*0.999, 0.8, rho, 2, TipSpeed); math.IsNaN(s[0].Size) || Beats(s, func(s Size) float64 { return s.Mass }) != 2 {
		t.Errorf("%+v", s)
	}
	weak := c
	weak.RotorThrustMax = 2
	if s := Sizes(weak, 1, 0.8, rho, 3, Froude); Beats(s, func(s Size) float64 { return s.Power }) != -1 {
		t.Errorf("%+v", s)
	}
}
