package drawing

import (
	"math"

	"cohoist/core/vec"
)

// Kinds of handles and edits.
const (
	KindAttach  = "attach"  // a member's attachment; for a rigid hold the vehicle itself
	KindVehicle = "vehicle" // a vehicle on a cable
	KindCOM     = "com"     // the payload's centre of mass
)

// Views that have handles.
const (
	inElevation = "elevation"
	inPlan      = "plan"
)

// Handle is a point of the scene that can be moved.
type Handle struct {
	Kind  string
	View  string
	Craft int    // index into Scene.Craft, −1 for the centre of mass
	ID    string // of the member
	Scene vec.V3
	At    Point
}

// Vehicles up to which all have handles; in a larger team only the selected one has.
const handled = 24

// handles lists the handles of both views, in an order that depends on the plan only.
func (s *Scene) handles(f Frame) []Handle {
	var out []Handle
	for _, view := range [2]string{inElevation, inPlan} {
		c := f.camera(view)
		add := func(kind string, i int, id string, at vec.V3) {
			if q := c.At(at); drawable(q) {
				out = append(out, Handle{kind, view, i, id, at, q})
			}
		}
		if s.HasCOM {
			add(KindCOM, -1, "", s.COM)
		}
		for i, v := range s.Craft {
			if len(s.Craft) > handled && i != s.Selected {
				continue
			}
			if v.Cable && view == inElevation {
				add(KindVehicle, i, v.ID, v.Centre)
			}
			add(KindAttach, i, v.ID, v.Attach)
		}
	}
	return out
}

func (f Frame) camera(view string) Camera {
	if view == inPlan {
		return f.plan()
	}
	return f.elevation()
}

// nearest returns the handle closest to a point of the sheet, within reach screen units. Of handles
// that lie together the selected vehicle's wins, then the one closer to the eye.
func (s *Scene) nearest(f Frame, list []Handle, at Point, reach float64) (Handle, bool) {
	best, found := math.Inf(1), -1
	for i, h := range list {
		d := math.Hypot(h.At.X-at.X, h.At.Y-at.Y)
		if d > reach {
			continue
		}
		if h.Craft >= 0 && h.Craft == s.Selected {
			d -= 3
		}
		if h.Kind == KindAttach {
			d -= 1
		}
		d -= 1e-3 * math.Tanh(f.camera(h.View).Depth(h.Scene))
		if d < best {
			best, found = d, i
		}
	}
	if found < 0 {
		return Handle{}, false
	}
	return list[found], true
}

// Label says what a handle is, where it stands in payload axes, and how to move it.
func (s *Scene) label(h Handle) string {
	what := "centre of mass of the payload"
	switch h.Kind {
	case KindAttach:
		what = "attachment of " + h.ID
		if !s.Craft[h.Craft].Cable {
			what = "rigid hold of " + h.ID
		}
	case KindVehicle:
		what = "vehicle " + h.ID + " on its cable"
	}
	return what + "; arrow keys move it"
}

// where says where a handle stands, in the axes of its view.
func (s *Scene) where(h Handle, u Units) string {
	q := s.Turn.T().Mul(h.Scene)
	if h.Kind == KindVehicle {
		return "cable " + u.place(length(s.Craft[h.Craft])) + ", attached at x " + u.place(s.attach(h.Craft)[0])
	}
	if h.View == inPlan {
		return "x " + u.place(q[0]) + ", y " + u.place(q[1])
	}
	return "x " + u.place(q[0]) + ", z " + u.place(q[2])
}

// attach returns a member's attachment in payload axes.
func (s *Scene) attach(i int) vec.V3 { return s.Turn.T().Mul(s.Craft[i].Attach) }
