package place

import (
	"cmp"
	"math"
	"slices"

	"cohoist/core/beam"
	"cohoist/core/share"
	"cohoist/core/vec"
)

// overhang makes the bound of the smallest bending moment, (10.7): the moment at the outermost hold is that of what
// hangs beyond it, whatever the forces are. Units are taken in order of x, so that the first one
// chosen is the outermost.
func (s *branch) overhang() {
	if s.Goal != Moment || s.free != 1 || len(s.groups) != 1 || s.Mirror != [2]bool{} {
		return
	}
	slices.SortStableFunc(s.units, func(a, b []int) int {
		return cmp.Compare(s.holes[a[0]][0], s.holes[b[0]][0])
	})
	weight := s.beam.Weight(vec.V3{0, 0, -share.Gravity})
	left := s.beam.Upright(weight)
	s.hang = func(x float64) float64 { return math.Abs(left.At(x)) }
	for i, p := range weight.Points {
		weight.Points[i].X = s.beam.Left + s.beam.Right - p.X
		weight.Points[i].Moment = p.Moment.Scale(-1)
	}
	for i, p := range weight.Spreads {
		weight.Spreads[i] = beam.Spread{From: s.beam.Left + s.beam.Right - p.To, To: s.beam.Left + s.beam.Right - p.From, A: p.B, B: p.A}
	}
	right := s.beam.Upright(weight) // seen from the other side
	s.weighs = func(x float64) float64 { return math.Abs(right.At(s.beam.Left + s.beam.Right - x)) }
}

// overhangs tells whether the first hold chosen already leaves too much hanging on its left.
func (s *branch) overhangs() bool {
	if s.hang == nil || len(s.chosen[0]) == 0 || math.IsInf(s.best, 1) {
		return false
	}
	return s.hang(s.holes[s.chosen[0][0]][0]) > s.best*(1-Tolerance)
}

// overhangsRight is the same for the last hold of a complete placement.
func (s *branch) overhangsRight() bool {
	if s.hang == nil || math.IsInf(s.best, 1) {
		return false
	}
	last := s.chosen[0][len(s.chosen[0])-1]
	return s.weighs(s.holes[last][0]) > s.best*(1-Tolerance)
}
