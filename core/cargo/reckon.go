package cargo

import "math"

// bank is the charge of every pack as an order goes on.
type bank struct {
	*Study
	charge, low []float64
	short       *Short
}

// reckon flies an order from full packs, each part from the charge that the one before has left, (23.7). left is the lowest that
// every pack comes to.
func (s *Study) reckon(stops []Stop) (short *Short, left []float64) {
	if !s.powered() || len(stops) == 0 {
		return nil, nil
	}
	b := &bank{Study: s, charge: make([]float64, len(s.work.team)), low: make([]float64, len(s.work.team))}
	b.fill()
	for v := range b.low {
		b.low[v] = 1
	}
	last := -1
	for _, stop := range stops {
		if stop.Fresh {
			b.alone(stop.Item, s.Flight(last, -1).Time)
			b.fill()
			last = -1
		}
		b.alone(stop.Item, s.Flight(last, stop.Item).Time)
		b.item(stop.Item)
		last = stop.Item
	}
	b.alone(last, s.Flight(last, -1).Time)
	return b.short, b.low
}

func (b *bank) fill() {
	for v := range b.charge {
		b.charge[v] = 1
	}
}

// alone lets every vehicle hover by itself for a time.
func (b *bank) alone(item int, time float64) {
	if time == 0 {
		return
	}
	for v := range b.charge {
		spent, _ := b.Items[item].study.Alone(v, hover(time), b.charge[v])
		b.take(item, v, spent.Charge, spent.Ends)
	}
}

// item hooks up, carries and unhooks.
func (b *bank) item(item int) {
	it := &b.Items[item]
	b.alone(item, b.Has.Hook)
	for _, c := range it.Carry {
		for v, spent := range it.study.Along(c.Along, b.charge) {
			b.take(item, v, spent.Charge, spent.Ends)
		}
	}
	b.alone(item, b.Has.Hook)
}

func (b *bank) take(item, v int, charge, ends float64) {
	if !math.IsInf(ends, 1) && b.short == nil {
		b.short = &Short{item, b.Items[item].model.Craft[v].ID}
	}
	b.charge[v] = charge
	b.low[v] = math.Min(b.low[v], charge)
}
