package class

import (
	"math"
	"strings"
	"testing"

	"cohoist/core/plan"
)

func TestLibrary(t *testing.T) {
	last := 0.0
	for _, e := range Library() {
		c := e.Class
		if r := ThrustToWeight(c); r < 1.8 || r > 2.5 {
			t.Errorf("%s: thrust over weight %.2f, want 1.8 to 2.5 (common practice, no source)", e.Name, r)
		}
		if TipGap(c) <= 0 {
			t.Errorf("%s: rotors overlap by %.3f m", e.Name, -TipGap(c))
		}
		if c.Mass <= last {
			t.Errorf("%s is not heavier than the one before", e.Name)
		}
		last = c.Mass
		if !strings.HasSuffix(e.Line, "invented") {
			t.Errorf("%s does not say that it is invented", e.Name)
		}
		p := plan.Blank()
		p.Vehicles = map[string]plan.Class{e.Name: c}
		for _, f := range plan.Validate(p) {
			if strings.HasPrefix(f.Path, "vehicles") {
				t.Error(f)
			}
		}
	}
	if Library()[0].Class.Mass != 0.075 || last != 10 {
		t.Error("the library goes from 75 g to 10 kg")
	}
}

// The library's torque per thrust stays within what propellers have: measured means, Q/T = C_P D/(2π C_T).
// UIUC Propeller Data Site (Brandt and Selig, AIAA 2011-1255; Deters, Ananda and Selig, AIAA 2014-2151),
// means over the files apcsf_10x4.7_static_kt0835, da4052_5x3.75_3b_static_1204ga,
// nr640_5_15deg_3b_static_0696md, mit_5x4_static_0362rd as a public data note quotes them.
func TestTorquePerThrust(t *testing.T) {
	most := 0.0
	for _, c := range []struct{ inches, ct, cp, want float64 }{
		{10, 0.1185, 0.0480, 0.0164}, {5, 0.1483, 0.1032, 0.0141}, {5, 0.1085, 0.0622, 0.0116}, {5, 0.1799, 0.1174, 0.0132},
	} {
		d := c.inches * 0.0254
		got := c.cp * d / (2 * math.Pi * c.ct)
		if math.Abs(got-c.want) > 6e-5 { // four printed decimals of means with four figures
			t.Errorf("%g inch: %.5f m, printed %.4f", c.inches, got, c.want)
		}
		most = math.Max(most, got/d)
	}
	for _, e := range Library() {
		if r := e.Class.TorquePerThrust / (2 * e.Class.RotorRadius); r < 0.04 || r > math.Min(most, 0.07) {
			t.Errorf("%s: κ is %.3f of the rotor's diameter", e.Name, r)
		}
	}
}

// Hover of every class asks for a disc loading as multirotors have it, 30 to 120 N/m² (common
// practice, no source), and no name or title stands twice.
func TestPlausible(t *testing.T) {
	seen := map[string]bool{}
	for _, e := range Library() {
		c := e.Class
		disc := float64(c.Rotors) * math.Pi * c.RotorRadius * c.RotorRadius
		if w := c.Mass * 9.80665 / disc; w < 30 || w > 120 {
			t.Errorf("%s: %.0f N/m² of disc", e.Name, w)
		}
		if seen[e.Name] || seen[e.Title] || strings.ToLower(e.Name) != e.Name || strings.Contains(e.Name, " ") {
			t.Errorf("%s, %s: not kebab-case or twice", e.Name, e.Title)
		}
		seen[e.Name], seen[e.Title] = true, true
	}
	if len(seen) < 14 {
		t.Errorf("%d names and titles", len(seen))
	}
}

// Every class can hover alone for as long as its kind does, 5 to 35 min on four fifths of what its pack gives, and its pack is a
// plausible part of it: 10 to 35 % at 150 Wh/kg (all common practice, no source). The 75 g one takes near 15 W, the order of magnitude that
// vehicles of 55 to 75 g show (common practice, no source); by hand: 75 g on four discs of 33 mm ask 3.445 W.
func TestFed(t *testing.T) {
	for i, e := range Library() {
		c := e.Class
		weight, disc := c.Mass*9.80665, float64(c.Rotors)*math.Pi*c.RotorRadius*c.RotorRadius
		ideal := weight * math.Sqrt(weight/(2*1.225*disc))
		w := ideal/(c.FigureOfMerit*c.DriveEfficiency) + c.Avionics
		if i == 0 && (math.Abs(ideal-3.445) > 0.5e-3 || math.Abs(w-15) > 1) {
			t.Errorf("%s hovers at %.2f W, ideal %.4f W", e.Name, w, ideal)
		}
		wh := c.Battery.Charge * float64(c.Battery.Cells) * 3.7
		if min := 0.8 * c.Battery.Usable * wh / w * 60; min < 5 || min > 35 {
			t.Errorf("%s hovers for %.1f min", e.Name, min)
		}
		if part := wh / 150 / c.Mass; part < 0.1 || part > 0.4 {
			t.Errorf("%s: its pack would be %.2f of its mass", e.Name, part)
		}
		full := w / (float64(c.Battery.Cells) * 3.7)
		if sag := full * c.Battery.Resistance / (float64(c.Battery.Cells) * 3.7); sag > 0.08 {
			t.Errorf("%s: its voltage sags by %.3f in hover", e.Name, sag)
		}
	}
}
