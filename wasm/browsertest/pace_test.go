//go:build !js

package browsertest

import (
	"os"
	"testing"
	"time"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
)

// counter counts frames, keeps the time that every pointer event takes from its start to the end of what
// it caused in the program, and counts how often the verdict's figures changed.
const counter = `(() => {
	const c = window.pace = {frames: 0, moves: 0, took: [], answers: new Set(), start: performance.now()};
	const frame = () => { c.frames++; c.answers.add(document.getElementById("vehicles").textContent); requestAnimationFrame(frame) };
	requestAnimationFrame(frame);
	let from = 0;
	window.addEventListener("pointermove", () => { c.moves++; from = performance.now() }, {capture: true});
	window.addEventListener("pointermove", () => { c.took.push(performance.now() - from) });
})()`

type pace struct {
	Seconds, Frames, Moves, Answers, Median, Most float64
}

// drag holds an attachment of the plan on the screen and moves it to and fro for a while, one event
// every 1/60 s, and counts.
func (p *page) drag(d time.Duration) (got pace) {
	at := eval[[]float64](p, `(() => { const h = document.querySelector(".dw-handle-attach, .dw-handle-vehicle"); h.scrollIntoView({block: "center"}); const r = h.getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2] })()`)
	p.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMousePressed, at[0], at[1], chromedp.Button("left"), chromedp.ClickCount(1)))
	moves := func(d time.Duration) {
		tick := time.NewTicker(time.Second / 60)
		defer tick.Stop()
		for i, start := 0, time.Now(); time.Since(start) < d; i++ {
			<-tick.C
			x := i % 80
			if x > 40 {
				x = 80 - x
			}
			p.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMouseMoved, at[0]-float64(x), at[1]-float64(x)/4, chromedp.Button("left")))
		}
	}
	moves(d / 2) // until the browser has compiled what runs often
	eval[any](p, counter)
	moves(d)
	v := eval[[]float64](p, `(() => { const c = window.pace; const t = c.took.slice().sort((a, b) => a - b); return [(performance.now() - c.start) / 1000, c.frames, c.moves, c.answers.size, t[t.length >> 1], t[t.length - 1]] })()`)
	p.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMouseReleased, at[0], at[1], chromedp.Button("left"), chromedp.ClickCount(1)))
	return pace{v[0], v[1], v[2], v[3], v[4], v[5]}
}

// A drag over a plan of eight vehicles goes on being answered. How fast depends on the machine and on
// what else it does, so that the figures are printed; with COHOIST_PACE set they must keep 95 % of 60
// frames a second.
func TestThePaceOfADrag(t *testing.T) {
	for _, word := range []string{"Deck", "Lattice"} {
		p := open(t, desktop, "")
		p.example(word)
		if word == "Lattice" { // eight on rigid holds
			p.write("s-count", "8")
			eval[any](p, `document.getElementById("s-count").blur()`)
			p.settled()
		}
		if os.Getenv("COHOIST_PACE") != "" { // the program of the studies and the site's files come in after the page
			p.wait(`document.querySelector("#paper .qr") !== null`)
			time.Sleep(10 * time.Second)
		}
		got := p.drag(3 * time.Second)
		rate := got.Frames / got.Seconds
		t.Logf("%s: %.0f frames in %.2f s (%.1f a second), %.0f pointer events, %.0f different answers; an event takes %.1f ms (median), %.1f ms at most",
			word, got.Frames, got.Seconds, rate, got.Moves, got.Answers, got.Median, got.Most)
		if got.Answers < 10 {
			t.Errorf("%s: the answer does not follow the pointer", word)
		}
		if os.Getenv("COHOIST_PACE") != "" && rate < 0.95*60 {
			t.Errorf("%s: %.1f frames a second, wanted 57", word, rate)
		}
	}
}
