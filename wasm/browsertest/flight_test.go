//go:build !js

package browsertest

import (
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// Six vehicles on cables in gusts with one lost, and four on rigid holds, are flown in the browser's worker faster than it
// happens; how fast is printed, and with COHOIST_PACE set it must be 20 times.
func TestThePaceOfAFlight(t *testing.T) {
	for _, c := range []struct{ example, lost string }{{"Crate", "B"}, {"Lattice", ""}} {
		p := open(t, desktop, "")
		p.example(c.example)
		p.do(chromedp.Click(chromedp.CSS("#way > summary")))
		p.wait(`!!document.getElementById("way-start")`)
		p.click("way-start")
		p.wait(`!document.getElementById("way-find").disabled`)
		p.click("way-find")
		p.wait(`!!document.getElementById("way-at")`)
		p.choose("set-way-lost", c.lost)
		eval[any](p, `(() => { window.clicked = performance.now(); new MutationObserver((_, o) => { if (document.getElementById("flight-peaks")) { window.took = performance.now() - window.clicked; o.disconnect() } }).observe(document.getElementById("way"), {childList: true, subtree: true}) })()`)
		p.click("way-fly")
		p.wait(`!!window.took`)
		said := p.text("flight-pace")
		words := strings.Fields(said)
		times, err := strconv.ParseFloat(words[2], 64)
		t.Logf("%s: %s From the click to the pictures %.2f s.", c.example, said, eval[float64](p, `window.took / 1000`))
		if err != nil || !(times > 1) || os.Getenv("COHOIST_PACE") != "" && times < 20 {
			t.Errorf("%s: %v", said, err)
		}
		if rows := eval[int](p, `document.querySelectorAll("#way .wy-checks .tr").length`); rows < 8 {
			t.Errorf("%d rows of checks", rows)
		}
		if bad := eval[string](p, contrast); bad != "" {
			t.Error(bad)
		}
	}
}
