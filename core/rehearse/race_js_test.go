package rehearse

import (
	"encoding/json"
	"os"
	"syscall/js"
	"testing"
)

// TestRace hands testdata/engine/race.mjs, which loads this program beside an engine, the functions that it times.
func TestRace(t *testing.T) {
	if os.Getenv("COHOIST_RACE") == "" {
		t.Skip("run by make bench-engine")
	}
	var w *World
	var s scene
	js.Global().Set("cohoist", map[string]any{
		"load": js.FuncOf(func(_ js.Value, a []js.Value) any {
			s = scene{}
			if err := json.Unmarshal([]byte(a[0].String()), &s); err != nil {
				panic(err)
			}
			w = s.world()
			return nil
		}),
		"run": js.FuncOf(func(_ js.Value, a []js.Value) any {
			s.run(w, a[0].Float(), a[1].Float())
			return nil
		}),
		"places": js.FuncOf(func(js.Value, []js.Value) any {
			var out []any
			for _, p := range w.Poses {
				out = append(out, p.At[0], p.At[1], p.At[2])
			}
			return out
		}),
	})
	js.Global().Call("raced")
	select {}
}
