package scatter

import (
	"math"

	"cohoist/core/solve"
)

// Worst is the worst corner found of the box of errors within Cut standard deviations, (16.9).
type Worst struct {
	T       float64   // utilisation there, a lower bound on the worst; +Inf: no balance
	Why     Cause     // of no balance
	Offsets []float64 // in the order of Study.Errors, in their own units
	Bound   float64   // no errors within the box give more, attachments apart; NaN: not known, (16.10)
	Solves  int
}

// mostFlips is the number of errors up to which one after the other is turned over at the end.
const mostFlips = 160

// searcher climbs from corner to corner.
type searcher struct {
	*runner
	s      *Study
	best   float64
	why    Cause
	at     []float64 // the best corner, by error, in standard deviations
	solves int
}

// Worst looks for the worst corner: from several starts by the signs of the exact gradient, solved
// again until the signs stay, then by turning over one error after the other.
func (s *Study) Worst() Worst {
	w := &searcher{runner: newRunner(s.model), s: s, best: s.Nominal, at: make([]float64, len(s.Errors))}
	for _, start := range w.starts() {
		w.climb(start)
	}
	if len(s.Errors) <= mostFlips {
		for w.flip() {
			w.climb(append([]float64(nil), w.at...))
		}
	}
	out := Worst{T: w.best, Why: w.why, Offsets: make([]float64, len(s.Errors)), Bound: w.bound()}
	for d, e := range s.Errors {
		out.Offsets[d] = w.at[d] * e.SD
	}
	out.Solves = w.solves
	return out
}

// starts are the plan itself, and the payload heavy, thrust and air weak, the centre of mass in
// each corner of its box.
func (w *searcher) starts() [][]float64 {
	out := [][]float64{make([]float64, len(w.at))}
	for corner := range 8 {
		x := make([]float64, len(w.at))
		for d, e := range w.s.Errors {
			switch {
			case e.Kind == PayloadMass || e.Kind == Wind:
				x[d] = Cut
			case e.Kind == Thrust || e.Kind == Density:
				x[d] = -Cut
			case e.Kind == COM && corner>>(e.at-atCOM)&1 == 1:
				x[d] = Cut
			case e.Kind == COM:
				x[d] = -Cut
			}
		}
		out = append(out, x)
	}
	return out
}

// value solves at x, by error, in standard deviations, and keeps it when it is the worst so far.
func (w *searcher) value(x []float64) (float64, *solve.Result) {
	for d, e := range w.s.Errors {
		w.x[e.at] = x[d] * e.SD
	}
	w.solves++
	if !w.rig.set(w.x) {
		w.keep(x, math.Inf(1), NoBalance)
		return math.Inf(1), nil
	}
	a := w.solver.Solve(w.rig.p)
	switch a.Status {
	case solve.Optimal:
		w.keep(x, a.T, Balances)
		return a.T, &a
	case solve.Infeasible:
		w.keep(x, math.Inf(1), w.cause())
	default:
		w.keep(x, math.Inf(1), Unsolved)
	}
	return math.Inf(1), nil
}

func (w *searcher) keep(x []float64, t float64, why Cause) {
	if t > w.best+1e-12 {
		w.best, w.why = t, why
		copy(w.at, x)
	}
}

// climb goes to the corner that the gradient points to until it stays or gets no worse. Where the
// utilisation is convex no step goes down: t(x') ≥ t(x) + gradient · (x' − x) ≥ t(x).
func (w *searcher) climb(x []float64) {
	last := math.Inf(-1)
	for range 30 {
		t, a := w.value(x)
		if a == nil || t <= last {
			return
		}
		last = t
		g := w.gradient(w.s.Errors, a)
		moved := false
		for d, e := range w.s.Errors {
			to := x[d]
			switch slope := g[d] * e.SD; {
			case slope > 1e-12:
				to = Cut
			case slope < -1e-12:
				to = -Cut
			}
			moved = moved || to != x[d]
			x[d] = to
		}
		if !moved {
			return
		}
	}
}

// flip turns one error after the other over at the worst corner; true when that is worse.
func (w *searcher) flip() bool {
	if math.IsInf(w.best, 1) {
		return false
	}
	before := w.best
	x := append([]float64(nil), w.at...)
	for d := range x {
		was := x[d]
		x[d] = -was
		if was == 0 {
			x[d] = Cut
		}
		if t, _ := w.value(x); t < w.best {
			x[d] = was
		}
	}
	return w.best > before+1e-9
}
