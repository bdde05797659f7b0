//go:build js && wasm

package main

import (
	"syscall/js"
	"time"

	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/ui/store"
	"cohoist/ui/wire"
	"cohoist/wasm/bytes"
)

// message is the worker's answer.
type message struct {
	Report report.Report
	Error  string
	Took   int64 // nanoseconds
}

// work is the program as a worker: plans come in, reports go out, one after another.
func work() {
	self := js.Global()
	self.Set("onmessage", js.FuncOf(func(_ js.Value, args []js.Value) any {
		data := args[0].Get("data")
		a := bytes.To(wire.Encode(reply(bytes.From(data))))
		self.Call("postMessage", a, []any{a.Get("buffer")})
		return nil
	}))
	self.Call("postMessage", "ready")
	select {}
}

func reply(raw []byte) message {
	var p plan.Plan
	if err := wire.Decode(raw, &p); err != nil {
		return message{Report: report.Blank(), Error: err.Error()}
	}
	start := time.Now()
	r, err := store.Build(p)
	m := message{Report: r, Took: int64(time.Since(start))}
	if err != nil {
		m.Error = err.Error()
	}
	return m
}
