//go:build js && wasm

package main

import (
	"syscall/js"
	"time"

	"github.com/vugu/vugu"

	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/ui/paint"
	"cohoist/ui/root"
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
	rehearse()
	self.Call("postMessage", "ready")
	select {}
}

// rehearse does once what the page is about to do, for its code to be compiled.
func rehearse() {
	defer func() { recover() }()
	if env, err := vugu.NewBuildEnv(); err == nil {
		p := paint.Painter{Stands: "not known"}
		p.Next(env.RunBuild(root.FirstView()))
	}
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
