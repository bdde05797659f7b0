//go:build !js

package browsertest

import (
	"testing"

	"github.com/chromedp/chromedp"
)

// The sheet leads to the handbook, a worked example there leads back to the sheet with its plan, and the
// handbook fits a phone and has nothing the accessibility checker finds.
func TestTheHandbook(t *testing.T) {
	for _, l := range []look{desktop, {width: 390, height: 844, phone: true, dark: true}} {
		p := open(t, l, "")
		if h := eval[string](p, `document.querySelector(".end a").getAttribute("href")`); h != "handbook.html" {
			t.Fatalf("the sheet leads to %q", h)
		}
		p.do(chromedp.Navigate(address + "handbook.html"))
		p.wait(`document.querySelectorAll("article").length > 8`)
		if w := eval[float64](p, `document.documentElement.scrollWidth`); w > float64(l.width) {
			t.Errorf("the handbook is %g wide on a screen of %d", w, l.width)
		}
		p.axe("handbook")
		link := eval[string](p, `document.querySelector("article#check-bending details a").getAttribute("href")`)
		p.do(chromedp.Navigate(address + link[2:]))
		p.ready()
		if got := p.value("title"); got == "" || got[:8] != "Handrail" {
			t.Errorf("the example opens %q", got)
		}
	}
}
