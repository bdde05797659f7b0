//go:build js && wasm

package main

import (
	"errors"
	"syscall/js"

	"cohoist/core/advice"
	"cohoist/core/plan"
	"cohoist/ui/store"
	"cohoist/ui/wire"
)

// adviser works out advice in a worker of its own, so that reports never wait for it. Of two plans
// only the newer is worked out: the worker is ended and another one started.
type adviser struct {
	b      *browser
	worker js.Value
	busy   bool
}

// counsel is the worker's answer.
type counsel struct {
	Advice advice.Advice
	Error  string
}

// Advise asks for advice on a plan.
func (a *adviser) Advise(p plan.Plan, done func(advice.Advice, error)) {
	if a.busy {
		a.end()
	}
	if a.worker.IsUndefined() {
		w, err := hire()
		if err != nil {
			done(store.Counsel(p))
			return
		}
		a.worker = w
		w.Set("onmessage", a.b.later(func(_ js.Value, args []js.Value) {
			if w.Equal(a.worker) && args[0].Get("data").Type() == js.TypeString { // it is ready
				a.ask(p, done)
			}
		}))
		w.Set("onerror", a.b.later(func(js.Value, []js.Value) {
			if w.Equal(a.worker) {
				a.end()
				done(advice.Advice{}, errors.New("the worker ended"))
			}
		}))
		a.busy = true
		return
	}
	a.ask(p, done)
}

// ask sends a plan to the worker, which is ready.
func (a *adviser) ask(p plan.Plan, done func(advice.Advice, error)) {
	w := a.worker
	a.busy = true
	w.Set("onmessage", a.b.later(func(_ js.Value, args []js.Value) {
		if !w.Equal(a.worker) {
			return
		}
		a.busy = false
		var c counsel
		err := wire.Decode(bytes(args[0].Get("data")), &c)
		if err == nil && c.Error != "" {
			err = errors.New(c.Error)
		}
		done(c.Advice, err)
	}))
	question := js.Global().Get("Object").New()
	question.Set("advise", array(wire.Encode(p)))
	w.Call("postMessage", question)
}

func (a *adviser) end() {
	a.worker.Call("terminate")
	a.worker, a.busy = js.Value{}, false
}

// advise answers a page's question as its worker.
func advise(raw []byte) counsel {
	var p plan.Plan
	if err := wire.Decode(raw, &p); err != nil {
		return counsel{Error: err.Error()}
	}
	a, err := store.Counsel(p)
	c := counsel{Advice: a}
	if err != nil {
		c.Error = err.Error()
	}
	return c
}

// hire starts a worker from the compiled program that the page already has.
func hire() (w js.Value, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = errors.New("no worker")
		}
	}()
	module := js.Global().Get("cohoistModule")
	if !module.Truthy() {
		return js.Value{}, errors.New("no module")
	}
	w = js.Global().Get("Worker").New("worker.js")
	w.Call("postMessage", module)
	return w, nil
}

// bytes copies an array of the browser.
func bytes(a js.Value) []byte {
	raw := make([]byte, a.Get("length").Int())
	js.CopyBytesToGo(raw, a)
	return raw
}

// array copies bytes into an array of the browser.
func array(raw []byte) js.Value {
	a := js.Global().Get("Uint8Array").New(len(raw))
	js.CopyBytesToJS(a, raw)
	return a
}
