package drawing

import (
	"github.com/vugu/vugu"

	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/ui/figure"
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
	// OnKey gives the newest plan and report, which may not be drawn yet: keys can come faster than pictures.
	OnKey func() (plan.Plan, report.Report)
	// OnSelect is called with the member a click or a touched handle belongs to.
	OnSelect func(id string)
	// OnPanic is called with what a move of the pointer panicked with.
	OnPanic func(any)

	scene   *Scene
	frame   Frame
	handles []Handle
	memory  keep
	drag    *drag  // a handle held by the pointer
	keys    *drag  // a handle moved by keys, as it stood before the first
	held    *Frame // kept while either lasts
	turn    turning
	words   bool // the drawing in words is open

	unfollow func() // ends following the pointer
}

// Build makes the picture.
func (v *View) Build(*vugu.BuildIn) *vugu.BuildOut {
	v.compose()
	fig := figure.HTML("figure", figure.Attrs{"class", "dw", "aria-label", "Drawing of the lift"},
		figure.HTML("div", figure.Attrs{"class", "dw-views"}, v.sheet(),
			figure.HTML("div", figure.Attrs{"class", "dw-side"}, v.turnable(), v.key(), v.hint(), v.inWords())))
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
			f := v.frame
			v.held = &f
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
	g := figure.SVG("g", figure.Attrs{"class", "dw-handles"})
	for i, h := range v.handles {
		g.AppendChild(v.handle(i, h))
	}
	// A finger on a handle must not scroll the page. The style sheet says so too (touch-action), which
	// browsers do not all heed on shapes inside an SVG.
	figure.On(g, "touchstart", func(e vugu.DOMEvent) { e.PreventDefault() })
	n := figure.SVG("svg", figure.Attrs{"class", class, "viewBox", "0 0 " + figure.Num(SheetWidth) + " " + figure.Num(v.frame.Height),
		"role", "group", "aria-label", "Elevation and plan, to scale", "aria-describedby", "dw-words"},
		group(e), group(p), g)
	figure.On(n, "pointerdown", v.grab)
	figure.On(n, "keydown", v.keyDown)
	figure.On(n, "keyup", v.keyUp)
	figure.On(n, "focusout", v.focusOut)
	figure.On(n, "click", v.pick)
	if v.drag != nil {
		figure.On(n, "pointerup", v.release)
		figure.On(n, "pointercancel", v.abandon)
	}
	return figure.HTML("div", figure.Attrs{"class", "dw-sheet"}, n)
}

// Radius of a handle, in screen units; on touch screens the style sheet adds a wide unseen rim.
const handleRadius = "12"

func (v *View) handle(i int, h Handle) *vugu.VGNode {
	q := v.scene.Turn.T().Mul(h.Scene)
	now := q[0]
	if h.Kind == KindVehicle {
		now = length(v.scene.Craft[h.Craft])
	}
	return figure.SVG("circle", figure.Attrs{"class", "dw-handle dw-handle-" + h.Kind, "cx", figure.Num(h.At.X), "cy", figure.Num(h.At.Y), "r", handleRadius,
		"tabindex", "0", "role", "slider", "aria-label", v.scene.label(h), "aria-valuetext", v.scene.where(h, v.Units),
		"aria-valuenow", figure.Num(now), "aria-valuemin", "-1000", "aria-valuemax", "1000", "data-handle", whole(i)})
}

func (v *View) turnable() *vugu.VGNode {
	v.turn.begin()
	l := v.scene.Turnable(v.frame, v.turn.azimuth, v.turn.height, v.Units)
	size := figure.Num(TurnSize)
	n := figure.SVG("svg", figure.Attrs{"class", "dw-svg dw-turnable", "viewBox", "0 0 " + size + " " + size, "tabindex", "0",
		"role", "slider", "aria-label", "View from any side; arrow keys turn it", "aria-valuetext", v.turn.text(),
		"aria-valuenow", figure.Num(v.turn.azimuth), "aria-valuemin", "-180", "aria-valuemax", "180"}, group(l))
	figure.On(n, "pointerdown", v.turnGrab)
	figure.On(n, "keydown", v.turnKey)
	if v.turn.held {
		figure.On(n, "pointerup", v.turnRelease)
		figure.On(n, "pointercancel", v.turnRelease)
	}
	bar := figure.HTML("div", figure.Attrs{"class", "dw-buttons", "role", "group", "aria-label", "Turn the view"})
	for _, b := range turnButtons {
		k := b.key
		bar.AppendChild(figure.On(figure.HTML("button", figure.Attrs{"type", "button", "aria-label", b.label, "title", b.label}, figure.Text(b.sign)), "click",
			func(vugu.DOMEvent) { v.turn.press(k, turnStep) }))
	}
	return figure.HTML("div", figure.Attrs{"class", "dw-turn"}, n, bar)
}
