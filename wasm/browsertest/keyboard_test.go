//go:build !js

package browsertest

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// tab presses Tab, or Shift and Tab, until what has the focus fits a selector, and sees that the focus shows.
func (p *page) tab(back bool, selector string) {
	p.t.Helper()
	var how []chromedp.KeyOption
	if back {
		how = append(how, chromedp.KeyModifiers(chromedp.ModifierShift))
	}
	for range 150 {
		p.do(chromedp.KeyEvent("\t", how...))
		if eval[bool](p, fmt.Sprintf(`document.activeElement.matches(%q)`, selector)) {
			if shown := eval[bool](p, `(() => { const s = getComputedStyle(document.activeElement); return s.outlineStyle !== "none" && parseFloat(s.outlineWidth) > 0 || document.activeElement instanceof SVGElement && !["none", "rgba(0, 0, 0, 0)"].includes(s.stroke) && parseFloat(s.strokeWidth) > 0; })()`); !shown {
				p.t.Errorf("the focus on %s cannot be seen", selector)
			}
			return
		}
	}
	p.t.Fatalf("Tab does not come to %s", selector)
}

func (p *page) press(key string, modifiers ...chromedp.Modifier) {
	p.t.Helper()
	p.do(chromedp.KeyEvent(key, chromedp.KeyModifiers(modifiers...)))
	p.drawn()
}

// Keys that are no characters, as chromedp writes them.
const (
	enter     = "\r"
	arrowUp   = "\u0304"
	arrowDown = "\u0301"
)

// The whole job without a pointer: state the lift, see that it fails and why, take what would do, move an attachment, open
// a working and a study, undo, copy the link, print.
func TestTheWholeJobByKeyboard(t *testing.T) {
	p := open(t, desktop, "")
	eval[any](p, `navigator.clipboard.writeText = (text) => { window.copied = text; return Promise.resolve(); }; window.print = () => { window.printed = true; };`)

	p.tab(false, ".skip")
	p.press(enter)
	p.tab(false, "#s-count")
	p.press("3")
	p.tab(false, "#s-mass")
	p.do(chromedp.KeyEvent("14")) // Tab has selected what stood there
	p.drawn()
	if text := p.text("verdict-line"); !strings.Contains(strings.ToLower(text), "not") {
		t.Errorf("three for 14 kg: %q", text)
	}

	p.tab(false, "#would-do > summary")
	if !eval[bool](p, `document.getElementById("would-do").open`) {
		p.press(enter)
	}
	p.wait(`!!document.getElementById("remedy-0-take")`)
	p.tab(false, "#remedy-0-take")
	before := p.text("verdict-line")
	p.press(enter)
	p.wait(fmt.Sprintf(`document.getElementById("verdict-line").textContent !== %q`, before))

	p.tab(true, ".dw-handle[aria-label^='attachment of']")
	at := eval[string](p, `document.activeElement.getAttribute("aria-valuetext")`)
	p.press(arrowUp)
	if now := eval[string](p, `document.activeElement.getAttribute("aria-valuetext")`); now == at {
		t.Errorf("an arrow key leaves %q", now)
	}
	p.press("z", chromedp.ModifierCtrl)
	if now := eval[string](p, `document.activeElement.getAttribute("aria-valuetext")`); now != at {
		t.Errorf("undone to %q, was %q", now, at)
	}

	p.tab(false, "#check-thrust > summary")
	p.press(enter)
	p.wait(`document.querySelector("#check-thrust[open] .steps, #check-thrust[open] [role=row], #check-thrust[open] li") !== null`)
	p.tab(false, "#lost > summary")
	p.press(enter)
	p.wait(`document.querySelector("#lost[open] [role=table]") !== null`)

	p.tab(false, "#team > summary")
	p.press(enter)
	p.tab(false, "#team select")
	choice := eval[string](p, `document.activeElement.value`)
	p.press(arrowDown)
	if eval[string](p, `document.activeElement.value`) == choice {
		p.press(arrowUp)
	}
	if now := eval[string](p, `document.activeElement.value`); now == choice {
		t.Errorf("arrow keys leave the choice %q", now)
	}

	p.tab(true, "#link")
	p.press(enter)
	p.wait(`(window.copied || "").includes("#p1.")`)
	p.tab(false, "#print")
	p.press(enter)
	p.wait(`window.printed === true`)
}

// Twice the size on a screen of 1280 leaves 640 for the page: nothing is cut off sideways, and texts are as large as asked for.
func TestTwiceTheSize(t *testing.T) {
	p := open(t, look{width: 640, height: 450}, "")
	eval[any](p, sections)
	p.wait(`document.querySelectorAll("details.part[open]").length === 4`)
	wide := `document.documentElement.scrollWidth - document.documentElement.clientWidth`
	if over := eval[int](p, wide); over > 0 {
		t.Errorf("at twice the size the page is %d px too wide", over)
	}
	// texts alone, as browsers do who leave the pictures
	small := eval[float64](p, `parseFloat(getComputedStyle(document.querySelector(".sentence")).fontSize)`)
	eval[any](p, `document.documentElement.style.fontSize = "200%"`)
	if large := eval[float64](p, `parseFloat(getComputedStyle(document.querySelector(".sentence")).fontSize)`); large < 1.9*small {
		t.Errorf("texts grow from %g to %g px", small, large)
	}
	if over := eval[int](p, wide); over > 0 {
		t.Errorf("with texts of twice the size the page is %d px too wide", over)
	}
}

// Who wants no motion gets none that was not asked for.
func TestReducedMotion(t *testing.T) {
	for _, want := range []string{"no-preference", "reduce"} {
		p := open(t, desktop, "")
		p.do(func(ctx context.Context, _ *chromedp.Target) (chromedp.Void, error) {
			_, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
				Features: []*emulation.MediaFeature{{Name: "prefers-reduced-motion", Value: want}}})
			return chromedp.Void{}, err
		})
		moving := eval[int](p, `[...document.querySelectorAll("*")].filter(e => { const s = getComputedStyle(e);
			return s.animationName !== "none" || s.transitionDuration.split(",").some(d => parseFloat(d) > 0) || s.scrollBehavior === "smooth"; }).length`)
		if (moving > 0) != (want == "no-preference") {
			t.Errorf("%s: %d elements move", want, moving)
		}
	}
}

// What a screen reader is told of a lift: the verdict as it changes, and the drawing in words that change with it.
func TestWhatIsSaidChangesWithThePlan(t *testing.T) {
	p := open(t, desktop, "")
	if live := eval[string](p, `(() => { const e = document.querySelector("#verdict [aria-live], #verdict[aria-live], #verdict [role=status]"); return e ? e.textContent : "" })()`); live == "" {
		t.Error("no live region says the verdict")
	}
	words, verdict := p.text("dw-words"), p.text("verdict-line")
	p.write("s-mass", "14")
	if now := p.text("verdict-line"); now == verdict {
		t.Errorf("the verdict still says %q", now)
	}
	if now := p.text("dw-words"); now == words {
		t.Errorf("the drawing still says %q", now)
	}
}
