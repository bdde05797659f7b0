package patch

import (
	"cmp"
	"math"
	"slices"
)

// XY is a point in the plane of payload x and y, m.
type XY [2]float64

func (a XY) add(b XY) XY           { return XY{a[0] + b[0], a[1] + b[1]} }
func (a XY) sub(b XY) XY           { return XY{a[0] - b[0], a[1] - b[1]} }
func (a XY) scale(k float64) XY    { return XY{float64(k * a[0]), float64(k * a[1])} }
func (a XY) dot(b XY) float64      { return float64(a[0]*b[0]) + float64(a[1]*b[1]) }
func (a XY) cross(b XY) float64    { return float64(a[0]*b[1]) - float64(a[1]*b[0]) }
func (a XY) norm() float64         { return math.Hypot(a[0], a[1]) }
func (a XY) right() XY             { return XY{a[1], -a[0]} } // outwards of an anticlockwise edge along a
func (a XY) distance(b XY) float64 { return a.sub(b).norm() }

// half is the half-plane n · c ≤ h, n a unit vector.
type half struct {
	n XY
	h float64
}

// clip is the part of a convex polygon within a half-plane let out by eps; corners anticlockwise. Two
// corners are a segment, one is a point.
func clip(polygon []XY, g half, eps float64) []XY {
	var out []XY
	for i, b := range polygon {
		a := polygon[(i+len(polygon)-1)%len(polygon)]
		da, db := g.n.dot(a)-g.h-eps, g.n.dot(b)-g.h-eps
		if da > 0 != (db > 0) {
			out = append(out, a.add(b.sub(a).scale(da/(da-db))))
		}
		if db <= 0 {
			out = append(out, b)
		}
	}
	return out
}

// hull is the convex hull of points, anticlockwise from the leftmost, without corners on its edges
// (Andrew's monotone chain).
func hull(points []XY) []XY {
	p := slices.Clone(points)
	slices.SortFunc(p, func(a, b XY) int { return cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(a[1], b[1])) })
	p = slices.Compact(p)
	if len(p) < 3 {
		return p
	}
	chain := func(out []XY, from int, q XY) []XY {
		for len(out) >= from+2 && out[len(out)-1].sub(out[len(out)-2]).cross(q.sub(out[len(out)-1])) <= 0 {
			out = out[:len(out)-1]
		}
		return append(out, q)
	}
	out := make([]XY, 0, len(p)+1)
	for _, q := range p {
		out = chain(out, 0, q)
	}
	from := len(out) - 1
	for i := len(p) - 2; i >= 0; i-- {
		out = chain(out, from, p[i])
	}
	return out[:len(out)-1]
}

// tidy leaves out corners that stand out by less than eps: points on an edge, but for rounding.
func tidy(polygon []XY, eps float64) []XY {
	out := slices.Clone(polygon)
	for i := 0; i < len(out) && len(out) > 3; {
		n := len(out)
		a, b, c := out[(i+n-1)%n], out[i], out[(i+1)%n]
		if e := c.sub(a); e.cross(a.sub(b)) <= eps*e.norm() {
			out = slices.Delete(out, i, i+1)
		} else {
			i++
		}
	}
	return out
}

// halves are half-planes that together are a convex polygon, a segment or a point.
func halves(polygon []XY) []half {
	switch len(polygon) {
	case 0:
		return nil
	case 1:
		polygon = []XY{polygon[0], polygon[0].add(XY{1, 0})}
		return append(halves(polygon)[:3:3], half{XY{1, 0}, polygon[0][0]})
	case 2:
		a, b := polygon[0], polygon[1]
		u := b.sub(a).scale(1 / b.distance(a))
		n := u.right()
		return []half{{n, n.dot(a)}, {n.scale(-1), -n.dot(a)}, {u.scale(-1), -u.dot(a)}, {u, u.dot(b)}}
	}
	out := make([]half, 0, len(polygon))
	for i, b := range polygon {
		a := polygon[(i+len(polygon)-1)%len(polygon)]
		n := b.sub(a).right()
		n = n.scale(1 / n.norm())
		out = append(out, half{n, n.dot(a)})
	}
	return out
}

// intersect is what two convex polygons share, within eps. What has fewer dimensions is clipped.
func intersect(a, b []XY, eps float64) []XY {
	if len(a) > len(b) && len(b) < 3 {
		a, b = b, a
	}
	if len(b) == 0 {
		return nil
	}
	for _, g := range halves(b) {
		a = clip(a, g, eps)
	}
	return hull(a)
}

// nearest is the point of a convex polygon's edge that is nearest to c, and whether c is inside.
func nearest(polygon []XY, c XY) (at XY, inside bool) {
	inside = len(polygon) >= 3
	best := math.Inf(1)
	for i, b := range polygon {
		a := polygon[(i+len(polygon)-1)%len(polygon)]
		e := b.sub(a)
		k := 0.0
		if l := e.dot(e); l > 0 {
			k = math.Max(0, math.Min(1, c.sub(a).dot(e)/l))
		}
		q := a.add(e.scale(k))
		if d := q.distance(c); d < best {
			best, at = d, q
		}
		inside = inside && e.cross(c.sub(a)) >= 0
	}
	return at, inside
}

// beyond is how far c is outside a convex polygon, m.
func beyond(polygon []XY, c XY) float64 {
	at, inside := nearest(polygon, c)
	switch {
	case inside:
		return 0
	case len(polygon) == 0:
		return math.Inf(1)
	}
	return at.distance(c)
}

// area of a polygon, m².
func area(polygon []XY) float64 {
	sum := 0.0
	for i, b := range polygon {
		sum += polygon[(i+len(polygon)-1)%len(polygon)].cross(b)
	}
	return sum / 2
}
