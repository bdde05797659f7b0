//go:build !js

package browsertest

import (
	"testing"

	"github.com/chromedp/chromedp"
)

// Wind from anywhere: the section opens with its rose, a stronger wind typed there is a step of the plan, and the rose
// follows a drag.
func TestWindFromAnywhere(t *testing.T) {
	p := open(t, desktop, "")
	p.example("Crate")
	p.do(chromedp.Click(chromedp.CSS("#wind > summary")))
	p.wait(`document.querySelectorAll("#wind .wr-mark").length === 36 && document.getElementById("wind-gist").textContent.endsWith("are held.")`)
	eval[any](p, `document.querySelector("#wind .wr-all").open = true`)
	if bad := eval[string](p, contrast); bad != "" {
		t.Error(bad)
	}
	p.write("f-site-gust-factor", "4")
	eval[any](p, `document.activeElement.blur()`)
	p.wait(`document.getElementById("wind-gist").textContent.endsWith("are not held.")`)
	p.click("undo")
	p.wait(`document.getElementById("wind-gist").textContent.endsWith("are held.")`)
	p.follows("wind")
}
