// Package beam gives the statics of a long payload as a straight beam along its x axis, and says
// who carries it (THEORY chapter 9).
//
// Restriction: one straight slender bar of one section, linear elastic, small deflections; shear
// deformation, torsion and the bending that axial force adds on a bent bar are left out.
// Geometry: payload axes, x along the bar. Everything is exact: loads are piecewise polynomials, so
// shear, moment, slope and deflection are too, and peaks stand where a derivative is zero, found
// to the last digit, not sampled. Verification: textbook tables and a general finite-element
// solution in the tests.
package beam

import (
	"math"
	"slices"
	"sort"

	"cohoist/core/vec"
)

// Bar is the beam: where it lies, its section and what it is made of.
type Bar struct {
	Left, Right float64    // m, payload x of its ends
	Axis        [2]float64 // m, payload y and z of its centreline
	Section     Section
	Youngs      float64 // Pa, E; +Inf for a bar that does not bend
	Allowable   float64 // Pa, stress it may bear; NaN when not known
}

// Point is a force (N) and a moment (N m), payload axes, acting on the centreline at X (m).
type Point struct {
	X      float64
	Force  vec.V3
	Moment vec.V3
}

// Spread is a force per length (N/m, payload axes) that changes evenly from A at From to B at To (m).
type Spread struct {
	From, To float64
	A, B     vec.V3
}

// Loads are all that acts on the bar, its weight and what holds it included.
type Loads struct {
	Points  []Point
	Spreads []Spread
}

// Act moves a force (N) and a moment (N m) that act at a point of the payload (m) to the
// centreline, with the moment that the lever adds, (9.3). What acts beyond an end is taken to
// that end.
func (b Bar) Act(at, force, moment vec.V3) Point {
	x := math.Min(math.Max(at[0], b.Left), b.Right)
	lever := at.Sub(vec.V3{x, b.Axis[0], b.Axis[1]})
	return Point{x, force, moment.Add(lever.Cross(force))} // (9.3)
}

// Plane is one of the two planes in which a bar bends.
type Plane int

// The planes: Upright bends in x and z, Level in x and y.
const (
	Upright Plane = iota
	Level
)

// Bending is what happens in one plane, along x. Forces and deflections count along z (Upright) or y
// (Level); a positive moment stretches the side of −z or −y: it sags.
type Bending struct {
	Shear      Curve // N, the sum of forces to the left
	Moment     Curve // N m
	Slope      Curve // rad
	Deflection Curve // m
}

// Diagram is a bar under its loads.
type Diagram struct {
	Bar      Bar
	Axial    Curve // N, positive in tension
	Planes   [2]Bending
	Residual [6]float64 // force (N) and moment about the right end (N m) that the loads leave unbalanced
}

// Bend computes the diagram, (9.1) to (9.5). Deflections are measured from the straight line
// through the centreline at x1 and x2 (m), or from the tangent at x1 when the two are the same.
func (b Bar) Bend(l Loads, x1, x2 float64) Diagram {
	d := Diagram{Bar: b}
	for i, p := range []Plane{Upright, Level} {
		shear, moment, force, couple := b.curves(l, p)
		d.Planes[i] = b.bent(shear, moment, p).measured(x1, x2)
		d.Residual[2-i], d.Residual[4+i] = force, couple
	}
	axial, _, force, _ := b.curves(l, axial)
	d.Axial = axial.scale(-1)
	d.Residual[0] = force
	return d
}

// Upright returns the bending moment in the upright plane alone, (9.2).
func (b Bar) Upright(l Loads) Curve {
	_, moment, _, _ := b.curves(l, Upright)
	return moment
}

// axial is the third way of adding up forces: along x, without moments.
const axial Plane = -1

// along returns force and couple of a point in a plane. A couple is what the moment jumps by, (9.3).
func (p Plane) along(q Point) (force, couple float64) {
	switch p {
	case Upright:
		return q.Force[2], q.Moment[1]
	case Level:
		return q.Force[1], -q.Moment[2]
	}
	return q.Force[0], 0
}

func (p Plane) index() int { return map[Plane]int{Upright: 2, Level: 1, axial: 0}[p] }

// curves adds up the loads from the left, (9.1) and (9.2), and says what is left at the right end.
func (b Bar) curves(l Loads, p Plane) (shear, moment Curve, force, couple float64) {
	x := b.knots(l)
	i := p.index()
	for k := range len(x) - 1 {
		for _, q := range l.Points {
			if q.X == x[k] {
				f, c := p.along(q)
				force, couple = force+f, couple+c
			}
		}
		var load Poly
		for _, s := range l.Spreads {
			if s.From <= x[k] && s.To >= x[k+1] && s.To > s.From {
				grow := (s.B[i] - s.A[i]) / (s.To - s.From)
				load = load.plus(1, Poly{s.A[i] + float64(grow*(x[k]-s.From)), grow})
			}
		}
		v := load.integral(force) // (9.1)
		m := v.integral(couple)   // (9.2)
		shear.P, moment.P = append(shear.P, v), append(moment.P, m)
		force, couple = v.At(x[k+1]-x[k]), m.At(x[k+1]-x[k])
	}
	for _, q := range l.Points {
		if q.X == b.Right {
			f, c := p.along(q)
			force, couple = force+f, couple+c
		}
	}
	shear.X, moment.X = x, x
	return shear, moment, force, couple
}

// knots are the places where a load begins, ends or stands.
func (b Bar) knots(l Loads) []float64 {
	x := []float64{b.Left, b.Right}
	for _, q := range l.Points {
		x = append(x, q.X)
	}
	for _, s := range l.Spreads {
		x = append(x, s.From, s.To)
	}
	sort.Slice(x, func(i, j int) bool { return x[i] < x[j] })
	x = slices.Compact(x)
	from, _ := slices.BinarySearch(x, b.Left)
	to, _ := slices.BinarySearch(x, b.Right)
	return x[from : to+1]
}

// bent integrates the curvature M/EI twice, (9.4). The line is still free to shift and turn.
func (b Bar) bent(shear, moment Curve, p Plane) Bending {
	curvature := moment.scale(0)
	if ei := b.Stiffness(p); !math.IsInf(ei, 1) {
		curvature = moment.scale(1 / ei)
	}
	slope := curvature.integral(0, 0)
	return Bending{shear, moment, slope, slope.integral(0, 0)}
}

// measured turns and shifts the line so that it passes through the places x1 and x2, (9.5).
func (d Bending) measured(x1, x2 float64) Bending {
	w1, w2 := d.Deflection.At(x1), d.Deflection.At(x2)
	turn := -d.Slope.At(x1)
	if x1 != x2 {
		turn = (w1 - w2) / (x2 - x1)
	}
	return d.moved(-w1-float64(turn*(x1-d.Slope.X[0])), turn)
}

// moved adds shift + turn (x − left) to the deflection.
func (d Bending) moved(shift, turn float64) Bending {
	slope := Curve{X: d.Slope.X}
	for _, p := range d.Slope.P {
		slope.P = append(slope.P, p.plus(1, Poly{turn}))
	}
	d.Slope, d.Deflection = slope, slope.integral(d.Deflection.P[0][0]+shift, 0)
	return d
}

// Stiffness is EI in a plane, N m².
func (b Bar) Stiffness(p Plane) float64 {
	return b.Youngs * b.Section.Second[p]
}
