//go:build js && wasm

package main

import (
	"errors"
	"syscall/js"
	"time"

	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/ui/store"
	"cohoist/ui/wire"
	"cohoist/wasm/bytes"
)

// Reports that take no longer than patience are computed while the event waits. Longer ones go to a
// worker, so that the page never stands still.
const (
	patience  = 3 * time.Millisecond
	largeTeam = 40
	tooLong   = 3 * time.Second // a calculation that is waited for is given up after this
)

// calculator computes here or in the worker. Of the plans that wait only the newest is computed.
type calculator struct {
	b       *browser
	mean    time.Duration // how long reports took of late, for each vehicle
	worker  js.Value
	up      bool // the worker has said it is ready
	broken  bool // workers do not work here
	at      *job // in the worker
	since   time.Time
	waiting *job
}

type job struct {
	p    plan.Plan
	done func(report.Report, error)
}

// Start computes a plan's report.
func (c *calculator) Start(p plan.Plan, done func(report.Report, error)) {
	n := time.Duration(len(p.Team))
	if c.broken || c.at == nil && c.mean*n < patience && n <= largeTeam {
		start := time.Now()
		r, err := store.Build(p)
		c.took(time.Since(start), p)
		done(r, err)
		return
	}
	c.waiting = &job{p, done}
	if c.at != nil && time.Since(c.since) > tooLong {
		c.stop()
	}
	c.next()
}

// took learns how long reports take: the time grows with the number of vehicles.
func (c *calculator) took(d time.Duration, p plan.Plan) {
	c.mean = (2*c.mean + d/time.Duration(max(1, len(p.Team)))) / 3
}

// soon tells that the report in the worker is likely to come before lag is over.
func (c *calculator) soon() bool {
	return c.up && c.at != nil && c.mean*time.Duration(len(c.at.p.Team)) < lag
}

// stop ends a calculation that nobody waits for any more.
func (c *calculator) stop() {
	c.worker.Call("terminate")
	c.worker, c.up, c.at = js.Value{}, false, nil
}

// next sends the newest plan that waits to the worker, when it is free.
func (c *calculator) next() {
	if c.worker.IsUndefined() {
		if err := c.hire(); err != nil {
			c.fall()
			return
		}
	}
	if !c.up || c.at != nil || c.waiting == nil {
		return
	}
	c.at, c.waiting, c.since = c.waiting, nil, time.Now()
	c.worker.Call("postMessage", bytes.To(wire.Encode(c.at.p)))
}

// hire takes the worker that ran before the page, or starts one from the compiled program that the page already has.
func (c *calculator) hire() (err error) {
	defer func() {
		if r := recover(); r != nil {
			err = errors.New("no worker")
		}
	}()
	module := js.Global().Get("cohoistModule")
	if !module.Truthy() {
		return errors.New("no module")
	}
	w := js.Global().Get("cohoistWorker")
	ready := w.Truthy()
	if ready {
		js.Global().Set("cohoistWorker", nil)
	} else {
		w = js.Global().Get("Worker").New("worker.js")
	}
	w.Set("onmessage", c.b.later(func(_ js.Value, args []js.Value) {
		if !w.Equal(c.worker) {
			return
		}
		c.answer(args[0].Get("data"))
	}))
	w.Set("onerror", c.b.later(func(js.Value, []js.Value) {
		if !w.Equal(c.worker) {
			return
		}
		if !c.up || c.at == nil {
			c.fall()
			return
		}
		j := c.at // it ran, and came to grief over this plan
		c.stop()
		j.done(report.Blank(), errors.New("(the calculation ended without an answer)"))
		c.next()
	}))
	if !ready {
		w.Call("postMessage", module)
	}
	c.worker, c.up = w, ready
	return nil
}

// answer takes a message of the worker: "ready", or a report.
func (c *calculator) answer(data js.Value) {
	if data.Type() == js.TypeString {
		c.up = true
		c.next()
		return
	}
	j := c.at
	c.at = nil
	if j != nil {
		var m message
		err := wire.Decode(bytes.From(data), &m)
		if err == nil && m.Error != "" {
			err = errors.New(m.Error)
		}
		c.took(time.Duration(m.Took), j.p)
		j.done(m.Report, err)
	}
	c.next()
}

// fall computes here after all, because there is no worker.
func (c *calculator) fall() {
	c.broken = true
	for _, j := range []*job{c.at, c.waiting} {
		if j != nil {
			j.done(store.Build(j.p))
		}
	}
	c.at, c.waiting = nil, nil
}
