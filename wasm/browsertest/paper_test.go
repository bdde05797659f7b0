//go:build !js

package browsertest

import (
	"context"
	"regexp"
	"strings"
	"testing"

	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"cohoist/core/example"
)

// pdf prints the page on paper of a size, in inches.
func (p *page) pdf(width, height float64) []byte {
	p.t.Helper()
	var data []byte
	p.do(func(ctx context.Context, _ *chromedp.Target) (chromedp.Void, error) {
		r, err := chromedp.Call(ctx, cdppage.PrintToPDF, cdppage.PrintToPDFParams{PaperWidth: width, PaperHeight: height})
		data = r.Data
		return chromedp.Void{}, err
	})
	return data
}

var pages = regexp.MustCompile(`/Type\s*/Page\b[^s]`)

// Every example prints on two pages of A4 and of Letter, with the link and the digest of the plan that is
// printed; Print waits until they are there.
func TestTheSheetPrintsOnTwoPages(t *testing.T) {
	p := open(t, desktop, "")
	eval[any](p, `window.paper = 0; window.print = () => { window.paper++ }`)
	seen := map[string]bool{}
	for i, e := range example.All {
		plan, _ := example.Plan(e.Name)
		p.example(plan.Title)
		p.click("print")
		p.wait(`window.paper === ` + num(float64(i+1)))
		paper := p.text("paper")
		if link := eval[string](p, `location.hash`); link == "" || !strings.Contains(paper, link) {
			t.Errorf("%s: the paper does not hold the plan's link", e.Name)
		}
		digest := regexp.MustCompile(`digest ([0-9a-f ]{19})`).FindString(paper)
		if digest == "" || seen[digest] {
			t.Errorf("%s: the digest is %q", e.Name, digest)
		}
		seen[digest] = true
		for name, size := range map[string][2]float64{"A4": {8.27, 11.69}, "Letter": {8.5, 11}} {
			if n := len(pages.FindAll(p.pdf(size[0], size[1]), -1)); n != 2 {
				t.Errorf("%s prints on %d pages of %s", e.Name, n, name)
			}
		}
		eval[any](p, `document.querySelectorAll("#studies details.study[open] > summary").forEach(s => s.click())`)
	}
}

// What is drawn beside the page and belongs to an earlier plan does not print beside the new one.
func TestNothingStalePrints(t *testing.T) {
	p := open(t, desktop, "")
	p.wait(`!!document.querySelector("#paper .qr")`)
	eval[any](p, `cohoistMoved(1e6)`)
	p.media(look{print: true})
	if !eval[bool](p, `getComputedStyle(document.querySelector("#paper .paper-inside")).display === "none"`) {
		t.Error("a link of an earlier plan prints")
	}
}
