package drawing

import (
	"math"
	"strconv"

	"github.com/vugu/vugu"
	"github.com/vugu/vugu/js"
)

// The browser's events, made into steps of drag and turning.

// place is where the pointer is in the viewBox of the element that handles the event.
func place(e vugu.DOMEvent, width float64) Point {
	return within(e.JSEventCurrentTarget(), e.PropFloat64("clientX"), e.PropFloat64("clientY"), width)
}

// within is a place of the window in the viewBox of an element.
func within(el js.Value, x, y, width float64) Point {
	r := el.Call("getBoundingClientRect")
	w := r.Get("width").Float()
	if !(w > 0) {
		return Point{math.Inf(1), math.Inf(1)}
	}
	k := width / w
	return Point{(x - r.Get("left").Float()) * k, (y - r.Get("top").Float()) * k}
}

// follow captures the pointer and calls f for every move until it is let go. The listener is the browser's
// own: vugu's copies all that there is to know of an event and its element, which takes longer than to
// answer the move.
func (v *View) follow(e vugu.DOMEvent, width float64, f func(at Point, free bool)) {
	el, env := e.JSEventCurrentTarget(), e.EventEnv()
	el.Call("setPointerCapture", e.PropFloat64("pointerId"))
	v.stop()
	moved := js.FuncOf(func(_ js.Value, args []js.Value) any {
		env.Lock()
		defer env.UnlockRender()
		defer func() {
			if r := recover(); r != nil && v.OnPanic != nil {
				v.OnPanic(r)
			}
		}()
		m := args[0]
		f(within(el, m.Get("clientX").Float(), m.Get("clientY").Float(), width), m.Get("altKey").Bool())
		return nil
	})
	el.Call("addEventListener", "pointermove", moved)
	v.unfollow = func() {
		el.Call("removeEventListener", "pointermove", moved)
		moved.Release()
	}
}

// stop ends following the pointer.
func (v *View) stop() {
	if v.unfollow != nil {
		v.unfollow()
		v.unfollow = nil
	}
}

// ours says that a pointer event is the main button of the first finger or the mouse.
func ours(e vugu.DOMEvent) bool { return e.PropBool("isPrimary") && e.PropFloat64("button") == 0 }

// Reach of the pointer about a handle, in screen units.
const (
	reachMouse = 13.0
	reachTouch = 24.0
)

func (v *View) grab(e vugu.DOMEvent) {
	reach := reachMouse
	if e.PropString("pointerType") == "touch" {
		reach = reachTouch
	}
	if v.drag != nil || !ours(e) {
		return
	}
	if v.begin(place(e, SheetWidth), reach) {
		v.follow(e, SheetWidth, v.moveTo)
	}
}

// begin takes hold of the handle at a point of the sheet, if there is one.
func (v *View) begin(at Point, reach float64) bool {
	h, ok := v.scene.nearest(v.frame, v.handles, at, reach)
	if !ok {
		return false
	}
	v.endKeys(true)
	v.drag = v.scene.hold(v.frame, h, at)
	f := v.frame
	v.held = &f
	if h.ID != "" && h.ID != v.Selected && v.OnSelect != nil {
		v.OnSelect(h.ID)
	}
	return true
}

// moveTo moves the held handle. The first few units of way are a click's, not a drag's.
func (v *View) moveTo(at Point, free bool) {
	d := v.drag
	if d == nil || !d.moved && math.Hypot(at.X-d.from.X, at.Y-d.from.Y) < 3 || !drawable(at) {
		return
	}
	before := d.latest
	if edit := d.to(at, free); edit != before {
		v.emit(edit, false)
	}
}

func (v *View) release(vugu.DOMEvent) { v.stop(); v.let(false) }
func (v *View) abandon(vugu.DOMEvent) { v.stop(); v.let(true) }

// let ends a drag: with what it came to, or with what was there before.
func (v *View) let(back bool) {
	d := v.drag
	v.drag, v.held = nil, nil
	if d == nil || !d.moved {
		return
	}
	if back {
		v.emit(d.start(), true)
		return
	}
	v.emit(d.latest, true)
}

func (v *View) emit(e Edit, done bool) {
	if v.OnEdit != nil {
		v.OnEdit(e, done)
	}
}

// pick selects the vehicle under a click.
func (v *View) pick(e vugu.DOMEvent) { v.pickAt(place(e, SheetWidth)) }

func (v *View) pickAt(at Point) {
	if id, ok := v.scene.under(at, v.frame.elevation(), v.frame.plan()); ok && id != v.Selected && v.OnSelect != nil {
		v.OnSelect(id)
	}
}

// under returns the vehicle drawn at a point, the closest to its middle.
func (s *Scene) under(at Point, cameras ...Camera) (id string, ok bool) {
	best := math.Inf(1)
	for _, c := range cameras {
		for _, v := range s.Craft {
			q := c.At(v.Centre)
			if d := math.Hypot(q.X-at.X, q.Y-at.Y); d < best && d < math.Max(v.reach()*c.Scale, 12) {
				best, id, ok = d, v.ID, true
			}
		}
	}
	return id, ok
}

func (v *View) keyDown(e vugu.DOMEvent) {
	step := stepPlain
	switch {
	case e.PropBool("shiftKey"):
		step = stepShift
	case e.PropBool("altKey"):
		step = stepAlt
	}
	if e.PropBool("ctrlKey") || e.PropBool("metaKey") {
		return
	}
	i, err := strconv.Atoi(e.JSEventTarget().Call("getAttribute", "data-handle").String())
	if err != nil {
		return
	}
	if v.press(i, e.PropString("key"), step) {
		e.PreventDefault()
	}
}

// press is a key on a focused handle.
func (v *View) press(i int, key string, step float64) bool {
	if key == "Escape" {
		if v.drag == nil && v.keys == nil {
			return false
		}
		if v.drag != nil {
			v.let(true)
		}
		v.endKeys(false)
		return true
	}
	if i < 0 || i >= len(v.handles) || v.drag != nil {
		return false
	}
	if v.OnKey != nil {
		v.Plan, v.Report = v.OnKey()
		if v.compose(); i >= len(v.handles) {
			return false
		}
	}
	h := v.handles[i]
	d := v.scene.hold(v.frame, h, h.At)
	edit, ok := d.nudge(key, step)
	if !ok {
		return false
	}
	if v.keys == nil {
		v.keys = v.scene.hold(v.frame, h, h.At)
		f := v.frame
		v.held = &f
	}
	v.keys.latest, v.keys.moved = edit, true
	if h.ID != "" && h.ID != v.Selected && v.OnSelect != nil {
		v.OnSelect(h.ID)
	}
	v.emit(edit, false)
	return true
}

func (v *View) keyUp(e vugu.DOMEvent) {
	switch e.PropString("key") {
	case "ArrowLeft", "ArrowRight", "ArrowUp", "ArrowDown":
		v.keyDone()
	}
}

// keyDone makes the presses so far one edit. The picture stays still until the focus leaves.
func (v *View) keyDone() {
	if k := v.keys; k != nil {
		v.keys = nil
		v.emit(k.latest, true)
	}
}

func (v *View) focusOut(vugu.DOMEvent) {
	v.endKeys(true)
	if v.drag == nil {
		v.held = nil
	}
}

// endKeys ends moving by keys: kept, or put back to what was there before the first.
func (v *View) endKeys(keep bool) {
	k := v.keys
	v.keys = nil
	switch {
	case k == nil:
	case keep:
		v.emit(k.latest, true)
	default:
		v.emit(k.start(), true)
	}
}

func (v *View) turnGrab(e vugu.DOMEvent) {
	if ours(e) {
		v.turn.grab(place(e, TurnSize))
		v.follow(e, TurnSize, func(at Point, _ bool) { v.turn.to(at) })
	}
}

func (v *View) turnRelease(e vugu.DOMEvent) {
	if v.turn.held && !v.turn.moved {
		c := v.frame.turned(v.turn.azimuth, v.turn.height)
		if id, ok := v.scene.under(v.turn.from, c); ok && id != v.Selected && v.OnSelect != nil {
			v.OnSelect(id)
		}
	}
	v.turn.held = false
	v.stop()
}

func (v *View) turnKey(e vugu.DOMEvent) {
	step := turnStep / 3
	if e.PropBool("shiftKey") {
		step = turnStep
	}
	if v.turn.press(e.PropString("key"), step) {
		e.PreventDefault()
	}
}
