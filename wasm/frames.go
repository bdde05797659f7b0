//go:build js && wasm

package main

import (
	"syscall/js"
	"time"
)

// Waiting for a report ends after this: then the plan is drawn with the report before it.
const lag = 60 * time.Millisecond

// frames draws at most once in a frame of the browser, however many events there were.
type frames struct {
	draw   func()
	wait   func() bool // a report is due at any moment, and will ask for a frame
	wanted bool
	since  time.Time // the first want that is not drawn
	run    js.Func
}

// want asks for a drawing in the next frame.
func (f *frames) want() {
	if f.wanted {
		return
	}
	if f.run.IsUndefined() {
		f.run = js.FuncOf(func(js.Value, []js.Value) any { f.next(); return nil })
	}
	if f.since.IsZero() {
		f.since = time.Now()
	}
	f.wanted = true
	if js.Global().Get("document").Get("hidden").Bool() { // no frames there
		js.Global().Call("setTimeout", f.run)
		return
	}
	js.Global().Call("requestAnimationFrame", f.run)
}

// next draws, unless the report that belongs to the plan is about to come: the two are drawn together.
func (f *frames) next() {
	f.wanted = false
	if f.wait() && time.Since(f.since) < lag {
		f.want()
		return
	}
	f.since = time.Time{}
	f.draw()
}
