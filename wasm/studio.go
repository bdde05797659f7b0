//go:build js && wasm

package main

import (
	"syscall/js"

	"cohoist/core/plan"
	"cohoist/ui/store"
	"cohoist/ui/talk"
	"cohoist/ui/wire"
	"cohoist/wasm/bytes"
)

// studio hands plans to the page's script for studies, which has them worked out in workers of their own.
type studio struct{}

// Moved marks what was worked out about an earlier plan.
func (studio) Moved(gen int) { js.Global().Call("cohoistMoved", gen) }

// Ask is answered by pieces of the page, and at times by a plan.
func (studio) Ask(a talk.Ask, now bool) {
	js.Global().Call("cohoistStudies", bytes.To(wire.Encode(a)), a.Gen, now)
}

// listen takes what studies ask of the page.
func (studio) listen(b *browser, s *store.Store) {
	js.Global().Set("cohoistTake", b.later(func(_ js.Value, args []js.Value) {
		var p plan.Plan
		if err := wire.Decode(bytes.From(args[1]), &p); err != nil {
			s.Say("program", err.Error())
			return
		}
		s.Take(args[0].Int(), p, args[2].String())
	}))
	js.Global().Set("cohoistPut", b.later(func(_ js.Value, args []js.Value) {
		puts := map[string]any{}
		for i := 0; i+1 < args[0].Length(); i += 2 {
			if v := args[0].Index(i + 1); v.Type() == js.TypeNumber {
				puts[args[0].Index(i).String()] = v.Float()
			} else {
				puts[args[0].Index(i).String()] = v.String()
			}
		}
		s.Put(puts)
	}))
	js.Global().Set("cohoistShow", b.later(func(_ js.Value, args []js.Value) { s.Show(args[0].String()) }))
}
