package patch

import (
	"cohoist/core/share"
	"cohoist/core/solve"
)

// Losses is the patch that is left whichever one vehicle is lost.
type Losses struct {
	Each    []Patch  // without each vehicle, in the order of the team
	Empty   []string // vehicles without which nothing is held anywhere
	All     Patch    // what all of Each share; its Best is not asked: NaN
	Worst   string   // the vehicle whose loss leaves the present centre of mass the least
	Stopped bool     // tell asked to stop: All is not known
}

// AnyLost finds the patches after the loss of each vehicle, (13.1), (13.2), and what they share. Tell, if it is
// not nil, hears how many are done and may return false to stop.
func AnyLost(m *share.Model, s *solve.Solver, tell func(done, all int) bool) Losses {
	var out Losses
	n := len(m.Craft)
	for i := range n {
		if tell != nil && !tell(i, n) {
			out.Stopped = true
			return out
		}
		p := Of(m.Without(i), s)
		if p.Status == solve.Infeasible {
			out.Empty = append(out.Empty, m.Craft[i].ID)
		}
		if len(out.Each) == 0 || p.worse(out.All) {
			out.Worst = m.Craft[i].ID
			out.All.Edge, out.All.Status = p.Edge, p.Status
		}
		out.Each = append(out.Each, p)
	}
	out.share(m)
	if tell != nil {
		tell(n, n)
	}
	return out
}

// worse tells that a patch leaves the present centre of mass less than another one.
func (p Patch) worse(than Patch) bool {
	if (p.Status == solve.Infeasible) != (than.Status == solve.Infeasible) {
		return p.Status == solve.Infeasible
	}
	return p.Edge < than.Edge
}

// share clips the patches by each other.
func (l *Losses) share(m *share.Model) {
	all := &l.All
	*all = Patch{Status: solve.Optimal, Best: XY{nan, nan}, Least: nan, Gap: nan, Edge: nan, Present: XY{m.Payload.COM[0], m.Payload.COM[1]}}
	for i, p := range l.Each {
		all.Solves += p.Solves
		switch {
		case p.Status != solve.Optimal && p.Status != solve.Infeasible:
			all.Status, all.Note = p.Status, p.Note
			return
		case i == 0:
			all.Inner, all.Outer = p.Inner, p.Outer
			continue
		}
		eps := fine * size(p.Outer)
		all.Inner = intersect(all.Inner, p.Inner, eps)
		all.Outer = intersect(all.Outer, p.Outer, eps)
	}
	switch {
	case len(l.Empty) > 0:
		all.Note = "without " + anyOf(l.Empty) + " it is held nowhere"
	case len(all.Outer) == 0:
		all.Note = "each loss is held somewhere, but no place serves them all"
	case len(all.Inner) == 0:
		all.Status, all.Note = solve.Unsolved, "whether a place serves all losses is too close to tell"
		return
	}
	if len(all.Outer) == 0 {
		all.Status = solve.Infeasible
		all.Inner = nil
	}
	all.measure()
}

// anyOf lists vehicles of which one at a time is meant.
func anyOf(names []string) string {
	if len(names) > 1 {
		return "any one of " + share.List(names)
	}
	return share.List(names)
}
