//go:build !js

package browsertest

import "testing"

// The sheet of a lift that fails says what would do; taking the first remedy makes it lift, and undo
// brings the plan back.
func TestTakingWhatWouldDo(t *testing.T) {
	p := open(t, desktop, "")
	p.example("Lantern lens")
	p.wait(`document.getElementById("verdict").classList.contains("is-fail")`)
	eval[any](p, `document.querySelector("#would-do > summary").click()`)
	p.wait(`!!document.getElementById("remedy-0-take")`)
	if n := eval[float64](p, `document.querySelectorAll("#why li").length`); n == 0 {
		t.Error("the sheet does not say what stands in the way")
	}
	eval[any](p, `document.getElementById("remedy-0-take").click()`)
	p.wait(`!document.getElementById("verdict").classList.contains("is-fail")`)
	eval[any](p, `document.getElementById("undo").click()`)
	p.wait(`document.getElementById("verdict").classList.contains("is-fail")`)
}

// What moves the answer is worked out when its section is opened, also for a lift that holds.
func TestWhatMovesTheAnswer(t *testing.T) {
	p := open(t, desktop, "")
	eval[any](p, `document.querySelector("#moves > summary").click()`)
	p.wait(`document.querySelectorAll("#moves .movers li").length >= 5`)
	if bad := eval[string](p, contrast); bad != "" {
		t.Error(bad)
	}
}
