package momentum

import (
	"math"
	"testing"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol*math.Abs(want)) {
		t.Errorf("%s = %.12g, want %.12g within %g of it", what, got, want, tol)
	}
}

// The one-line rule of a helicopter textbook, hp/T = √(T/A)/38 in lb, ft (heli-air.net 2016, "Ideal power"): at 7.1 lb/ft² 0.07027 hp/lb
// exactly and v = 38.646 ft/s, with ρ 0.0023769 slug/ft³; the rounded 38 gives 0.07012.
func TestIdealRule(t *testing.T) {
	const lbf, ft, slug, hp = 4.4482216, 0.3048, 14.593903, 745.69987
	area, density := ft*ft, 0.0023769*slug/(ft*ft*ft)
	near(t, "hp per lb", Ideal(7.1*lbf, area, density)/hp/7.1, 0.07027, 0.5e-5/0.07027)
	near(t, "ft/s", Hover(7.1*lbf, area, density)/ft, 38.646, 0.5e-3/38.646)
	near(t, "rule", Ideal(7.1*lbf, area, density)/hp/7.1, 0.07012, 2.2e-3)
}

// Glauert's equation put back, at rest, along the axis in closed form, and fast along the disc v_h²/V; rounding only.
func TestInduced(t *testing.T) {
	for _, h := range []float64{0.5, 4, 20} {
		for x := 0.0; x < 8; x += 0.37 {
			for z := -0.5; z < 5; z += 0.31 {
				v, ok := Induced(h, x*h, z*h)
				if !ok {
					if z >= 0 || -z*x <= 1 {
						t.Fatalf("no flow at %g, %g", x, z)
					}
					continue
				}
				near(t, "put back", v*math.Hypot(x*h, z*h+v), h*h, 1e-12)
			}
		}
		for z := -0.5; z < 5; z += 0.25 {
			v, _ := Induced(h, 0, z*h)
			near(t, "axial", v, h*(-z/2+math.Sqrt(z*z/4+1)), 1e-12)
		}
		v, _ := Induced(h, 50*h, 0)
		near(t, "fast", v, h/50, 1e-6)
	}
	for _, out := range [][2]float64{{0, -0.6}, {3, -0.45}} {
		if v, ok := Induced(1, out[0], out[1]); ok || !math.IsNaN(v) {
			t.Errorf("%v: %g", out, v)
		}
	}
}
