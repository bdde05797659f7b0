//go:build js && wasm

// Command cohoist is the browser program: it mounts the page, loops, and serves as its own worker.
package main

import (
	"fmt"
	"os"
	"syscall/js"

	"github.com/vugu/vugu"
	"github.com/vugu/vugu/domrender"

	"cohoist/ui/paint"
	"cohoist/ui/root"
)

func main() {
	if err := run(); err != nil {
		fmt.Fprintln(os.Stderr, "cohoist:", err)
	}
}

func run() error {
	renderer, err := mount("#app")
	if err != nil {
		return err
	}
	env, err := vugu.NewBuildEnv(renderer.EventEnv())
	if err != nil {
		return err
	}
	page := root.FirstView()
	painter := &paint.Painter{}
	for ok := true; ok; ok = renderer.EventWait() {
		if err := renderer.Render(painter.Frame(env.RunBuild(page))); err != nil {
			return err
		}
		js.Global().Call("cohoistReady")
	}
	return nil
}

// mount makes the renderer. It would evaluate its helper as text, which the page's policy forbids;
// the helper is loaded as a file, and eval does nothing while the renderer is made.
func mount(selector string) (*domrender.JSRenderer, error) {
	w := js.Global()
	eval := w.Get("eval")
	idle := js.FuncOf(func(js.Value, []js.Value) any { return nil })
	defer idle.Release()
	w.Set("eval", idle)
	defer w.Set("eval", eval)
	return domrender.New(selector)
}
