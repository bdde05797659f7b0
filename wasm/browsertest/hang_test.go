//go:build !js

package browsertest

import (
	"testing"

	"github.com/chromedp/chromedp"
)

// How a payload hangs: the three worst cases, one that is chosen, a length that keeps its unit when another is
// chosen, other equilibria, and a line that stretches bounces.
func TestHowItHangs(t *testing.T) {
	p := open(t, desktop, "")
	p.example("Beam for the landing")
	p.do(chromedp.Click(chromedp.CSS("#hang > summary")))
	p.wait(`document.querySelectorAll("#hang .hg-svg").length === 3`)
	p.choose("set-hang-kind", "short")
	p.wait(`document.querySelectorAll("#hang .hg-svg").length === 1`)
	p.write("set-hang-short", "0,1")
	eval[any](p, `document.getElementById("set-hang-short").blur()`)
	p.wait(`document.querySelector("#hang figcaption").textContent.includes("2.87°")`)
	p.choose("unit-length", "cm")
	p.wait(`document.getElementById("set-hang-short").value === "10" && document.querySelector("#hang figcaption").textContent.includes("10\u202fcm too short")`)
	p.write("set-hang-short", "long")
	eval[any](p, `document.getElementById("set-hang-short").blur()`)
	p.wait(`document.querySelector('[data-piece="fault hang.short"]').textContent !== ""`)
	p.click("hang-others")
	p.wait(`document.getElementById("hang-found") && document.getElementById("hang-found").textContent.includes("4 equilibria")`)
	eval[any](p, `document.querySelectorAll("#hang .fold").forEach(g => { g.open = true })`)
	p.choose("f-team-0-hold-line-material", "polyamide")
	p.wait(`document.querySelectorAll("#hang .hg-swings .tr").length === 6`)
	if bad := eval[string](p, contrast); bad != "" {
		t.Error(bad)
	}
}
