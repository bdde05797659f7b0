package place

import (
	"math"
	"math/rand/v2"

	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Region is where continuous places may lie: on a path, or in an area, and in none of the zones kept out.
type Region struct {
	Path    []vec.V3 // m; places lie on its segments
	Closed  bool     // the path's end joins its beginning
	Area    []vec.V3 // m; places lie inside this polygon, at the height of its first corner; instead of Path
	KeepOut []Zone
}

// How the search in a region runs. None of these numbers changes what counts as an answer, only how
// hard it is looked for.
const (
	regionStarts  = 12    // chance starts, beside the best of a hole pattern
	regionHoles   = 48    // about so many holes in that pattern
	regionBudget  = 40000 // nodes of its search
	descentRounds = 120
	stepLeast     = 1e-7 // of the region's extent
)

// InRegion finds places in a region from many starts by the duals' gradients, (10.6). The answer is a local best,
// the best found; Proof.Bound is below every placement in the region (Utilisation only), so
// that the gap between the two is known. Proved when the gap is closed. Mirrored places are chosen among a pattern of
// holes in the region, exactly.
func InRegion(q Question, r Region, tell Tell) (Answer, error) {
	if q.Mirror != [2]bool{} {
		return onHoles(q, r.pattern(4*regionHoles), 4*regionBudget, tell)
	}
	b, err := newBench(q, r.corners())
	if err != nil {
		return Answer{}, err
	}
	s := &smooth{bench: b, region: r, best: q.Goal.worst(), corners: r.corners(), tell: tell}
	if len(s.corners) == 0 {
		return Answer{}, ErrFew
	}
	s.extent = 1e-9
	for _, p := range s.corners {
		s.extent = math.Max(s.extent, p.Sub(s.corners[0]).Norm())
	}
	s.rng = rand.New(rand.NewPCG(uint64(q.Plan.Seed), 11))
	for i := range regionStarts + 1 {
		posts := s.start(i)
		if posts == nil {
			continue
		}
		s.descend(posts)
		s.proof.Evaluated = s.tried
		s.part = float64(i+1) / (regionStarts + 1)
		if s.say(); s.stopped {
			break
		}
	}
	if s.at == nil {
		return Answer{Value: s.best, Proof: Proof{Evaluated: s.tried, Bound: math.NaN(), Candidates: math.Inf(1)}}, nil
	}
	a := Answer{Places: s.inOrder(), Value: s.best, Cases: s.cases(s.at), Proof: Proof{Evaluated: s.tried, Bound: math.NaN(), Candidates: math.Inf(1)}}
	if q.Goal == Utilisation && b.faces == nil { // what wakes press with has no bound over a region
		a.Proof.Bound = s.bound()
		a.Proof.Proved = a.Value <= a.Proof.Bound*(1+1e-6)
	}
	return a, nil
}

// smooth is a search in a region.
type smooth struct {
	*bench
	region  Region
	corners []vec.V3
	extent  float64
	best    float64
	at      []vec.V3
	bundle  []dual
	proof   Proof
	tried   int
	rng     *rand.Rand
	tell    Tell
	part    float64 // of the starts
	stopped bool
}

// tellLooks is how many placements are solved between two words to the caller, who may stop the search.
const tellLooks = 32

func (s *smooth) say() {
	s.stopped = s.stopped || s.tell != nil && !s.tell(Progress{Places: s.inOrder(), Value: s.best, Evaluated: s.tried, Part: s.part})
}

// dual is the proof of one scenario's utilisation somewhere; elsewhere it is a lower bound, (10.3).
type dual struct {
	scen, lost int
	y          solve.Wrench
}

// corners are the points whose hull holds the region.
func (r Region) corners() []vec.V3 {
	if len(r.Area) > 2 {
		return r.Area
	}
	return r.Path
}

// free is how many posts may move.
func (s *smooth) movable() int { return s.first(s.free) }

// start gives a first placement: the best of a hole pattern in the region, then chance ones.
func (s *smooth) start(i int) []vec.V3 {
	posts := append([]vec.V3(nil), s.posts...)
	if i == 0 {
		q := s.Question
		q.Mirror = [2]bool{}
		a, err := onHoles(q, s.region.pattern(regionHoles), regionBudget, func(Progress) bool { s.say(); return !s.stopped })
		if err != nil || a.Places == nil {
			return nil
		}
		s.tried += a.Proof.Evaluated
		n := 0
		for _, g := range s.groups {
			for _, m := range g.members {
				posts[n] = a.Places[m]
				n++
			}
		}
		return posts
	}
	for range 100 {
		for n := range s.movable() {
			posts[n] = s.region.any(s.rng)
		}
		if s.fits(posts) {
			return posts
		}
	}
	return nil
}

// fits tells whether places keep out of the zones and apart.
func (s *smooth) fits(posts []vec.V3) bool {
	for n := range s.movable() {
		for _, z := range s.region.KeepOut {
			if z.Contains(posts[n]) {
				return false
			}
		}
		for m, p := range posts {
			if m != n && p.Sub(posts[n]).Norm() < s.Spacing-1e-9 {
				return false
			}
		}
	}
	return true
}

// look is the value of a placement.
func (s *smooth) look(posts []vec.V3) float64 {
	if s.tried++; s.tried%tellLooks == 0 {
		s.say()
	}
	v, _, _ := s.value(posts, s.Goal.worst())
	return v
}

// keep remembers a placement that is the best so far.
func (s *smooth) keep(posts []vec.V3, v float64) {
	if s.Goal.better(v, s.best) {
		s.best, s.at = v, append(s.at[:0], posts...)
	}
}

// descend improves a placement in place: along the steepest descent of all bounds that are nearly
// decisive, then one coordinate at a time. The best on the way is kept.
func (s *smooth) descend(posts []vec.V3) {
	v := s.look(posts)
	s.keep(posts, v)
	if s.Goal == Utilisation && !math.IsInf(v, 1) {
		near, step := 1e-2, 0.1*s.extent
		for range descentRounds {
			if s.stopped {
				return
			}
			d := s.steepest(posts, v, near)
			moved := false
			for h := step; d != nil && h > stepLeast*s.extent; h /= 3 {
				if w, ok := s.move(posts, d, h, v); ok {
					v, step, moved = w, math.Min(2*h, 0.2*s.extent), true
					break
				}
			}
			if !moved {
				if near /= 10; near < 1e-9 {
					break
				}
				step = 0.02 * s.extent
			}
		}
	}
	for h := 0.05 * s.extent; h > stepLeast*s.extent && !s.stopped; {
		moved := false
		for _, d := range s.ways(posts) {
			if s.stopped {
				break
			}
			for _, sign := range [2]float64{h, -h} {
				if w, ok := s.move(posts, d, sign, v); ok {
					v, moved = w, true
				}
			}
		}
		if !moved {
			h /= 3
		}
	}
}

// ways are directions to try: each place along x and along y, all together, spreading from the middle, and some by
// chance, for where several must move at once.
func (s *smooth) ways(posts []vec.V3) [][]vec.V3 {
	n := s.movable()
	var out [][]vec.V3
	for axis := range 2 {
		all, spread := make([]vec.V3, len(posts)), make([]vec.V3, len(posts))
		for i := range n {
			one := make([]vec.V3, len(posts))
			one[i][axis], all[i][axis] = 1, 1
			spread[i][axis] = (posts[i][axis] - s.payload.COM[axis]) / s.extent
			out = append(out, one)
		}
		out = append(out, all, spread)
	}
	for range 4 * n {
		d := make([]vec.V3, len(posts))
		for i := range n {
			d[i] = vec.V3{2*s.rng.Float64() - 1, 2*s.rng.Float64() - 1, 0}
		}
		out = append(out, d)
	}
	return out
}

// move tries a step and keeps it when the places fit and the value is better.
func (s *smooth) move(posts, d []vec.V3, h, v float64) (float64, bool) {
	next := append([]vec.V3(nil), posts...)
	for n := range s.movable() {
		next[n] = s.region.snap(posts[n].Add(d[n].Scale(h)))
	}
	if !s.fits(next) {
		return v, false
	}
	if w := s.look(next); s.Goal.better(w, v) {
		copy(posts, next)
		s.keep(posts, w)
		return w, true
	}
	return v, false
}

// inOrder gives the best places by member of the team.
func (s *smooth) inOrder() []vec.V3 {
	if s.at == nil {
		return nil
	}
	out := make([]vec.V3, len(s.Plan.Team))
	n := 0
	for _, g := range s.groups {
		for _, m := range g.members {
			out[m] = s.at[n]
			n++
		}
	}
	return out
}
