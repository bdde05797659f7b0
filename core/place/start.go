package place

import (
	"math/rand/v2"
)

// starts is from how many placements the search for a first good one begins.
const starts = 4

// start finds a good placement by exchanging one unit at a time from a few chance placements, so that the
// bounds have something to rule out by.
func (s *branch) start() {
	rng := rand.New(rand.NewPCG(uint64(s.Plan.Seed), 10))
	for range starts {
		at := s.chance(rng)
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
