//go:build !js

package browsertest

import (
	"fmt"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// The example's list is worked out by itself; the slider moves words and picture; an item's field and a button change the plan; on the
// phone nothing is too wide. How long it takes from the click is printed.
func TestACargoOnThePage(t *testing.T) {
	p := open(t, desktop, "")
	p.example("A landing frame")
	start := time.Now()
	p.do(chromedp.Click(chromedp.CSS("#cargo > summary")))
	p.wait(`document.querySelectorAll("#cargo-table .tr").length === 10`)
	t.Logf("nine items shown %d ms after the click", time.Since(start).Milliseconds())
	now := `document.querySelector("#cargo-now > [data-on]").textContent`
	slide := func(to int) string {
		eval[any](p, fmt.Sprintf(`(() => { const e = document.getElementById("cargo-at"); e.value = %d; e.dispatchEvent(new Event("input", {bubbles: true})) })()`, to))
		return eval[string](p, now)
	}
	if last, first := eval[string](p, now), slide(0); last == first || first != "Before the first of 9 items." {
		t.Errorf("the slider says %q after %q", first, last)
	}
	if n := eval[int](p, `[...document.querySelectorAll("#cargo .cg-last")].filter(e => getComputedStyle(e.parentElement).display !== "none").length`); n != 0 {
		t.Errorf("%d items are set before the first", n)
	}
	p.axe("the cargo list")
	start = time.Now()
	eval[any](p, `document.getElementById("cargo-items").open = document.getElementById("cargo-8-item").open = true`)
	p.write("f-cargo-items-8-payload-solids-0-mass-kg", "30")
	eval[any](p, `document.activeElement.blur()`)
	p.wait(`document.getElementById("cargo-gist").textContent.startsWith("9 items, 8 of which the team lifts")`)
	t.Logf("worked out again %d ms after a heavier deck was typed", time.Since(start).Milliseconds())
	p.click("cargo-8-remove")
	p.wait(`document.getElementById("cargo-gist").textContent.startsWith("8 items, all of which the team lifts")`)
	p.click("undo")
	p.wait(`document.getElementById("cargo-gist").textContent.startsWith("9 items, 8 of which")`)
	if bad := eval[string](p, contrast); bad != "" {
		t.Error(bad)
	}
}
