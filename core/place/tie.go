package place

import (
	"math"

	"cohoist/core/vec"
)

// mostTies is up to how many mirror-symmetric placements are tried for one that is as good as the best.
const mostTies = 700

// even takes, of placements as good as the best, a mirror-symmetric one whose attachments stand widest, (10.8), so that a crew
// is not sent to places that look as if they were thrown there. Nothing is as good: the best stays.
func (s *branch) even() {
	if s.Goal != Utilisation || s.Mirror != [2]bool{} || len(s.groups) != 1 || s.at == nil || s.stopped {
		return
	}
	limit := s.best + 2*Tolerance*math.Abs(s.best)
	for _, mirror := range [][2]bool{{true, true}, {false, true}, {true, false}} {
		q := *s.bench
		q.Mirror = mirror
		m := &branch{bench: &q, holes: s.holes, chosen: make([][]int, 1), used: make([]bool, len(s.holes)), posts: append([]vec.V3(nil), s.posts...)}
		if m.lay() != nil || m.count() > mostTies {
			continue
		}
		var widest [2]float64
		m.each = func(at []int) {
			if w := m.width(); wider(w, widest) {
				s.proof.Evaluated++
				if v, _, _ := m.value(m.posts, limit); v <= limit {
					widest, s.at = w, append(s.at[:0], at...)
				}
			}
		}
		m.walk(0, 0, len(m.groups[0].members))
		if widest[1] > 0 {
			return
		}
	}
}

// width is how wide the attachments stand about the centre of mass: first across the direction in which they stand
// widest, then along it.
func (s *branch) width() [2]float64 {
	var xx, yy, xy float64
	for _, p := range s.posts {
		d := p.Sub(s.payload.COM)
		xx, yy, xy = xx+d[0]*d[0], yy+d[1]*d[1], xy+d[0]*d[1]
	}
	mean, radius := (xx+yy)/2, math.Hypot((xx-yy)/2, xy)
	return [2]float64{math.Max(0, mean-radius), mean + radius}
}

// wider compares two widths, rounding aside.
func wider(a, b [2]float64) bool {
	near := 1e-9 * (a[1] + b[1])
	if math.Abs(a[0]-b[0]) > near {
		return a[0] > b[0]
	}
	return a[1] > b[1]+near
}
