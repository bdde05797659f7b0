package drawing

import (
	"sort"

	"cohoist/core/vec"
)

// Products of edges and faces up to which hidden lines are found exactly; beyond, an edge is hidden
// when both its faces look away.
const hiddenExact = 150_000

// A screen of one face: what it covers and where its plane lies. Camera axes, metres.
type cover struct {
	pts      []vec.V3 // right, up, near; anticlockwise
	n        vec.V3   // towards the eye
	min, max [2]float64
}

// seen is one body in camera axes.
type seen struct {
	pts    []vec.V3
	facing []bool
}

func (c Camera) see(b body) seen {
	s := seen{pts: make([]vec.V3, len(b.points)), facing: make([]bool, len(b.faces))}
	for i, p := range b.points {
		s.pts[i] = vec.V3{c.Right.Dot(p), c.Up.Dot(p), c.Near.Dot(p)}
	}
	for i, f := range b.faces {
		s.facing[i] = c.Near.Dot(f.normal) > 1e-9*f.normal.Norm()
	}
	return s
}

func covers(b body, s seen) []cover {
	var out []cover
	for i, f := range b.faces {
		if !s.facing[i] || f.bore {
			continue
		}
		k := cover{pts: make([]vec.V3, len(f.at))}
		for j, at := range f.at {
			q := s.pts[at]
			k.pts[j] = q
			for d := range 2 {
				if j == 0 || q[d] < k.min[d] {
					k.min[d] = q[d]
				}
				if j == 0 || q[d] > k.max[d] {
					k.max[d] = q[d]
				}
			}
		}
		at := make([]int, len(k.pts))
		for j := range at {
			at[j] = j
		}
		k.n = newell(k.pts, at).Unit()
		out = append(out, k)
	}
	return out
}

// span is a part of an edge, from 0 at its first end to 1 at its second.
type span struct{ lo, hi float64 }

// behind returns the part of the edge a–b that the face hides. tol is a length below which a point
// counts as on the face or on its rim, and is not hidden.
func (k *cover) behind(a, b vec.V3, tol float64) (span, bool) {
	for d := range 2 {
		if max(a[d], b[d]) <= k.min[d]+tol || min(a[d], b[d]) >= k.max[d]-tol {
			return span{}, false
		}
	}
	s := span{0, 1}
	// Behind the plane: n·(p − q) ≤ −tol, linear along the edge.
	if !s.clip(-k.n.Dot(a.Sub(k.pts[0]))-tol, -k.n.Dot(b.Sub(k.pts[0]))-tol) {
		return s, false
	}
	for i, q := range k.pts { // left of every side
		r := k.pts[(i+1)%len(k.pts)]
		e := vec.V3{r[0] - q[0], r[1] - q[1], 0}.Unit()
		if !s.clip(e[0]*(a[1]-q[1])-e[1]*(a[0]-q[0])-tol, e[0]*(b[1]-q[1])-e[1]*(b[0]-q[0])-tol) {
			return s, false
		}
	}
	return s, s.hi-s.lo > 1e-6
}

// clip keeps the part where a value that runs linearly from g0 to g1 is not negative.
func (s *span) clip(g0, g1 float64) bool {
	if g0 < 0 && g1 < 0 {
		return false
	}
	if g0 < 0 {
		s.lo = max(s.lo, g0/(g0-g1))
	} else if g1 < 0 {
		s.hi = min(s.hi, g0/(g0-g1))
	}
	return s.lo < s.hi
}

// merge unites overlapping spans, in order.
func merge(spans []span) []span {
	sort.Slice(spans, func(i, j int) bool { return spans[i].lo < spans[j].lo })
	var out []span
	for _, s := range spans {
		if n := len(out); n > 0 && s.lo <= out[n-1].hi+1e-9 {
			out[n-1].hi = max(out[n-1].hi, s.hi)
			continue
		}
		out = append(out, s)
	}
	return out
}

// solids draws the bodies of the payload: filled, hidden edges, visible edges.
func (c Camera) solids(p *pen, list []body, extent float64) {
	all := make([]seen, len(list))
	var screen []cover
	edges := 0
	for i, b := range list {
		all[i] = c.see(b)
		screen = append(screen, covers(b, all[i])...)
		edges += len(b.edges)
	}
	exact := edges*len(screen) <= hiddenExact
	for i, b := range list {
		c.fill(p, b, all[i])
		for _, e := range b.edges {
			f, g := e.f < 0 || all[i].facing[e.f], e.g < 0 || all[i].facing[e.g]
			if e.soft && f == g {
				continue
			}
			a, z := b.points[e.a], b.points[e.b]
			visible, hidden := classEdge, classHidden
			switch {
			case e.f < 0:
				visible = classRod
			case e.fine && f == g:
				visible, hidden = classFine, ""
			}
			if !exact {
				if !f && !g {
					visible = hidden
				}
				c.part(p, visible, a, z, 0, 1)
				continue
			}
			var under []span
			for k := range screen {
				if s, ok := screen[k].behind(all[i].pts[e.a], all[i].pts[e.b], 1e-6*extent); ok {
					under = append(under, s)
				}
			}
			t := 0.0
			for _, s := range merge(under) {
				c.part(p, visible, a, z, t, s.lo)
				c.part(p, hidden, a, z, s.lo, s.hi)
				t = s.hi
			}
			c.part(p, visible, a, z, t, 1)
		}
	}
}

func (c Camera) part(p *pen, class string, a, b vec.V3, lo, hi float64) {
	if hi-lo < 1e-6 || class == "" {
		return
	}
	d := b.Sub(a)
	s, e := c.At(a.Add(d.Scale(lo))), c.At(a.Add(d.Scale(hi)))
	if near(s, e) { // seen end on
		return
	}
	p.line(class, s, e)
}

// fill paints what faces the eye, or the outline of a body too fine for that. All faces run the same
// way round on the screen, so that they unite in one path.
func (c Camera) fill(p *pen, b body, s seen) {
	switch {
	case b.hull:
		pts := make([]Point, len(b.points))
		for i, q := range b.points {
			pts[i] = c.At(q)
		}
		h := outline(pts)
		p.poly(classSolid, h...)
		p.poly(classEdge, h...)
	case len(b.points) == 1: // a point mass: a cross in a ring
		q := c.At(b.points[0])
		p.circle(classPoint, q, 3.5)
		p.line(classPoint, Point{q.X - 5.5, q.Y}, Point{q.X + 5.5, q.Y})
		p.line(classPoint, Point{q.X, q.Y - 5.5}, Point{q.X, q.Y + 5.5})
	default:
		for i, f := range b.faces {
			if !s.facing[i] || f.bore {
				continue
			}
			pts := make([]Point, len(f.at))
			for j, at := range f.at {
				pts[j] = c.At(b.points[at])
			}
			p.poly(classSolid, pts...)
		}
	}
}
