//go:build !js

package browsertest

import (
	"testing"

	"github.com/chromedp/chromedp"
)

// Where the centre of mass may be: the section opens with its drawing, shows what is left after losses when that is
// ticked, which stays ticked, and follows a drag.
func TestWhereTheCentreOfMassMayBe(t *testing.T) {
	p := open(t, desktop, "")
	p.example("Crate")
	p.do(chromedp.Click(chromedp.CSS("#patch > summary")))
	p.wait(`!!document.querySelector("#patch .pa-inner")`)
	p.click("patch-losses")
	p.wait(`document.querySelectorAll("#patch .pa-each").length === 6`)
	if bad := eval[string](p, contrast); bad != "" {
		t.Error(bad)
	}
	p.follows("patch")
	if !eval[bool](p, `document.getElementById("patch-losses").checked && !!document.querySelector("#patch .pa-each")`) {
		t.Error("the tick is gone after a drag")
	}
	p.click("patch-losses")
	p.wait(`!document.querySelector("#patch .pa-each")`)
}
