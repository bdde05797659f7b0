package place

import (
	"math"

	"cohoist/core/vec"
)

// straight tells that points, seen from above, lie in one line.
func straight(points []vec.V3) bool {
	if len(points) == 0 {
		return true
	}
	sp := make([]spot, len(points))
	for i, p := range points {
		sp[i] = spot{x: p[0], y: p[1]}
	}
	i, j, extent := farthest(sp)
	return extent == 0 || inLine(sp, i, (sp[j].x-sp[i].x)/extent, (sp[j].y-sp[i].y)/extent, extent)
}

// level tells that points are all at one height.
func level(points []vec.V3) bool {
	for _, p := range points {
		if math.Abs(p[2]-points[0][2]) > 1e-9 {
			return false
		}
	}
	return true
}

// orbits gathers holes with their mirror images about x = 0 (mirror[0]) and y = 0 (mirror[1]); holes that lack
// one of theirs are left out.
func orbits(holes []vec.V3, mirror [2]bool) [][]int {
	var out [][]int
	seen := make([]bool, len(holes))
	find := func(p vec.V3) int {
		for i, h := range holes {
			if h.Sub(p).Norm() < 1e-6 {
				return i
			}
		}
		return -1
	}
	for i, h := range holes {
		if seen[i] {
			continue
		}
		images := []vec.V3{h}
		for axis := range 2 {
			if mirror[axis] {
				for _, p := range append([]vec.V3(nil), images...) {
					p[axis] = -p[axis]
					images = append(images, p)
				}
			}
		}
		var unit []int
		whole := true
		for _, p := range images {
			j := find(p)
			if j < 0 {
				whole = false
				break
			}
			if !seen[j] {
				seen[j] = true
				unit = append(unit, j)
			}
		}
		if whole && len(unit) > 0 {
			out = append(out, unit)
		}
		seen[i] = true
	}
	return out
}

// Zone is a polygon, or a circle about Points[0] when Radius is given, seen from above, m.
type Zone struct {
	Points []vec.V3
	Radius float64
}

// Contains tells whether a point lies in the zone, seen from above; its edge counts as in.
func (z Zone) Contains(p vec.V3) bool {
	if z.Radius > 0 {
		return math.Hypot(p[0]-z.Points[0][0], p[1]-z.Points[0][1]) <= z.Radius+1e-12
	}
	in := false
	for i, a := range z.Points {
		c := z.Points[(i+1)%len(z.Points)]
		if onEdge(a, c, p) {
			return true
		}
		if (a[1] > p[1]) != (c[1] > p[1]) && p[0] < a[0]+(c[0]-a[0])*(p[1]-a[1])/(c[1]-a[1]) {
			in = !in
		}
	}
	return in
}

func onEdge(a, b, p vec.V3) bool {
	d := b.Sub(a)
	n := math.Hypot(d[0], d[1])
	if n == 0 {
		return math.Hypot(p[0]-a[0], p[1]-a[1]) < 1e-9
	}
	along := (float64((p[0]-a[0])*d[0]) + float64((p[1]-a[1])*d[1])) / n
	across := (float64((p[0]-a[0])*d[1]) - float64((p[1]-a[1])*d[0])) / n
	return math.Abs(across) < 1e-9 && along > -1e-9 && along < n+1e-9
}

// Outside keeps the places that no zone contains.
func Outside(places []vec.V3, keepOut []Zone) []vec.V3 {
	var out []vec.V3
next:
	for _, p := range places {
		for _, z := range keepOut {
			if z.Contains(p) {
				continue next
			}
		}
		out = append(out, p)
	}
	return out
}

// InRow is holes from a to b, every pitch (m), the first at a.
func InRow(a, b vec.V3, pitch float64) []vec.V3 {
	d := b.Sub(a)
	n := d.Norm()
	out := []vec.V3{a}
	if !(pitch > 0) || n == 0 {
		return out
	}
	for i := 1; float64(i)*pitch <= n*(1+1e-9) && i < mostHoles; i++ {
		out = append(out, a.Add(d.Scale(math.Min(1, float64(i)*pitch/n))))
	}
	return out
}

// OnEdges is holes along the sides of a polygon, every pitch (m) or a little less, corners included.
func OnEdges(polygon []vec.V3, pitch float64) []vec.V3 {
	var out []vec.V3
	for i, a := range polygon {
		b := polygon[(i+1)%len(polygon)]
		n := math.Max(1, math.Ceil(b.Sub(a).Norm()/pitch-1e-9))
		for j := 0.0; j < n && len(out) < mostHoles; j++ {
			out = append(out, a.Add(b.Sub(a).Scale(j/n)))
		}
	}
	return out
}

// OnGrid is holes in a polygon on a square grid of the given pitch (m), which has a point in the middle of the
// polygon's extent.
func OnGrid(polygon []vec.V3, pitch float64) []vec.V3 {
	lo, hi := polygon[0], polygon[0]
	for _, p := range polygon {
		for i := range 2 {
			lo[i], hi[i] = math.Min(lo[i], p[i]), math.Max(hi[i], p[i])
		}
	}
	mid := lo.Add(hi).Scale(0.5)
	nx, ny := math.Floor((hi[0]-lo[0])/2/pitch+1e-9), math.Floor((hi[1]-lo[1])/2/pitch+1e-9)
	var out []vec.V3
	for i := -nx; i <= nx; i++ {
		for j := -ny; j <= ny && len(out) < mostHoles; j++ {
			p := vec.V3{mid[0] + i*pitch, mid[1] + j*pitch, polygon[0][2]}
			if (Zone{Points: polygon}).Contains(p) {
				out = append(out, p)
			}
		}
	}
	return out
}

// mostHoles bounds a pattern, so that a mistyped pitch does not fill the memory.
const mostHoles = 5000
