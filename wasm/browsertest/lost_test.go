//go:build !js

package browsertest

import (
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// follows drags an attachment and fails unless what a study says goes on changing while the pointer moves. How often
// depends on the machine; an answer that waits for the pointer to rest would change once.
func (p *page) follows(id string) {
	p.t.Helper()
	eval[any](p, `(() => { const s = window.said = new Set(), f = () => { s.add(document.querySelector("#`+id+` [data-piece='`+id+`']").innerHTML); requestAnimationFrame(f) }; f() })()`)
	p.drag(2 * time.Second)
	if n := eval[float64](p, `window.said.size`); n < 3 {
		p.t.Errorf("%s showed %g different answers during a drag of three seconds", id, n)
	}
}

// A lost vehicle: the section opens, follows a drag, and letting go of the lost one's cable is one choice.
func TestAVehicleLost(t *testing.T) {
	p := open(t, desktop, "")
	p.example("Crate")
	p.do(chromedp.Click(chromedp.CSS("#lost > summary")))
	p.wait(`document.querySelectorAll("#lost .lo-cell").length === 6 + 15 + 6`)
	if bad := eval[string](p, contrast); bad != "" {
		t.Error(bad)
	}
	before := p.text("lost-gist")
	p.choose("f-limits-lost", "cut-away")
	p.wait(`document.getElementById("lost-gist").textContent.startsWith("Any one")`)
	p.wait(`document.querySelectorAll("#lost .lo-lines .tr").length === 7`)
	p.click("undo")
	p.wait(`document.getElementById("lost-gist").textContent === ` + quote(before))
	p.follows("lost")
}

// On a phone the grid of eight scrolls by itself; the page stays as wide as the screen.
func TestLossesFitAPhone(t *testing.T) {
	p := open(t, look{width: 390, height: 844, phone: true, dark: true}, "")
	p.example("Deck")
	eval[any](p, `document.querySelector("#lost > summary").click()`)
	p.wait(`document.querySelectorAll("#lost .lo-cell").length === 8 + 28 + 8`)
	if w := eval[float64](p, `document.documentElement.scrollWidth`); w > 390 {
		t.Errorf("the page is %g wide", w)
	}
	if w := eval[float64](p, `document.querySelector("#lost .study-inside").getBoundingClientRect().width`); w > 390 {
		t.Errorf("the section is %g wide", w)
	}
	if bad := eval[string](p, contrast); bad != "" {
		t.Error(bad)
	}
}
