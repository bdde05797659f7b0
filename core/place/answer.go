package place

import (
	"math"

	"cohoist/core/vec"
)

// say tells the caller, who may stop the search.
func (s *branch) say() {
	if s.tell == nil {
		return
	}
	p := Progress{Value: s.best, Evaluated: s.proof.Evaluated, Part: s.part()}
	if s.at != nil {
		p.Places = s.inOrder(s.at, nil)
	}
	s.stopped = s.stopped || !s.tell(p)
}

// part is how much of the tree is dealt with, by the first units chosen.
func (s *branch) part() float64 {
	if len(s.chosen[0]) == 0 {
		return 0
	}
	return float64(s.chosen[0][0]) / float64(len(s.holes))
}

// inOrder gives places by member of the team, and holes when asked.
func (s *branch) inOrder(at []int, holes []int) []vec.V3 {
	out := make([]vec.V3, len(s.Plan.Team))
	n := 0
	for _, g := range s.groups {
		for _, i := range g.members {
			if n < len(at) {
				out[i] = s.holes[at[n]]
				if holes != nil {
					holes[i] = at[n]
				}
			} else {
				out[i] = s.bench.posts[n]
			}
			n++
		}
	}
	return out
}

// answer closes the search.
func (s *branch) answer() Answer {
	a := Answer{Value: s.best, Proof: s.proof}
	a.Proof.Proved, a.Proof.Unsolved = !s.stopped && s.unsolved == 0, s.unsolved
	a.Proof.Bound = math.NaN()
	if a.Proof.Proved {
		a.Proof.Bound = s.best
		a.Proof.Pruned = a.Proof.Candidates - float64(a.Proof.Evaluated)
	} else if s.Goal == Utilisation {
		a.Proof.Bound = 0
		for _, k := range s.cuts {
			a.Proof.Bound = math.Max(a.Proof.Bound, k.bound(s.bench, s.units, s.best))
		}
	}
	if s.at == nil {
		return a
	}
	a.Holes = make([]int, len(s.Plan.Team))
	for i := range a.Holes {
		a.Holes[i] = -1
	}
	a.Places = s.inOrder(s.at, a.Holes)
	for i, h := range s.at {
		s.posts[i] = s.holes[h]
	}
	a.Cases = s.cases(s.posts)
	return a
}
