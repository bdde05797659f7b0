//go:build !js

package browsertest

import (
	"fmt"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// shown is the way's words, its load in the picture and its upright line in the plots at the instant that is shown.
const shown = `(() => { const s = [...document.querySelectorAll("#way [data-frames=way] > [data-on]")].filter(e => getComputedStyle(e).display !== "none"); return s.map(e => (e.querySelector("path") || {getAttribute: () => e.textContent}).getAttribute("d")).join("\n") })()`

// slide moves the slider as a person does, by its events.
func (p *page) slide(to int) {
	p.t.Helper()
	eval[any](p, fmt.Sprintf(`(() => { const e = document.getElementById("way-at"); e.value = %d; e.dispatchEvent(new Event("input", {bubbles: true})) })()`, to))
}

// The example's way is worked out; the slider moves words, picture and plots together, in less than a frame, and what is typed
// becomes the plan's and can be undone.
func TestAWayOnThePage(t *testing.T) {
	p := open(t, desktop, "")
	p.example("Panel through")
	p.do(chromedp.Click(chromedp.CSS("#way > summary")))
	p.wait(`!!document.getElementById("way-find") && document.getElementById("way-points").value.startsWith("0  0  0.6  90")`)
	p.click("way-find")
	p.wait(`!!document.getElementById("way-at") && document.getElementById("way-gist").textContent.includes("at the fastest")`)
	first := eval[string](p, shown)
	p.slide(30)
	second := eval[string](p, shown)
	if first == second || len(second) < 100 {
		t.Errorf("the slider shows %q after %q", second, first)
	}
	took := eval[float64](p, `(() => { const e = document.getElementById("way-at"), start = performance.now(); for (let k = 0; k < 100; k++) { e.value = k; e.dispatchEvent(new Event("input", {bubbles: true})); e.getBoundingClientRect() } return (performance.now() - start) / 100 })()`)
	t.Logf("a step of the slider takes %.2f ms", took)
	if said := eval[string](p, `document.getElementById("way-at").getAttribute("aria-valuetext")`); said != eval[string](p, `document.querySelector("#way-now > [data-on]").textContent`) {
		t.Errorf("the slider says %q", said)
	}
	p.slide(110)
	p.click("way-play")
	p.wait(`document.getElementById("way-at").value === "120" && document.getElementById("way-play").textContent === "Play"`)
	eval[any](p, `document.getElementById("way-room").open = true`)
	p.choose("set-way-wall", "x")
	p.write("set-way-wall-at", "7")
	eval[any](p, `document.activeElement.blur()`)
	p.wait(`document.getElementById("way-wall").textContent.includes("Where it passes x = 7")`)
	p.click("way-fly")
	p.wait(`!!document.getElementById("flight-peaks") && document.getElementById("flight-peaks").textContent.includes("flown to its end")`)
	eval[any](p, `(() => { const e = document.getElementById("flight-at"); e.value = 5; e.dispatchEvent(new Event("input", {bubbles: true})) })()`)
	if a, b := eval[string](p, `document.querySelector("#flight-now > [data-on]").textContent`), eval[string](p, `document.querySelector("#way-now > [data-on]").textContent`); a == b || p.value("way-at") != "120" {
		t.Errorf("the two sliders show %q and %q", a, b)
	}
	if bad := eval[string](p, contrast); bad != "" {
		t.Error(bad)
	}
	p.write("way-points", "0 0 0\n3 0 2,5 90")
	eval[any](p, `document.activeElement.blur()`)
	p.wait(`document.querySelector('[data-piece="fault way.boxes"]') && document.getElementById("way-points").value.startsWith("0  0  0\n3  0  2.5  90")`)
	p.click("undo")
	p.wait(`document.getElementById("way-points").value.startsWith("0  0  0.6  90")`)
}

// Ten waypoints and four vehicles, as planned and in line at every second waypoint: how long the answer takes is printed.
func TestThePaceOfAWay(t *testing.T) {
	p := open(t, desktop, "")
	p.example("Panel through")
	p.do(chromedp.Click(chromedp.CSS("#way > summary")))
	p.wait(`!!document.getElementById("way-find")`)
	p.write("way-boxes", "")
	eval[any](p, `document.activeElement.blur()`)
	p.wait(`document.getElementById("way-boxes").value.trim() === ""`)
	p.write("way-openings", "")
	eval[any](p, `document.activeElement.blur()`)
	p.wait(`document.getElementById("way-openings").value.trim() === ""`)
	p.write("f-way-speed-max-m-s", "")
	eval[any](p, `document.activeElement.blur()`)
	p.write("way-points", "0 0 1 0\n2 1 2 0\n4 0 3 90\n6 2 2 90\n8 1 3 45\n8 4 4 0\n6 5 3 0\n4 4 2 -45\n2 5 2 -90\n0 4 1 -90")
	eval[any](p, `document.activeElement.blur()`)
	p.wait(`document.getElementById("way-points").value.split("\n").length === 11`)
	start := time.Now()
	p.click("way-find")
	p.wait(`document.querySelectorAll("#way .wy-legs .tr").length === 10`)
	t.Logf("%.0f ms from the click to the picture: %s", time.Since(start).Seconds()*1000, p.text("way-gist"))
	p.write("way-points", "0 0 1 0\n2 1 2 0 - in-line\n4 0 3 90\n6 2 2 90 - in-line\n8 1 3 45\n8 4 4 0 - in-line\n6 5 3 0\n4 4 2 -45 - in-line\n2 5 2 -90\n0 4 1 -90")
	eval[any](p, `document.activeElement.blur()`)
	p.wait(`document.getElementById("way-points").value.includes("in-line\n4  0  3  90")`)
	start = time.Now()
	p.click("way-find")
	p.wait(`document.querySelectorAll("#way .wy-forms .tr").length > 2`)
	t.Logf("%.0f ms with formations: %s", time.Since(start).Seconds()*1000, p.text("way-gist"))
}
