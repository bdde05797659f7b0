//go:build !js

package browsertest

import (
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
)

// example opens the example whose line in the menu holds a word.
func (p *page) example(word string) {
	p.t.Helper()
	p.do(chromedp.Click(chromedp.CSS("#examples > summary")))
	p.wait(`document.querySelector("#examples button") !== null`)
	if !eval[bool](p, `(() => { const b = [...document.querySelectorAll("#examples button")].find(b => b.textContent.includes("`+word+`")); if (b) b.click(); return !!b })()`) {
		p.t.Fatalf("there is no example about %q", word)
	}
	p.settled()
}

// settled waits until the report on the screen is that of the plan.
func (p *page) settled() {
	p.t.Helper()
	p.drawn()
	p.wait(`document.getElementById("verdict-line").getAttribute("aria-busy") === "false"`)
}

func TestEveryExampleOpens(t *testing.T) {
	p := open(t, desktop, "")
	p.do(chromedp.Click(chromedp.CSS("#examples > summary")))
	p.wait(`document.querySelector("#examples button") !== null`)
	n := int(eval[float64](p, `document.querySelectorAll("#examples button").length`))
	if n < 6 {
		t.Fatalf("there are %d examples", n)
	}
	eval[any](p, `document.querySelector("#examples > summary").click()`)
	seen := map[string]bool{}
	for i := range n {
		eval[any](p, `document.querySelector("#examples > summary").click()`)
		p.wait(`!!document.getElementById("examples-0")`)
		title := eval[string](p, `(() => { const b = document.getElementById("examples-`+string(rune('0'+i))+`"); const t = b.querySelector("strong").textContent; b.click(); return t })()`)
		p.wait(`document.getElementById("title").value === ` + quote(title))
		p.settled()
		seen[p.text("verdict-sentence")] = true
		if p.text("notices") != "" {
			t.Errorf("%s: %s", title, p.text("notices"))
		}
	}
	if len(seen) != n {
		t.Errorf("%d examples have %d different verdicts", n, len(seen))
	}
	// Back leads through them again.
	p.do(chromedp.NavigateBack())
	first := eval[string](p, `document.getElementById("title").value`)
	p.do(chromedp.NavigateBack())
	p.wait(`document.getElementById("title").value !== ` + quote(first))
}

func quote(s string) string { return `"` + strings.ReplaceAll(s, `"`, `\"`) + `"` }

// A drag of an attachment moves it, changes the answer while it moves, and is one step back.
func TestDraggingAnAttachment(t *testing.T) {
	p := open(t, desktop, "")
	p.do(chromedp.Click(chromedp.CSS("#team > summary")))
	p.wait(`document.getElementById("team-0-attach-x") !== null`)
	before := p.value("team-0-attach-x")
	at := eval[[]float64](p, `(() => { const h = document.querySelector(".dw-handle-attach"); h.scrollIntoView({block: "center"}); const r = h.getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2] })()`)
	share := p.text("vehicle-0-used")
	p.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMousePressed, at[0], at[1], chromedp.Button("left"), chromedp.ClickCount(1)))
	moved := false
	for i := range 12 {
		p.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMouseMoved, at[0]-float64(4*i), at[1], chromedp.Button("left")))
		moved = moved || p.value("team-0-attach-x") != before
	}
	if !moved {
		t.Error("the number does not follow the pointer")
	}
	p.wait(`document.getElementById("vehicle-0-used").textContent !== "` + share + `"`)
	p.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMouseReleased, at[0]-48, at[1], chromedp.Button("left"), chromedp.ClickCount(1)))
	after := p.value("team-0-attach-x")
	if after == before {
		t.Error("the attachment is where it was")
	}
	p.click("undo")
	p.wait(`document.getElementById("team-0-attach-x").value === "` + before + `"`)
	if !eval[bool](p, `document.getElementById("undo").disabled`) {
		t.Error("the drag was more than one step")
	}
	p.click("redo")
	p.wait(`document.getElementById("team-0-attach-x").value === "` + after + `"`)
}

// A large team is computed beside the page, which goes on answering, and the newest plan wins.
func TestALargeTeamDoesNotBlockThePage(t *testing.T) {
	p := open(t, desktop, "")
	eval[any](p, `(() => { window.gap = 0; let last = performance.now(); setInterval(() => { const now = performance.now(); window.gap = Math.max(window.gap, now - last); last = now }, 5) })()`)
	p.write("s-count", "64")
	eval[any](p, `document.getElementById("s-count").blur()`)
	p.write("s-mass", "40")
	p.write("s-mass", "41")
	if got := eval[float64](p, `document.querySelectorAll("#vehicles [role=row]").length`); got != 65 {
		t.Errorf("the table has %v rows", got)
	}
	p.settled()
	p.wait(`document.getElementById("fact-payload").textContent.startsWith("41")`)
	t.Logf("longest time the page did not answer: %.0f ms", eval[float64](p, `window.gap`))
	p.write("s-count", "3")
	p.settled()
	p.wait(`document.querySelectorAll("#vehicles [role=row]").length === 4`)
}

func TestTeamEditing(t *testing.T) {
	p := open(t, desktop, "")
	p.do(chromedp.Click(chromedp.CSS("#team > summary")))
	p.wait(`document.getElementById("team-add") !== null`)
	rows := `document.querySelectorAll("#vehicles [role=row]").length`
	n := eval[float64](p, rows)
	p.click("team-add")
	p.wait(rows + ` === ` + num(n+1))
	p.click("team-0-copy")
	p.wait(rows + ` === ` + num(n+2))
	p.click("team-0-remove")
	p.wait(rows + ` === ` + num(n+1))
	p.click("pattern-corners")
	p.choose("team-0-hold", "rigid")
	p.wait(`document.getElementById("s-hold").value === ""`)
	p.choose("s-hold", "rigid")
	p.wait(`document.getElementById("team-0-lean-x") !== null && document.getElementById("s-cable") === null`)
	p.choose("s-class", "heavy-octo")
	p.wait(`document.getElementById("team-0-class").value === "heavy-octo"`)
	p.settled()
	if p.text("notices") != "" {
		t.Error(p.text("notices"))
	}
}

func num(x float64) string { return strconv.Itoa(int(x)) }

func TestUnitsSwitch(t *testing.T) {
	p := open(t, desktop, "")
	p.write("s-mass", "1")
	p.choose("unit-mass", "lb")
	p.wait(`document.getElementById("s-mass").value === "2.20462"`)
	p.write("s-mass", "3,5")
	p.choose("unit-mass", "kg")
	p.wait(`document.getElementById("s-mass").value === "1.58757"`)
	p.choose("unit-length", "ft")
	p.do(chromedp.Reload())
	p.ready()
	if got := eval[string](p, `document.getElementById("unit-length").value`); got != "ft" {
		t.Errorf("after a reload lengths are in %s", got)
	}
}

// The working of a check opens from its row, from the verdict and from the table.
func TestWorkingOpens(t *testing.T) {
	p := open(t, desktop, "")
	p.click("verdict-governing")
	p.wait(`document.querySelector("details.check[open] .steps li") !== null`)
	if !eval[bool](p, `document.activeElement.tagName === "SUMMARY"`) {
		t.Error("the focus did not follow")
	}
	p.do(chromedp.KeyEvent("\r"))
	p.wait(`document.querySelector("details.check[open]") === null`)
	p.click("vehicle-0-used")
	p.wait(`document.querySelector("#check-thrust[open] .steps li") !== null`)
}

// A panic inside an event's handler is said, and the page lives on; so it does when the browser
// will not change the address.
func TestThePageLivesOnAfterAnError(t *testing.T) {
	p := open(t, desktop, "")
	eval[any](p, `history.replaceState = () => { throw new Error("too often") }`)
	eval[any](p, `Object.defineProperty(navigator, "clipboard", { value: { writeText: () => { throw new Error("boom") } } })`)
	p.click("link")
	p.wait(`document.getElementById("notice-program") !== null`)
	if !strings.Contains(p.text("notice-program"), "boom") {
		t.Errorf("it says %q", p.text("notice-program"))
	}
	p.write("s-mass", "2")
	p.wait(`document.getElementById("verdict").className.includes("is-ok")`)
	p.write("s-mass", "900")
	p.wait(`document.getElementById("verdict").className.includes("is-fail")`)
}
