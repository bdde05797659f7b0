//go:build js && wasm

// Command study works out and draws studies in a worker of the page. It is a program of its own, loaded when
// somebody asks for one, so that a first visit does not wait for it.
package main

import (
	"syscall/js"
	"time"

	"cohoist/ui/study"
	"cohoist/ui/talk"
	"cohoist/ui/wire"
	"cohoist/wasm/bytes"
)

func main() {
	self := js.Global()
	wake := make(chan struct{}, 1)
	p := &study.Program{Send: send, Hire: hire}
	paused := time.Now()
	p.Pause = func(ms int) {
		// Messages come in between two tasks of the browser, which takes time: not for every trial.
		if ms == 0 && time.Since(paused) < 30*time.Millisecond {
			return
		}
		time.Sleep(time.Duration(max(ms, 1)) * time.Millisecond)
		paused = time.Now()
	}
	self.Set("onmessage", js.FuncOf(func(_ js.Value, args []js.Value) any {
		hear(p, args[0].Get("data"))
		select {
		case wake <- struct{}{}:
		default:
		}
		return nil
	}))
	self.Call("postMessage", "ready")
	for range wake {
		time.Sleep(time.Millisecond) // what else waits comes first: only the newest plan counts
		for p.Step() {
		}
	}
}

// hear takes a message of the page, or a job of the program that hired this one.
func hear(p *study.Program, m js.Value) {
	if job := m.Get("job"); job.Truthy() {
		js.Global().Call("postMessage", map[string]any{"part": bytes.To(p.Work(bytes.From(job)))})
		return
	}
	var h study.Message
	if b := m.Get("bench"); b.Truthy() {
		p.Bench = b.String()
	}
	if a := m.Get("ask"); a.Truthy() {
		var ask talk.Ask
		if err := wire.Decode(bytes.From(a), &ask); err != nil {
			js.Global().Call("postMessage", map[string]any{"fault": err.Error()})
			return
		}
		h.Ask = &ask
	}
	if at := m.Get("here"); at.Truthy() {
		h.Here = at.String()
	}
	if s := m.Get("set"); s.Truthy() {
		h.Set = map[string]string{}
		keys := js.Global().Get("Object").Call("keys", s)
		for i := range keys.Length() {
			k := keys.Index(i).String()
			h.Set[k] = s.Get(k).String()
		}
	}
	if d := m.Get("do"); d.Truthy() {
		h.Do = d.String()
	}
	if path := m.Get("path"); path.Truthy() {
		h.Fields = map[string]string{path.String(): m.Get("text").String()}
	}
	p.Hear(h)
}

// send posts an answer to the page.
func send(a study.Answer) {
	m := map[string]any{"gen": a.Gen, "busy": a.Busy, "jump": a.Jump, "pieces": object(a.Pieces), "values": object(a.Values)}
	if a.Plan != nil {
		m["plan"] = bytes.To(wire.Encode(*a.Plan))
	}
	if a.Put != nil {
		m["put"] = a.Put
	}
	if a.File != nil {
		m["file"] = map[string]any{"name": a.File.Name, "type": a.File.Type, "data": bytes.To(a.File.Data)}
	}
	if a.Set != nil {
		m["set"] = object(a.Set)
	}
	js.Global().Call("postMessage", m)
}

func object(texts map[string]string) map[string]any {
	m := make(map[string]any, len(texts))
	for k, v := range texts {
		m[k] = v
	}
	return m
}
