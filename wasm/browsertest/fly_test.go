//go:build !js

package browsertest

import (
	"testing"

	"github.com/chromedp/chromedp"
)

// A ring that hangs too close is leant apart; a wider separation has no room; the other way of keeping apart is asked for.
func TestHowFarApartTheyFly(t *testing.T) {
	p := open(t, desktop, "")
	p.example("Crate")
	p.do(chromedp.Click(chromedp.CSS("#formation > summary")))
	p.wait(`document.querySelectorAll("#formation .fl-room").length === 6 && document.querySelectorAll("#formation .fl-places .tr").length === 7`)
	p.choose("set-formation-way", "above")
	p.wait(`document.querySelectorAll("#formation .fl-room").length === 6`)
	if bad := eval[string](p, contrast); bad != "" {
		t.Error(bad)
	}
	p.write("f-limits-separation-m", "9")
	eval[any](p, `document.getElementById("f-limits-separation-m").blur()`)
	p.wait(`(document.getElementById("formation-head") || {textContent: ""}).textContent.includes("No way was found")`)
}
