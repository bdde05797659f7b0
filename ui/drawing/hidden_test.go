package drawing

import (
	"math"
	"testing"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// drawn sums the lengths of a class's lines on the screen.
func drawn(l List, class string) float64 {
	sum := 0.0
	for _, s := range l {
		if s.Class != class {
			continue
		}
		var at Point
		for _, g := range s.Path {
			if g.Op == 'L' {
				sum += math.Hypot(g.P.X-at.X, g.P.Y-at.Y)
			}
			at = g.P
		}
	}
	return sum
}

func shown(c Camera, list ...body) List {
	p := newPen(layers...)
	for i := range list {
		list[i] = list[i].placed(vec.Identity, vec.V3{})
	}
	c.solids(p, list, 4)
	return p.done()
}

// A cube seen along its diagonal direction shows nine edges and hides the three that meet behind.
func TestCubeHidesThreeEdges(t *testing.T) {
	c := Turned(35, 25, 10, Point{})
	l := shown(c, box(vec.V3{0.5, 0.5, 0.5}))
	one := 0.0 // the three edges that meet in a corner, as they are seen
	for k := range 3 {
		var e vec.V3
		e[k] = 1
		d := c.Along(e)
		one += math.Hypot(d.X, d.Y)
	}
	if got := drawn(l, classHidden); math.Abs(got-one) > 1e-3 {
		t.Errorf("hidden %g, want %g", got, one)
	}
	if got := drawn(l, classEdge); math.Abs(got-3*one) > 1e-3 {
		t.Errorf("visible %g, want %g", got, 3*one)
	}
}

// By hand: seen from the front, a low wide box stands before a rod that runs from x = −2 to 2 behind
// it; the box covers x from −1 to 1.
func TestBoxHidesTheRodBehindIt(t *testing.T) {
	b := box(vec.V3{1, 0.1, 0.3})
	rod, _ := newBody(plan.Solid{Shape: plan.Rod, Length: 4})
	for i := range rod.points {
		rod.points[i][1] = 1
	}
	c := Elevation(10, Point{})
	l := shown(c, b, rod)
	if got := drawn(l, classRod); math.Abs(got-20) > 1e-3 {
		t.Errorf("%g of the rod is seen, want 2 m × 10", got)
	}
	for i := range rod.points {
		rod.points[i][1] = -1 // now before it
	}
	if got := drawn(shown(c, b, rod), classRod); math.Abs(got-40) > 1e-3 {
		t.Errorf("%g of the rod is seen, want 4 m × 10", got)
	}
}

// Normals of all faces of every solid point outwards: the flux of the place vector is three times
// the volume, by the divergence theorem.
func TestFacesTurnOutwards(t *testing.T) {
	wedge := math.Sin(2*math.Pi/roundSides) / 2 * roundSides // area of the polygon in a unit circle
	for _, k := range []struct {
		name string
		s    plan.Solid
		want float64
	}{
		{"box", plan.Solid{Shape: plan.Box, Size: []float64{2, 3, 4}}, 24},
		{"cylinder", plan.Solid{Shape: plan.Cylinder, Length: 2, OuterRadius: 0.5}, 2 * 0.25 * wedge},
		{"mesh", plan.Solid{Shape: plan.MeshBody, Mesh: &plan.Mesh{Vertices: []vec.V3{{}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
			Triangles: [][3]int{{0, 2, 1}, {0, 1, 3}, {0, 3, 2}, {1, 2, 3}}}}, 1.0 / 6},
	} {
		b, ok := newBody(k.s)
		if !ok {
			t.Fatalf("%s: no body", k.name)
		}
		b = b.placed(vec.Identity, vec.V3{0.3, -2, 5})
		sum := 0.0
		for _, f := range b.faces {
			var mid vec.V3
			for _, i := range f.at {
				mid = mid.Add(b.points[i].Scale(1 / float64(len(f.at))))
			}
			sum += mid.Dot(f.normal) / 2 / 3
		}
		if math.Abs(sum-k.want) > 1e-12*30 {
			t.Errorf("%s: flux/3 is %g, want the volume %g", k.name, sum, k.want)
		}
	}
}

func TestOutlineOfASquare(t *testing.T) {
	h := outline([]Point{{0, 0}, {1, 0.5}, {2, 0}, {2, 2}, {1, 1}, {0, 2}, {0, 1}})
	if len(h) != 4 {
		t.Errorf("outline %v, want the four corners", h)
	}
}
