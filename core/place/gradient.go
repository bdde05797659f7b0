package place

import (
	"math"

	"cohoist/core/solve"
	"cohoist/core/vec"
)

// mostDuals bounds the bundle; the oldest go first.
const mostDuals = 120

// steepest returns the direction in which all bounds within near of the value fall fastest, largest move 1; nil
// when there is none: the shortest vector in the hull of their gradients, turned round.
func (s *smooth) steepest(posts []vec.V3, v, near float64) []vec.V3 {
	s.gather(posts)
	var grads [][]float64
	for _, k := range s.bundle {
		if t, slope := s.boundAt(k, posts); t >= v-near*math.Abs(v) && slope > 0 {
			grads = append(grads, s.gradient(k, posts, t, slope))
		}
	}
	if len(grads) == 0 {
		return nil
	}
	g := shortest(grads)
	out := make([]vec.V3, len(posts))
	most := 0.0
	for n := range s.movable() {
		out[n] = vec.V3{-g[2*n], -g[2*n+1], 0}
		most = math.Max(most, out[n].Norm())
	}
	if most*s.extent < 1e-9 {
		return nil
	}
	for n := range out {
		out[n] = out[n].Scale(1 / most)
	}
	return out
}

// gather adds the duals of every scenario at a placement to the bundle.
func (s *smooth) gather(posts []vec.V3) {
	for k := range s.scen {
		from, to := -1, 0
		if g := s.scen[k].lost; g >= 0 {
			from = s.first(g)
			to = from + len(s.groups[g].members)
		}
		for lost := from; lost < max(to, from+1); lost++ {
			if t, y := s.utilisation(&s.scen[k], posts, lost); !math.IsInf(t, 1) {
				s.bundle = append(s.bundle, dual{k, lost, y})
			}
		}
	}
	if n := len(s.bundle); n > mostDuals {
		s.bundle = append(s.bundle[:0], s.bundle[n-mostDuals:]...)
	}
}

// boundAt is the bound (10.3) of a dual for a placement, and Σ of what utilisation gives along it.
func (s *smooth) boundAt(k dual, posts []vec.V3) (t, slope float64) {
	need := s.needs(k)
	for n, p := range posts {
		if n != k.lost {
			f := s.gives(k, n, p)
			need, slope = need-f.a, slope+f.b
		}
	}
	if slope <= 0 {
		return math.Inf(-1), 0
	}
	return need / slope, slope
}

func (s *smooth) needs(k dual) float64 { return s.newCut(k.scen, k.y, nil).need }

func (s *smooth) gives(k dual, post int, p vec.V3) affine {
	force, turn := vec.V3{k.y[0], k.y[1], k.y[2]}, vec.V3{k.y[3], k.y[4], k.y[5]}
	sc := &s.scen[k.scen]
	return s.give(sc.model, s.standing(&sc.craft[s.group[post]], p), force.Add(turn.Cross(p)), turn)
}

// gradient is the change of a bound with the x and y of every free post: of need − Σ(a + b t) over Σ b, with a and b
// by central differences of their closed forms, (10.6).
func (s *smooth) gradient(k dual, posts []vec.V3, t, slope float64) []float64 {
	out := make([]float64, 2*s.movable())
	h := 1e-6 * s.extent
	for n := range s.movable() {
		if n == k.lost {
			continue
		}
		for axis := range 2 {
			var d vec.V3
			d[axis] = h
			up, down := s.gives(k, n, posts[n].Add(d)), s.gives(k, n, posts[n].Sub(d))
			out[2*n+axis] = -(up.a - down.a + float64(t*(up.b-down.b))) / (2 * h * slope)
		}
	}
	return out
}

// shortest is the shortest vector in the convex hull of some: from the shortest of them on, a little
// towards the one that lies most against it, as far as that shortens (Frank and Wolfe's method).
func shortest(v [][]float64) []float64 {
	inner := func(a, b []float64) float64 {
		sum := 0.0
		for i := range a {
			sum += float64(a[i] * b[i])
		}
		return sum
	}
	x := append([]float64(nil), v[0]...)
	for _, o := range v {
		if inner(o, o) < inner(x, x) {
			copy(x, o)
		}
	}
	for range 200 {
		best, least := -1, math.Inf(1)
		for i, o := range v {
			if d := inner(o, x); d < least {
				best, least = i, d
			}
		}
		xx := inner(x, x)
		if xx-least <= 1e-12*xx || xx == 0 {
			break
		}
		o := v[best]
		t := math.Min(1, (xx-least)/(xx-2*least+inner(o, o)))
		for i := range x {
			x[i] += float64(t * (o[i] - x[i]))
		}
	}
	return x
}

// bound is below the utilisation of every placement in the region: by each dual the vehicles are let stand
// where it suits them best, which is at a corner, for what they give is convex in their place, (10.4).
// Duals of cables in wind, where that is only bounded, are left out.
func (s *smooth) bound() float64 {
	for k := range s.scen { // all thrust against the whole weight, nobody's place mattering
		s.bundle = append(s.bundle, dual{scen: k, lost: -1, y: solve.Wrench{0, 0, 1}})
	}
	best := 0.0
	units := make([][]int, len(s.corners)*s.movable()) // every corner once for each vehicle
	var holes []vec.V3
	for i := range units {
		units[i] = []int{i}
		holes = append(holes, s.corners[i%len(s.corners)])
	}
	for _, k := range s.bundle {
		if !s.upright(&s.scen[k.scen]) && !s.allRigid() && k.y != (solve.Wrench{0, 0, 1}) {
			continue
		}
		c := s.newCut(k.scen, k.y, holes)
		best = math.Max(best, c.bound(s.bench, units, s.best))
	}
	return best
}

func (s *smooth) allRigid() bool {
	for _, c := range s.scen[0].craft {
		if !c.Rigid {
			return false
		}
	}
	return true
}
