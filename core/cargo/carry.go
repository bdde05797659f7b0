package cargo

import (
	"math"

	"cohoist/core/energy"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
	"cohoist/core/way"
)

// Carry is one straight part of the carrying, from rest to rest.
type Carry struct {
	Name  string // up, over, down
	Path  *way.Path
	Reach float64          // of its limits, (20.10)
	Along []energy.Instant // evenly in time
	Spent []energy.Spent   // of every vehicle, from full
	hard  []hard           // the hardest instant of every vehicle
	parts []float64        // of every pack that it takes; nil: not known
}

// work is what is worked out once for items that are alike.
type work struct {
	*Study
	plan   plan.Plan
	solver *solve.Solver
	lifts  map[int]*lifted // by the index of the payload's source
	alike  map[moved]found
	team   []craft
	floor  []float64 // charge at which every pack ends on the way home; nil: packs are not known
}

// lifted is a payload under its team.
type lifted struct {
	reports map[float64]report.Report // by heading
	model   *share.Model
	answer  share.Answer
	study   energy.Study
}

// moved names a straight part of the carrying: its payload, and where it goes, in µm and µrad of its own axes.
type moved struct {
	source        int
	x, y, z       int64
	turn, heading int64
}

type found struct {
	durations []float64
	reach     float64
	along     []energy.Instant
	hard      []hard
	err       error
}

func newWork(s *Study, p plan.Plan) *work {
	return &work{Study: s, plan: p, solver: solve.NewSolver(), lifts: map[int]*lifted{}, alike: map[moved]found{}}
}

// source is the index of the item whose payload counts for an item.
func (w *work) source(i int) int {
	it, _ := w.plan.Cargo.Source(i)
	for j, other := range w.plan.Cargo.Items {
		if other.ID == it.ID {
			return j
		}
	}
	return i
}

// lift works out whether and how the team lifts an item, and carries it.
func (w *work) lift(i int) {
	it, source := &w.Items[i], w.source(i)
	l := w.lifts[source]
	if l == nil {
		l = &lifted{reports: map[float64]report.Report{}}
		w.lifts[source] = l
	}
	it.Report = l.report(it, it.Pick.Heading)
	if it.Plan.Site.Wind > 0 && it.stands {
		if other := l.report(it, it.Set.Heading); worse(other, it.Report) {
			it.Report = other
		}
	}
	switch {
	case len(it.Report.Missing) > 0:
		it.Why = lacking(it.Report.Missing)
	case !it.Lifts():
		it.Why = it.Report.Sentence
	case !it.stands:
		it.Why = "Not said: where it is picked or where it is set."
	}
	if !it.Lifts() {
		return
	}
	if l.model == nil {
		m, err := share.Of(it.Plan)
		if err != nil { // the report would not lift it
			return
		}
		l.model = m
		l.answer = l.model.Share(w.solver)
		l.study = energy.At(l.model, l.answer)
	}
	it.model, it.answer, it.study = l.model, l.answer, &l.study
	if it.Why == "" {
		w.carry(it, source)
	}
}

// report is that of an item with a heading: the wind is turned the other way.
func (l *lifted) report(it *Item, heading float64) report.Report {
	if !(it.Plan.Site.Wind > 0) || math.IsNaN(heading) {
		heading = 0
	}
	r, known := l.reports[heading]
	if !known {
		p := it.Plan
		p.Site.WindTo = math.Remainder(p.Site.WindTo-heading*180/math.Pi, 360)
		r = report.Build(p)
		l.reports[heading] = r
	}
	return r
}

// worse tells that a report's verdict is worse, or its deciding check is used more.
func worse(a, b report.Report) bool {
	rank := map[report.Verdict]int{report.Lifts: 1, report.ThinLift: 2, report.Fails: 3}
	if rank[a.Verdict] != rank[b.Verdict] {
		return rank[a.Verdict] > rank[b.Verdict]
	}
	return a.Team.Utilisation > b.Team.Utilisation
}

// carry finds the way up, over and down, (23.2).
func (w *work) carry(it *Item, source int) {
	c := it.model.Body.COM
	from, to := it.Pick.Point(c), it.Set.Point(c)
	high := w.Top + w.Has.Clearance - it.Bottom + c[2] // (23.2)
	above, over := vec.V3{from[0], from[1], high}, vec.V3{to[0], to[1], high}
	w.straight(it, source, "up", from, above, it.Pick.Heading, it.Pick.Heading)
	w.straight(it, source, "over", above, over, it.Pick.Heading, it.Set.Heading)
	w.straight(it, source, "down", over, to, it.Set.Heading, it.Set.Heading)
}

// straight adds one part of the way, unless it has no length or cannot be flown.
func (w *work) straight(it *Item, source int, name string, a, b vec.V3, h0, h1 float64) {
	if it.Why != "" || a == b && h0 == h1 {
		return
	}
	key := alike(it, source, b.Sub(a), h0, h1-h0)
	r, limits := way.Of(it.model.Plan, it.model)
	r.Points = []way.Point{{At: a, Heading: h0, Time: math.NaN()}, {At: b, Heading: h1, Time: math.NaN()}}
	f, known := w.alike[key]
	if !known {
		f = w.fly(it, r, limits)
		w.alike[key] = f
	}
	if f.err != nil {
		it.Why = "It cannot be carried " + name + ": " + f.err.Error() + "."
		return
	}
	p, err := r.Path(f.durations)
	if err != nil {
		it.Why = "It cannot be carried " + name + ": " + err.Error() + "."
		return
	}
	it.Carry = append(it.Carry, Carry{Name: name, Path: p, Reach: f.reach, Along: f.along, Spent: it.study.Along(f.along, nil), hard: f.hard})
}

// alike names a part of the way. In calm air all that counts is how it goes in the payload's own axes.
func alike(it *Item, source int, d vec.V3, h0, turn float64) moved {
	micro := func(x float64) int64 { return int64(math.Round(x * 1e6)) }
	m := moved{source: source, turn: micro(turn), heading: micro(h0)}
	if !(it.Plan.Site.Wind > 0) {
		d, m.heading = vec.Rot(vec.V3{0, 0, -h0}).Mul(d), 0
	}
	m.x, m.y, m.z = micro(d[0]), micro(d[1]), micro(d[2])
	return m
}

// each is how many instants of a part are looked at for its energy, whose error falls with their square.
const each = 16

// fly finds the quickest way, and the team along it.
func (w *work) fly(it *Item, r way.Route, limits way.Limits) (f found) {
	best, err := r.Shortest(it.model, it.answer.Apart, limits, w.solver)
	if err != nil {
		return found{err: err}
	}
	f.durations, f.reach = best.Durations, best.Reach
	for _, i := range way.Fly(it.model, it.answer.Apart, best.Path, each, w.solver) {
		if i.Status != solve.Optimal {
			return found{err: way.ErrHover}
		}
		f.along = append(f.along, energy.Instant{Time: i.Time, Parts: i.Parts, Wind: i.Air(it.model)})
	}
	f.hard = hardest(it, f.along)
	return f
}

// hard is an instant that a vehicle's pack must still be able to give.
type hard struct {
	left   float64 // part of the way's time that is still to come
	charge float64 // at which it no longer can; NaN: not known
}

// hardest are the instants in which the vehicles work hardest, (23.6).
func hardest(it *Item, along []energy.Instant) []hard {
	out := make([]hard, len(it.model.Craft))
	for v := range out {
		most := along[0]
		for _, i := range along {
			if i.Parts[v].Utilisation > most.Parts[v].Utilisation {
				most = i
			}
		}
		out[v].left = 1 - most.Time/along[len(along)-1].Time
		begin, end := most, most
		begin.Time, end.Time = 0, forever
		out[v].charge = it.study.Along([]energy.Instant{begin, end}, nil)[v].Charge // (23.6)
	}
	return out
}
