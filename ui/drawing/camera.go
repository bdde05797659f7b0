package drawing

import (
	"math"

	"cohoist/core/vec"
)

// Camera is a parallel projection of the scene to the screen.
type Camera struct {
	Right, Up, Near vec.V3 // unit vectors of the scene: screen right, screen up, towards the eye
	Scale           float64
	Origin          Point // where the scene's origin comes to lie
}

// Elevation looks along +y: x right, z up.
func Elevation(scale float64, origin Point) Camera {
	return Camera{vec.V3{1, 0, 0}, vec.V3{0, 0, 1}, vec.V3{0, -1, 0}, scale, origin}
}

// PlanView looks straight down: x right, y up.
func PlanView(scale float64, origin Point) Camera {
	return Camera{vec.V3{1, 0, 0}, vec.V3{0, 1, 0}, vec.V3{0, 0, 1}, scale, origin}
}

// Turned looks from the bearing azimuth (degrees anticlockwise from −y, seen from above) and down by
// the angle height above the horizon, in degrees.
func Turned(azimuth, height, scale float64, origin Point) Camera {
	sa, ca := math.Sincos(azimuth * math.Pi / 180)
	sh, ch := math.Sincos(height * math.Pi / 180)
	out := vec.V3{sa, -ca, 0} // horizontal, towards the eye
	return Camera{
		Right: vec.V3{ca, sa, 0},
		Up:    vec.V3{-sh * out[0], -sh * out[1], ch},
		Near:  vec.V3{ch * out[0], ch * out[1], sh},
		Scale: scale, Origin: origin,
	}
}

// At projects a point of the scene.
func (c Camera) At(p vec.V3) Point {
	return Point{c.Origin.X + c.Scale*c.Right.Dot(p), c.Origin.Y - c.Scale*c.Up.Dot(p)}
}

// Along projects a direction: what one metre of it is on the screen.
func (c Camera) Along(d vec.V3) Point {
	return Point{c.Scale * c.Right.Dot(d), -c.Scale * c.Up.Dot(d)}
}

// Depth is how far a point is towards the eye, in metres.
func (c Camera) Depth(p vec.V3) float64 { return c.Near.Dot(p) }

// Moved undoes the projection for a drag: where p goes when it is moved by dx, dy on the screen, its
// depth kept.
func (c Camera) Moved(p vec.V3, dx, dy float64) vec.V3 {
	return p.Add(c.Right.Scale(dx / c.Scale)).Add(c.Up.Scale(-dy / c.Scale))
}

// disc returns the ellipse a disc of radius r about centre with the given unit normal is seen as:
// half axes and the turn of the longer, in degrees. Exact for a parallel projection: the long axis
// lies across the projected normal, and the short one is r |normal · eye|.
func (c Camera) disc(r float64, normal vec.V3) (rx, ry, turn float64) {
	n := c.Along(normal)
	rx = r * c.Scale
	ry = rx * math.Min(1, math.Abs(c.Near.Dot(normal)))
	if math.Hypot(n.X, n.Y) > 1e-9*c.Scale {
		turn = math.Atan2(n.Y, n.X)*180/math.Pi + 90
	}
	return rx, ry, turn
}

// angle between a direction and the vertical, degrees.
func angle(d vec.V3) float64 { return math.Atan2(math.Hypot(d[0], d[1]), d[2]) * 180 / math.Pi }
