//go:build !js

package browsertest

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// A beam's section shows its diagrams, what is typed there goes into the plan, and one step undoes it.
func TestABeamsDiagrams(t *testing.T) {
	p := open(t, desktop, "")
	p.example("Handrail beam")
	p.do(chromedp.Click(chromedp.CSS("#bent > summary")))
	p.wait(`!!document.querySelector("#bent .bm-svg") && document.getElementById("f-payload-beam-material").value === "aluminium-6061-t6"`)
	before := p.text("bent-gist")
	p.choose("f-payload-beam-material", "steel-s235")
	p.wait(`document.getElementById("bent-gist").textContent !== ` + quote(before))
	eval[any](p, `document.querySelectorAll("#bent .fold").forEach(g => { g.open = true })`)
	for id, text := range map[string]string{"0-hold-stiffness-n-m": "500", "1-hold-stiffness-n-m": "500", "2-hold-stiffness-n-m": "0,5 N/mm", "0-hold-length-error-m": "2 cm"} {
		p.write("f-team-"+id, text)
		eval[any](p, `document.activeElement.blur()`)
		p.drawn()
	}
	p.wait(`document.querySelector("#bent .carriers").textContent.includes(" to ")`)
	p.write("f-payload-beam-wall-m", "thick")
	eval[any](p, `document.getElementById("f-payload-beam-wall-m").blur()`)
	p.wait(`document.querySelector('[data-piece="fault payload.beam.wall_m"]').textContent !== ""`)
	for range 5 {
		p.click("undo")
	}
	p.wait(`document.getElementById("bent-gist").textContent === ` + quote(before))
	if v := p.value("f-payload-beam-material"); v != "aluminium-6061-t6" {
		t.Errorf("undone to %q", v)
	}
	if bad := eval[string](p, contrast); bad != "" {
		t.Error(bad)
	}
}

// On a phone no section is wider than the screen.
func TestStudiesFitAPhone(t *testing.T) {
	p := open(t, look{width: 390, height: 844, phone: true}, "")
	p.example("Handrail beam")
	for _, id := range eval[[]string](p, `[...document.querySelectorAll("#studies details.study")].map(d => d.id)`) {
		eval[any](p, `document.querySelector("#`+id+` > summary").click()`)
		p.wait(`(document.querySelector("#` + id + ` .inside [data-piece='` + id + `']") || {textContent: "Being worked out …"}).textContent !== "Being worked out …"`)
		p.drawn()
		if w := eval[float64](p, `document.documentElement.scrollWidth`); w > 390 {
			t.Errorf("with %s open the page is %g wide", id, w)
		}
	}
	if p.text("fact-utilisation") == "" || strings.Contains(p.text("studies"), "came to grief") {
		t.Error("a study came to grief")
	}
}
