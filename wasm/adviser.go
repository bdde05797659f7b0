//go:build js && wasm

package main

import (
	"errors"
	"strings"
	"syscall/js"

	"cohoist/core/advice"
	"cohoist/core/plan"
	"cohoist/ui/store"
	"cohoist/ui/wire"
	"cohoist/wasm/bytes"
)

// adviser works out advice in a worker of its own, so that reports never wait for it, with a program of
// its own, wasm/advise, so that a first visit does not load it. Of two plans
// only the newer is worked out: the worker is ended and another one started.
type adviser struct {
	b      *browser
	worker js.Value
	busy   bool
}

// Advise asks for advice on a plan.
func (a *adviser) Advise(p plan.Plan, done func(advice.Advice, error)) {
	if a.busy {
		a.end()
	}
	if a.worker.IsUndefined() {
		w, err := start()
		if err != nil {
			done(advice.Advice{}, err)
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
		var c store.Counsel
		err := wire.Decode(bytes.From(args[0].Get("data")), &c)
		if err == nil && c.Error != "" {
			err = errors.New(c.Error)
		}
		done(c.Advice, err)
	}))
	w.Call("postMessage", bytes.To(wire.Encode(p)))
}

func (a *adviser) end() {
	a.worker.Call("terminate")
	a.worker, a.busy = js.Value{}, false
}

// start starts the program that works out advice, of the same version as this one.
func start() (w js.Value, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = errors.New("no worker")
		}
	}()
	program := js.Global().Get("document").Call("querySelector", "script[data-wasm]").Get("dataset").Get("wasm").String()
	_, version, _ := strings.Cut(program, "?")
	return js.Global().Get("Worker").New("adviser.js?" + version), nil
}
