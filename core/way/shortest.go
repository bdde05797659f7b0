package way

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/solve"
)

// Found is a way with what is known of how close to its limits it comes.
type Found struct {
	*Path
	Reach  float64  // the most of its limits that it needs, (20.10); 1 at a limit
	At     float64  // when, s from the start
	Free   bool     // its duration, or that of its end, was sought
	Solved int      // programs it took, or instants of a team that changes its formation
	Formed []Formed // the formation at every waypoint; nil: as planned all the way
}

// even gives a route's legs the durations of the least snap, those of timed points kept, (20.12).
func (r Route) even(groups []group, durations []float64) ([]float64, error) {
	switch p, err := r.Path(durations); {
	case err != nil:
		return nil, err
	case p.Cost == 0:
		return nil, ErrPoints
	}
	return descent(groups, durations, 60, 1e-7, func(d []float64) (float64, []float64) {
		p, err := r.Path(d)
		if err != nil || !(p.Cost > 0) {
			return math.NaN(), nil
		}
		for k := range p.Change {
			p.Change[k] /= p.Cost
		}
		return math.Log(p.Cost), p.Change
	}), nil
}

// Shortest is the way that takes the least time within the limits: legs with times given keep them, and the rest is as
// fast as allowed. The apart of the team's share keeps the vehicles apart on the way, too. Of ways that take the same
// time and of local answers it finds one.
func (r Route) Shortest(m *share.Model, apart *share.Apart, limits Limits, s *solve.Solver) (Found, error) {
	groups, durations, err := r.groups()
	if err != nil {
		return Found{}, err
	}
	if durations, err = r.even(groups, durations); err != nil {
		return Found{}, err
	}
	formed, err := r.forms(m, apart, limits, s)
	if err != nil {
		return Found{}, err
	}
	if r.held = hold(m, formed); r.held != nil {
		if err := r.held.changes(); err != nil {
			return Found{}, err
		}
	}
	j := &judge{question: newQuestion(m, apart, limits.Utilisation), s: s, limits: limits, goOn: r.GoOn}
	f := &search{Route: r, judge: j, groups: groups}
	last := groups[len(groups)-1]
	if !last.free {
		return f.found(durations, false)
	}
	if p, err := r.Path(durations); err == nil {
		j.all(j.survey(p))
	}
	if durations, err = f.scale(durations, false); err != nil {
		return Found{}, err
	}
	if len(durations) > 1 {
		faster := append([]float64(nil), durations...)
		for range 2 {
			faster = f.level(faster)
			if faster, err = f.scale(faster, false); err != nil {
				break
			}
		}
		if err == nil && total(faster) < total(durations) {
			durations = faster
		}
	}
	if durations, err = f.scale(durations, true); err != nil {
		return Found{}, err
	}
	return f.found(durations, true)
}

func total(durations []float64) float64 {
	sum := 0.0
	for _, d := range durations {
		sum += d
	}
	return sum
}

// search is the work on one question.
type search struct {
	Route
	*judge
	groups []group
}

// never says that no time is long enough.
func (f *search) never() error {
	if len(f.groups) > 1 {
		return ErrTimed
	}
	return ErrHover
}

// found sums a way up, every instant solved.
func (f *search) found(durations []float64, free bool) (Found, error) {
	p, err := f.Path(durations)
	if err != nil {
		return Found{}, err
	}
	w := f.peak(p, f.all(f.every(p, thorough(p))))
	if f.ended {
		return Found{}, ErrStopped
	}
	return Found{Path: p, Reach: w.reach, At: p.starts[w.leg] + w.s*p.Durations[w.leg], Free: free, Solved: f.solved, Formed: f.formed()}, nil
}

// peak finds the largest reach beside an instant of a survey: by golden section, each instant solved.
func (j *judge) peak(p *Path, best instant) instant {
	if math.IsInf(best.reach, 1) {
		return best
	}
	section(math.Max(best.s-1.0/steps, 0), math.Min(best.s+1.0/steps, 1), 12, func(s float64) float64 {
		i := j.look(p, best.leg, s)
		j.settle(&i)
		if i.reach > best.reach {
			best = i
		}
		return -i.reach
	})
	return best
}

// rough is what part of the time counts in the first looks at a held team's way, each of which takes long.
const rough = 3e-4

// scale finds the shortest total of the free legs at which the way stays within reach, (20.13): accelerations go
// with the inverse square of it, and so does the reach in calm air. Careful also solves every instant and looks
// between them.
func (f *search) scale(durations []float64, careful bool) ([]float64, error) {
	g := f.groups[len(f.groups)-1]
	d := append([]float64(nil), durations...)
	reach := func(by float64) float64 {
		for k := g.from; k < g.to; k++ {
			d[k] = durations[k] * by
		}
		p, err := f.Path(d)
		if err != nil {
			return math.NaN()
		}
		if !careful {
			return f.worst(f.every(p, coarse(p))).reach
		}
		return f.peak(p, f.all(f.every(p, thorough(p)))).reach
	}
	enough := 1e-5
	if f.held != nil && !careful {
		enough = rough
	}
	lo, hi := 0.0, math.Inf(1) // too fast, slow enough
	over, under := 0.0, 0.0    // reach there
	by := 1.0
	for range 60 {
		x := reach(by)
		switch {
		case f.ended:
			return nil, ErrStopped
		case math.IsNaN(x):
			return nil, ErrNumbers
		}
		if x <= 1 {
			if by < hi {
				hi, under = by, x
			}
		} else if by > lo {
			lo, over = by, x
		}
		if x <= 1 && x > 1-enough || hi < math.Inf(1) && hi-lo <= 2*enough*hi {
			break
		}
		if by > 1e6 || math.IsInf(x, 1) && by > 1e3 {
			return nil, f.never()
		}
		next := by * math.Sqrt(x) * (1 + 1e-6)
		if math.IsInf(x, 1) || next <= lo || next >= hi { // the law does not hold: drag, or other legs at their limits
			next = 2 * by
			if !math.IsInf(hi, 1) {
				next = lo + (hi-lo)/2
			}
		}
		if f.held != nil && lo > 0 && !math.IsInf(hi+over, 1) {
			next = lo * math.Pow(over, math.Log(hi/lo)/math.Log(over/under)) * (1 + enough/4) // as a power between the two
			next = math.Min(math.Max(next, lo+(hi-lo)/8), hi-(hi-lo)/8)
		}
		by = math.Max(next, by/16)
	}
	if math.IsInf(hi, 1) {
		return nil, f.never()
	}
	for k := g.from; k < g.to; k++ {
		d[k] = durations[k] * hi
	}
	g.total = 0
	for k := g.from; k < g.to; k++ {
		g.total += d[k]
	}
	f.groups[len(f.groups)-1].total = g.total
	return d, nil
}
