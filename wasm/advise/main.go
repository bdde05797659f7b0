//go:build js && wasm

// Command advise works out advice in a worker of the page. It is a program of its own, loaded when
// somebody asks for advice, so that a first visit does not wait for it.
package main

import (
	"syscall/js"

	"cohoist/core/advice"
	"cohoist/core/plan"
	"cohoist/ui/store"
	"cohoist/ui/wire"
	"cohoist/wasm/bytes"
)

// main answers plans with store.Counsel, one after another.
func main() {
	self := js.Global()
	self.Set("onmessage", js.FuncOf(func(_ js.Value, args []js.Value) any {
		a := bytes.To(wire.Encode(answer(bytes.From(args[0].Get("data")))))
		self.Call("postMessage", a, []any{a.Get("buffer")})
		return nil
	}))
	self.Call("postMessage", "ready")
	select {}
}

// answer is the advice on a plan; a panic comes back as an error.
func answer(raw []byte) (c store.Counsel) {
	defer func() {
		if x := recover(); x != nil {
			c = store.Counsel{Error: store.Fault(x).Error()}
		}
	}()
	var p plan.Plan
	if err := wire.Decode(raw, &p); err != nil {
		return store.Counsel{Error: err.Error()}
	}
	return store.Counsel{Advice: advice.Of(p)}
}
