package energy

import (
	"math"
	"testing"

	"cohoist/core/momentum"
)

const rho = 1.225

// 1 kg on four 10 inch discs: 4.443945 m/s and 43.580 W (the same rule in SI, computed), 83.808 W through a figure of merit of 0.65 and a drive of
// 0.8. Laws: T^1.5, ρ^−0.5, A^−0.5.
func TestIdealSI(t *testing.T) {
	area, w := 4*math.Pi*0.127*0.127, 9.80665
	near(t, "v", momentum.Hover(w, area, rho), 4.443945, 1e-7)
	near(t, "P", momentum.Ideal(w, area, rho), 43.580, 0.5e-3/43.58)
	r := Rotor{Area: area / 4, FigureOfMerit: 0.65, DriveEfficiency: 0.8}
	near(t, "electric", 4*r.Electric(w/4, rho, 0, 0), 83.808, 0.5e-3/83.808)
	near(t, "twice the thrust", momentum.Ideal(2*w, area, rho)/momentum.Ideal(w, area, rho), 2.828427, 1e-6)
	near(t, "twice the discs", momentum.Ideal(w, 2*area, rho)/momentum.Ideal(w, area, rho), 0.7071068, 1e-6)
	near(t, "half the density", momentum.Ideal(w, area, rho/2)/momentum.Ideal(w, area, rho), math.Sqrt2, 1e-12)
	if r.Electric(0, rho, 3, 1) != 0 {
		t.Error("no thrust takes power")
	}
}

// Climb: 600 kW, rotor of 16 m, 170 N/m², 53 % of the power into T V0: V = 1.84533 m/s. Exercise of a text on aerodynamics quoted at
// tutorsglobe.com (simple momentum theory), figures computed from its inputs; T = 2ρA V0 (V0 − V).
func TestClimb(t *testing.T) {
	area := math.Pi * 64
	thrust := 170 * area
	near(t, "area", area, 201.062, 1e-6)
	v0 := 0.53 * 600e3 / thrust
	near(t, "V0", v0, 9.30354, 1e-6)
	v, ok := momentum.Induced(momentum.Hover(thrust, area, rho), 0, 1.84533)
	near(t, "V0 again", 1.84533+v, v0, 1e-6)
	r := Rotor{Area: area, FigureOfMerit: 1}
	near(t, "power", r.Shaft(thrust, rho, 0, 1.84533), 0.53*600e3, 1e-6)
	if !ok {
		t.Error("outside")
	}
}

// Forward flight takes less than hover, then a flow down through the disc takes T V_n more than the induced saving.
func TestShaft(t *testing.T) {
	r := Rotor{Area: 0.1, FigureOfMerit: 0.6, DriveEfficiency: 0.8}
	hover := r.Shaft(10, rho, 0, 0)
	near(t, "hover", hover, momentum.Ideal(10, 0.1, rho)/0.6, 1e-14)
	if r.Shaft(10, rho, 8, 0) >= hover || r.Shaft(10, rho, 8, 3) <= r.Shaft(10, rho, 8, 0) {
		t.Error("forward flight")
	}
	near(t, "a very fast disc keeps its profile", r.Shaft(10, rho, 1e6, 0), (1/0.6-1.15)*momentum.Ideal(10, 0.1, rho), 2e-5)
	fine := Rotor{Area: 0.1, FigureOfMerit: 0.95}
	if w := fine.Shaft(10, rho, 1e6, 0); w < 0 || w > 1e-3 {
		t.Errorf("profile of a rotor better than 1/k: %g", w)
	}
}

// A vehicle of 55 g and 20 cm across, four discs of 46 mm radius, hovers near 15 W (common practice, no source, an order of magnitude) with
// the low figure of merit that static tests give such discs, 0.26 to 0.35 (UIUC Propeller Data Site, apcff 4.2x4), and a drive of half.
func TestSmall(t *testing.T) {
	for _, fm := range []float64{0.26, 0.35} {
		r := Rotor{Area: math.Pi * 0.046 * 0.046, FigureOfMerit: fm, DriveEfficiency: 0.5}
		w := 4 * r.Electric(0.055*9.80665/4, rho, 0, 0)
		if w < 15.0/2.5 || w > 15*2.5 {
			t.Errorf("hovers at %g W, want near 15", w)
		}
	}
}
