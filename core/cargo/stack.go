package cargo

import (
	"fmt"
	"math"

	"cohoist/core/pattern"
	"cohoist/core/plan"
	"cohoist/core/vec"
)

// touch is how near two surfaces count as touching, m: what crews lay beams on is not more even. Common practice, no source.
const touch = 0.02

// block is the upright box that holds an item at a spot, level axes.
type block struct{ lo, hi vec.V3 }

func blockOf(p plan.Payload, at Spot) (b block) {
	lo, hi := pattern.Extent(p)
	b.lo, b.hi = vec.V3{math.Inf(1), math.Inf(1), math.Inf(1)}, vec.V3{math.Inf(-1), math.Inf(-1), math.Inf(-1)}
	for corner := range 8 {
		var q vec.V3
		for a := range 3 {
			if q[a] = lo[a]; corner>>a&1 == 1 {
				q[a] = hi[a]
			}
		}
		q = at.Point(q)
		for a := range 3 {
			b.lo[a], b.hi[a] = math.Min(b.lo[a], q[a]), math.Max(b.hi[a], q[a])
		}
	}
	return b
}

// rests tells that a's underside touches b's upper side.
func (a block) rests(b block) bool {
	for k := range 2 {
		if a.hi[k] <= b.lo[k]+1e-9 || b.hi[k] <= a.lo[k]+1e-9 {
			return false
		}
	}
	return math.Abs(a.lo[2]-b.hi[2]) <= touch
}

// compare looks at what the places say of who stands on whom: a support that is not touched, one that is not named.
func (s *Study) compare() {
	picked, set := make([]block, len(s.Items)), make([]block, len(s.Items))
	for i := range s.Items {
		it := &s.Items[i]
		picked[i], set[i] = blockOf(it.Plan.Payload, it.Pick), blockOf(it.Plan.Payload, it.Set)
	}
	for i := range s.Items {
		for j := range s.Items {
			a, b := &s.Items[i], &s.Items[j]
			if i == j || !a.stands || !b.stands {
				continue
			}
			named := has(a.On, j)
			switch {
			case named && !set[i].rests(set[j]):
				s.Cautions = append(s.Cautions, fmt.Sprintf("%s is to stand on %s, but where they are set its underside does not touch it.", a.ID, b.ID))
			case !named && set[i].rests(set[j]):
				s.Cautions = append(s.Cautions, fmt.Sprintf("%s comes to stand on %s, but the list does not say so.", a.ID, b.ID))
			}
			if !has(b.Under, i) && picked[i].rests(picked[j]) {
				s.Cautions = append(s.Cautions, fmt.Sprintf("%s lies on %s where they are picked, but the list does not say so.", a.ID, b.ID))
			}
		}
	}
}

func has(list []int, i int) bool {
	for _, x := range list {
		if x == i {
			return true
		}
	}
	return false
}
