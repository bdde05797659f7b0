package energy

import (
	"math"
	"math/rand/v2"
	"testing"

	"cohoist/core/mass"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Ground effect of a single rotor at constant power, I. C. Cheeseman and W. E. Bennett, ARC R&M 3021, 1955 (formula from memory, figures computed
// from it): four decimals; a hundredth at 2.512 radii. Below half a radius it is not asked.
func TestGroundEffect(t *testing.T) {
	for z, want := range map[float64]float64{0.5: 1.3333, 0.75: 1.1250, 1: 1.0667, 1.5: 1.0286, 2: 1.0159, 3: 1.0070, 4: 1.0039, 2.512: 1.0100} {
		if got, ok := GroundEffect(z*0.2, 0.2); !ok || math.Abs(got-want) > 0.51e-4 {
			t.Errorf("at %g radii %.5f %v, want %.4f", z, got, ok, want)
		}
	}
	if got, ok := GroundEffect(0.09, 0.2); ok || !math.IsNaN(got) {
		t.Errorf("below half a radius %g", got)
	}
}

// Thrust over weight at f/A of 0.01, 0.04, 0.05 and 0.10: helicopter textbook pages, heli-air.net 2016, vertical drag and download penalty, four
// decimals. A plate of 0.3 m square, C_d 1.17, under a rotor of 0.3 m radius has f/A 0.372 and is outside.
func TestDownload(t *testing.T) {
	for f, want := range map[float64]float64{0.01: 1.0101, 0.04: 1.0417, 0.05: 1.0526, 0.10: 1.1111} {
		if got, ok := Download(f*3, 3); !ok || math.Abs(got-want) > 0.51e-4 {
			t.Errorf("f/A %g: %.5f %v, want %.4f", f, got, ok, want)
		}
	}
	if got, ok := Download(1.17*0.09, math.Pi*0.09); ok || !math.IsNaN(got) {
		t.Errorf("f/A 0.372 gives %g", got)
	}
}

// The wake of 1 kg on four 10 inch discs: 8.88789 m/s and 0.089803 m far below, contracted within a quarter of a radius (heli-air.net 2016, fuselage
// download; figures computed), one jet after 2.5 diameters (Bauersfeld et al., arXiv 2403.13321, 2024).
func TestWake(t *testing.T) {
	w := WakeOf(9.80665/4, 0.127, 0.7, rho)
	near(t, "speed", w.Speed, 8.88789, 1e-6)
	near(t, "radius", w.Radius, 0.089803, 1e-5)
	near(t, "contracted", w.Full, 0.127/4, 1e-12)
	near(t, "merged", w.Merged, 1.75, 1e-12)
	q, ok := w.Pressure(1, rho)
	near(t, "dynamic pressure is the disc loading", q, 9.80665/4/(math.Pi*0.127*0.127), 1e-12) // 48.384 N/m², the same source
	near(t, "disc loading", q, 48.384, 1e-5)
	if _, far := w.Pressure(1.76, rho); !ok || far {
		t.Error("range of the pressure")
	}
}

// Overlap against the disc, halves and quarters of it, and against counting the places of a grid, which is good to a few of its steps along the edge.
func TestOverlap(t *testing.T) {
	disc := math.Pi * 0.25
	for _, c := range [][4]float64{{0, 0, 9, disc}, {9, 0, 9, disc / 2}, {-9, 9, 9, disc / 4}, {10, 0, 9, 0}, {0, 0, 0.1, 0.04 * 1}} {
		got := Overlap(c[0], c[1], 0.5, c[2], c[2])
		if math.Abs(got-c[3]) > 1e-12 {
			t.Errorf("%v: %g", c, got)
		}
	}
	rng := rand.New(rand.NewPCG(18, 1))
	for range 40 {
		x, y, r, a, b := rng.NormFloat64()/2, rng.NormFloat64()/2, 0.1+rng.Float64(), 0.1+rng.Float64(), 0.1+rng.Float64()
		const n = 400
		count := 0
		for i := range n {
			for j := range n {
				u, v := (2*(float64(i)+0.5)/n-1)*a, (2*(float64(j)+0.5)/n-1)*b
				if math.Hypot(u-x, v-y) <= r {
					count++
				}
			}
		}
		want := 4 * a * b * float64(count) / (n * n)
		if got := Overlap(x, y, r, a, b); math.Abs(got-want) > 4e-3*a*b {
			t.Errorf("%g %g %g %g %g: %g, counted %g", x, y, r, a, b, got, want)
		}
	}
}

// One vehicle on a cable of 3 m, its payload a point 1 m above the ground: rotors of 0.127 m are 4 m up, by hand 1/(1 − (0.127/16)²) = 1.0000630; its power is that of
// the same thrust over this, to the power 1.5. Rotors 5 cm up are outside, half a radius being 6.35 cm.
func TestGrounded(t *testing.T) {
	g := grounded(t, 1)
	near(t, "height", g.Height, 4, 1e-12)
	near(t, "ratio", g.Ratio, 1.0000630078, 1e-9)
	near(t, "power", g.Power, g.far*math.Pow(g.Ratio, -1.5), 1e-12)
	if g := grounded(t, -2.95); g.Outside == "" || !math.IsNaN(g.Power) || !math.IsNaN(g.Ratio) {
		t.Errorf("%+v", g.Grounded)
	}
}

type onGround struct {
	Grounded
	far float64
}

func grounded(t *testing.T, clearance float64) onGround {
	t.Helper()
	c := class()
	c.Bench = nil
	p := plan.Blank()
	s := plan.BlankSolid()
	s.Shape, s.Mass, s.At = plan.Point, 0.5, vec.V3{}
	p.Payload.Solids = []plan.Solid{s}
	p.Vehicles = map[string]plan.Class{"one": c}
	m := plan.BlankMember()
	m.ID, m.Vehicle, m.Attach, m.Hold.Kind, m.Hold.Length = "A", "one", vec.V3{}, plan.Cable, 3
	p.Team = []plan.Member{m}
	p, _ = plan.Assume(p)
	body, err := mass.Of(p.Payload)
	if err != nil {
		t.Fatal(err)
	}
	model := share.New(p, body, vec.V3{}, 1.225)
	a := model.Share(solve.NewSolver())
	study := At(model, a)
	return onGround{study.Grounded(a.Parts, clearance)[0], study.Vehicles[0].Power}
}

// Nobody holds nothing.
func TestNobody(t *testing.T) {
	p, _ := plan.Assume(plan.Blank())
	m := share.New(p, mass.Properties{}, vec.V3{}, 1.225)
	if s := At(m, share.Answer{}); s.First >= 0 || !math.IsNaN(s.Hold) || len(s.Together()) > 0 {
		t.Errorf("%d ends after %g s", s.First, s.Hold)
	}
}
