//go:build js && wasm

package main

import (
	"errors"
	"strconv"
	"syscall/js"
)

// fileMax is the largest file that is read, in bytes.
const fileMax = 64 << 20

// Download hands a text to the person as a file.
func (b *browser) Download(name, text string) {
	blob := js.Global().Get("Blob").New([]any{text}, map[string]any{"type": "application/json"})
	address := js.Global().Get("URL").Call("createObjectURL", blob)
	a := js.Global().Get("document").Call("createElement", "a")
	a.Set("href", address)
	a.Set("download", name)
	a.Call("click")
	b.Later("revoke", 5000, func() { js.Global().Get("URL").Call("revokeObjectURL", address) })
}

// Pick lets the person choose a file and reads it.
func (b *browser) Pick(accept string, done func(name, text string, err error)) {
	in := js.Global().Get("document").Call("createElement", "input")
	in.Set("type", "file")
	in.Set("accept", accept)
	var chosen js.Func
	chosen = b.later(func(js.Value, []js.Value) {
		chosen.Release()
		files := in.Get("files")
		if files.Get("length").Int() == 0 {
			return
		}
		b.read(files.Index(0), done)
	})
	in.Call("addEventListener", "change", chosen)
	in.Call("click")
}

// drops takes files that are dropped on the page.
func (b *browser) drops(done func(name, text string, err error)) {
	w := js.Global()
	w.Call("addEventListener", "dragover", js.FuncOf(func(_ js.Value, args []js.Value) any { args[0].Call("preventDefault"); return nil }))
	w.Call("addEventListener", "drop", js.FuncOf(func(_ js.Value, args []js.Value) any {
		args[0].Call("preventDefault")
		if files := args[0].Get("dataTransfer").Get("files"); files.Get("length").Int() > 0 {
			b.read(files.Index(0), done)
		}
		return nil
	}))
}

// read reads a file, unless it is too long.
func (b *browser) read(f js.Value, done func(name, text string, err error)) {
	name := f.Get("name").String()
	if n := f.Get("size").Int(); n > fileMax {
		b.Later("read", 0, func() {
			done(name, "", errors.New("it has "+strconv.Itoa(n>>20)+" MB, and at most "+strconv.Itoa(fileMax>>20)+" MB can be read"))
		})
		return
	}
	var good, bad js.Func
	release := func() { good.Release(); bad.Release() }
	good = b.later(func(_ js.Value, args []js.Value) {
		release()
		a := js.Global().Get("Uint8Array").New(args[0])
		raw := make([]byte, a.Get("length").Int())
		js.CopyBytesToGo(raw, a)
		done(name, string(raw), nil)
	})
	bad = b.later(func(js.Value, []js.Value) { release(); done(name, "", errors.New("the browser could not read it")) })
	f.Call("arrayBuffer").Call("then", good, bad)
}
