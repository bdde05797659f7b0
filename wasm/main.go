//go:build js && wasm

// Command cohoist is the browser program: it mounts the page, loops, and serves as its own worker.
package main

import (
	"fmt"
	"os"
	"syscall/js"
	"time"

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

// run draws the page once a frame while there are events, for ever.
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
	calc := &calculator{b: b}
	s := store.Restored(root.First(), store.Ports{Calculator: calc, Keeper: b, Address: b, Desk: b, Studio: studio{}})
	b.guard = s.Broke
	b.listen(s)
	studio{}.listen(b, s)
	page := &root.Root{Store: s}
	painter := &paint.Painter{Guard: b.guard, Stands: js.Global().Get("cohoistStands").String()}
	drawn := 0
	f := &frames{draw: func() {
		drawn = s.Reports()
		draw(renderer, env, painter, page, s)
		b.drawn()
	}, wait: func() bool { return s.Busy && drawn == s.Reports() && calc.soon() }}
	time.Sleep(time.Microsecond) // the browser's turn, between two halves of the start
	f.draw()
	for renderer.EventWait() {
		f.want()
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
	frame, patch := painter.Next(env.RunBuild(page))
	if frame != nil {
		if err := renderer.Render(frame); err != nil {
			panic(err)
		}
	}
	if patch != "" {
		js.Global().Call("cohoistPatch", patch)
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
