package drawing

import (
	"math"
	"testing"
)

func TestPathData(t *testing.T) {
	p := newPen()
	p.line("a", Point{0, 0}, Point{1, 2})
	p.line("a", Point{1, 2}, Point{3, 4}) // goes on
	p.line("a", Point{9, 9}, Point{3.25, -4})
	p.line("a", Point{math.NaN(), 0}, Point{1, 1})
	p.poly("b", Point{0, 0}, Point{1, 0}, Point{1, 1})
	p.poly("b", Point{0, 0}, Point{1e9, 0}, Point{1, 1})
	p.circle("c", Point{5, 5}, 2)
	want := []string{"M0 0L1 2L3 4M9 9L3.25 -4", "M0 0L1 0L1 1Z", "M3 5A2 2 0 0 1 7 5A2 2 0 0 1 3 5Z"}
	for i, s := range p.done() {
		if got := data(s.Path); got != want[i] {
			t.Errorf("%s: %q, want %q", s.Class, got, want[i])
		}
	}
}
