package rehearse

import (
	"math"
	"math/rand/v2"

	"cohoist/core/vec"
)

// gusts are a wind that wanders about its mean: in each direction a first-order random process, drawn every gustStep
// and straight between, so that it does not depend on the steps of the rehearsal, (21.6).
type gusts struct {
	mean vec.V3
	off  []vec.V3
}

const (
	gustStep = 0.1 // s
	gustLast = 2.0 // s: time constant (common practice, no source)
)

// share of the wander across the wind and upwards over that along it (common practice, no source).
const across, upwards = 0.75, 0.5

// newGusts draws them for a span, s. The factor is the speed in a gust over the mean: three standard deviations.
func newGusts(mean vec.V3, factor, span float64, seed int64) *gusts {
	g := &gusts{mean: mean}
	speed := mean.Norm()
	if !(factor > 1) || speed == 0 {
		return g
	}
	d := rand.New(rand.NewPCG(uint64(seed), 21))
	along := mean.Scale(1 / speed)
	side := vec.V3{0, 0, 1}.Cross(along)
	sigma := (factor - 1) * speed / 3
	keep := math.Exp(-gustStep / gustLast)
	fresh := sigma * math.Sqrt(1-keep*keep)
	var now vec.V3 // along, across, up
	for range int(span/gustStep) + 3 {
		g.off = append(g.off, along.Scale(now[0]).Add(side.Scale(across*now[1])).Add(vec.V3{0, 0, upwards * now[2]}))
		for a := range now {
			now[a] = float64(keep*now[a]) + float64(fresh*d.NormFloat64())
		}
	}
	return g
}

// at is the wind at a time, m/s.
func (g *gusts) at(t float64) vec.V3 {
	k := int(t / gustStep)
	if k < 0 || k+1 >= len(g.off) {
		return g.mean
	}
	part := t/gustStep - float64(k)
	return g.mean.Add(g.off[k].Scale(1 - part)).Add(g.off[k+1].Scale(part))
}
