package place

import (
	"math"

	"cohoist/core/vec"
)

// hopeless is a utilisation above which a placement counts as holding nothing.
const hopeless = 100

// Caps on the bounds that are kept, and on how long the caller is left without word.
const (
	mostCuts   = 256
	mostSums   = 4 << 20 // numbers kept for all bounds together
	tellNodes  = 512
	tellSolved = 16 // placements, which may take milliseconds each
)

// branch is a search through a hole pattern.
type branch struct {
	*bench
	holes   []vec.V3
	units   [][]int // holes that are taken together: one, or a hole and its mirror images
	chosen  [][]int // by group: holes
	used    []bool
	posts   []vec.V3
	best    float64
	at      []int // holes of the best, by post
	cuts    []*cut
	proof   Proof
	nodes   int
	tell    Tell
	budget  int            // nodes; 0: no end
	each    func(at []int) // takes complete placements, when all are to be tried
	stopped bool
	room    []vec.V3
	hang    func(x float64) float64 // moment of the overhang left of x; nil: not used as a bound
	weighs  func(x float64) float64 // the same of what lies right of x
}

// OnHoles finds the best holes to attach at, exactly, (10.5): the best of all placements, unless tell stops it
// before that is proved.
func OnHoles(q Question, holes []vec.V3, tell Tell) (Answer, error) {
	return onHoles(q, holes, 0, tell)
}

// onHoles is OnHoles that ends after budget nodes, when that is not 0.
func onHoles(q Question, holes []vec.V3, budget int, tell Tell) (Answer, error) {
	b, err := newBench(q, holes)
	if err != nil {
		return Answer{}, err
	}
	s := &branch{bench: b, holes: holes, chosen: make([][]int, len(b.groups)), used: make([]bool, len(holes)),
		best: q.Goal.worst(), tell: tell, budget: budget, posts: append([]vec.V3(nil), b.posts...)}
	if err := s.lay(); err != nil {
		return Answer{}, err
	}
	s.overhang()
	s.proof.Candidates = s.count()
	if s.proof.Candidates == 0 || !s.across && s.Mirror == [2]bool{} && !s.packs() {
		return Answer{}, ErrFew
	}
	s.start()
	if !s.stopped {
		s.walk(0, 0, len(b.groups[0].members))
	}
	s.even()
	return s.answer(), nil
}

// lay makes the units.
func (s *branch) lay() error {
	free := 0
	for _, g := range s.groups[:s.free] {
		free += len(g.members)
	}
	if s.Mirror == [2]bool{} {
		for i := range s.holes {
			s.units = append(s.units, []int{i})
		}
		if len(s.holes) < free {
			return ErrFew
		}
		return nil
	}
	if s.free != 1 || len(s.groups) != 1 {
		return ErrMirror
	}
	s.units = orbits(s.holes, s.Mirror)
	if len(s.units) == 0 {
		return ErrManySize
	}
	return nil
}

// count is how many placements there are, spacing aside.
func (s *branch) count() float64 {
	if s.Mirror != [2]bool{} {
		ways := make([]float64, len(s.groups[0].members)+1)
		ways[0] = 1
		for _, u := range s.units {
			for n := len(ways) - 1; n >= len(u); n-- {
				ways[n] += ways[n-len(u)]
			}
		}
		return ways[len(ways)-1]
	}
	all, left := 1.0, len(s.holes)
	for _, g := range s.groups[:s.free] {
		all *= choose(left, len(g.members))
		left -= len(g.members)
	}
	return all
}

func choose(n, k int) float64 {
	if n < k {
		return 0
	}
	c := 1.0
	for i := range k {
		c = c * float64(n-i) / float64(i+1)
	}
	return math.Round(c)
}

// walk takes units for group g from number next on, left vehicles to go.
func (s *branch) walk(g, next, left int) {
	for left == 0 {
		if g++; g == s.free {
			s.leaf()
			return
		}
		next, left = 0, len(s.groups[g].members)
	}
	s.nodes++
	if s.nodes%tellNodes == 0 {
		s.say()
	}
	s.stopped = s.stopped || s.budget > 0 && s.nodes > s.budget
	if s.stopped || s.ruled(g, next, left) || s.overhangs() {
		return
	}
	for u := next; u < len(s.units) && !s.stopped; u++ {
		unit := s.units[u]
		if len(unit) > left || s.used[unit[0]] || !s.clear(unit) {
			continue
		}
		for _, h := range unit {
			s.used[h] = true
		}
		s.chosen[g] = append(s.chosen[g], unit...)
		s.walk(g, u+1, left-len(unit))
		s.chosen[g] = s.chosen[g][:len(s.chosen[g])-len(unit)]
		for _, h := range unit {
			s.used[h] = false
		}
	}
}

// clear tells whether a unit keeps the spacing to all that is placed, and within itself.
func (s *branch) clear(unit []int) bool {
	s.room = s.room[:0]
	for _, chosen := range s.chosen {
		for _, h := range chosen {
			s.room = append(s.room, s.holes[h])
		}
	}
	s.room = append(s.room, s.bench.posts[s.first(s.free):]...)
	for _, h := range unit {
		for _, p := range s.room {
			if s.holes[h].Sub(p).Norm() < s.Spacing-1e-9 {
				return false
			}
		}
		s.room = append(s.room, s.holes[h])
	}
	return true
}

// ruled asks the bounds, the last successful one first.
func (s *branch) ruled(g, next, left int) bool {
	if s.Goal != Utilisation || s.each != nil {
		return false
	}
	t := math.Min(s.best, hopeless)
	t -= Tolerance * math.Abs(t)
	for i, k := range s.cuts {
		k.ready(s.bench, t, s.units)
		if k.rules(s.bench, s.chosen, g, next, left) {
			if i > 0 {
				s.cuts[i], s.cuts[i/2] = s.cuts[i/2], s.cuts[i]
			}
			return true
		}
	}
	return false
}

// leaf solves a complete placement, unless a bound rules it out.
func (s *branch) leaf() {
	if s.ruled(s.free-1, len(s.units), 0) || s.overhangsRight() {
		return
	}
	at := make([]int, 0, len(s.posts))
	for _, holes := range s.chosen[:s.free] {
		at = append(at, holes...)
	}
	s.try(at)
}

// try solves a placement and keeps it when it is the best so far, and its dual as a bound on all others.
func (s *branch) try(at []int) {
	for i, h := range at {
		s.posts[i] = s.holes[h]
	}
	s.proof.Evaluated++
	if s.proof.Evaluated%tellSolved == 0 {
		s.say()
	}
	if s.each != nil {
		s.each(at)
		return
	}
	limit := s.best
	if s.Goal == Utilisation && !math.IsInf(limit, 1) {
		limit -= Tolerance * math.Abs(limit)
	}
	v, scen, y := s.value(s.posts, limit)
	if s.Goal.better(v, s.best) {
		s.best, s.at = v, append(s.at[:0], at...)
		s.say()
	}
	if scen >= 0 && s.Goal == Utilisation {
		s.keep(s.newCut(scen, y, s.holes))
	}
}

// keep adds a bound in front, or in place of the one that has helped least of late.
func (s *branch) keep(k *cut) {
	if len(s.cuts) < min(mostCuts, max(8, mostSums/(len(s.units)*(1+s.first(s.free))))) {
		s.cuts = append(s.cuts, nil)
		copy(s.cuts[1:], s.cuts)
		s.cuts[0] = k
		return
	}
	s.cuts[len(s.cuts)-1] = s.cuts[0]
	s.cuts[0] = k
}
