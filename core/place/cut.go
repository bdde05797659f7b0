package place

import (
	"math"
	"sort"

	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// cut is a dual of one placement's share, used on all others: a direction y of wrenches along which the
// load asks for need, and what a vehicle of every group can give along it from every hole, (10.4).
type cut struct {
	scen  int
	y     solve.Wrench
	need  float64
	give  [][]affine // by group and hole, or by post of the group when it is fixed
	t     float64    // the utilisation for which value and top are
	value [][]float64
	top   [][][]float64 // by group, unit and number: the sum of that many largest values from the unit on
}

// affine is an upper bound on what a vehicle gives along y at utilisation t: the smaller of
// a + b t and c.
type affine struct{ a, b, c float64 }

func (f affine) at(t float64) float64 { return math.Min(f.a+float64(f.b*t), f.c) }

// newCut makes a cut of a dual about the payload's origin.
func (b *bench) newCut(scen int, y solve.Wrench, holes []vec.V3) *cut {
	s := &b.scen[scen]
	m := s.model
	force, turn := vec.V3{y[0], y[1], y[2]}, vec.V3{y[3], y[4], y[5]}
	com := b.payload.COM.Add(s.shift)
	weight := m.Up.Scale(b.weight).Sub(m.Drag)
	k := &cut{scen: scen, y: y, t: math.NaN()}
	k.need = force.Dot(weight) + turn.Dot(com.Cross(weight)) + b.weight*s.off*math.Hypot(turn[0], turn[1])
	for g, grp := range b.groups {
		at := holes
		if grp.fixed {
			at = b.posts[b.first(g) : b.first(g)+1]
		}
		row := make([]affine, len(at))
		for i, a := range at {
			row[i] = b.give(m, b.standing(&s.craft[g], a), force.Add(turn.Cross(a)), turn)
		}
		k.give = append(k.give, row)
		k.value = append(k.value, make([]float64, len(at)))
	}
	return k
}

// give bounds what a vehicle can do along a direction: the work of its force on a motion g of its place and
// a turning, (10.4). Rigid holds: exact, each rotor gives all or nothing. Cables: g is split into a
// part in the cone of allowed pulls and one in its polar, on which no pull works.
func (b *bench) give(m *share.Model, c *share.Craft, g, turn vec.V3) affine {
	out := affine{c: math.Inf(1)}
	weight := c.Vehicle.Mass * share.Gravity
	if c.Rigid {
		out.a = g.Dot(c.Drag.Sub(m.Up.Scale(weight)))
		for _, r := range c.Rotors {
			if w := r.Force.Dot(g) + r.Moment.Dot(turn); w > 0 {
				out.b += float64(w * r.Max)
			}
		}
		return out
	}
	tan := math.Tan(b.Plan.Limits.Cone * math.Pi / 180)
	in := intoCone(g, tan)
	rest := g.Sub(in)
	taut := b.Plan.Limits.TensionMin * math.Min(0, rest[2]+float64(tan*math.Hypot(rest[0], rest[1])))
	own := vec.V3{0, 0, weight}.Sub(c.Drag)
	size := in.Norm()
	out.a, out.b = taut-in.Dot(own), size*c.Vehicle.ThrustMax // |F + own| ≤ t T
	if !math.IsNaN(c.WorkingLoad) {
		out.c = taut + size*c.WorkingLoad
	}
	return out
}

// intoCone is the point of the cone |F_xy| ≤ tan F_z nearest to g; what is left over is in the polar cone.
func intoCone(g vec.V3, tan float64) vec.V3 {
	flat := math.Hypot(g[0], g[1])
	switch {
	case flat <= float64(tan*g[2]):
		return g
	case float64(tan*flat) <= -g[2]:
		return vec.V3{}
	}
	z := (float64(tan*flat) + g[2]) / (1 + float64(tan*tan))
	k := tan * z / flat
	return vec.V3{k * g[0], k * g[1], z}
}

// ready fills in values and sums for a utilisation t.
func (k *cut) ready(b *bench, t float64, units [][]int) {
	if k.t == t {
		return
	}
	k.t = t
	k.top = k.top[:0]
	for g := range k.give {
		for i, f := range k.give[g] {
			k.value[g][i] = f.at(t)
		}
		if b.groups[g].fixed {
			k.top = append(k.top, nil)
			continue
		}
		k.top = append(k.top, tops(k.value[g], units, len(b.groups[g].members)))
	}
}

// tops gives, for every unit, the sums of the 0, 1, 2 … n largest values of the holes from that unit on; −Inf
// where there are not so many.
func tops(value []float64, units [][]int, n int) [][]float64 {
	out := make([][]float64, len(units)+1)
	largest := make([]float64, 0, n+1) // descending
	for u := len(units); u >= 0; u-- {
		if u < len(units) {
			for _, h := range units[u] {
				i := sort.Search(len(largest), func(i int) bool { return largest[i] < value[h] })
				largest = append(largest, 0)
				copy(largest[i+1:], largest[i:])
				largest[i] = value[h]
				largest = largest[:min(len(largest), n)]
			}
		}
		out[u] = make([]float64, n+1)
		for i := range n {
			if i < len(largest) {
				out[u][i+1] = out[u][i] + largest[i]
			} else {
				out[u][i+1] = math.Inf(-1)
			}
		}
	}
	return out
}

// rules tells whether the cut rules out every way to complete a placement: holes chosen by group, the
// next unit of group g, and how many vehicles of it are to come; later groups are all to come, (10.5).
func (k *cut) rules(b *bench, chosen [][]int, g, next, left int) bool {
	sum, lose := 0.0, math.Inf(-1)
	lost := b.scen[k.scen].lost
	for h := range k.give {
		v := k.value[h]
		if b.groups[h].fixed {
			sum += v[0]
			if h == lost {
				lose = v[0]
			}
			continue
		}
		for _, hole := range chosen[h] {
			sum += v[hole]
			if h == lost && v[hole] > lose {
				lose = v[hole]
			}
		}
		from, n := next, left
		if h > g {
			from, n = 0, len(b.groups[h].members)
		}
		if h < g || n == 0 {
			continue
		}
		top := k.top[h][from]
		sum += top[n]
		if h == lost && top[n]-top[n-1] > lose {
			lose = top[n] - top[n-1]
		}
	}
	if lost >= 0 && !math.IsInf(sum, -1) {
		sum -= lose
	}
	return sum < k.need-1e-12*math.Abs(k.need)
}

// bound is the utilisation below which the cut rules out every placement at all, by bisection.
func (k *cut) bound(b *bench, units [][]int, most float64) float64 {
	none := make([][]int, len(b.groups))
	ruled := func(t float64) bool {
		k.ready(b, t, units)
		return k.rules(b, none, 0, 0, len(b.groups[0].members))
	}
	lo, hi := 0.0, math.Min(most, 1e6)
	if !ruled(lo) {
		return 0
	}
	if ruled(hi) {
		return hi
	}
	for range 60 {
		if mid := (lo + hi) / 2; ruled(mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}
