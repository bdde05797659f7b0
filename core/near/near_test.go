package near

import (
	"math"
	"math/rand/v2"
	"testing"

	"cohoist/core/momentum"
	"cohoist/core/plan"
	"cohoist/core/vec"
)

const rho = 1.225

func within(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol*math.Abs(want)) {
		t.Errorf("%s = %.12g, want %.12g within %g of it", what, got, want, tol)
	}
}

// Ground effect of a single rotor at constant power, I. C. Cheeseman and W. E. Bennett, ARC R&M 3021, 1955 (formula from memory, figures computed
// from it): four decimals; a hundredth at 2.512 radii. Below half a radius it stays what it is there, and is out of range.
func TestGround(t *testing.T) {
	for z, want := range map[float64]float64{0.5: 1.3333, 0.75: 1.1250, 1: 1.0667, 1.5: 1.0286, 2: 1.0159, 3: 1.0070, 4: 1.0039, 2.512: 1.0100} {
		if got, ok := Ground(z*0.2, 0.2); !ok || math.Abs(got-want) > 0.51e-4 {
			t.Errorf("at %g radii %.5f %v, want %.4f", z, got, ok, want)
		}
	}
	for _, z := range []float64{0.09, 0, -1} {
		if got, ok := Ground(z, 0.2); ok || math.Abs(got-4.0/3) > 1e-15 {
			t.Errorf("at %g m %g %v", z, got, ok)
		}
	}
}

// Thrust over weight at f/A of 0.01, 0.04, 0.05 and 0.10: helicopter textbook pages, heli-air.net 2016, vertical drag and download penalty, four
// decimals. A plate of 0.3 m square, C_d 1.17, under a rotor of 0.3 m radius has f/A 0.372 and is outside.
func TestDownload(t *testing.T) {
	for f, want := range map[float64]float64{0.01: 1.0101, 0.04: 1.0417, 0.05: 1.0526, 0.10: 1.1111} {
		if got, ok := Download(f); !ok || math.Abs(got-want) > 0.51e-4 {
			t.Errorf("f/A %g: %.5f %v, want %.4f", f, got, ok, want)
		}
	}
	plate := plan.Solid{Shape: plan.Plate, Size: []float64{0.3, 0.3}}
	v := Rotors{At: vec.V3{0, 0, 0.2}, Down: vec.V3{0, 0, -1}, Places: []vec.V3{{}}, Radius: 0.3, Reach: 0.3}
	s := v.Shadow(0, Faces([]plan.Solid{plate}))
	within(t, "f/A", s.Share, 0.372, 0.5e-3/0.372) // its corners reach 0.2121 m, the wake 0.2121 m
	if got, ok := Download(s.Share); ok || math.Abs(got-1.59) > 0.005 {
		t.Errorf("T/W %g %v", got, ok)
	}
}

// The wake of 1 kg on four 10 inch discs: 8.88789 m/s and 0.089803 m far below, contracted within a quarter of a radius (heli-air.net 2016, fuselage
// download; figures computed), one jet after 2.5 diameters (Bauersfeld et al., arXiv 2403.13321, 2024).
func TestWake(t *testing.T) {
	within(t, "speed", WakeSpeed(9.80665/4, 0.127, rho), 8.88789, 1e-6)
	within(t, "radius", Width(0.127, 0.127, 0.5), 0.089803, 1e-5)
	within(t, "contracted", Contraction*0.127, 0.089803, 1e-5)
	within(t, "merged", Merged(0.35), 1.75, 1e-12)
	w := WakeSpeed(9.80665/4, 0.127, rho)
	within(t, "dynamic pressure is the disc loading", rho/2*w*w, 48.384, 1e-5) // N/m², the same source
	within(t, "ten metres down", Width(0.4, 0.1, 10), 0.4-0.1*(1-math.Sqrt(0.5))+8*math.Tan(11.8*math.Pi/180), 1e-12)
}

// Overlap against the disc, halves and quarters of it with their centroids 4r/3π from the cut, and against adding up the places of a grid, which is
// good to a few of its steps along the edge.
func TestOverlap(t *testing.T) {
	disc, far := math.Pi*0.25, 4*0.5/(3*math.Pi)
	for _, c := range []struct{ x, y, half, area, mx, my float64 }{
		{0, 0, 9, disc, 0, 0}, {9, 0, 9, disc / 2, disc / 2 * (9 - far), 0}, {-9, 9, 9, disc / 4, disc / 4 * (far - 9), disc / 4 * (9 - far)},
		{10, 0, 9, 0, 0, 0}, {0, 0, 0.1, 0.04, 0, 0}} {
		area, mx, my := overlap(c.x, c.y, 0.5, c.half, c.half)
		if math.Abs(area-c.area) > 1e-12 || math.Abs(mx-c.mx) > 1e-12 || math.Abs(my-c.my) > 1e-12 {
			t.Errorf("%+v: %g, %g, %g", c, area, mx, my)
		}
	}
	rng := rand.New(rand.NewPCG(18, 1))
	for range 40 {
		x, y, r, a, b := rng.NormFloat64()/2, rng.NormFloat64()/2, 0.1+rng.Float64(), 0.1+rng.Float64(), 0.1+rng.Float64()
		sum := grid(a, b, 400, func(u, v float64) float64 {
			if math.Hypot(u-x, v-y) <= r {
				return 1
			}
			return 0
		})
		area, mx, my := overlap(x, y, r, a, b)
		if math.Abs(area-sum[0]) > 4e-3*a*b || math.Abs(mx-sum[1]) > 4e-3*a*a*b || math.Abs(my-sum[2]) > 4e-3*a*b*b {
			t.Errorf("%g %g %g %g %g: %g %g %g, counted %g", x, y, r, a, b, area, mx, my, sum)
		}
	}
}

// grid sums a density over a rectangle −a…a, −b…b, and its first moments, by the midpoints of n × n squares.
func grid(a, b float64, n int, density func(x, y float64) float64) (sum [3]float64) {
	for i := range n {
		for j := range n {
			x, y := (2*(float64(i)+0.5)/float64(n)-1)*a, (2*(float64(j)+0.5)/float64(n)-1)*b
			d := density(x, y) * 4 * a * b / float64(n*n)
			sum[0], sum[1], sum[2] = sum[0]+d, sum[1]+d*x, sum[2]+d*y
		}
	}
	return sum
}

// The part of a jet's momentum in a rectangle, and its moments, against sums of 200 × 200 midpoints, whose error falls with the square of their
// step: 2e-4 of the part. All of it in an endless one, on its axis.
func TestGaussian(t *testing.T) {
	rng := rand.New(rand.NewPCG(22, 1))
	for range 40 {
		x, y, w, a, b := rng.NormFloat64()/2, rng.NormFloat64()/2, 0.3+rng.Float64(), 0.1+rng.Float64(), 0.1+rng.Float64()
		sum := grid(a, b, 200, func(u, v float64) float64 {
			return 4 / (math.Pi * w * w) * math.Exp(-4*((u-x)*(u-x)+(v-y)*(v-y))/(w*w))
		})
		part, mx, my := gaussian(x, y, w, a, b)
		if math.Abs(part-sum[0]) > 2e-4*sum[0] || math.Abs(mx-sum[1]) > 2e-4*a*sum[0] || math.Abs(my-sum[2]) > 2e-4*b*sum[0] {
			t.Errorf("%g %g %g %g %g: %g %g %g, summed %g", x, y, w, a, b, part, mx, my, sum)
		}
	}
	part, mx, my := gaussian(0.3, -0.2, 0.5, 50, 50)
	within(t, "whole", part, 1, 1e-12)
	within(t, "on its axis", mx, 0.3, 1e-12)
	within(t, "on its axis", my, -0.2, 1e-12)
}

// A jet carries its vehicle's thrust as momentum, whatever the depth: ∫ρw² summed over a square of six widths by midpoints is the thrust to 1e-9
// (a smooth function that has died down at the edge).
func TestJetCarriesTheThrust(t *testing.T) {
	v := Rotors{At: vec.V3{0, 0, 20}, Down: vec.V3{0, 0, -1}, Places: make([]vec.V3, 4), Radius: 0.1, Reach: 0.35}
	for _, z := range []float64{18.2, 15, 0} {
		wide := Width(0.35, 0.1, 20-z)
		sum := grid(3*wide, 3*wide, 180, func(x, y float64) float64 {
			w, square := v.Flow([]float64{2, 3, 2, 3}, vec.V3{x, y, z}, 0.1, rho)
			if w*w != square {
				t.Fatal("mean of one speed")
			}
			return rho * square
		})
		within(t, "thrust", sum[0], 10, 1e-9)
	}
}

// Two discs against a grid, one in the other, apart, and half a lens by hand: radii 1 at a distance 1 share 2π/3 − √3/2.
func TestLens(t *testing.T) {
	within(t, "lens", lens(1, 1, 1), 2*math.Pi/3-math.Sqrt(3)/2, 1e-14)
	within(t, "inside", lens(0.1, 0.3, 1), math.Pi*0.09, 1e-14)
	if lens(2, 1, 1) != 0 {
		t.Error("apart")
	}
	for _, d := range []float64{0.4, 0.7, 0.95} {
		sum := grid(0.6, 0.6, 600, func(x, y float64) float64 {
			if math.Hypot(x, y) <= 0.6 && math.Hypot(x-d, y) <= 0.5 {
				return 1
			}
			return 0
		})
		if got := lens(d, 0.6, 0.5); math.Abs(got-sum[0]) > 2e-3*0.36 {
			t.Errorf("%g apart: %g, counted %g", d, got, sum[0])
		}
	}
}

// The thrust in a wake put back into the power of (18.5), and by hand: an ideal rotor (k = FM = 1 is out of reach, so that its factor is
// 1/FM throughout) whose air comes down with w loses so much that x (v + w FM) = v_h with v + w = x v_h²/v.
func TestInWake(t *testing.T) {
	area := math.Pi * 0.04
	for _, fm := range []float64{0.5, 0.7, 0.95, math.NaN()} {
		known := fm
		if math.IsNaN(fm) {
			known = 1 / momentum.InducedFactor
		}
		last := 1.0
		for _, w := range []float64{0, 0.1, 1, 5, 20} {
			x := InWake(12, area, fm, rho, w)
			within(t, "power", momentum.Shaft(12*x, area, known, rho, 0, w), momentum.Shaft(12, area, known, rho, 0, 0), 1e-12)
			if w > 0 && x >= last {
				t.Errorf("a wake of %g m/s leaves %g, a slower one %g", w, x, last)
			}
			last = x
		}
	}
	h := momentum.Hover(12, area, rho)
	x := InWake(12, area, 0.95, rho, 2*h)
	v := h * (-1 + math.Sqrt(1+x)) // v (v + 2h) = x h²
	within(t, "by hand", x*(v/0.95+2*h), h/0.95, 1e-12)
}

// A plate of 1.2 m by 0.4 m below one vehicle at 1.2 m: all four contracted wakes but what passes its sides. By hand: rotors at ±0.141 m are
// within 0.2 m of the middle, their wakes of 0.0898 m reach 0.231 m, so that a strip of each passes. From farther above: one jet, which takes
// less of the plate and presses in its middle; turned by a right angle the same plate is another.
func TestShadow(t *testing.T) {
	d := 0.2 * math.Sqrt(0.5)
	v := Rotors{At: vec.V3{0, 0, 1}, Down: vec.V3{0, 0, -1}, Places: []vec.V3{{d, d, 0}, {-d, d, 0}, {-d, -d, 0}, {d, -d, 0}}, Radius: 0.127, Reach: 0.327}
	plate := plan.Solid{Shape: plan.Plate, Size: []float64{1.2, 0.4}, At: vec.V3{0, 0, -0.2}}
	faces := Faces([]plan.Solid{plate})
	r, edge := 0.127/math.Sqrt2, 0.2-d
	cap := r*r*math.Acos(edge/r) - edge*math.Sqrt(r*r-edge*edge)
	for j := range 4 {
		s := v.Shadow(j, faces)
		within(t, "area", s.Area, math.Pi*r*r-cap, 1e-12)
		within(t, "share", s.Share, 1.17*s.Area/(math.Pi*0.127*0.127), 1e-12)
		within(t, "depth", s.Depth, 1.2, 1e-12)
		if s.Jet || s.At[0]*v.Places[j][0] <= 0 || math.Abs(s.At[1]) >= d || math.Abs(s.At[2]+0.2) > 1e-15 {
			t.Errorf("%+v", s)
		}
	}
	v.At[2] = 1.5 // 2.5 diameters of 0.654 m are 1.635 m; the plate is 0.2 m lower still
	s := v.Shadow(2, faces)
	wide := Width(0.327, 0.127, 1.7)
	within(t, "jet", s.Share, 1.17/2*math.Erf(1.2/wide)*math.Erf(0.4/wide), 1e-12)
	if !s.Jet || math.Hypot(s.At[0], s.At[1]) > 1e-15 {
		t.Errorf("%+v", s)
	}
	plate.Turn[2] = 90
	v.At = vec.V3{0, 0.5, 1}
	turned := v.Shadow(0, Faces([]plan.Solid{plate}))
	if turned.Area <= 0 || turned.At[1] < 0.5 || turned.At[0] <= 0 || turned.At[0] > 0.2 {
		t.Errorf("%+v", turned)
	}
	plate.Turn = vec.V3{90, 0, 0} // on its edge it has no area
	if s := v.Shadow(0, Faces([]plan.Solid{plate})); s.Share > 1e-12 {
		t.Errorf("%+v", s)
	}
}

// A tilted vehicle's wakes meet the plate where its air goes; many plates above each other take no more than the wake has: C_d/2 of the thrust.
func TestTiltedAndStacked(t *testing.T) {
	sin, cos := math.Sincos(0.3)
	v := Rotors{At: vec.V3{0, 0, 1}, Down: vec.V3{sin, 0, -cos}, Places: []vec.V3{{}}, Radius: 0.1, Reach: 0.3}
	plate := plan.Solid{Shape: plan.Plate, Size: []float64{0.5, 0.5}, At: vec.V3{math.Tan(0.3), 0, 0}}
	s := v.Shadow(0, Faces([]plan.Solid{plate, plate, plate}))
	within(t, "share", s.Share, 1.17/2, 1e-12)
	within(t, "where", s.At[0], math.Tan(0.3), 1e-12)
	within(t, "way", s.Depth, 1/cos, 1e-12)
}

// Solids: the outline of each shape and its lowest point, by hand; a tipped box by its corners.
func TestFaces(t *testing.T) {
	box := plan.Solid{Shape: plan.Box, Size: []float64{2, 1, 0.2}, At: vec.V3{1, 2, 3}, Turn: vec.V3{0, 30, 0}}
	sin, cos := math.Sincos(math.Pi / 6)
	f := Faces([]plan.Solid{box})[0]
	within(t, "length", f.A, cos+0.1*sin, 1e-12)
	within(t, "width", f.B, 0.5, 1e-12)
	within(t, "height", f.At[2], 3+sin+0.1*cos, 1e-12)
	within(t, "lowest", Lowest([]plan.Solid{box}), 3-sin-0.1*cos, 1e-12)
	tetra := plan.Solid{Shape: plan.MeshBody, Mesh: &plan.Mesh{Vertices: []vec.V3{{0, 0, -0.5}, {1, 0, 0}, {0, 2, 0}, {0, 0, 0.7}}}, At: vec.V3{0, 0, 1}}
	if f := Faces([]plan.Solid{tetra})[0]; f.A != 1 || f.B != 2 || math.Abs(f.At[2]-1.7) > 1e-15 || Lowest([]plan.Solid{tetra}) != 0.5 {
		t.Errorf("%+v", f)
	}
	if n := len(Faces([]plan.Solid{{Shape: plan.Rod, Length: 3}, {Shape: plan.Point}})); n != 0 || Lowest(nil) != 0 {
		t.Errorf("%d faces of nothing", n)
	}
}
