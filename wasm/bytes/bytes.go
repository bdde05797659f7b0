//go:build js && wasm

// Package bytes carries bytes between Go and the browser's arrays.
package bytes

import "syscall/js"

// From copies an array of the browser.
func From(a js.Value) []byte {
	raw := make([]byte, a.Get("length").Int())
	js.CopyBytesToGo(raw, a)
	return raw
}

// To copies bytes into an array of the browser.
func To(raw []byte) js.Value {
	a := js.Global().Get("Uint8Array").New(len(raw))
	js.CopyBytesToJS(a, raw)
	return a
}
