package mass

import (
	"errors"
	"fmt"
	"math"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// shell is a closed surface by itself: a mesh may be several bodies, and a body may have hollows.
type shell struct {
	volume float64 // as part of the cube over the longest side of the mesh; negative: seen from inside
	lo, hi vec.V3
	edge   int // first of its first triangle
}

// flat is the part of its box that a mesh must fill to count as a body: far above rounding, far
// below any real part.
const flat = 1e-12

// shells takes a mesh apart into its closed surfaces. One that is inside out must be a hollow: lie in
// the box of another that is not.
func shells(m plan.Mesh) ([]shell, error) {
	other, err := partners(m)
	if err != nil {
		return nil, err
	}
	origin, long := frame(m.Vertices)
	var all []shell
	seen := make([]bool, len(m.Triangles))
	var queue []int
	for n := range m.Triangles {
		if seen[n] {
			continue
		}
		s := shell{edge: 3 * n, lo: m.Vertices[m.Triangles[n][0]], hi: m.Vertices[m.Triangles[n][0]]}
		seen[n] = true
		queue = append(queue[:0], n)
		for len(queue) > 0 {
			t := queue[len(queue)-1]
			queue = queue[:len(queue)-1]
			s.add(m, t, origin, long)
			for i := range 3 {
				if next := other[3*t+i] / 3; !seen[next] {
					seen[next] = true
					queue = append(queue, next)
				}
			}
		}
		all = append(all, s)
	}
	return all, judge(m, all)
}

// add takes one more triangle into the shell, (2.10).
func (s *shell) add(m plan.Mesh, triangle int, origin vec.V3, long float64) {
	var c [3]vec.V3
	for i, v := range m.Triangles[triangle] {
		p := m.Vertices[v]
		c[i] = local(p, origin, long)
		for k := range 3 {
			s.lo[k], s.hi[k] = min(s.lo[k], p[k]), max(s.hi[k], p[k])
		}
	}
	s.volume += c[0].Dot(c[1].Cross(c[2])) / 6
}

// judge refuses a mesh without volume, and shells that are inside out.
func judge(m plan.Mesh, all []shell) error {
	lo, hi := bounds(m.Vertices)
	_, long := frame(m.Vertices)
	box, total := 1.0, 0.0
	for k := range 3 {
		box *= (hi[k] - lo[k]) / math.Max(long, math.SmallestNonzeroFloat64)
	}
	for _, s := range all {
		total += math.Abs(s.volume)
	}
	if !(total > flat*box) {
		return errors.New("the mesh encloses no volume, from " + edgeName(m, 0) + " on; use a plate or a rod for a body without thickness")
	}
	for _, s := range all {
		if s.volume < -flat*box && !s.hollow(all) {
			return fmt.Errorf("the mesh is inside out: %s of triangle %d runs the wrong way round; turn every triangle that hangs together with it round", edgeName(m, s.edge), s.edge/3)
		}
	}
	return nil
}

// hollow tells whether the shell lies in the box of one that is the right way round.
func (s shell) hollow(all []shell) bool {
	for _, o := range all {
		in := o.volume > -s.volume
		for k := range 3 {
			in = in && o.lo[k] <= s.lo[k] && s.hi[k] <= o.hi[k]
		}
		if in {
			return true
		}
	}
	return false
}
