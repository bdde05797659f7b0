package cargo

import (
	"math"
	"math/rand/v2"
	"testing"
)

// random is a tour of n items: times are whole seconds, so that ties happen, and triangles need not close.
func random(seed uint64, n, vehicles int) *Tour {
	r := rand.New(rand.NewPCG(seed, 23))
	leg := func(most float64) Leg {
		l := Leg{Time: float64(5 + r.IntN(20)), Energy: float64(r.IntN(5))}
		for range vehicles {
			l.Part = append(l.Part, most*r.Float64())
		}
		return l
	}
	t := &Tour{Swap: float64(r.IntN(60)), Before: make([]uint64, n)}
	if r.IntN(2) == 0 {
		t.Packs = 1 + r.IntN(3)
	}
	rank := r.Perm(n)
	for i := range n {
		t.Own, t.Out, t.Back = append(t.Own, leg(0.3)), append(t.Out, leg(0.2)), append(t.Back, leg(0.2))
		most := make([]float64, vehicles)
		for v := range most {
			most[v] = 0.7 + 0.3*r.Float64()
		}
		t.Most = append(t.Most, most)
		row := make([]Leg, n)
		for j := range row {
			row[j] = leg(0.2)
			if rank[j] < rank[i] && r.IntN(4) == 0 {
				t.Before[i] |= 1 << j
			}
		}
		t.Across = append(t.Across, row)
	}
	return t
}

// brute tries every order with every choice of changes.
func brute(t *Tour) (best Order, found bool) {
	n := len(t.Own)
	best.Time = math.Inf(1)
	var try func(done uint64, stops []Stop, time, energy float64, packs int, used []float64)
	try = func(done uint64, stops []Stop, time, energy float64, packs int, used []float64) {
		if len(stops) == n {
			if n > 0 {
				last := stops[n-1].Item
				time, energy = time+t.Back[last].Time, energy+t.Back[last].Energy
			}
			if time < best.Time || time == best.Time && energy < best.Energy {
				best = Order{Stops: append([]Stop(nil), stops...), Time: time, Energy: energy, Packs: packs}
				found = true
			}
			return
		}
		last := -1
		if len(stops) > 0 {
			last = stops[len(stops)-1].Item
		}
		for j := range n {
			if done>>j&1 == 1 || t.Before[j]&^done != 0 {
				continue
			}
			for _, fresh := range []bool{false, true} {
				if fresh && (last < 0 || t.Packs > 0 && packs == t.Packs) {
					continue
				}
				dt, de, part := t.Out[j].Time, t.Out[j].Energy, t.Out[j].Part
				now, after := packs, make([]float64, len(used))
				switch {
				case fresh:
					dt, de, now = dt+t.Back[last].Time+t.Swap, de+t.Back[last].Energy, packs+1
				case last >= 0:
					dt, de, part = t.Across[last][j].Time, t.Across[last][j].Energy, t.Across[last][j].Part
				}
				ok := true
				for v := range used {
					after[v] = part[v] + t.Own[j].Part[v]
					if !fresh {
						after[v] += used[v]
					}
					ok = ok && after[v] <= t.Most[j][v] && after[v]+t.Back[j].Part[v] <= 1
				}
				if ok {
					try(done|1<<j, append(stops, Stop{j, fresh}), time+dt+t.Own[j].Time, energy+de+t.Own[j].Energy, now, after)
				}
			}
		}
	}
	packs := 0
	if n > 0 {
		packs = len(t.Own[0].Part)
	}
	try(0, nil, 0, 0, 1, make([]float64, packs))
	return best, found
}

// replay adds an order up.
func replay(t *Tour, stops []Stop) (time, energy float64, packs int) {
	last := -1
	packs = 1
	for _, s := range stops {
		dt, de, _ := t.next(last, s.Item, s.Fresh)
		time, energy, last = time+dt+t.Own[s.Item].Time, energy+de+t.Own[s.Item].Energy, s.Item
		if s.Fresh {
			packs++
		}
	}
	if last >= 0 {
		time, energy = time+t.Back[last].Time, energy+t.Back[last].Energy
	}
	return time, energy, packs
}

// The best order is that of all orders tried one by one, in time and, among those as quick, in energy; times are whole, so exactly.
func TestBestIsBruteForce(t *testing.T) {
	none := 0
	for seed := range uint64(300) {
		n := int(seed % 7)
		tour := random(seed, n, 1+int(seed%3))
		want, ok := brute(tour)
		got, found := tour.Best()
		if ok != found {
			t.Fatalf("seed %d: found %v, brute force %v", seed, found, ok)
		}
		if !ok {
			none++
			continue
		}
		time, energy, packs := replay(tour, got.Stops)
		if !got.Exact || got.Time != want.Time || got.Energy != want.Energy || got.Time != time || got.Energy != energy || got.Packs != packs || len(got.Stops) != n {
			t.Errorf("seed %d: %+v, brute force %+v", seed, got, want)
		}
		var order []int
		for _, s := range want.Stops {
			order = append(order, s.Item)
		}
		if own, ok := tour.Given(order); !ok || own.Time != want.Time || own.Energy != want.Energy {
			t.Errorf("seed %d: the best order given is %+v, want %+v", seed, own, want)
		}
	}
	if none < 10 || none > 200 {
		t.Errorf("%d of 300 tours have no order: they try little", none)
	}
}

// Seven items, as the largest that all orders of are tried.
func TestBestOfSeven(t *testing.T) {
	for seed := range uint64(4) {
		tour := random(1000+seed, 7, 2)
		tour.Packs = 0
		want, ok := brute(tour)
		if got, found := tour.Best(); found != ok || got.Time != want.Time || got.Energy != want.Energy {
			t.Errorf("seed %d: %+v, brute force %+v", seed, got, want)
		}
	}
}

// Lower bounds hold, and an order of many items that is not proved is an order.
func TestManyItems(t *testing.T) {
	for seed := range uint64(5) {
		tour := random(2000+seed, 20, 2)
		tour.Packs = 0
		o, found := tour.Best()
		if !found {
			t.Fatalf("seed %d: nothing", seed)
		}
		time, _, packs := replay(tour, o.Stops)
		done := uint64(0)
		for _, s := range o.Stops {
			if tour.Before[s.Item]&^done != 0 {
				t.Errorf("seed %d: item %d before what it stands on", seed, s.Item)
			}
			done |= 1 << s.Item
		}
		if o.Exact || o.Time != time || o.Packs != packs || done != 1<<20-1 || !(o.Bound > 0 && o.Bound <= o.Time) {
			t.Errorf("seed %d: %+v", seed, o)
		}
		small := random(2000+seed, 6, 2)
		small.Packs = 0
		if best, ok := brute(small); ok {
			l := newLeast(small, false)
			if low := l.rest(state{0, -1}, make([]float64, 2)); low > best.Time {
				t.Errorf("seed %d: bound %g above %g", seed, low, best.Time)
			}
			l = newLeast(small, true)
			if low := l.rest(state{0, -1}, make([]float64, 2)); low > best.Time {
				t.Errorf("seed %d: bound %g above %g", seed, low, best.Time)
			}
		}
	}
}

// By hand: two items, each takes 0.4 of a pack, the way home 0.1. Both on one pack are 0.8 and home 0.9. At 0.5 each the packs must be changed.
func TestOrderByHand(t *testing.T) {
	leg := func(time, part float64) Leg { return Leg{Time: time, Energy: time, Part: []float64{part}} }
	tour := &Tour{Own: []Leg{leg(30, 0.4), leg(40, 0.4)}, Out: []Leg{leg(5, 0), leg(6, 0)}, Back: []Leg{leg(7, 0.1), leg(8, 0.1)},
		Across: [][]Leg{{{}, leg(3, 0)}, {leg(2, 0), {}}}, Before: []uint64{0, 0}, Swap: 100, Most: [][]float64{{1}, {1}}}
	for _, c := range []struct {
		name  string
		own   float64
		most  float64 // of the pack, when the first is set
		first uint64  // items that the second waits for
		packs int
		time  float64
		n     int
	}{
		{"one pack, second item first: 6 + 40 + 2 + 30 + 7", 0.4, 1, 0, 0, 85, 1},
		{"one pack, the first stands below: 5 + 30 + 3 + 40 + 8", 0.4, 1, 1, 0, 86, 1},
		{"the first is heavy, so it comes first: 5 + 30 + 3 + 40 + 8", 0.4, 0.7, 0, 0, 86, 1},
		{"two packs, either way: 5 + 30 + 7 + 100 + 6 + 40 + 8", 0.5, 1, 0, 2, 196, 2},
	} {
		tour.Own[0].Part[0], tour.Own[1].Part[0], tour.Most[0][0], tour.Before[1], tour.Packs = c.own, c.own, c.most, c.first, c.packs
		if o, ok := tour.Best(); !ok || o.Time != c.time || o.Packs != c.n {
			t.Errorf("%s: %+v", c.name, o)
		}
	}
	tour.Packs = 1
	if o, ok := tour.Best(); ok {
		t.Errorf("with one pack: %+v", o)
	}
	tour.Own[0].Part[0] = 0.95
	if tour.Fits(0) || !tour.Fits(1) {
		t.Error("an item that takes more than a pack fits")
	}
	if o, ok := (&Tour{}).Best(); !ok || o.Time != 0 || len(o.Stops) != 0 {
		t.Errorf("nothing to do: %+v", o)
	}
}

func BenchmarkFourteen(b *testing.B) {
	tour := random(3, 14, 3)
	tour.Packs = 0
	for b.Loop() {
		if o, ok := tour.Best(); !ok || !o.Exact {
			b.Fatal(o, ok)
		}
	}
}
