//go:build !js

package browsertest

import (
	"testing"

	"github.com/chromedp/chromedp"
)

// What is near: one tap counts the wash, and the sheet's check follows; the ground counted at a height in another unit; a working opened; all of it
// stands out.
func TestWhatIsNear(t *testing.T) {
	p := open(t, desktop, "")
	p.do(chromedp.Click(chromedp.CSS("#air > summary")))
	p.wait(`document.querySelectorAll("#air .ar-table").length === 4`)
	p.do(chromedp.Click(chromedp.CSS("#air-download")))
	p.wait(`document.querySelector("#air-download").textContent === "Leave it out"`)
	p.wait(`document.querySelector("#check-near")?.textContent.includes("of its thrust")`)
	p.do(chromedp.Click(chromedp.CSS("#air-ground")))
	p.wait(`document.querySelector("#air-ground").textContent === "Leave it out"`)
	p.write("f-near-clearance-m", "1 cm")
	eval[any](p, `document.activeElement.blur()`)
	p.wait(`document.querySelector("#air .ar-table").textContent.includes("counted")`)
	p.do(chromedp.Click(chromedp.CSS("#air-0 > summary")))
	p.wait(`document.querySelector("#air-0 .steps").getBoundingClientRect().height > 50`)
	if bad := eval[string](p, contrast); bad != "" {
		t.Error(bad)
	}
	p.follows("air")
}

// Sizes: another payload, another law, a working opened.
func TestManySmallOrOneLarge(t *testing.T) {
	p := open(t, desktop, "")
	p.do(chromedp.Click(chromedp.CSS("#sizes > summary")))
	p.wait(`document.querySelectorAll("#sizes .sz-list details").length === 12`)
	p.write("set-sizes-payload", "60")
	eval[any](p, `document.activeElement.blur()`)
	p.wait(`document.getElementById("sizes-beats").textContent.startsWith("Not even 12")`)
	p.choose("set-sizes-law", "froude")
	p.wait(`document.getElementById("sizes-beats").textContent.startsWith("From 2 ")`)
	p.do(chromedp.Click(chromedp.CSS("#sizes-2 > summary")))
	p.wait(`document.querySelector("#sizes-2 .steps").getBoundingClientRect().height > 100`)
	if bad := eval[string](p, contrast); bad != "" {
		t.Error(bad)
	}
}
