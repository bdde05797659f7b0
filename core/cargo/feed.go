package cargo

import (
	"math"

	"cohoist/core/energy"
)

// forever is longer than any pack lasts, s.
const forever = 1e6

// feed finds what is known of packs, and what every item takes from them.
func (s *Study) feed() {
	w := s.work
	said := map[string]bool{}
	for i := range s.Items {
		it := &s.Items[i]
		if it.study == nil {
			continue
		}
		if w.team == nil {
			w.team = crafts(it)
			s.Wants = it.study.Needs
			for _, text := range it.study.Assumed {
				if !said[text] {
					said[text] = true
					s.Assumed = append(s.Assumed, text)
				}
			}
		}
		for _, v := range it.study.Vehicles {
			if it.Why == "" && s.powered() && !(v.Time > 0) {
				it.Why = v.ID + " cannot hold its part of it, not even from a full pack."
			}
		}
	}
	for i := range s.Items {
		it := &s.Items[i]
		if it.Why != "" {
			continue
		}
		if w.floor == nil && s.powered() {
			w.floor = s.floors(it)
		}
		s.own(it)
	}
}

// powered tells that all is known of the packs.
func (s *Study) powered() bool { return s.work.team != nil && len(s.Wants) == 0 }

// floors are the charges at which packs end on the way home.
func (s *Study) floors(it *Item) []float64 {
	out := make([]float64, len(s.work.team))
	for v := range out {
		alone, _ := it.study.Alone(v, hover(forever), 1)
		out[v] = alone.Charge
	}
	return out
}

// most is how much of every pack, of what it has between full and its end at home, may be gone when an item is unhooked: so that before,
// it could hold the item to where it is set and carry it in the hardest instants, (23.6).
func (s *Study) most(it *Item) []float64 {
	w := s.work
	out := make([]float64, len(w.floor))
	for v, floor := range w.floor {
		after := s.Has.Hook * w.hoverPart(it, v)
		out[v] = math.Min(w.team[v].taken(1, it.study.Vehicles[v].Charge, floor)+after, 1) // (23.6)
		for k := len(it.Carry) - 1; k >= 0; k-- {
			c := it.Carry[k]
			out[v] = math.Min(out[v], w.team[v].taken(1, c.hard[v].charge, floor)+after+c.parts[v]*c.hard[v].left) // (23.6)
			after += c.parts[v]
		}
	}
	return out
}

// own is what an item takes itself: hooking up, carrying and unhooking.
func (s *Study) own(it *Item) {
	w := s.work
	hook := 2 * s.Has.Hook
	it.Own = Leg{Time: hook}
	for v := range w.team {
		it.Own.Energy += w.team[v].power * hook
	}
	var parts []float64
	if w.floor != nil {
		parts = make([]float64, len(w.team))
		for v := range parts {
			parts[v] = hook * w.hoverPart(it, v)
		}
	}
	for k := range it.Carry {
		c := &it.Carry[k]
		it.Own.Time += c.Path.Duration()
		for v := range w.team {
			it.Own.Energy += c.Spent[v].Energy
		}
		if parts == nil {
			continue
		}
		half := make([]float64, len(w.team))
		for v := range half {
			half[v] = w.half(v)
		}
		for v, spent := range it.study.Along(c.Along, half) {
			c.parts = append(c.parts, w.part(spent, v, c.Path.Duration()))
			parts[v] += c.parts[v]
		}
	}
	it.Own.Part = parts
}

// half is the charge midway between full and a pack's end, from which parts are reckoned, (23.7).
func (w *work) half(v int) float64 { return (1 + w.floor[v]) / 2 }

// taken is the part of a pack's energy, of that between full and its end at home, that goes from one charge to a lower one, (23.7).
func (c craft) taken(from, to, floor float64) float64 {
	return (c.pack.Left(from) - c.pack.Left(to)) / (1 - c.pack.Left(floor)) // (23.7)
}

// part is what a motion from half takes of a pack. What would end the pack on the way counts as going on at its pace.
func (w *work) part(spent energy.Spent, v int, time float64) float64 {
	p := w.team[v].taken(w.half(v), spent.Charge, w.floor[v])
	if spent.Ends < time {
		p *= time / spent.Ends
	}
	return p
}

// hoverPart is what a vehicle takes of its pack each second that it hovers alone.
func (w *work) hoverPart(it *Item, v int) float64 {
	const minute = 60
	spent, _ := it.study.Alone(v, hover(minute), w.half(v))
	return w.part(spent, v, minute) / minute
}

// empty is a flight without a payload as a leg: every vehicle hovers as long as it takes, (23.5).
func (s *Study) empty(f Flight, rates []float64) Leg {
	leg := Leg{Time: f.Time}
	for _, c := range s.work.team {
		leg.Energy += c.power * f.Time
	}
	for _, r := range rates {
		leg.Part = append(leg.Part, r*f.Time)
	}
	return leg
}

// build makes the tour of the items that can be set. What its packs give counts as so much less.
func (s *Study) build(scale float64) {
	w := s.work
	s.index = s.index[:0]
	at := make(map[int]int)
	var rates []float64
	for i := range s.Items {
		it := &s.Items[i]
		if it.Why != "" {
			continue
		}
		if w.floor != nil && rates == nil {
			for v := range w.team {
				rates = append(rates, scale*w.hoverPart(it, v))
			}
		}
		at[i] = len(s.index)
		s.index = append(s.index, i)
	}
	t := &Tour{Swap: s.Has.Swap, Packs: s.Has.Packs}
	if math.IsNaN(t.Swap) {
		t.Swap = 0
	}
	for _, i := range s.index {
		it, before := &s.Items[i], uint64(0)
		for _, list := range [][]int{it.On, it.Under} {
			for _, j := range list {
				before |= 1 << at[j]
			}
		}
		out, back := s.empty(s.Flight(-1, i), rates), s.empty(s.Flight(i, -1), rates)
		own := Leg{Time: it.Own.Time, Energy: it.Own.Energy, Part: append([]float64(nil), it.Own.Part...)}
		most := s.most(it)
		for v := range own.Part { // alone it fits, by the exact reckoning
			own.Part[v] = math.Min(math.Min(scale*own.Part[v], 1-out.Part[v]-back.Part[v]), most[v]-out.Part[v])
		}
		t.Most = append(t.Most, most)
		t.Own, t.Out, t.Back, t.Before = append(t.Own, own), append(t.Out, out), append(t.Back, back), append(t.Before, before)
		row := make([]Leg, 0, len(s.index))
		for _, j := range s.index {
			leg := Leg{}
			if i != j {
				leg = s.empty(s.Flight(i, j), rates)
			}
			row = append(row, leg)
		}
		t.Across = append(t.Across, row)
	}
	s.tour = t
}
