package place

import (
	"fmt"
	"math"
	"strconv"
	"strings"

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

// Words says in a sentence how sure an answer is.
func (p Proof) Words() string {
	solved := thousands(float64(p.Evaluated)) + " were solved"
	if p.Evaluated == 1 {
		solved = "one was solved"
	}
	gap := ""
	if p.Bound > 0 && !math.IsInf(p.Bound, 0) {
		gap = fmt.Sprintf(" None needs less than %.4g.", p.Bound)
	}
	switch {
	case math.IsInf(p.Candidates, 1) && p.Proved:
		return "Proved: nowhere in the region is better; " + thousands(float64(p.Evaluated)) + " placements were solved."
	case math.IsInf(p.Candidates, 1):
		return "The best found from many starts; " + thousands(float64(p.Evaluated)) + " placements were solved." + gap
	case p.Proved:
		return "Proved: none of " + thousands(p.Candidates) + " placements is better; " + solved + ", the others ruled out by a bound or by their spacing."
	case p.Unsolved > 0:
		return "Not proved: " + thousands(float64(p.Unsolved)) + " programs did not come to an answer." + gap
	}
	return "Stopped early, not proved: of " + thousands(p.Candidates) + " placements " + solved + "." + gap
}

// thousands writes a count in groups of three figures.
func thousands(x float64) string {
	s := strconv.FormatFloat(x, 'f', 0, 64)
	if len(s) > 15 {
		return strconv.FormatFloat(x, 'g', 3, 64)
	}
	var parts []string
	for len(s) > 3 {
		parts = append([]string{s[len(s)-3:]}, parts...)
		s = s[:len(s)-3]
	}
	return strings.Join(append([]string{s}, parts...), "\u202f")
}
