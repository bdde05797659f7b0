//go:build !js

package browsertest

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
)

// spot is the middle of an element, in pixels of the window.
type spot struct{ X, Y float64 }

// handle scrolls a handle of the drawing into view and returns where it is. n counts those whose
// label starts so: first the elevation's, then the plan's.
func (p *page) handle(label string, n int) spot {
	p.t.Helper()
	return eval[spot](p, fmt.Sprintf(`(()=>{const e=[...document.querySelectorAll(".dw-handle")].filter(e=>e.getAttribute("aria-label").startsWith(%q))[%d];
		e.scrollIntoView({block:"center"});const r=e.getBoundingClientRect();return{X:r.x+r.width/2,Y:r.y+r.height/2}})()`, label, n))
}

// still is where a handle is, without scrolling.
func (p *page) still(label string, n int) spot {
	p.t.Helper()
	return eval[spot](p, fmt.Sprintf(`(()=>{const e=[...document.querySelectorAll(".dw-handle")].filter(e=>e.getAttribute("aria-label").startsWith(%q))[%d];
		const r=e.getBoundingClientRect();return{X:r.x+r.width/2,Y:r.y+r.height/2}})()`, label, n))
}

// where is what a handle says of where it stands.
func (p *page) where(label string, n int) string {
	p.t.Helper()
	return eval[string](p, fmt.Sprintf(`[...document.querySelectorAll(".dw-handle")].filter(e=>e.getAttribute("aria-label").startsWith(%q))[%d].getAttribute("aria-valuetext")`, label, n))
}

func mouse(kind input.DispatchMouseEventType, at spot, more ...chromedp.MouseOption) chromedp.Action[chromedp.Void] {
	return chromedp.MouseEvent(kind, at.X, at.Y, append([]chromedp.MouseOption{chromedp.ButtonLeft}, more...)...)
}

// An attachment is dragged by the mouse: words, verdict and picture follow while it moves, the handle
// stays under the pointer, and one step back undoes the whole drag.
func TestDrawingDrag(t *testing.T) {
	p := open(t, desktop, "")
	const name = "attachment of A"
	from, before, words := p.handle(name, 1), p.where(name, 1), p.text("dw-words")
	p.do(mouse(input.DispatchMouseEventTypeMousePressed, from))
	var to spot
	for i := range 6 {
		to = spot{from.X - 6*float64(i+1), from.Y - 4*float64(i+1)}
		p.do(mouse(input.DispatchMouseEventTypeMouseMoved, to))
	}
	p.drawn()
	p.wait(`document.getElementById("dw-words").textContent !== ` + fmt.Sprintf("%q", words))
	if now := p.where(name, 1); now == before {
		t.Errorf("still at %s while dragging", now)
	}
	if at := p.still(name, 1); math.Hypot(at.X-to.X, at.Y-to.Y) > 9 { // it may catch on a line within five units
		t.Errorf("the handle is at %v, the pointer at %v", at, to)
	}
	p.do(mouse(input.DispatchMouseEventTypeMouseReleased, to))
	after := p.where(name, 1)
	p.ctrl("z")
	p.wait(fmt.Sprintf(`document.getElementById("dw-words").textContent === %q`, words))
	if now := p.where(name, 1); now != before || after == before {
		t.Errorf("from %s to %s, and undone to %s", before, after, now)
	}
}

// Escape during a drag leaves the plan as it was.
func TestDrawingEscape(t *testing.T) {
	p := open(t, desktop, "")
	const name = "attachment of A"
	from, before := p.handle(name, 1), p.where(name, 1)
	p.do(mouse(input.DispatchMouseEventTypeMousePressed, from), mouse(input.DispatchMouseEventTypeMouseMoved, spot{from.X - 30, from.Y + 20}), mouse(input.DispatchMouseEventTypeMouseMoved, spot{from.X - 40, from.Y + 26}))
	p.drawn()
	if p.where(name, 1) == before {
		t.Error("the drag does nothing")
	}
	p.do(chromedp.KeyEvent("\u001b"))
	p.do(mouse(input.DispatchMouseEventTypeMouseMoved, spot{from.X - 60, from.Y}), mouse(input.DispatchMouseEventTypeMouseReleased, spot{from.X - 60, from.Y}))
	p.drawn()
	if now := p.where(name, 1); now != before {
		t.Errorf("at %s after Escape, was at %s", now, before)
	}
}

// Arrow keys move the focused handle, which keeps the focus, however fast they come.
func TestDrawingKeys(t *testing.T) {
	p := open(t, desktop, "")
	const name = "attachment of A"
	before := p.where(name, 1)
	eval[any](p, `[...document.querySelectorAll(".dw-handle")].filter(e=>e.getAttribute("aria-label").startsWith("attachment of A"))[1].focus()`)
	for _, key := range []string{"ArrowUp", "ArrowRight"} {
		for _, kind := range []string{"keydown", "keyup"} {
			eval[any](p, fmt.Sprintf(`document.activeElement.dispatchEvent(new KeyboardEvent(%q,{key:%q,bubbles:true,cancelable:true}))`, kind, key))
		}
	}
	p.drawn()
	now := p.where(name, 1)
	if now == before || !strings.Contains(now, "x 1.01\u00a0m") || !strings.Contains(now, "y 0.01\u00a0m") {
		t.Errorf("from %s to %s, want y 0.01 m", before, now)
	}
	if l := eval[string](p, `document.activeElement.getAttribute("aria-label")||""`); !strings.HasPrefix(l, name) {
		t.Errorf("the focus is on %q", l)
	}
}

// Dragging its background and its buttons turn the turnable view, and nothing else.
func TestDrawingTurns(t *testing.T) {
	p := open(t, desktop, "")
	const look = `document.querySelector(".dw-turnable").getAttribute("aria-valuetext")`
	first := eval[string](p, look)
	at := eval[spot](p, `(()=>{const e=document.querySelector(".dw-turnable");e.scrollIntoView({block:"center"});const r=e.getBoundingClientRect();return{X:r.x+20,Y:r.y+r.height/2}})()`)
	p.do(mouse(input.DispatchMouseEventTypeMousePressed, at), mouse(input.DispatchMouseEventTypeMouseMoved, spot{at.X + 60, at.Y + 10}), mouse(input.DispatchMouseEventTypeMouseMoved, spot{at.X + 90, at.Y + 20}),
		mouse(input.DispatchMouseEventTypeMouseReleased, spot{at.X + 90, at.Y + 20}))
	p.drawn()
	second := eval[string](p, look)
	p.do(mouse(input.DispatchMouseEventTypeMouseMoved, at))
	p.drawn()
	if third := eval[string](p, look); second == first || third != second {
		t.Errorf("turned from %q to %q, and after the release to %q", first, second, third)
	}
	eval[any](p, `[...document.querySelectorAll(".dw-buttons button")].at(-1).click()`)
	p.drawn()
	if again := eval[string](p, look); again != first {
		t.Errorf("put back to %q, was %q", again, first)
	}
}

// A finger drags a handle on a phone without the page scrolling away under it.
func TestDrawingTouch(t *testing.T) {
	p := open(t, look{width: 390, height: 844, phone: true}, "")
	const name = "attachment of A"
	from, before := p.handle(name, 1), p.where(name, 1)
	touch := func(kind input.DispatchTouchEventType, at ...spot) {
		points := []*input.TouchPoint{}
		for _, q := range at {
			points = append(points, &input.TouchPoint{X: q.X, Y: q.Y})
		}
		p.do(func(ctx context.Context, _ *chromedp.Target) (chromedp.Void, error) {
			_, err := chromedp.Call(ctx, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: kind, TouchPoints: points})
			return chromedp.Void{}, err
		})
	}
	touch(input.DispatchTouchEventTypeTouchStart, from)
	for i := range 5 {
		touch(input.DispatchTouchEventTypeTouchMove, spot{from.X - 5*float64(i+1), from.Y - 8*float64(i+1)})
	}
	p.drawn()
	finger := spot{from.X - 25, from.Y - 40}
	if at := p.still(name, 1); math.Hypot(at.X-finger.X, at.Y-finger.Y) > 9 {
		t.Errorf("the handle is at %v, the finger at %v", at, finger)
	}
	touch(input.DispatchTouchEventTypeTouchEnd)
	p.drawn()
	if now := p.where(name, 1); now == before {
		t.Errorf("still at %s", now)
	}
	if r := eval[float64](p, `(()=>{const e=document.querySelector(".dw-handle"),r=e.getBoundingClientRect(),s=parseFloat(getComputedStyle(e).strokeWidth)*r.width/24;return Math.min(r.width,r.height)+(r.width>30?0:s)})()`); r < 44 {
		t.Errorf("a handle is %g pixels wide for a finger, want 44", r)
	}
}
