//go:build !js

package browsertest

import (
	"context"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// With everything open, nothing is asked of anywhere but the page's own folder, and nothing the policy forbids
// is tried.
func TestNothingLeavesTheFolder(t *testing.T) {
	p := tab(t, desktop)
	p.do(chromedp.Navigate(address))
	eval[any](p, `window.broken = []; document.addEventListener("securitypolicyviolation", (e) => window.broken.push(e.violatedDirective + " " + e.blockedURI))`)
	p.ready()
	p.example("Handrail")
	eval[any](p, `document.querySelectorAll(".part > summary, .check > summary, #studies details.study > summary").forEach(s => s.click())`)
	p.wait(`![...document.querySelectorAll("#studies [data-piece]")].some(e => e.textContent.startsWith("Being worked out"))`)
	for _, name := range eval[[]string](p, `performance.getEntries().filter(e => e.entryType === "resource" || e.entryType === "navigation").map(e => e.name)`) {
		if !strings.HasPrefix(name, address) {
			t.Errorf("the page asked for %s", name)
		}
	}
	if broken := eval[[]string](p, `window.broken`); len(broken) > 0 {
		t.Errorf("the policy was broken: %v", broken)
	}
}

// At 320 pixels, or a desktop at 400 %, nothing has to be scrolled sideways, with every section open.
func TestANarrowScreen(t *testing.T) {
	p := open(t, look{width: 320, height: 640, phone: true}, "")
	for _, word := range []string{"Deck", "Handrail", "Lantern"} {
		p.example(word)
		eval[any](p, `document.querySelectorAll(".part:not([open]) > summary, .check:not([open]) > summary, #studies details.study:not([open]) > summary").forEach(s => s.click())`)
		p.wait(`![...document.querySelectorAll("#studies [data-piece]")].some(e => e.textContent.startsWith("Being worked out"))`)
		p.drawn()
		if w := eval[float64](p, `document.documentElement.scrollWidth`); w > 320 {
			t.Errorf("%s: the page is %g wide; %s sticks out", word, w, eval[string](p, `[...document.querySelectorAll("main *")].filter(e => e.getBoundingClientRect().right > 321 && !e.closest(".cm-room, .lo-room, .room, svg")).slice(0, 4).map(e => e.tagName + "." + e.className + " in " + (e.closest("details, section") || {}).id).join("; ")`))
		}
	}
}

// Two tabs keep their own plans; a clock that is wrong changes nothing.
func TestTwoTabsKeepTheirPlans(t *testing.T) {
	p := open(t, desktop, "")
	ctx, cancel := chromedp.NewContext(p.ctx)
	defer cancel()
	ctx, stop := context.WithTimeout(ctx, 60*time.Second)
	defer stop()
	other := &page{t: t, ctx: ctx}
	other.do(chromedp.Navigate(address))
	other.ready()
	eval[any](other, `Date.now = () => -1; Date.prototype.getTime = () => NaN`)
	p.write("s-mass", "4.5")
	other.write("s-mass", "5.5")
	p.wait(`location.hash.length > 20`)
	other.wait(`location.hash.length > 20`)
	time.Sleep(400 * time.Millisecond) // the tabs save when they rest
	for _, tab := range []*page{p, other} {
		tab.do(chromedp.Reload())
		tab.ready()
	}
	if a, b := p.value("s-mass"), other.value("s-mass"); a != "4.5" || b != "5.5" {
		t.Errorf("after a reload the tabs hold %s and %s kg", a, b)
	}
}
