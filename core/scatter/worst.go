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
// each corner of its box; each with the wind to every direction asked.
func (w *searcher) starts() [][]float64 {
	var out [][]float64
	for _, to := range w.directions() {
		out = append(out, w.start(func(e Error) float64 { return 0 }, to))
		for corner := range 8 {
			out = append(out, w.start(func(e Error) float64 {
				switch {
				case e.Kind == PayloadMass || e.Kind == Wind || e.Kind == COM && corner>>(e.at-atCOM)&1 == 1:
					return Cut
				case e.Kind == Thrust || e.Kind == Density || e.Kind == COM:
					return -Cut
				}
				return 0
			}, to))
		}
	}
	return out
}

// start is a start with the wind to a direction, in standard deviations.
func (w *searcher) start(of func(Error) float64, to float64) []float64 {
	x := make([]float64, len(w.at))
	for d, e := range w.s.Errors {
		if x[d] = of(e); e.Kind == WindTo {
			x[d] = to
		}
	}
	return x
}

// directions are those asked for the wind, in standard deviations: it may blow worst from between the ends.
func (w *searcher) directions() []float64 {
	for _, e := range w.s.Errors {
		if e.Kind == WindTo {
			return []float64{-3, -2.5, -2, -1.5, -1, -0.5, 0, 0.5, 1, 1.5, 2, 2.5, 3}
		}
	}
	return []float64{0}
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
			case e.Kind == WindTo: // not convex
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

// flip turns one error after the other over at the worst corner, and the wind to the other directions; true when
// something is worse.
func (w *searcher) flip() bool {
	if math.IsInf(w.best, 1) {
		return false
	}
	before := w.best
	x := append([]float64(nil), w.at...)
	for d, e := range w.s.Errors {
		was := x[d]
		others := []float64{-was}
		switch {
		case e.Kind == WindTo:
			others = w.directions()
		case was == 0:
			others = []float64{Cut, -Cut}
		}
		for _, to := range others {
			x[d] = to
			if t, _ := w.value(x); t < w.best {
				x[d] = was
			} else {
				was = to
			}
		}
	}
	return w.best > before+1e-9
}
