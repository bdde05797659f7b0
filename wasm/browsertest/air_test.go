//go:build !js

package browsertest

import (
	"testing"

	"github.com/chromedp/chromedp"
)

// What is near: a height in another unit, a part switched off, a working opened; all of it stands out.
func TestWhatIsNear(t *testing.T) {
	p := open(t, desktop, "")
	p.example("Sensor")
	p.do(chromedp.Click(chromedp.CSS("#air > summary")))
	p.wait(`document.querySelectorAll("#air .ar-table").length === 3`)
	p.write("set-air-height", "1 cm")
	eval[any](p, `document.activeElement.blur()`)
	p.wait(`document.querySelector("#air .ar-table").textContent.includes("outside the model")`)
	p.choose("set-air-wakes", "off")
	p.wait(`document.querySelectorAll("#air .ar-table").length === 2`)
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
