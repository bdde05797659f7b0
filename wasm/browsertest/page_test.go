//go:build !js

package browsertest

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

func TestThePageStarts(t *testing.T) {
	p := open(t, desktop, "")
	if p.text("verdict-word") == "" || p.text("verdict-sentence") == "" {
		t.Error("there is no verdict")
	}
	if n := eval[float64](p, `document.querySelectorAll("#vehicles [role=row]").length`); n < 3 {
		t.Errorf("the table of vehicles has %v rows", n)
	}
	if n := eval[float64](p, `document.querySelectorAll("#drawing svg").length`); n < 1 {
		t.Error("there is no drawing")
	}
}

// The first view is there before the program runs, and the program takes its very nodes over.
func TestTheFirstViewIsTakenOver(t *testing.T) {
	p := tab(t, desktop)
	p.do(chromedp.Navigate(address))
	eval[any](p, `window.first = document.getElementById("s-mass")`)
	p.ready()
	if !eval[bool](p, `window.first !== null && window.first === document.getElementById("s-mass")`) {
		t.Error("the program made new nodes")
	}
	if p.value("s-mass") == "" {
		t.Error("the mass is not in its input")
	}
}

func TestTypingChangesTheVerdict(t *testing.T) {
	p := open(t, desktop, "")
	p.write("s-mass", "1")
	p.wait(`document.getElementById("verdict").className.includes("is-ok")`)
	p.write("s-mass", "900,5")
	p.wait(`document.getElementById("verdict").className.includes("is-fail")`)
	if got := p.value("s-mass"); got != "900,5" {
		t.Errorf("what was typed became %q", got)
	}
	p.write("s-mass", "9oo")
	if p.text("s-mass-fault") == "" || !eval[bool](p, `document.getElementById("s-mass").getAttribute("aria-invalid") === "true"`) {
		t.Error("a text that is no number has no fault")
	}
	if got := p.value("s-mass"); got != "9oo" {
		t.Errorf("the text with a fault became %q", got)
	}
	if !eval[bool](p, `document.getElementById("verdict").className.includes("is-fail")`) {
		t.Error("the last good plan's verdict is gone")
	}
}

// A caret in the middle of a number stays there while the page is drawn anew.
func TestTheCaretStays(t *testing.T) {
	p := open(t, desktop, "")
	p.write("s-mass", "12")
	eval[any](p, `document.getElementById("s-mass").setSelectionRange(1, 1)`)
	p.do(chromedp.KeyEvent("3"), chromedp.KeyEvent("."))
	if got := p.value("s-mass"); got != "13.2" {
		t.Errorf("typing in the middle gave %q", got)
	}
}

func TestUndoAndRedo(t *testing.T) {
	p := open(t, desktop, "")
	before := p.value("s-mass")
	p.write("s-mass", "123")
	eval[any](p, `document.getElementById("s-mass").blur()`)
	p.ctrl("z")
	p.wait(`document.getElementById("s-mass").value === "` + before + `"`)
	p.ctrl("Z")
	p.wait(`document.getElementById("s-mass").value === "123"`)
	p.click("undo")
	p.wait(`document.getElementById("s-mass").value === "` + before + `"`)
	p.ctrl("y")
	p.wait(`document.getElementById("s-mass").value === "123"`)
}

func TestThePlanSurvivesAReload(t *testing.T) {
	p := open(t, desktop, "")
	p.write("s-mass", "4.75")
	p.write("title", "Lamp room")
	p.wait(`location.hash.length > 20 && (localStorage.getItem("cohoist/plan") || "").includes("Lamp room")`)
	p.do(chromedp.Navigate(address)) // without the link
	p.ready()
	if m, title := p.value("s-mass"), p.value("title"); m != "4.75" || title != "Lamp room" {
		t.Errorf("after a reload: %q, %q", m, title)
	}
}

func TestTheLinkOpensTheSamePlan(t *testing.T) {
	p := open(t, desktop, "")
	p.write("s-mass", "3.125")
	p.wait(`location.hash.length > 20`)
	p.wait(`(localStorage.getItem("cohoist/plan") || "").includes("3.125")`)
	other := open(t, desktop, eval[string](p, `location.hash`))
	if got := other.value("s-mass"); got != "3.125" {
		t.Errorf("the link gave a mass of %q", got)
	}
}

func TestABadLinkIsSaidAndThePlanStays(t *testing.T) {
	p := open(t, desktop, "")
	p.write("s-mass", "3.25")
	p.wait(`(localStorage.getItem("cohoist/plan") || "").includes("3.25")`)
	good := eval[string](p, `location.hash`)
	for _, bad := range []string{good[:len(good)-7], "#p99." + good[4:], "#nonsense", good[:30] + "xyz" + good[33:]} {
		eval[any](p, `location.hash = "`+bad+`"`)
		p.wait(`document.getElementById("notice-link") !== null`)
		if got := p.value("s-mass"); got != "3.25" {
			t.Errorf("after the link %q the mass is %q", bad, got)
		}
		eval[any](p, `document.querySelector("#notice-link button").click()`)
		p.wait(`document.getElementById("notice-link") === null`)
	}
	fresh := open(t, desktop, good[:len(good)-7])
	if fresh.text("notice-link") == "" {
		t.Error("a first visit by a truncated link says nothing")
	}
}

func TestNamesAreOnlyText(t *testing.T) {
	p := open(t, desktop, "")
	nasty := `<img src=x onerror=window.hit=1>"'&`
	p.write("title", nasty)
	p.do(chromedp.Click(chromedp.CSS("#team > summary")))
	p.wait(`document.getElementById("team-0-id") !== null`)
	p.write("team-0-id", nasty)
	p.wait(`document.getElementById("vehicle-0-pick").textContent.includes("<img")`)
	if eval[bool](p, `window.hit === 1 || document.querySelectorAll("main img").length > 0`) {
		t.Error("a name became markup")
	}
	if got := p.value("team-0-id"); got != nasty {
		t.Errorf("the name became %q", got)
	}
}

func TestStorageDeniedIsSaidOnce(t *testing.T) {
	p := tab(t, desktop)
	p.do(chromedp.Navigate(address))
	eval[any](p, `Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError") }`)
	p.ready()
	p.write("s-mass", "2.5")
	p.wait(`document.getElementById("notice-storage") !== null`)
	if !strings.Contains(p.text("notice-storage"), "works") {
		t.Errorf("it says %q", p.text("notice-storage"))
	}
	p.write("s-mass", "2.75")
	p.wait(`document.getElementById("s-mass").value === "2.75"`)
}
