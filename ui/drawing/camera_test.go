package drawing

import (
	"math"
	"math/rand/v2"
	"testing"

	"cohoist/core/vec"
)

func cameras(r *rand.Rand) []Camera {
	scale := math.Exp(r.Float64()*10 - 3)
	at := Point{r.Float64() * 400, r.Float64() * 400}
	return []Camera{Elevation(scale, at), PlanView(scale, at), Turned(r.Float64()*360-180, r.Float64()*180-90, scale, at)}
}

func point(r *rand.Rand) vec.V3 {
	return vec.V3{r.NormFloat64() * 3, r.NormFloat64() * 3, r.NormFloat64() * 3}
}

// A camera's axes are a right-handed set of unit vectors, so that lengths seen square on are true.
func TestCameraAxes(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	for range 100 {
		for _, c := range cameras(r) {
			if d := c.Right.Cross(c.Up).Sub(c.Near).Norm(); d > 1e-14 {
				t.Fatalf("right × up is not towards the eye in %+v: off by %g", c, d)
			}
			if d := math.Abs(c.Right.Norm()-1) + math.Abs(c.Up.Norm()-1); d > 1e-14 {
				t.Fatalf("axes are not unit vectors in %+v: off by %g", c, d)
			}
		}
	}
}

// What a drag un-projects lands under the pointer again, and its depth is kept, to rounding.
func TestMovedProjectsBack(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 2))
	for range 200 {
		for _, c := range cameras(r) {
			p, dx, dy := point(r), r.NormFloat64()*200, r.NormFloat64()*200
			q := c.Moved(p, dx, dy)
			a, b := c.At(p), c.At(q)
			if math.Abs(b.X-a.X-dx) > 1e-9 || math.Abs(b.Y-a.Y-dy) > 1e-9 {
				t.Fatalf("moved by %g %g, seen %g %g", dx, dy, b.X-a.X, b.Y-a.Y)
			}
			if d := math.Abs(c.Depth(q)-c.Depth(p)) / (1 + q.Norm()); d > 1e-12 {
				t.Fatalf("depth changed by %g of the way", d)
			}
		}
	}
}

func TestTurnedAtZeroIsTheElevation(t *testing.T) {
	a, b := Turned(0, 0, 50, Point{1, 2}), Elevation(50, Point{1, 2})
	r := rand.New(rand.NewPCG(3, 3))
	for range 20 {
		p := point(r)
		if d := math.Hypot(a.At(p).X-b.At(p).X, a.At(p).Y-b.At(p).Y); d > 1e-12 {
			t.Fatalf("%v differs by %g", p, d)
		}
	}
	up := Turned(0, 90, 50, Point{}).At(vec.V3{0.3, 0.2, 9})
	if math.Abs(up.X-15) > 1e-12 || math.Abs(up.Y+10) > 1e-12 {
		t.Errorf("from straight above (0.3, 0.2) is seen at %v, want (15, −10)", up)
	}
}

// Points of a rotor disc's rim lie on the ellipse it is drawn as.
func TestDiscIsTheProjectedCircle(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 4))
	for range 100 {
		for _, c := range cameras(r) {
			n, radius, at := point(r).Unit(), 0.1+r.Float64(), point(r)
			u := n.Cross(point(r)).Unit()
			w := n.Cross(u)
			rx, ry, turn := c.disc(radius, n)
			s, k := math.Sincos(turn * math.Pi / 180)
			mid := c.At(at)
			for range 8 {
				sa, ca := math.Sincos(r.Float64() * 2 * math.Pi)
				q := c.At(at.Add(u.Scale(radius * ca)).Add(w.Scale(radius * sa)))
				x, y := q.X-mid.X, q.Y-mid.Y
				a, b := (x*k+y*s)/rx, (y*k-x*s)/ry
				if ry > 1e-3*rx && math.Abs(a*a+b*b-1) > 1e-6 { // the ratio loses digits as the ellipse flattens
					t.Fatalf("rim at %g of the ellipse (half axes %g %g)", a*a+b*b, rx, ry)
				}
			}
		}
	}
}
