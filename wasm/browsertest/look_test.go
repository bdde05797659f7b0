//go:build !js

package browsertest

import (
	"strconv"
	"testing"

	"github.com/chromedp/chromedp"
)

// sections opens all that can be opened.
const sections = `document.querySelectorAll("details.part > summary, details.check > summary").forEach(s => { if (!s.parentNode.open) s.click() })`

func TestAPhoneNeedsNoSidewaysScrolling(t *testing.T) {
	for _, width := range []int64{390, 320} {
		t.Run(strconv.Itoa(int(width)), func(t *testing.T) {
			p := open(t, look{width: width, height: 844, phone: true}, "")
			check := func(when string) {
				t.Helper()
				if w := eval[float64](p, `innerWidth`); w != float64(width) {
					t.Errorf("%s: the page made the view %v wide", when, w)
				}
				if w := eval[float64](p, `document.documentElement.scrollWidth`); w > float64(width) {
					wide := eval[string](p, `(()=>{let s="";for(const e of document.querySelectorAll("body *")){const r=e.getBoundingClientRect();if(r.right>innerWidth+1&&s.length<300)s+=e.tagName+"."+e.className+"#"+e.id+" "+r.right+"; "}return s})()`)
					t.Errorf("%s: the content is %v wide: %s", when, w, wide)
				}
			}
			check("as it opens")
			eval[any](p, sections)
			p.wait(`document.querySelectorAll("details.part[open]").length === 4`)
			check("with all sections open")
		})
	}
}

// contrast lists texts whose colour differs too little from their ground, by WCAG 2.2, 1.4.3:
// 4.5 to 1, and 3 to 1 for large text (24 px, or 18.66 px bold).
const contrast = `(() => {
  const rgb = (s) => { const m = s.match(/[\d.]+/g).map(Number); return { c: m.slice(0, 3), a: m.length > 3 ? m[3] : 1 }; };
  const lum = (c) => { const f = c.map((v) => { v /= 255; return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4; }); return 0.2126 * f[0] + 0.7152 * f[1] + 0.0722 * f[2]; };
  const ground = (e) => { for (; e; e = e.parentElement) { const b = rgb(getComputedStyle(e).backgroundColor); if (b.a === 1) return b.c; } return [255, 255, 255]; };
  const bad = [];
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let n; (n = walk.nextNode()); ) {
    const e = n.parentElement, s = getComputedStyle(e);
    if (!n.data.trim() || e.closest("svg, noscript, [hidden], :disabled, .skip") || e.getClientRects().length === 0) continue;
    const a = lum(rgb(s.color).c), b = lum(ground(e));
    const ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    const size = parseFloat(s.fontSize), large = size >= 24 || (size >= 18.66 && s.fontWeight >= 700);
    if (ratio < (large ? 3 : 4.5)) bad.push(ratio.toFixed(2) + " " + e.tagName + "." + e.className + " " + n.data.trim().slice(0, 30));
  }
  return bad.join("\n");
})()`

func TestTextStandsOutInLightAndDark(t *testing.T) {
	for _, dark := range []bool{false, true} {
		p := open(t, look{width: 1440, height: 900, dark: dark}, "")
		eval[any](p, sections)
		p.wait(`document.querySelectorAll("details.part[open]").length === 4`)
		if bad := eval[string](p, contrast); bad != "" {
			t.Errorf("dark %v:\n%s", dark, bad)
		}
		ground := eval[string](p, `getComputedStyle(document.querySelector(".page")).backgroundColor`)
		if isDark := eval[bool](p, `parseInt("`+ground+`".match(/\d+/)[0]) < 80`); isDark != dark {
			t.Errorf("dark %v: the ground is %s", dark, ground)
		}
	}
}

// Every input and button has a name that a screen reader can say, and every id stands once.
func TestNamesAndIDs(t *testing.T) {
	p := open(t, desktop, "")
	eval[any](p, sections)
	p.wait(`document.querySelectorAll("details.part[open]").length === 4`)
	if bad := eval[string](p, `(() => {
  const out = [];
  for (const e of document.querySelectorAll("input, select, textarea, button")) {
    const label = e.getAttribute("aria-label") || (e.labels && [...e.labels].map((l) => l.textContent).join("")) || (e.tagName === "BUTTON" ? e.textContent : "");
    if (!label.trim()) out.push("no name: " + e.tagName + "#" + e.id);
  }
  const seen = new Set();
  for (const e of document.querySelectorAll("[id]")) { if (seen.has(e.id)) out.push("twice: " + e.id); seen.add(e.id); }
  for (const e of document.querySelectorAll("[aria-describedby], [aria-labelledby]"))
    for (const a of ["aria-describedby", "aria-labelledby"]) { const id = e.getAttribute(a); if (id && !document.getElementById(id)) out.push(a + " to nothing: " + id); }
  return out.join("\n");
})()`); bad != "" {
		t.Error(bad)
	}
}

// By the Tab key alone one comes from the top to the sentence, and each stop is visible.
func TestTheKeyboardReachesTheSentence(t *testing.T) {
	p := open(t, desktop, "")
	for range 40 {
		p.do(chromedp.KeyEvent("\t"))
		if eval[string](p, `document.activeElement.id`) == "s-mass" {
			if !eval[bool](p, `getComputedStyle(document.activeElement).outlineStyle !== "none"`) {
				t.Error("the focus cannot be seen")
			}
			return
		}
	}
	t.Error("forty times Tab did not reach the payload's mass")
}
