package drawing

import (
	"math"
	"slices"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// keep remembers what is costly to make and seldom changes while a handle is moved: the polyhedra of
// the payload, and how each camera saw them. A nil keep remembers nothing.
type keep struct {
	solids []plan.Solid
	turn   vec.M3
	made   placed
	full   bool
	mesh   map[*plan.Mesh]body
	seen   map[Camera][]Shape
}

// placed is the payload in the scene.
type placed struct {
	bodies   []body // level axes
	min, max vec.V3 // bounds, payload axes
	any      bool
	missing  []string
}

// payload returns the payload's solids, turned into level axes.
func (k *keep) payload(solids []plan.Solid, turn vec.M3) placed {
	if k == nil {
		return placeSolids(nil, solids, turn)
	}
	if !k.full || k.turn != turn || !slices.EqualFunc(k.solids, solids, sameSolid) {
		k.made, k.turn, k.full, k.seen = placeSolids(k, solids, turn), turn, true, nil
		k.solids = slices.Clone(solids)
		for i := range k.solids {
			k.solids[i].Size = slices.Clone(solids[i].Size)
		}
	}
	return k.made
}

// drawn returns how a camera sees the payload, from memory or by draw.
func (k *keep) drawn(c Camera, draw func() []Shape) []Shape {
	if k == nil {
		return draw()
	}
	if l, ok := k.seen[c]; ok {
		return l
	}
	if k.seen == nil || len(k.seen) >= 6 { // turning sees it anew each time
		k.seen = map[Camera][]Shape{}
	}
	l := draw()
	for i := range l {
		l[i].d = data(l[i].Path)
	}
	k.seen[c] = l
	return l
}

// Solids that are drawn.
const solidsDrawn = 100

func placeSolids(k *keep, solids []plan.Solid, turn vec.M3) placed {
	var out placed
	for i, q := range solids {
		if i == solidsDrawn {
			out.missing = append(out.missing, "the solids after number "+whole(solidsDrawn))
			break
		}
		b, ok := k.body(q)
		at := vec.V3{or(q.At[0], 0), or(q.At[1], 0), or(q.At[2], 0)}
		if !ok || !usable3(at) {
			out.missing = append(out.missing, "solid "+whole(i+1)+", which has no dimensions yet")
			continue
		}
		const d = math.Pi / 180
		b = b.placed(vec.Euler(d*or(q.Turn[0], 0), d*or(q.Turn[1], 0), d*or(q.Turn[2], 0)), at)
		for _, v := range b.points {
			for k := range 3 {
				if !out.any || v[k] < out.min[k] {
					out.min[k] = v[k]
				}
				if !out.any || v[k] > out.max[k] {
					out.max[k] = v[k]
				}
			}
			out.any = true
		}
		out.bodies = append(out.bodies, b.placed(turn, vec.V3{}))
	}
	return out
}

// body makes the polyhedron of a solid; that of a mesh is kept.
func (k *keep) body(s plan.Solid) (body, bool) {
	if k == nil || s.Shape != plan.MeshBody || s.Mesh == nil {
		return newBody(s)
	}
	if b, ok := k.mesh[s.Mesh]; ok {
		return b, true
	}
	b, ok := newBody(s)
	if ok {
		if k.mesh == nil || len(k.mesh) > 16 {
			k.mesh = map[*plan.Mesh]body{}
		}
		k.mesh[s.Mesh] = b
	}
	return b, ok
}

func sameSolid(a, b plan.Solid) bool {
	same3 := func(a, b vec.V3) bool { return same(a[0], b[0]) && same(a[1], b[1]) && same(a[2], b[2]) }
	return a.Shape == b.Shape && a.Mesh == b.Mesh && slices.EqualFunc(a.Size, b.Size, same) && same(a.Length, b.Length) &&
		same(a.OuterRadius, b.OuterRadius) && same(a.InnerRadius, b.InnerRadius) && same3(a.At, b.At) && same3(a.Turn, b.Turn)
}

// same holds a number that was left out equal to itself.
func same(a, b float64) bool { return math.Float64bits(a) == math.Float64bits(b) }
