//go:build js && wasm

package main

import (
	"syscall/js"

	"cohoist/ui/study"
	"cohoist/wasm/bytes"
)

// helper is another worker with this program. Jobs wait until it is ready.
type helper struct {
	worker  js.Value
	ready   bool
	waiting [][]byte
	parts   [][]byte
}

// hire starts helpers: one for two processors, for the page and the other studies need some, and three at most, for
// each takes some ten megabytes.
func hire() []study.Helper {
	n := 1
	if c := js.Global().Get("navigator").Get("hardwareConcurrency"); c.Truthy() {
		n = min(c.Int()/2, 3)
	}
	var list []study.Helper
	for range n {
		h := &helper{worker: js.Global().Get("Worker").New(js.Global().Get("location").Get("href"))}
		h.worker.Set("onmessage", js.FuncOf(func(_ js.Value, args []js.Value) any {
			h.hear(args[0].Get("data"))
			return nil
		}))
		list = append(list, h)
	}
	return list
}

func (h *helper) hear(m js.Value) {
	if m.Type() == js.TypeObject {
		if part := m.Get("part"); part.Truthy() {
			h.parts = append(h.parts, bytes.From(part))
		}
		return
	}
	h.ready = true // all that is said in a word
	for _, job := range h.waiting {
		h.post(job)
	}
	h.waiting = nil
}

func (h *helper) post(job []byte) { h.worker.Call("postMessage", map[string]any{"job": bytes.To(job)}) }

// Give hands it a job.
func (h *helper) Give(job []byte) {
	if !h.ready {
		h.waiting = append(h.waiting, job)
		return
	}
	h.post(job)
}

// Take is its oldest answer; nil when there is none.
func (h *helper) Take() []byte {
	if len(h.parts) == 0 {
		return nil
	}
	part := h.parts[0]
	h.parts = h.parts[1:]
	return part
}
