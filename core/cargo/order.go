package cargo

import (
	"cmp"
	"math"
	"slices"
)

// mostExact is up to how many items the best order is found for certain, mostLabels how many parts of orders are looked at for it, and
// width how many of each length a search that is not exact goes on with.
const (
	mostExact  = 14
	mostLabels = 300000
	width      = 200
)

// close is how near two times or energies count as the same, of their size.
const near = 1e-9

// label is the beginning of an order. Of two that have set the same items and end with the same one, that which is no
// slower and has used no more of any pack serves every rest as well, (23.8).
type label struct {
	state
	time, energy float64
	packs        int
	fresh        bool
	used         []float64
	floor        float64 // time and the least rest
	from         *label
}

// search is the work on one tour.
type search struct {
	*Tour
	least  *least
	looked int
	most   float64 // nothing longer is of interest
}

// Best is the order of least time, and of those of least energy, with the changes of packs where they cost least. Every item must
// fit. found is false when the packs do not suffice, or items wait for one another.
func (t *Tour) Best() (o Order, found bool) {
	n := len(t.Own)
	s := &search{Tour: t, least: newLeast(t, n <= mostExact), most: math.Inf(1)}
	bound := s.least.rest(state{0, -1}, make([]float64, s.packs()))
	any := func(state) (int, int) { return 0, n }
	end, _ := s.run(width, any)
	exact := n <= mostExact
	if exact {
		if end != nil {
			s.most = end.time
		}
		if best, whole := s.run(math.MaxInt, any); whole {
			end = best
		} else {
			exact = false
		}
	}
	if end == nil {
		return Order{Looked: s.looked, Bound: bound, Exact: exact}, false
	}
	o = end.order()
	o.Exact, o.Looked, o.Bound = exact, s.looked, bound
	if exact {
		o.Bound = o.Time
	}
	return o, true
}

// Given is an order as it is given, with the changes of packs where they cost least.
func (t *Tour) Given(order []int) (o Order, found bool) {
	s := &search{Tour: t, least: newLeast(t, false), most: math.Inf(1)}
	depth := func(at state) int {
		d := 0
		for j := range t.Own {
			d += int(at.done >> j & 1)
		}
		return d
	}
	end, _ := s.run(math.MaxInt, func(at state) (int, int) { j := order[depth(at)]; return j, j + 1 })
	if end == nil {
		return Order{Looked: s.looked}, false
	}
	o = end.order()
	o.Bound, o.Looked = math.NaN(), s.looked
	return o, true
}

func (t *Tour) packs() int {
	if len(t.Own) == 0 {
		return 0
	}
	return len(t.Own[0].Part)
}

// binding leaves out vehicles whose packs never take more than another's.
func (t *Tour) binding() []int {
	var all []Leg
	all = append(append(append(all, t.Own...), t.Out...), t.Back...)
	for _, row := range t.Across {
		all = append(all, row...)
	}
	var out []int
	for v := range t.packs() {
		covered := false
		for w := range t.packs() {
			if w == v || covered {
				continue
			}
			less, same := true, true
			for _, l := range all {
				if len(l.Part) == 0 {
					continue
				}
				less = less && l.Part[v] <= l.Part[w]
				same = same && l.Part[v] == l.Part[w]
			}
			for _, most := range t.Most {
				less = less && most[v] >= most[w]
				same = same && most[v] == most[w]
			}
			covered = less && (!same || w < v)
		}
		if !covered {
			out = append(out, v)
		}
	}
	return out
}

// run goes through orders item by item and keeps so many beginnings of each length. whole is false when it gave up.
func (s *search) run(keep int, which func(state) (from, to int)) (end *label, whole bool) {
	layer := []*label{{state: state{0, -1}, packs: 1, used: make([]float64, s.packs())}}
	started := s.looked
	for range s.Own {
		kept, order := map[state][]*label{}, []state(nil)
		for _, l := range layer {
			from, to := which(l.state)
			for j := from; j < to; j++ {
				if l.done>>j&1 == 1 || s.Before[j]&^l.done != 0 {
					continue
				}
				for _, fresh := range []bool{false, true} {
					m := s.step(l, j, fresh)
					if m == nil {
						continue
					}
					if _, known := kept[m.state]; !known {
						order = append(order, m.state)
					}
					kept[m.state] = s.put(kept[m.state], m)
				}
			}
			if s.looked-started > mostLabels {
				return nil, false
			}
		}
		layer = layer[:0:0]
		for _, at := range order {
			layer = append(layer, kept[at]...)
		}
		slices.SortStableFunc(layer, func(a, b *label) int { return cmp.Compare(a.floor, b.floor) })
		layer = layer[:min(keep, len(layer))]
	}
	for _, l := range layer {
		m := *l
		if l.last >= 0 {
			m.time, m.energy = l.time+s.Back[l.last].Time, l.energy+s.Back[l.last].Energy
		}
		if end == nil || before(&m, end) {
			end = &m
		}
	}
	return end, true
}

// step sets one more item; nil: its packs do not allow it, or it is of no interest.
func (s *search) step(l *label, j int, fresh bool) *label {
	if fresh && (l.last < 0 || s.Packs > 0 && l.packs >= s.Packs) {
		return nil
	}
	s.looked++
	time, energy, part := s.next(l.last, j, fresh)
	if !(l.time+time+s.Own[j].Time+s.least.open(state{l.done | 1<<j, j}) <= s.most*(1+near)) {
		return nil
	}
	m := &label{state: state{l.done | 1<<j, j}, time: l.time + time + s.Own[j].Time, energy: l.energy + energy + s.Own[j].Energy,
		packs: l.packs, fresh: fresh, used: make([]float64, len(l.used)), from: l}
	if fresh {
		m.packs++
	}
	for _, v := range s.least.binds {
		u := part[v] + s.Own[j].Part[v]
		if !fresh {
			u += l.used[v]
		}
		if !(u <= s.Most[j][v]*full && u+s.Back[j].Part[v] <= full) {
			return nil
		}
		m.used[v] = u
	}
	m.floor = m.time + s.least.rest(m.state, m.used)
	if !(m.floor <= s.most*(1+near)) {
		return nil
	}
	return m
}

// put adds a label to those of its state, unless one is as good; those that it makes needless go.
func (s *search) put(list []*label, m *label) []*label {
	for _, l := range list {
		if s.serves(l, m) {
			return list
		}
	}
	kept := list[:0]
	for _, l := range list {
		if !s.serves(m, l) {
			kept = append(kept, l)
		}
	}
	return append(kept, m)
}

// serves tells that a is as good as b, whatever follows.
func (s *search) serves(a, b *label) bool {
	if !before(a, b) && before(b, a) || s.Packs > 0 && a.packs > b.packs {
		return false
	}
	for _, v := range s.least.binds {
		if a.used[v] > b.used[v] {
			return false
		}
	}
	return true
}

// before orders by time, then energy.
func before(a, b *label) bool {
	switch tie := near * (1 + math.Abs(b.time)); {
	case a.time < b.time-tie:
		return true
	case a.time > b.time+tie:
		return false
	}
	return a.energy < b.energy
}

// order reads a label from its beginning.
func (l *label) order() Order {
	o := Order{Time: l.time, Energy: l.energy, Packs: l.packs}
	for ; l.last >= 0; l = l.from {
		o.Stops = append(o.Stops, Stop{l.last, l.fresh})
	}
	slices.Reverse(o.Stops)
	return o
}
