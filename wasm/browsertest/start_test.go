//go:build !js

package browsertest

import (
	"context"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	cdp "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// count counts the attributes that are written until the program says that it is ready.
const count = `window.written = 0;
const o = new MutationObserver(l => { window.written += l.length; const b = document.getElementById("boot"); if (b && b.hidden) o.disconnect(); });
o.observe(document, {subtree: true, attributes: true});`

// shape is everything of the page that a person or a handler could meet, as one text.
const shape = `(() => { const out = []; const walk = n => {
	if (n.nodeType === 3) { out.push("t" + n.data); return; }
	out.push(n.tagName, ...[...n.attributes].map(a => a.name + "=" + a.value).sort());
	for (const k of ["value", "checked", "disabled", "open", "selectedIndex"]) if (k in n) out.push(k + ":" + n[k]);
	n.childNodes.forEach(walk);
	out.push("/");
}; walk(document.querySelector(".page")); return out.join("\n"); })()`

// A first visit finds the page as it stands in the file, and only adds what that lacks; it ends up as one that was drawn
// whole, which a file with another sum is.
func TestAFirstVisitKeepsWhatStands(t *testing.T) {
	h := serve(t)
	seen := func() (whole string, written int) {
		p := tab(t, desktop)
		p.do(func(ctx context.Context, _ *chromedp.Target) (chromedp.Void, error) {
			_, err := chromedp.Call(ctx, cdp.AddScriptToEvaluateOnNewDocument, cdp.AddScriptToEvaluateOnNewDocumentParams{Source: count})
			return chromedp.Void{}, err
		})
		p.do(chromedp.Navigate(h.home))
		p.ready()
		written = eval[int](p, `window.written`)
		p.drawn()
		return eval[string](p, shape), written
	}
	kept, few := seen()
	file := filepath.Join(h.dir, "index.html")
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	sum := regexp.MustCompile(`data-stands="[^"]+"`)
	if !sum.Match(text) {
		t.Fatal("the page says no sum")
	}
	if err := os.WriteFile(file, sum.ReplaceAll(text, []byte(`data-stands="other"`)), 0o644); err != nil {
		t.Fatal(err)
	}
	drawn, many := seen()
	if kept != drawn {
		a, b := strings.Split(kept, "\n"), strings.Split(drawn, "\n")
		i := 0
		for i < min(len(a), len(b)) && a[i] == b[i] {
			i++
		}
		t.Errorf("kept:\n%q\ndrawn:\n%q", a[max(0, i-9):min(len(a), i+3)], b[max(0, i-9):min(len(b), i+3)])
	}
	if few*2 > many {
		t.Errorf("%d attributes were written over the page that stood, %d to draw all", few, many)
	}
	t.Logf("%d and %d attributes written", few, many)
}
