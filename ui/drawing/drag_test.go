package drawing

import (
	"math"
	"testing"

	"cohoist/core/vec"
)

// A board is a view whose edits are made to its plan at once, as the page does.
type board struct {
	*View
	edits []Edit
	done  int
}

func newBoard(f *fixture) *board {
	b := &board{View: f.view()}
	b.OnEdit = func(e Edit, done bool) {
		b.edits = append(b.edits, e)
		if done {
			b.done++
		}
		b.Plan = e.Apply(b.Plan)
		if e.Kind == KindCOM {
			b.Report.Payload.COM = e.To
		}
		if e.Kind != KindCOM { // the balance moves the vehicle with its attachment, cable and force kept
			m := b.Plan.Team[e.Index]
			v := b.Report.Vehicles[e.Index]
			v.Position = m.Attach
			if m.Hold.Kind == "cable" {
				v.Position = m.Attach.Add(v.Force.Unit().Scale(m.Hold.Length))
			}
			b.Report.Vehicles = append(b.Report.Vehicles[:0:0], b.Report.Vehicles...)
			b.Report.Vehicles[e.Index] = v
		}
		b.compose()
	}
	b.OnSelect = func(id string) { b.Selected = id; b.compose() }
	b.compose()
	return b
}

func (b *board) handle(t *testing.T, kind, view, id string) (int, Handle) {
	t.Helper()
	for i, h := range b.handles {
		if h.Kind == kind && h.View == view && h.ID == id {
			return i, h
		}
	}
	t.Fatalf("no handle %s of %q in the %s", kind, id, view)
	return 0, Handle{}
}

func close3(a, b vec.V3, tol float64) bool { return a.Sub(b).Norm() <= tol }

// Dragging with Alt held is free of catching: the point goes where the pointer does, to the millimetre.
func TestDragFollowsThePointer(t *testing.T) {
	b := newBoard(ring(6, 0.3))
	_, h := b.handle(t, KindAttach, inPlan, "A")
	from := b.Plan.Team[0].Attach
	if !b.begin(h.At, reachMouse) || b.Selected != "A" {
		t.Fatalf("handle not taken, or A not selected but %q", b.Selected)
	}
	s := b.frame.Scale
	b.moveTo(Point{h.At.X + 30, h.At.Y + 12}, true)
	want := from.Add(vec.V3{30 / s, -12 / s, 0})
	if got := b.Plan.Team[0].Attach; math.Abs(got[0]-want[0]) > 0.0005+1e-9 || math.Abs(got[1]-want[1]) > 0.0005+1e-9 || got[2] != from[2] {
		t.Errorf("attachment at %v, want %v to half a millimetre and z as it was", got, want)
	}
	if b.done != 0 {
		t.Error("done before the release")
	}
	frame := b.frame
	b.moveTo(Point{h.At.X + 900, h.At.Y}, true)
	if b.frame != frame {
		t.Error("the picture jumped while dragging")
	}
	b.let(false)
	if b.done != 1 || b.held != nil {
		t.Errorf("done %d times, want once", b.done)
	}
	if b.compose(); b.frame == frame {
		t.Error("the picture does not fit itself to the scene after the release")
	}
}

// A click on a handle that moves by less than three units is no edit.
func TestClickIsNoEdit(t *testing.T) {
	b := newBoard(beam())
	_, h := b.handle(t, KindAttach, inElevation, "B")
	b.begin(h.At, reachMouse)
	b.moveTo(Point{h.At.X + 2, h.At.Y}, false)
	b.let(false)
	if len(b.edits) != 0 {
		t.Errorf("edits %v", b.edits)
	}
}

func TestDragCatches(t *testing.T) {
	b := newBoard(beam())
	_, h := b.handle(t, KindAttach, inPlan, "A")
	b.begin(h.At, reachMouse)
	edge := b.frame.plan().At(vec.V3{1.2, 0.15, 0}) // the corner of the beam
	b.moveTo(Point{edge.X - 3, edge.Y + 2}, false)
	if got := b.Plan.Team[0].Attach; !close3(got, vec.V3{1.2, 0.15, 0.03}, 1e-12) {
		t.Errorf("caught at %v, want the corner", got)
	}
	if len(b.snaps()) != 2 {
		t.Errorf("%d lines shown, want two", len(b.snaps()))
	}
	b.moveTo(Point{edge.X - 3, edge.Y + 2}, true)
	if got := b.Plan.Team[0].Attach; close3(got, vec.V3{1.2, 0.15, 0.03}, 0.01) || len(b.snaps()) != 0 {
		t.Errorf("caught at %v with Alt held", got)
	}
	b.moveTo(Point{edge.X - 60, edge.Y}, false)
	g := b.frame.grid()
	if x := b.Plan.Team[0].Attach[0] / g; math.Abs(x-math.Round(x)) > 1e-9 {
		t.Errorf("x is %g steps of the grid", x)
	}
}

func TestEscapePutsBack(t *testing.T) {
	for _, kind := range []string{KindAttach, KindVehicle, KindCOM} {
		b := newBoard(beam())
		id := "A"
		if kind == KindCOM {
			id = ""
		}
		i, h := b.handle(t, kind, inElevation, id)
		before := b.Plan
		com := b.Report.Payload.COM
		b.begin(h.At, reachMouse)
		b.moveTo(Point{h.At.X + 40, h.At.Y - 25}, false)
		if !b.press(i, "Escape", stepPlain) {
			t.Fatal("Escape not taken")
		}
		if b.done != 1 || b.drag != nil {
			t.Errorf("%s: done %d times", kind, b.done)
		}
		if m, w := b.Plan.Team[0], before.Team[0]; m.Attach != w.Attach || math.Abs(m.Hold.Length-w.Hold.Length) > 1e-12 {
			t.Errorf("%s: %+v is not put back to %+v", kind, m, w)
		}
		if kind == KindCOM && !close3(*b.Plan.Payload.COM, com, 1e-15) {
			t.Errorf("centre of mass at %v, want %v", *b.Plan.Payload.COM, com)
		}
	}
}

// A vehicle on a cable: up and down is cable, sideways is attachment, and it stays under the pointer
// on an upright cable.
func TestVehicleDrag(t *testing.T) {
	b := newBoard(beam())
	_, h := b.handle(t, KindVehicle, inElevation, "A")
	b.begin(h.At, reachMouse)
	at := Point{h.At.X - 41, h.At.Y + 57}
	b.moveTo(at, true)
	if m := b.Plan.Team[0]; m.Attach[1] != 0 || m.Attach[2] != 0.03 || m.Hold.Length >= 3 {
		t.Errorf("member is %+v", m)
	}
	q := b.frame.elevation().At(b.scene.Craft[0].Centre)
	if d := math.Hypot(q.X-at.X, q.Y-at.Y); d > 0.0008*b.frame.Scale {
		t.Errorf("the vehicle is %g units from the pointer", d)
	}
	b.moveTo(Point{at.X, h.At.Y + 5000}, true)
	if l := b.Plan.Team[0].Hold.Length; !(l > 0) {
		t.Errorf("cable %g m", l)
	}
}

// In a team that leans the pointer still holds the point: the turn is undone.
func TestDragOfALeaningTeam(t *testing.T) {
	b := newBoard(windy())
	_, h := b.handle(t, KindAttach, inElevation, "SE")
	b.begin(h.At, reachMouse)
	at := Point{h.At.X - 33, h.At.Y - 21}
	b.moveTo(at, true)
	q := b.frame.elevation().At(b.scene.Craft[3].Attach)
	if d := math.Hypot(q.X-at.X, q.Y-at.Y); d > 0.0009*b.frame.Scale {
		t.Errorf("the hold is %g units from the pointer", d)
	}
}

func TestKeys(t *testing.T) {
	b := newBoard(beam())
	i, _ := b.handle(t, KindAttach, inPlan, "A")
	for _, k := range []struct {
		key  string
		step float64
		want vec.V3
	}{
		{"ArrowRight", stepPlain, vec.V3{1.11, 0, 0.03}},
		{"ArrowUp", stepShift, vec.V3{1.11, 0.1, 0.03}},
		{"ArrowLeft", stepShift, vec.V3{1.1, 0.1, 0.03}}, // to the next tenth
		{"ArrowDown", stepAlt, vec.V3{1.1, 0.099, 0.03}},
	} {
		if !b.press(i, k.key, k.step) {
			t.Fatalf("%s not taken", k.key)
		}
		if got := b.Plan.Team[0].Attach; got != k.want { // exact: the numbers that are typed
			t.Errorf("after %s: %v, want %v", k.key, got, k.want)
		}
	}
	if b.done != 0 {
		t.Error("done while the keys are down")
	}
	b.keyDone()
	if b.done != 1 || b.edits[len(b.edits)-1].To != (vec.V3{1.1, 0.099, 0.03}) {
		t.Errorf("done %d times with %+v", b.done, b.edits[len(b.edits)-1])
	}
	if b.press(i, "a", stepPlain) || b.press(i, "Escape", stepPlain) || b.press(99, "ArrowUp", stepPlain) {
		t.Error("a key with nothing to do was taken")
	}
	j, _ := b.handle(t, KindVehicle, inElevation, "B")
	b.press(j, "ArrowDown", stepShift)
	if m := b.Plan.Team[1]; math.Abs(m.Hold.Length-2.9) > 1e-12 || m.Attach != (vec.V3{-1.1, 0, 0.03}) {
		t.Errorf("member B is %+v", m)
	}
	b.press(j, "ArrowLeft", stepPlain)
	b.press(j, "Escape", stepPlain)
	if m := b.Plan.Team[1]; math.Abs(m.Hold.Length-3) > 1e-12 || m.Attach != (vec.V3{-1.1, 0, 0.03}) {
		t.Errorf("Escape leaves member B at %+v", m)
	}
}

// The plan an edit is made to stays as it was.
func TestApplyLeavesThePlan(t *testing.T) {
	f := beam()
	was := f.plan.Team[0]
	e := Edit{Kind: KindVehicle, ID: "A", Index: 0, Attach: vec.V3{1, 0, 0}, Length: 2}
	if got := e.Apply(f.plan).Team[0]; got.Hold.Length != 2 || got.Attach != (vec.V3{1, 0, 0}) {
		t.Errorf("got %+v", got)
	}
	if f.plan.Team[0].Attach != was.Attach || f.plan.Team[0].Hold.Length != was.Hold.Length {
		t.Error("the plan was changed")
	}
	e.ID = "no longer there"
	if got := e.Apply(f.plan).Team[0]; got.Attach != was.Attach {
		t.Error("an edit of another member was made to A")
	}
}

func TestNearestPrefersTheSelected(t *testing.T) {
	f := ring(6, 0.3)
	b := newBoard(f)
	_, e := b.handle(t, KindVehicle, inElevation, "E")
	got, _ := b.scene.nearest(b.frame, b.handles, e.At, reachMouse)
	if got.ID != "E" { // B flies straight behind E
		t.Errorf("took %s, want the one closer to the eye", got.ID)
	}
	b.OnSelect("B")
	if got, _ = b.scene.nearest(b.frame, b.handles, e.At, reachMouse); got.ID != "B" {
		t.Errorf("took %s, want the selected one", got.ID)
	}
	if _, ok := b.scene.nearest(b.frame, b.handles, Point{1, 1}, reachMouse); ok {
		t.Error("took a handle in the empty corner")
	}
}
