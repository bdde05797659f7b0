package place

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"

	"cohoist/core/solve"
)

// starts is from how many placements the search for a first good one begins.
const starts = 4

// start finds a good placement by exchanging one unit at a time from a few chance placements, so that the
// bounds have something to rule out by.
func (s *branch) start() {
	rng := rand.New(rand.NewPCG(uint64(s.Plan.Seed), 10))
	for i := range s.scen {
		if s.Goal == Utilisation { // a bound of all thrust against the whole weight, nobody's place mattering
			s.keep(s.newCut(i, solve.Wrench{0, 0, 1}, s.holes))
		}
	}
	for i := range starts {
		at := s.apart(rng.IntN(len(s.units)))
		if i > 0 || at == nil {
			at = s.chance(rng)
		}
		if at == nil {
			continue
		}
		before := s.best
		s.try(at)
		if s.Mirror == [2]bool{} && s.Goal == Utilisation && s.Goal.better(s.best, before) {
			s.exchange()
		}
		if s.stopped {
			return
		}
	}
}

// apart takes the unit given and then, again and again, the one farthest from all taken, so that a wide spacing
// is kept when it can be; nil when it does not come out, or units are not single holes.
func (s *branch) apart(first int) []int {
	n := s.first(s.free)
	at := []int{s.units[first][0]}
	for len(at) < n {
		best, far := -1, 0.0
		for _, u := range s.units {
			if len(u) > 1 {
				return nil
			}
			near := math.Inf(1)
			for _, h := range at {
				near = math.Min(near, s.holes[u[0]].Sub(s.holes[h]).Norm())
			}
			if near > far {
				best, far = u[0], near
			}
		}
		if best < 0 {
			return nil
		}
		at = append(at, best)
	}
	if !s.fits(at) {
		at = s.packed(n)
	}
	return at
}

// packed takes holes as close as the spacing lets, from one end to the other; nil when they run out.
func (s *branch) packed(n int) []int {
	order := make([]int, len(s.holes))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		p, q := s.holes[a], s.holes[b]
		if c := cmp.Compare(p[0], q[0]); c != 0 {
			return c
		}
		return cmp.Compare(p[1], q[1])
	})
	var at []int
	for _, h := range order {
		if next := append(at, h); len(at) < n && s.fits(next) {
			at = next
		}
	}
	if len(at) < n {
		return nil
	}
	return at
}

// packs tells, for holes in line, whether the spacing leaves room for all.
func (s *branch) packs() bool { return s.packed(s.first(s.free)) != nil }

// chance draws units until the posts are full; nil when it does not come out.
func (s *branch) chance(rng *rand.Rand) []int {
	for range 50 {
		order := rng.Perm(len(s.units))
		var at []int
		n := 0
		for g := range s.free {
			n += len(s.groups[g].members)
		}
		for g := range s.chosen {
			s.chosen[g] = s.chosen[g][:0]
		}
		for _, u := range order {
			if len(at)+len(s.units[u]) <= n && s.clear(s.units[u]) {
				at = append(at, s.units[u]...)
				s.chosen[0] = at
			}
		}
		s.chosen[0] = nil
		if len(at) == n {
			return at
		}
	}
	return nil
}

// exchange moves one post of the best placement at a time to another hole while that helps.
func (s *branch) exchange() {
	for again := true; again && !s.stopped; {
		again = false
		for i := range s.at {
			s.say()
			for h := range s.holes {
				at := append([]int(nil), s.at...)
				at[i] = h
				if !s.fits(at) {
					continue
				}
				s.fill(at)
				ruled := s.ruled(s.free-1, len(s.units), 0)
				s.fill(nil)
				if ruled {
					continue
				}
				before := s.best
				if s.try(at); s.Goal.better(s.best, before) {
					again = true
				}
				if s.stopped {
					return
				}
			}
		}
	}
}

// fits tells whether holes differ and keep the spacing.
func (s *branch) fits(at []int) bool {
	for i, h := range at {
		for _, o := range at[:i] {
			if h == o || s.holes[h].Sub(s.holes[o]).Norm() < s.Spacing-1e-9 {
				return false
			}
		}
		for _, p := range s.bench.posts[s.first(s.free):] {
			if s.holes[h].Sub(p).Norm() < s.Spacing-1e-9 {
				return false
			}
		}
	}
	return true
}

// fill lays a placement out as chosen, or clears it.
func (s *branch) fill(at []int) {
	for g := range s.free {
		n := len(s.groups[g].members)
		s.chosen[g] = s.chosen[g][:0]
		if at != nil {
			s.chosen[g] = append(s.chosen[g], at[:n]...)
			at = at[n:]
		}
	}
}
