//go:build !js

package browsertest

import (
	"strings"
	"testing"
)

// saved keeps what the page hands out as files, by name.
const saved = `(() => {
	window.saved = {};
	const blobs = new Map();
	const make = URL.createObjectURL;
	URL.createObjectURL = (b) => { const u = make.call(URL, b); blobs.set(u, b); return u };
	const click = HTMLAnchorElement.prototype.click;
	HTMLAnchorElement.prototype.click = function () { if (this.download) blobs.get(this.href).text().then((t) => { window.saved[this.download] = t }); else click.call(this) };
})()`

// The section hands out tables, scenes and drawings; a drawing is a picture of its own, with its colours.
func TestHandingOn(t *testing.T) {
	p := open(t, desktop, "")
	eval[any](p, saved)
	eval[any](p, `document.querySelector("#hand-on > summary").click()`)
	p.wait(`document.querySelectorAll("#hand-on .ho-list button").length > 8`)
	for _, name := range []string{"checks.csv", "lift.mjcf.xml", "report.json", "elevation-and-plan.svg"} {
		eval[any](p, `[...document.querySelectorAll("#hand-on .ho-list button")].find(b => b.textContent === "`+name+`").click()`)
		p.wait(`Object.keys(window.saved).some(k => k.endsWith("` + name + `"))`)
	}
	svg := eval[string](p, `Object.entries(window.saved).find(([k]) => k.endsWith(".svg"))[1]`)
	if !strings.HasPrefix(svg, "<svg") || !strings.Contains(svg, `stroke="rgb(`) || strings.Contains(svg, "var(") || strings.Contains(svg, "dw-handle") {
		t.Errorf("the drawing is %.300s", svg)
	}
	if ok := eval[bool](p, `new DOMParser().parseFromString(Object.entries(window.saved).find(([k]) => k.endsWith(".svg"))[1], "image/svg+xml").querySelector("parsererror") === null`); !ok {
		t.Error("the drawing is no SVG")
	}
	if bad := eval[string](p, contrast); bad != "" {
		t.Error(bad)
	}
}

// A link with two plans opens the first and keeps the second to compare with; the comparison's own link does so
// again for somebody else.
func TestALinkWithTwoPlans(t *testing.T) {
	p := open(t, desktop, "")
	eval[any](p, `document.querySelector("#compare > summary").click()`)
	p.wait(`!!document.getElementById("compare-keep")`)
	p.click("compare-keep")
	p.wait(`document.getElementById("compare-gist").textContent.startsWith("One variant")`)
	p.write("s-mass", "5")
	p.wait(`document.querySelectorAll("#compare-inputs tr").length === 1`)
	both := eval[string](p, `document.getElementById("compare-link").hash`)
	other := open(t, desktop, both)
	if m := other.value("s-mass"); m != "5" {
		t.Errorf("the link opens a plan of %s kg", m)
	}
	eval[any](other, `document.querySelector("#compare > summary").click()`)
	other.wait(`document.querySelectorAll("#compare-inputs tr").length === 1`)
	if h := eval[string](other, `location.hash`); strings.Contains(h, "+") {
		t.Errorf("the address stays %q", h)
	}
}
