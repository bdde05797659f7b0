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
	"cohoist/ui/store"
)

func main() {
	if len(os.Args) > 1 && os.Args[1] == "worker" {
		work()
		return
	}
	if err := run(); err != nil {
		fmt.Fprintln(os.Stderr, "cohoist:", err)
	}
}

// run draws the page after every event, for ever.
func run() error {
	renderer, err := mount("#app")
	if err != nil {
		return err
	}
	env, err := vugu.NewBuildEnv(renderer.EventEnv())
	if err != nil {
		return err
	}
	b := &browser{env: renderer.EventEnv(), timers: map[string]timer{}}
	s := store.Restored(root.First(), store.Ports{Calculator: &calculator{b: b}, Keeper: b, Address: b, Desk: b, Adviser: &adviser{b: b}})
	b.guard = func(r any) {
		s.Say("program", "Something went wrong inside the page; the plan is kept. "+store.Fault(r).Error())
	}
	b.listen(s)
	page := &root.Root{Store: s}
	painter := &paint.Painter{Guard: b.guard}
	for ok := true; ok; ok = renderer.EventWait() {
		draw(renderer, env, painter, page, s)
		b.drawn()
	}
	return nil
}

// draw brings the screen up to date. A page that cannot be drawn says so, once, and lives on.
func draw(renderer *domrender.JSRenderer, env *vugu.BuildEnv, painter *paint.Painter, page vugu.Builder, s *store.Store) {
	defer func() {
		if r := recover(); r != nil {
			painter.Forget()
			fmt.Fprintln(os.Stderr, "cohoist: drawing:", r)
			js.Global().Call("cohoistSay", "The page could not be drawn "+store.Fault(r).Error()+". Undo (Ctrl+Z) may help; the plan is kept.")
		}
	}()
	if err := renderer.Render(painter.Frame(env.RunBuild(page))); err != nil {
		panic(err)
	}
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
