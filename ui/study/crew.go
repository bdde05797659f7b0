package study

import (
	"time"

	"cohoist/core/plan"
	"cohoist/core/scatter"
	"cohoist/ui/wire"
)

// Helper is another program of studies that works on parts of a run, see Program.Work. What it returns comes in the
// order of its jobs, or never.
type Helper interface {
	Give(job []byte)
	Take() []byte // nil: not yet
}

// Job is samples of a plan to be run.
type Job struct {
	Plan     plan.Plan
	N        int // of the whole study
	From, To int
}

// desk is the study that a helper worked on last.
type desk struct {
	job   Job
	study *scatter.Study
}

// Work runs a job, and returns a part as bytes; nil for what is no job.
func (p *Program) Work(job []byte) []byte {
	var j Job
	if wire.Decode(job, &j) != nil {
		return nil
	}
	d := &p.desk
	if d.study == nil || d.job.N != j.N || !plan.Same(d.job.Plan, j.Plan) {
		d.study, _ = scatter.New(j.Plan, j.N)
		d.job = j
	}
	if d.study == nil || j.From < 0 || j.To > j.N || j.From >= j.To {
		return nil
	}
	return d.study.Run(j.From, j.To).Bytes()
}

// crew is the helpers, and what each was given and has not answered yet.
type crew struct {
	helpers  []Helper
	given    [][]piece
	failed   []piece
	patience time.Duration // until what a helper has is run here
}

// piece is samples that a helper was given.
type piece struct {
	run      *sampling
	from, to int
	at       time.Time
}

// ahead is how many jobs a helper has at a time, so that it need not wait; each takes about several goes.
const ahead, goes = 2, 5

func hire(p *Program) *crew {
	c := &crew{patience: 3 * time.Second}
	if p.Hire != nil {
		c.helpers = p.Hire()
	}
	c.given = make([][]piece, len(c.helpers))
	return c
}

// give keeps the helpers busy.
func (c *crew) give(r *sampling) {
	for i, h := range c.helpers {
		for len(c.given[i]) < ahead {
			from, to, ok := r.take(goes * r.size)
			if !ok {
				return
			}
			h.Give(wire.Encode(Job{r.plan, r.study.N, from, to}))
			c.given[i] = append(c.given[i], piece{r, from, to, time.Now()})
		}
	}
}

// collect takes what is answered; what belongs to an earlier run, or was run here since, is dropped.
func (c *crew) collect(r *sampling) {
	for i, h := range c.helpers {
		for len(c.given[i]) > 0 {
			b := h.Take()
			if b == nil {
				break
			}
			g := c.given[i][0]
			c.given[i] = c.given[i][1:]
			p, ok := scatter.ReadPart(b)
			switch {
			case g.run != r:
			case ok && p.From == g.from && p.To == g.to:
				r.add(p)
			default:
				c.failed = append(c.failed, g)
			}
		}
	}
}

// back is samples of a run that a helper could not run, or has had for too long.
func (c *crew) back(r *sampling) (from, to int, ok bool) {
	for len(c.failed) > 0 {
		g := c.failed[0]
		if c.failed = c.failed[1:]; g.run == r {
			return g.from, g.to, true
		}
	}
	for i := range c.given {
		for k := range c.given[i] {
			if g := &c.given[i][k]; g.run == r && time.Since(g.at) > c.patience {
				g.run = nil // its answer no longer counts
				return g.from, g.to, true
			}
		}
	}
	return 0, 0, false
}
