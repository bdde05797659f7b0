//go:build !js

package browsertest

import (
	"testing"
)

// openWhere opens an example and the section on where to attach.
func openWhere(p *page, example string) {
	p.t.Helper()
	p.example(example)
	eval[any](p, `document.querySelector("#where > summary").click()`)
	p.wait(`!!document.getElementById("where-find") && document.getElementById("where-pitch").value !== ""`)
}

// A newcomer opens the handrail example and asks where to attach: the answer is proved, and taking it is one
// step that undo takes back.
func TestWhereToAttachTheHandrail(t *testing.T) {
	p := open(t, desktop, "")
	openWhere(p, "Handrail")
	if got := p.value("where-pitch"); got != "0.15" {
		t.Errorf("holes every %q m", got)
	}
	p.click("where-find")
	p.wait(`!!document.getElementById("where-take")`)
	if got := p.text("where-proof"); len(got) < 6 || got[:6] != "Proved" {
		t.Errorf("the proof is %q", got)
	}
	p.click("where-take")
	p.wait(`document.getElementById("where-gist").textContent.startsWith("Taken")`)
	eval[any](p, `document.getElementById("undo").click()`)
	p.wait(`!document.getElementById("where-gist").textContent.startsWith("Taken")`)
}
