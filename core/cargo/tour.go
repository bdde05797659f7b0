package cargo

import "math"

// Leg is one part of a tour.
type Leg struct {
	Time   float64   // s
	Energy float64   // J, of the team
	Part   []float64 // of every vehicle's pack between full and its end at home, that it takes; nil: nothing is known of packs
}

// Tour is what an order is sought for: n items, each set once, from home and back.
type Tour struct {
	Own    []Leg       // hooking up, carrying and unhooking
	Most   [][]float64 // of every pack that may have been taken when an item is set, for what is heavy ends a pack sooner
	Out    []Leg       // from home to where it is picked
	Back   []Leg       // from where it is set to home
	Across [][]Leg     // [i][j]: from where i is set to where j is picked
	Before []uint64    // of every item: those set before it, a bit each
	Swap   float64     // s: to change all packs at home
	Packs  int         // of each vehicle; 0: as many as it takes
}

// Stop is one item of an order.
type Stop struct {
	Item  int
	Fresh bool // the team flies home before it and changes its packs
}

// Order is an order with what it takes.
type Order struct {
	Stops  []Stop
	Time   float64 // s, from home to home, with the changes of packs
	Energy float64 // J
	Packs  int     // of each vehicle
	Bound  float64 // s: no order takes less
	Exact  bool    // Bound is Time: it is the best
	Looked int     // parts of orders that were looked at
}

// full is what a pack gives, rounding let in.
const full = 1 + 1e-9

// Fits tells whether the team sets an item from full packs, home to home.
func (t *Tour) Fits(i int) bool {
	for v := range t.Own[i].Part {
		if used := t.Out[i].Part[v] + t.Own[i].Part[v]; !(used <= t.Most[i][v]*full && used+t.Back[i].Part[v] <= full) {
			return false
		}
	}
	return true
}

// next is the leg to item j: from home when i is negative, over home for fresh packs, or straight. The packs' part of a leg over
// home is that after the change.
func (t *Tour) next(i, j int, fresh bool) (time, energy float64, part []float64) {
	switch {
	case i < 0:
		return t.Out[j].Time, t.Out[j].Energy, t.Out[j].Part
	case fresh:
		return t.Back[i].Time + t.Swap + t.Out[j].Time, t.Back[i].Energy + t.Out[j].Energy, t.Out[j].Part
	}
	return t.Across[i][j].Time, t.Across[i][j].Energy, t.Across[i][j].Part
}

// least is a lower bound on what is still to come, (23.9). It needs every item to fit.
type least struct {
	t      *Tour
	binds  []int     // the vehicles whose packs can be the first to empty
	into   []float64 // s: the quickest way to an item and through it
	back   float64   // s: the quickest way home
	change float64   // s: what a change of packs takes at least
	eats   [][]float64
	home   []float64
	closed []float64 // s: the exact rest without regard to packs, by what is done and the last; nil: too many items
}

// state is what has been set, and what last; −1: nothing yet.
type state struct {
	done uint64
	last int
}

// quick is the time from one item to the next with packs that never empty.
func (t *Tour) quick(i, j int) float64 {
	straight, _, _ := t.next(i, j, false)
	if i < 0 {
		return straight
	}
	over, _, _ := t.next(i, j, true)
	return math.Min(straight, over)
}

func newLeast(t *Tour, exact bool) *least {
	n := len(t.Own)
	l := &least{t: t, binds: t.binding(), into: make([]float64, n), back: math.Inf(1), change: math.Inf(1), eats: make([][]float64, n)}
	packs := 0
	if n > 0 {
		packs = len(t.Own[0].Part)
	}
	l.home = filled(packs)
	for j := range n {
		l.into[j], l.eats[j] = math.Inf(1), filled(packs)
		l.back = math.Min(l.back, t.Back[j].Time)
		lower(l.home, t.Back[j].Part)
		for i := -1; i < n; i++ {
			if i == j {
				continue
			}
			l.into[j] = math.Min(l.into[j], t.quick(i, j)+t.Own[j].Time)
			_, _, part := t.next(i, j, false)
			lower(l.eats[j], part)
			lower(l.eats[j], t.Out[j].Part)
			if i >= 0 {
				over, _, _ := t.next(i, j, true)
				l.change = math.Min(l.change, over-t.quick(i, j))
			}
		}
		for v := range l.eats[j] {
			l.eats[j][v] += t.Own[j].Part[v]
		}
	}
	if exact {
		l.closed = make([]float64, n<<n)
	}
	return l
}

func filled(n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = math.Inf(1)
	}
	return out
}

func lower(a, b []float64) {
	for i := range a {
		a[i] = math.Min(a[i], b[i])
	}
}

// rest is the least time from a state with so much of the packs used.
func (l *least) rest(s state, used []float64) float64 {
	n := len(l.t.Own)
	changes := 0.0
	for _, v := range l.binds {
		u := used[v] + l.home[v]
		for j := range n {
			if s.done>>j&1 == 0 {
				u += l.eats[j][v]
			}
		}
		changes = math.Max(changes, math.Ceil(u-full))
	}
	sum := l.open(s)
	if changes > 0 {
		sum += changes * l.change
	}
	return sum
}

// open is the least time to the end with packs that never empty: exactly, or by the quickest ways.
func (l *least) open(s state) float64 {
	n := len(l.t.Own)
	if s.done == 1<<n-1 {
		if s.last < 0 {
			return 0
		}
		return l.t.Back[s.last].Time
	}
	if l.closed == nil {
		sum := l.back
		for j := range n {
			if s.done>>j&1 == 0 {
				sum += l.into[j]
			}
		}
		return sum
	}
	at := int(s.done)*n + s.last
	if s.last >= 0 && l.closed[at] > 0 {
		return l.closed[at]
	}
	best := math.Inf(1)
	for j := range n {
		if s.done>>j&1 == 0 && l.t.Before[j]&^s.done == 0 {
			best = math.Min(best, l.t.quick(s.last, j)+l.t.Own[j].Time+l.open(state{s.done | 1<<j, j}))
		}
	}
	if s.last >= 0 {
		l.closed[at] = best
	}
	return best
}
