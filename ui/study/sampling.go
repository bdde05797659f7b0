package study

import (
	"slices"
	"time"

	"cohoist/core/plan"
	"cohoist/core/scatter"
)

// sampling is a run of samples: it can be stopped and gone on with, and gives the same in whatever pieces, and by
// however many programs, it is run.
type sampling struct {
	plan  plan.Plan // as it was asked, untitled
	study *scatter.Study
	going bool
	parts []scatter.Part // by their first sample
	next  int            // first sample that nobody was given
	size  int            // samples in one go
	took  time.Duration  // at work
	seen  scatter.Summary
	drawn time.Time
	cost  time.Duration // of the last picture
}

// newSampling is a run that is about to begin.
func newSampling(p plan.Plan, s *scatter.Study) *sampling {
	return &sampling{plan: untitled(p), study: s, going: true, size: 8}
}

// fresh tells whether a run is about the plan on the screen.
func (r *sampling) fresh(t *Turn) bool { return r != nil && plan.Same(r.plan, untitled(t.Plan)) }

const (
	goTime   = 30 * time.Millisecond  // one go takes about so long, and a button waits no longer
	drawTime = 300 * time.Millisecond // pictures come no oftener,

	drawShare = 6 // and take a sixth of the time at most
)

// step runs some samples, here and by the helpers.
func (r *sampling) step(p *Program) {
	if p.crew == nil {
		p.crew = hire(p)
	}
	p.crew.collect(r)
	p.crew.give(r)
	from, to, ok := r.take(r.size)
	if !ok {
		if from, to, ok = p.crew.back(r); !ok { // all that is left is being worked on elsewhere
			p.pause(10)
			return
		}
	}
	start := time.Now()
	r.add(r.study.Run(from, to))
	switch took := time.Since(start); {
	case took < goTime/2:
		r.size = min(2*r.size, 1<<14)
	case took > 2*goTime && r.size > 1:
		r.size /= 2
	}
}

// take is samples for somebody to run; false when all are given out.
func (r *sampling) take(n int) (from, to int, ok bool) {
	from = r.next
	r.next = min(r.next+n, r.study.N)
	return from, r.next, r.next > from
}

// add puts a part to the others.
func (r *sampling) add(p scatter.Part) {
	i, _ := slices.BinarySearchFunc(r.parts, p.From, func(q scatter.Part, from int) int { return q.From - from })
	r.parts = slices.Insert(r.parts, i, p)
}

// see draws the picture of what follows from sample 0 without a gap.
func (r *sampling) see() {
	r.drawn = time.Now()
	n, to := 0, 0
	for n < len(r.parts) && r.parts[n].From == to {
		to = r.parts[n].To
		n++
	}
	if n == 0 || to == r.seen.N {
		return
	}
	start := r.drawn
	whole := scatter.Merge(r.parts[:n]...)
	r.parts = append([]scatter.Part{whole}, r.parts[n:]...)
	r.seen = r.study.Summary(whole)
	r.drawn = time.Now()
	r.cost = r.drawn.Sub(start)
}

// ran is how many samples were run.
func (r *sampling) ran() int {
	n := 0
	for _, p := range r.parts {
		n += p.To - p.From
	}
	return n
}

func (r *sampling) done() bool { return r.ran() == r.study.N }

// rate is how many samples a second were run.
func (r *sampling) rate() float64 {
	if r.took <= 0 {
		return 0
	}
	return float64(r.ran()) / r.took.Seconds()
}
