package cargo

import (
	"math"
)

// Kinds of a Span.
const (
	Flying    = "fly"
	Hooking   = "hook"
	Carrying  = "carry"
	Unhooking = "unhook"
	Changing  = "change" // of packs, at home
)

// Span is one thing that the team does in an order.
type Span struct {
	Kind   string
	From   int     // flying: the item it comes from, −1 home; else the item
	Item   int     // flying: that it goes to, −1 home
	Start  float64 // s
	Time   float64 // s
	Energy float64 // J, of the team
}

// Spans are what the team does in an order, one after the other, from home to home.
func (s *Study) Spans(stops []Stop) (out []Span) {
	clock := 0.0
	add := func(kind string, from, to int, time, energy float64) {
		if time > 0 {
			out = append(out, Span{kind, from, to, clock, time, energy})
			clock += time
		}
	}
	power := 0.0
	for _, c := range s.work.team {
		power += c.power
	}
	fly := func(from, to int) {
		t := s.Flight(from, to).Time
		add(Flying, from, to, t, power*t)
	}
	last := -1
	for _, stop := range stops {
		i := stop.Item
		if stop.Fresh {
			fly(last, -1)
			swap := s.Has.Swap
			if math.IsNaN(swap) {
				swap = 0
			}
			add(Changing, i, i, swap, 0)
			last = -1
		}
		fly(last, i)
		add(Hooking, i, i, s.Has.Hook, power*s.Has.Hook)
		time, energy := 0.0, 0.0
		for _, c := range s.Items[i].Carry {
			time += c.Path.Duration()
			for _, spent := range c.Spent {
				energy += spent.Energy
			}
		}
		add(Carrying, i, i, time, energy)
		add(Unhooking, i, i, s.Has.Hook, power*s.Has.Hook)
		last = i
	}
	if last >= 0 {
		fly(last, -1)
	}
	return out
}
