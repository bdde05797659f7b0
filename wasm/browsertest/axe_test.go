//go:build !js

package browsertest

import (
	"compress/gzip"
	"io"
	"os"
	"testing"
)

// axe runs the accessibility checker over the page and fails the test with what it finds.
func (p *page) axe(state string) {
	p.t.Helper()
	if !eval[bool](p, `!!window.axe`) {
		f, err := os.Open("../../testdata/axe/axe-4.10.3.min.js.gz")
		if err != nil {
			p.t.Fatal(err)
		}
		defer f.Close()
		z, err := gzip.NewReader(f)
		if err != nil {
			p.t.Fatal(err)
		}
		text, err := io.ReadAll(z)
		if err != nil {
			p.t.Fatal(err)
		}
		eval[any](p, string(text)+"; null")
	}
	for _, s := range eval[[]string](p, `axe.run(document, {resultTypes: ["violations"]}).then(r => r.violations.map(v => v.id + ": " + v.help + " at " + v.nodes.slice(0, 3).map(n => n.target.join(" ") + " (" + (n.any[0] || n.all[0] || n.none[0] || {message: ""}).message + ")").join("; ")))`) {
		p.t.Errorf("%s: %s", state, s)
	}
}

// The checker finds nothing: on a lift that holds, on one that fails, with everything open, on a phone and in the dark.
func TestAccessibility(t *testing.T) {
	for name, l := range map[string]look{"desktop": desktop, "phone, dark": {width: 390, height: 844, phone: true, dark: true}} {
		p := open(t, l, "")
		p.drawn()
		p.axe(name + ", first view")
		eval[any](p, `document.querySelectorAll(".part > summary, .check > summary, #studies details.study > summary").forEach(s => s.click())`)
		p.wait(`![...document.querySelectorAll("#studies [data-piece]")].some(e => e.textContent.startsWith("Being worked out"))`)
		p.settled()
		p.axe(name + ", everything open")
		p.example("Handrail")
		p.wait(`!!document.querySelector("#bent .bm-svg")`)
		p.drawn()
		p.axe(name + ", a beam")
		p.example("Lantern")
		p.wait(`!!document.getElementById("remedy-0-take")`)
		p.drawn()
		p.axe(name + ", a lift that fails")
	}
}
