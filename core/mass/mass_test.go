package mass

import (
	"math"
	"testing"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

const mirtich = "B. Mirtich, Fast and Accurate Computation of Polyhedral Mass Properties, J. Graphics Tools 1(2), 1996, example input; result exact geometry"

func box(m, x, y, z float64) plan.Solid {
	return plan.Solid{Shape: plan.Box, Size: []float64{x, y, z}, Mass: m}
}

func TestBodies(t *testing.T) {
	tube := plan.Solid{Shape: plan.Tube, Length: 0.5, OuterRadius: 0.1, InnerRadius: 0.08, Mass: 3}
	round := plan.Solid{Shape: plan.Cylinder, Length: 0.5, OuterRadius: 0.1, Mass: 3}
	ball := func(x float64) plan.Solid { return plan.Solid{Shape: plan.Point, Mass: 0.3, At: vec.V3{x, 0, 0}} }
	bar := plan.Solid{Shape: plan.Rod, Length: 2, Mass: 4}
	for _, c := range []struct {
		name   string
		solids []plan.Solid
		mass   float64
		com    vec.V3
		six    [6]float64
		tol    float64
		source string
	}{
		{"box", []plan.Solid{box(2, 1.2, 0.3, 0.2)}, 2, vec.V3{}, [6]float64{0.0216667, 0.2466667, 0.255}, 5e-8, "closed form, m/12 of the squares; printed to 7 digits"},
		{"cylinder", []plan.Solid{round}, 3, vec.V3{}, [6]float64{0.07, 0.07, 0.015}, 1e-15, "closed form"},
		{"tube along x", []plan.Solid{tube}, 3, vec.V3{}, [6]float64{0.0246, 0.0748, 0.0748}, 1e-15, "closed form"},
		{"bar and two balls, about the middle", []plan.Solid{bar, ball(1), ball(-1)}, 4.6, vec.V3{}, [6]float64{0, 1.93333, 1.93333}, 5e-6,
			"a university physics problem, pearson.com/channels/physics/explore/rotational-inertia-energy/parallel-axis-theorem; printed to 5 decimals"},
		{"tetrahedron", []plan.Solid{{Shape: plan.MeshBody, Mesh: tetra(false), Mass: 10}}, 10, vec.V3{1.25, 1, 0.75},
			[6]float64{9.375, 12.75, 15.375, 2.5, 1.875, 1.5}, 1e-13, mirtich},
		{"cube of side 20", []plan.Solid{{Shape: plan.MeshBody, Mesh: cube(20), Mass: 8000, At: vec.V3{-10, -10, -10}}}, 8000, vec.V3{},
			[6]float64{533333.333333, 533333.333333, 533333.333333}, 1e-6, mirtich},
		{"icosahedron on the unit sphere", []plan.Solid{{Shape: plan.MeshBody, Mesh: icosahedron(), Mass: 2.536151}}, 2.536151, vec.V3{},
			[6]float64{0.7340704, 0.7340704, 0.7340704}, 1e-7, mirtich + "; 7 digits"},
		{"box turned by 90° about z", []plan.Solid{{Shape: plan.Box, Size: []float64{1.2, 0.3, 0.2}, Mass: 2, Turn: vec.V3{0, 0, 90}}}, 2, vec.V3{},
			[6]float64{0.2466667, 0.0216667, 0.255}, 5e-8, "the box above, x and y exchanged"},
		{"box turned by 30° about z", []plan.Solid{{Shape: plan.Box, Size: []float64{1.2, 0.3, 0.2}, Mass: 2, Turn: vec.V3{0, 0, 30}}}, 2, vec.V3{},
			[6]float64{0.0779166667, 0.1904166667, 0.255, -0.0974278575}, 1e-9, "by hand: J_xx cos² + J_yy sin², (J_xx − J_yy) sin cos"},
		{"plate", []plan.Solid{{Shape: plan.Plate, Size: []float64{1.2, 0.3}, Mass: 2}}, 2, vec.V3{}, [6]float64{0.015, 0.24, 0.255}, 1e-15, "closed form"},
		{"two overlapping boxes count in full", []plan.Solid{box(2, 1, 1, 1), box(2, 1, 1, 1)}, 4, vec.V3{}, [6]float64{4. / 6, 4. / 6, 4. / 6}, 1e-15, "twice one cube of 2 kg, m a²/6"},
		{"a speck of dust", []plan.Solid{{Shape: plan.Point, Mass: 1e-320, At: vec.V3{1, 0, 0}}, {Shape: plan.Point, Mass: 1e-320, At: vec.V3{3, 0, 0}}}, 2e-320, vec.V3{2, 0, 0}, [6]float64{}, 1e-300, "the middle of two equal points, below the normal range of numbers"},
		{"nothing with a mass", []plan.Solid{box(0, 1, 1, 1)}, 0, vec.V3{}, [6]float64{}, 0, "no mass, no inertia"},
	} {
		p, err := Of(plan.Payload{Solids: c.solids})
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if p.Mass != c.mass || p.COM.Sub(c.com).Norm() > 1e-14*20 {
			t.Errorf("%s: mass %g at %v, want %g at %v (%s)", c.name, p.Mass, p.COM, c.mass, c.com, c.source)
		}
		for i, x := range p.Six() {
			if math.Abs(x-c.six[i]) > c.tol+1e-15 {
				t.Errorf("%s: inertia[%d] = %.9g, want %.9g within %g (%s)", c.name, i, x, c.six[i], c.tol, c.source)
			}
		}
	}
}

// The bar and balls about one ball, and about an axis beside the bar: the same problem, parts b and c.
func TestParallelAxis(t *testing.T) {
	p, _ := Of(plan.Payload{Solids: []plan.Solid{{Shape: plan.Rod, Length: 2, Mass: 4}, {Shape: plan.Point, Mass: 0.3, At: vec.V3{1, 0, 0}}, {Shape: plan.Point, Mass: 0.3, At: vec.V3{-1, 0, 0}}}})
	if got := p.About(vec.V3{1, 0, 0})[2][2]; math.Abs(got-6.53333) > 5e-6 {
		t.Errorf("through a ball %.6f, want 6.53333 (printed to 5 decimals)", got)
	}
	if got := p.About(vec.V3{0, 0.5, 0})[0][0]; math.Abs(got-1.15) > 1e-12 {
		t.Errorf("beside the bar %.6f, want 1.15000", got)
	}
}

// Four vehicles of 1 kg and 0.02 kg m² on a ring of 1 m under a disc of 2 kg and 0.5 m radius, about the
// axis through two of them: 4 × 0.02 + 2 × 1 × 1² + 2 × 0.25/4 = 2.205 kg m²; ±5 N on the other two
// give 10 N m and 4.5351 rad/s². Closed form, by hand.
func TestRing(t *testing.T) {
	parts := []Properties{{Mass: 2, Inertia: vec.Diag(vec.V3{0.125, 0.125, 0.25})}}
	for _, at := range []vec.V3{{1, 0, 0}, {0, 1, 0}, {-1, 0, 0}, {0, -1, 0}} {
		parts = append(parts, Properties{Mass: 1, COM: at, Inertia: vec.Diag(vec.V3{0.02, 0.02, 0.02})})
	}
	all := Combine(parts)
	if j := all.Inertia[0][0]; math.Abs(j-2.205) > 1e-15 || math.Abs(10/j-4.5351) > 5e-5 {
		t.Errorf("ring %.6f kg m² and %.5f rad/s², want 2.205 and 4.5351", j, 10/j)
	}
	if all.Mass != 6 || all.COM.Norm() > 1e-16 {
		t.Errorf("ring %g kg at %v", all.Mass, all.COM)
	}
}

// What is measured needs no sizes: a plan may leave them out, and nothing falls over.
func TestMeasuredOnly(t *testing.T) {
	com, six := vec.V3{0.1, 0, 0}, [6]float64{1, 2, 3}
	for _, shape := range []string{plan.Box, plan.Plate, plan.Rod, plan.Tube, plan.Cylinder} {
		s := plan.BlankSolid()
		s.Shape, s.Mass, s.At, s.Turn = shape, 4, vec.V3{}, vec.V3{0, 0, 30}
		p, err := Of(plan.Payload{Solids: []plan.Solid{s}, COM: &com, Inertia: &six})
		if err != nil || p.Mass != 4 || p.COM != com || p.Six() != six {
			t.Errorf("%s without sizes: %+v %v", shape, p, err)
		}
		if shape == plan.Box {
			if p, _ := Of(plan.Payload{Solids: []plan.Solid{s}}); !math.IsNaN(p.Inertia[0][0]) {
				t.Errorf("a box without sizes has the inertia %v", p.Inertia)
			}
		}
	}
}

func TestOverrides(t *testing.T) {
	com, six := vec.V3{0.1, 0, 0}, [6]float64{1, 2, 3, 0.1, 0.2, 0.3}
	p, _ := Of(plan.Payload{Solids: []plan.Solid{box(2, 1, 1, 1)}, COM: &com, Inertia: &six})
	if p.COM != com || p.Six() != six {
		t.Errorf("measured values did not override: %v %v", p.COM, p.Six())
	}
}
