//go:build js && wasm

package main

import (
	"errors"
	"syscall/js"

	"github.com/hack-pad/safejs"
	"github.com/vugu/vugu"

	"cohoist/ui/store"
)

// browser is the store's ways to the world: timers, focus, clipboard, files, address, storage.
type browser struct {
	env    vugu.EventEnv
	guard  func(any)
	timers map[string]timer
	focus  string // to be focused after the next drawing
	ready  bool
}

type timer struct {
	id js.Value
	f  js.Func
}

// later wraps what runs outside a handler of the page: locked, guarded, and drawn afterwards.
func (b *browser) later(f func(this js.Value, args []js.Value)) js.Func {
	return js.FuncOf(func(this js.Value, args []js.Value) any {
		b.env.Lock()
		defer b.env.UnlockRender()
		defer func() {
			if r := recover(); r != nil {
				b.guard(r)
			}
		}()
		f(this, args)
		return nil
	})
}

// Later runs f once, so long after the last call with the key.
func (b *browser) Later(key string, milliseconds int, f func()) {
	if t, ok := b.timers[key]; ok {
		js.Global().Call("clearTimeout", t.id)
		t.f.Release()
	}
	var t timer
	t.f = b.later(func(js.Value, []js.Value) {
		delete(b.timers, key)
		t.f.Release()
		f()
	})
	t.id = js.Global().Call("setTimeout", t.f, milliseconds)
	b.timers[key] = t
}

// Focus moves the focus after the next drawing.
func (b *browser) Focus(id string) { b.focus = id }

// drawn runs after each drawing.
func (b *browser) drawn() {
	if !b.ready {
		b.ready = true
		js.Global().Call("cohoistReady")
	}
	js.Global().Call("cohoistPlace")
	if b.focus == "" {
		return
	}
	el := js.Global().Get("document").Call("getElementById", b.focus)
	b.focus = ""
	if el.IsNull() {
		return
	}
	el.Call("scrollIntoView", map[string]any{"block": "nearest"})
	if s := el.Call("querySelector", ":scope > summary"); !s.IsNull() {
		el = s
	}
	el.Call("focus", map[string]any{"preventScroll": true})
}

// Print prints the sheet.
func (b *browser) Print() { b.Later("paper", 50, func() { js.Global().Call("cohoistPrint") }) }

// Copy puts text on the clipboard.
func (b *browser) Copy(text string, done func(error)) {
	clip := js.Global().Get("navigator").Get("clipboard")
	if !clip.Truthy() {
		b.Later("copied", 0, func() { done(errors.New("this browser gives no clipboard here")) })
		return
	}
	var good, bad js.Func
	release := func() { good.Release(); bad.Release() }
	good = b.later(func(js.Value, []js.Value) { release(); done(nil) })
	bad = b.later(func(js.Value, []js.Value) { release(); done(errors.New("the browser refused the clipboard")) })
	clip.Call("writeText", text).Call("then", good, bad)
}

// Load reads from the browser's storage.
func (b *browser) Load(key string) (string, error) {
	v, err := storage("getItem", key)
	if err != nil || v.IsNull() || v.IsUndefined() {
		return "", err
	}
	return v.String()
}

// Save writes to the browser's storage.
func (b *browser) Save(key, text string) error {
	_, err := storage("setItem", key, text)
	return err
}

// storage calls a method of localStorage; even to look at it can be forbidden.
func storage(method string, args ...any) (safejs.Value, error) {
	s, err := safejs.Global().Get("localStorage")
	if err != nil {
		return safejs.Value{}, errors.New("its storage is switched off")
	}
	if t, err := s.Truthy(); err != nil || !t {
		return safejs.Value{}, errors.New("it has no storage")
	}
	v, err := s.Call(method, args...)
	if err != nil {
		return v, errors.New("its storage is full or switched off")
	}
	return v, nil
}

// Fragment is what follows # in the address.
func (b *browser) Fragment() string {
	h := js.Global().Get("location").Get("hash").String()
	if h == "" {
		return ""
	}
	return h[1:]
}

// Replace changes the fragment in place.
func (b *browser) Replace(fragment string) { b.history("replaceState", fragment) }

// Push makes a new place in the browser's history.
func (b *browser) Push(fragment string) { b.history("pushState", fragment) }

// history tries: a browser may refuse when asked too often, and the next save asks again.
func (b *browser) history(method, fragment string) {
	h, err := safejs.Global().Get("history")
	if err == nil {
		_, _ = h.Call(method, nil, "", "#"+fragment)
	}
}

// Link is the whole address with a fragment.
func (b *browser) Link(fragment string) string {
	at := js.Global().Get("location").Get("href").String()
	for i := range at {
		if at[i] == '#' {
			at = at[:i]
			break
		}
	}
	return at + "#" + fragment
}

// listen hears what happens outside the page's elements.
func (b *browser) listen(s *store.Store) {
	b.drops(s.Dropped)
	w := js.Global()
	w.Call("addEventListener", "hashchange", b.later(func(js.Value, []js.Value) { s.Follow() }))
	w.Call("addEventListener", "popstate", b.later(func(js.Value, []js.Value) { s.Follow() }))
	w.Call("addEventListener", "pagehide", b.later(func(js.Value, []js.Value) { s.Flush() }))
	w.Call("addEventListener", "keydown", js.FuncOf(func(_ js.Value, args []js.Value) any {
		e := args[0]
		if !(e.Get("ctrlKey").Bool() || e.Get("metaKey").Bool()) || e.Get("altKey").Bool() {
			return nil
		}
		var do func()
		switch key, shift := e.Get("key").String(), e.Get("shiftKey").Bool(); {
		case (key == "z" || key == "Z") && !shift:
			do = s.Undo
		case (key == "z" || key == "Z") && shift, key == "y" || key == "Y":
			do = s.Redo
		default:
			return nil
		}
		e.Call("preventDefault")
		b.env.Lock()
		defer b.env.UnlockRender()
		defer func() {
			if r := recover(); r != nil {
				b.guard(r)
			}
		}()
		do()
		return nil
	}))
}
