//go:build !js

package browsertest

import (
	"os"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// Samples are run, stopped at once, gone on with, and the same seed gives the same picture; a changed plan marks them.
func TestSamplesAreRunAndStopped(t *testing.T) {
	p := open(t, desktop, "")
	p.example("Deck")
	p.do(chromedp.Click(chromedp.CSS("#errors > summary")))
	p.wait(`(document.querySelector("[data-piece=errors-worst]") || {textContent: ""}).textContent.includes("every vehicle")`)
	p.write("set-errors-count", "20000") // more than a fast machine does before one looks
	eval[any](p, `document.getElementById("set-errors-count").blur()`)
	p.wait(`document.getElementById("errors-button").textContent === "Run 20\u202f000 samples"`)
	p.click("errors-button")
	p.wait(`document.getElementById("errors-button").textContent === "Stop" && (document.getElementById("errors-summary") || {textContent: ""}).textContent.startsWith("So far")`)
	p.click("errors-button")
	p.wait(`document.getElementById("errors-button").textContent === "Go on"`)
	took := eval[float64](p, `performance.now()`)
	if p.text("errors-state") == "" {
		t.Error("how far it is does not stand there")
	}
	p.click("errors-button")
	done := `document.getElementById("errors-state").textContent.includes("Done") && !document.getElementById("errors-summary").textContent.startsWith("So far")`
	p.wait(done)
	t.Logf("%s; after %.1f s", p.text("errors-state"), (eval[float64](p, `performance.now()`)-took)/1000)
	first := eval[string](p, `document.querySelector("[data-piece=errors-seen]").innerHTML`)
	if bad := eval[string](p, contrast); bad != "" {
		t.Error(bad)
	}
	p.click("errors-button")
	p.wait(`document.getElementById("errors-button").textContent === "Stop"`)
	p.wait(done)
	if again := eval[string](p, `document.querySelector("[data-piece=errors-seen]").innerHTML`); again != first {
		t.Error("the same seed gives another picture")
	}
	p.write("f-errors-thrust-ratio", "0,05")
	eval[any](p, `document.getElementById("f-errors-thrust-ratio").blur()`)
	p.wait(`!!document.querySelector(".sl-old")`)
}

// The page goes on being drawn while samples are run.
func TestThePaceWhileSampling(t *testing.T) {
	p := open(t, desktop, "")
	p.example("Deck")
	p.do(chromedp.Click(chromedp.CSS("#errors > summary")))
	p.wait(`!!document.getElementById("errors-button")`)
	p.write("set-errors-count", "1000000") // more than are run meanwhile
	eval[any](p, `document.getElementById("set-errors-count").blur()`)
	p.wait(`document.getElementById("errors-button").textContent === "Run 1\u202f000\u202f000 samples"`)
	p.click("errors-button")
	p.wait(`!!document.getElementById("errors-summary")`)
	time.Sleep(2 * time.Second) // until the helpers are compiled
	got := eval[[]float64](p, `new Promise(done => {
		const start = performance.now(), gaps = [];
		let last = start;
		const frame = (now) => { gaps.push(now - last); last = now; now - start < 4000 ? requestAnimationFrame(frame) : done([gaps.length / (now - start) * 1000, Math.max(...gaps)]) };
		requestAnimationFrame(frame) })`)
	t.Logf("%.1f frames a second, at most %.0f ms between two; %s", got[0], got[1], p.text("errors-state"))
	if os.Getenv("COHOIST_PACE") != "" && got[0] < 50 {
		t.Errorf("%.1f frames a second, wanted 50", got[0])
	}
	p.click("errors-button")
	p.wait(`document.getElementById("errors-button").textContent === "Go on"`)
}
