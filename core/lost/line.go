package lost

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/solve"
)

// step is the largest swing of a load that is put on at once, over where it comes to rest: the textbook
// result for one mass on an undamped spring.
const step = 2

// hover finds what every cable bears before the loss: the even share, its ties settled, (5.10).
func (t *table) hover() {
	if !t.m.Cables || !t.m.Settled {
		return
	}
	p := t.m.Even(0)
	if r := t.s.Solve(p); r.Status == solve.Optimal && r.T <= 1+rounding {
		if r = t.s.Settle(p, r.T); r.Status == solve.Optimal {
			t.before = tensions(t.m, r, -1)
		}
	}
}

// tensions are the pulls of a result, N, in the order of the whole team's craft; NaN for who has no cable, and
// for the one that is gone.
func tensions(m *share.Model, r solve.Result, gone int) []float64 {
	out := make([]float64, 0, len(m.Craft))
	pull := 0
	for i, c := range m.Craft {
		if c.Rigid || i == gone {
			out = append(out, math.NaN())
			continue
		}
		out = append(out, r.F[pull].Norm()/c.Keep())
		pull++
	}
	return out
}

// lines fills in what the cables of the survivors bear after a vehicle is gone; p has just been solved.
func (t *table) lines(e *Entry, p *solve.Program, gone int) {
	if len(p.Pulls) == 0 {
		return
	}
	r := t.s.Settle(p, e.Utilisation)
	if r.Status != solve.Optimal {
		return
	}
	after := tensions(t.m, r, gone)
	for i, c := range t.m.Craft {
		if math.IsNaN(after[i]) {
			continue
		}
		l := Line{ID: c.ID, Before: t.before[i], After: after[i], WorkingLoad: c.WorkingLoad}
		l.Peak = math.Max(l.Before, l.Before+step*(l.After-l.Before)) // (13.5)
		e.Lines = append(e.Lines, l)
	}
}
