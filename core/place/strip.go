package place

import (
	"math"

	"cohoist/core/vec"
)

// Shift gives the value of the goal as one vehicle of the team (by index) moves through places, the others
// staying: the cost of a shift. A place where nothing holds is +Inf (Agility: −Inf).
func Shift(q Question, member int, places []vec.V3) ([]float64, error) {
	if member < 0 || member >= len(q.Plan.Team) {
		return nil, ErrNone
	}
	q.Free = make([]bool, len(q.Plan.Team))
	q.Free[member] = true
	b, err := newBench(q, places)
	if err != nil {
		return nil, err
	}
	out := make([]float64, len(places))
	posts := append([]vec.V3(nil), b.posts...)
	for i, p := range places {
		posts[0] = p // the free one stands first
		out[i], _, _ = b.value(posts, q.Goal.worst())
	}
	return out, nil
}

// Value gives the value of the goal where the plan has the team, and the utilisation case by case.
func Value(q Question) (float64, []Case, error) {
	b, err := newBench(q, nil)
	if err != nil {
		return math.NaN(), nil, err
	}
	v, _, _ := b.value(b.posts, q.Goal.worst())
	return v, b.cases(b.posts), nil
}

// Pair is a placement with its values for two goals.
type Pair struct {
	Places []vec.V3
	Holes  []int
	Values [2]float64
}

// Pareto tries every placement on a hole pattern and keeps those that no other beats in one goal without
// losing in the other, in order of the first goal's value. The proof tells whether all were tried.
func Pareto(q Question, goals [2]Goal, holes []vec.V3, tell Tell) ([]Pair, Proof, error) {
	q.Goal = goals[0]
	if goals[1] == Moment {
		q.Goal = Moment // makes the beam ready
	}
	b, err := newBench(q, holes)
	if err != nil {
		return nil, Proof{}, err
	}
	b.Goal = goals[0]
	s := &branch{bench: b, holes: holes, chosen: make([][]int, len(b.groups)), used: make([]bool, len(holes)),
		best: goals[0].worst(), tell: tell, posts: append([]vec.V3(nil), b.posts...)}
	if err := s.lay(); err != nil {
		return nil, Proof{}, err
	}
	s.proof.Candidates = s.count()
	var front []Pair
	s.each = func(at []int) {
		var v [2]float64
		for k, g := range goals {
			s.Goal = g
			v[k], _, _ = s.value(s.posts, g.worst())
			if math.IsInf(v[k], 0) {
				return
			}
		}
		front = enter(front, Pair{Values: v, Holes: append([]int(nil), at...)}, goals)
	}
	s.walk(0, 0, len(b.groups[0].members))
	for i := range front {
		at := front[i].Holes
		front[i].Holes = make([]int, len(q.Plan.Team))
		for j := range front[i].Holes {
			front[i].Holes[j] = -1
		}
		front[i].Places = s.inOrder(at, front[i].Holes)
	}
	s.proof.Proved, s.proof.Unsolved, s.proof.Bound = !s.stopped && s.unsolved == 0, s.unsolved, math.NaN()
	return front, s.proof, nil
}

// enter puts a pair into a front, in order, unless it is beaten; what it beats goes out.
func enter(front []Pair, p Pair, goals [2]Goal) []Pair {
	beats := func(a, b Pair) bool { // or equals
		for k, g := range goals {
			if g.better(b.Values[k], a.Values[k]) {
				return false
			}
		}
		return true
	}
	for _, o := range front {
		if beats(o, p) {
			return front
		}
	}
	out := make([]Pair, 0, len(front)+1)
	put := false
	for _, o := range front {
		if beats(p, o) {
			continue
		}
		if !put && goals[0].better(p.Values[0], o.Values[0]) {
			out, put = append(out, p), true
		}
		out = append(out, o)
	}
	if !put {
		out = append(out, p)
	}
	return out
}
