package drawing

import (
	"github.com/vugu/vugu"

	"cohoist/core/plan"
	"cohoist/core/report"
)

// View is the component: the sheet of elevation and plan, the turnable view, the key, and the
// drawing in words. It must stay the same instance from render to render, as vugu keeps a component
// at a fixed place: it remembers how the turnable view was turned and what is being dragged.
type View struct {
	Plan     plan.Plan
	Report   report.Report
	Selected string // id of the selected member, "" for none
	Units    Units

	// OnEdit is called while a handle moves (done = false) and once when it is let go (done = true).
	// Escape calls it with what was there before, done = true. Edit.Apply makes the new plan.
	OnEdit func(e Edit, done bool)
	// OnSelect is called with the member a click or a touched handle belongs to.
	OnSelect func(id string)

	scene   *Scene
	frame   Frame
	handles []Handle
	memory  keep
	drag    *drag  // a handle held by the pointer
	keys    *drag  // a handle moved by keys, as it stood before the first
	held    *Frame // kept while either lasts
	turn    turning
	words   bool // the drawing in words is open
}

// Build makes the picture.
func (v *View) Build(*vugu.BuildIn) *vugu.BuildOut {
	v.compose()
	fig := html("figure", attrs{"class", "dw", "aria-label", "Drawing of the lift"},
		html("div", attrs{"class", "dw-views"}, v.sheet(),
			html("div", attrs{"class", "dw-side"}, v.turnable(), v.key(), v.inWords())))
	return &vugu.BuildOut{Out: []*vugu.VGNode{fig}}
}

// compose brings scene, frame and handles up to date with the plan.
func (v *View) compose() {
	v.scene = newScene(v.Plan, v.Report, v.Selected, &v.memory)
	v.frame = fit(v.scene)
	if v.held != nil {
		if v.drag != nil || v.held.holds(v.scene) {
			v.frame = *v.held
		} else {
			v.held = &v.frame
		}
	}
	v.handles = v.scene.handles(v.frame)
}

// holds says that the scene still lies within the frame.
func (f Frame) holds(s *Scene) bool {
	b := s.bounds()
	lo, hi := f.elevation().At(b.lo), f.elevation().At(b.hi)
	if lo.X < 2 || hi.X > SheetWidth-2 || hi.Y < f.ElevTop || lo.Y > f.ElevBottom {
		return false
	}
	lo, hi = f.plan().At(b.lo), f.plan().At(b.hi)
	return hi.Y >= f.PlanTop-labelRoom/2 && lo.Y <= f.PlanBottom+labelRoom/2
}

// snaps are what the dragged handle has caught on.
func (v *View) snaps() []snap {
	if v.drag == nil {
		return nil
	}
	return v.drag.snaps
}

func (v *View) sheet() *vugu.VGNode {
	e, p := v.scene.Sheet(v.frame, v.Units, v.snaps())
	class := "dw-svg"
	if v.drag != nil {
		class += " dw-dragging"
	}
	g := svg("g", attrs{"class", "dw-handles"})
	for i, h := range v.handles {
		g.AppendChild(v.handle(i, h))
	}
	n := svg("svg", attrs{"class", class, "viewBox", "0 0 " + str(SheetWidth) + " " + str(v.frame.Height),
		"role", "group", "aria-label", "Elevation and plan, to scale", "aria-describedby", "dw-words"},
		group(e), group(p), g)
	on(n, "pointerdown", v.grab)
	on(n, "keydown", v.keyDown)
	on(n, "keyup", v.keyUp)
	on(n, "focusout", v.focusOut)
	on(n, "click", v.pick)
	if v.drag != nil { // only then: each event draws the page anew
		on(n, "pointermove", v.move)
		on(n, "pointerup", v.release)
		on(n, "pointercancel", v.abandon)
	}
	return html("div", attrs{"class", "dw-sheet"}, n)
}

// Radius of a handle, in screen units; on touch screens the style sheet adds a wide unseen rim.
const handleRadius = "12"

func (v *View) handle(i int, h Handle) *vugu.VGNode {
	q := v.scene.Turn.T().Mul(h.Scene)
	now := q[0]
	if h.Kind == KindVehicle {
		now = length(v.scene.Craft[h.Craft])
	}
	return svg("circle", attrs{"class", "dw-handle dw-handle-" + h.Kind, "cx", str(h.At.X), "cy", str(h.At.Y), "r", handleRadius,
		"tabindex", "0", "role", "slider", "aria-label", v.scene.label(h), "aria-valuetext", v.scene.where(h, v.Units),
		"aria-valuenow", str(now), "aria-valuemin", "-1000", "aria-valuemax", "1000", "data-handle", whole(i)})
}

func (v *View) turnable() *vugu.VGNode {
	v.turn.begin()
	l := v.scene.Turnable(v.frame, v.turn.azimuth, v.turn.height, v.Units)
	size := str(TurnSize)
	n := svg("svg", attrs{"class", "dw-svg dw-turnable", "viewBox", "0 0 " + size + " " + size, "tabindex", "0",
		"role", "slider", "aria-label", "View from any side; arrow keys turn it", "aria-valuetext", v.turn.text(),
		"aria-valuenow", str(v.turn.azimuth), "aria-valuemin", "-180", "aria-valuemax", "180"}, group(l))
	on(n, "pointerdown", v.turnGrab)
	on(n, "keydown", v.turnKey)
	if v.turn.held {
		on(n, "pointermove", v.turnMove)
		on(n, "pointerup", v.turnRelease)
		on(n, "pointercancel", v.turnRelease)
	}
	bar := html("div", attrs{"class", "dw-buttons", "role", "group", "aria-label", "Turn the view"})
	for _, b := range turnButtons {
		k := b.key
		bar.AppendChild(on(html("button", attrs{"type", "button", "aria-label", b.label, "title", b.label}, text(b.sign)), "click",
			func(vugu.DOMEvent) { v.turn.press(k, turnStep) }))
	}
	return html("div", attrs{"class", "dw-turn"}, n, bar)
}
