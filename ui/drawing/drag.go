package drawing

import (
	"math"

	"cohoist/core/vec"
	"cohoist/ui/figure"
)

// snap is what a dragged point has caught on: a coordinate of the payload axes.
type snap struct {
	axis int
	at   float64
}

// How near, in screen units, a point catches on a line.
const snapReach = 5.0

// drag is a handle being moved, by the pointer or by keys. It holds what it needs of the scene it
// began in, so that every step is computed from the start and nothing adds up.
type drag struct {
	handle  Handle
	camera  Camera
	grid    float64
	turn    vec.M3
	targets [3][]float64 // coordinates a point may catch on, payload axes
	from    Point        // where the pointer took hold
	attach  vec.V3       // of the member, payload axes
	along   vec.V3       // of the cable, unit, level axes
	length  float64
	index   int
	latest  Edit
	snaps   []snap
	moved   bool
}

// hold begins a drag at a point of the sheet.
func (s *Scene) hold(f Frame, h Handle, at Point) *drag {
	d := &drag{handle: h, camera: f.camera(h.View), grid: f.grid(), turn: s.Turn, from: at, index: -1}
	if h.Craft >= 0 {
		v := s.Craft[h.Craft]
		d.index = v.Index
		d.attach = d.turn.T().Mul(v.Attach)
		d.length = length(v)
		d.along = v.Centre.Sub(v.Attach).Unit()
	}
	for k := range 3 {
		d.targets[k] = append(d.targets[k], 0)
		if s.HasPay {
			d.targets[k] = append(d.targets[k], s.PayMin[k], s.PayMax[k], (s.PayMin[k]+s.PayMax[k])/2)
		}
		if h.Kind != KindCOM && len(s.Craft) <= handled {
			for i := range s.Craft {
				if i != h.Craft {
					d.targets[k] = append(d.targets[k], s.attach(i)[k])
				}
			}
		}
	}
	d.latest = d.start()
	return d
}

// start is the edit that leaves everything as it was.
func (d *drag) start() Edit {
	e := Edit{Kind: d.handle.Kind, ID: d.handle.ID, Index: d.index, To: d.turn.T().Mul(d.handle.Scene)}
	if e.Kind == KindAttach {
		e.To = d.attach
	}
	if e.Kind == KindVehicle {
		e.Attach, e.Length = d.attach, d.length
	}
	return e
}

// to moves the handle with the pointer. free turns rounding to the millimetre and catching off.
func (d *drag) to(at Point, free bool) Edit {
	goal := d.camera.Moved(d.handle.Scene, at.X-d.from.X, at.Y-d.from.Y)
	grid := d.grid
	if free {
		grid = math.Min(grid, 0.001)
	}
	d.moved = true
	d.snaps = d.snaps[:0]
	e := d.start()
	if e.Kind != KindVehicle {
		e.To = d.settle(e.To, d.turn.T().Mul(goal), grid, free)
		d.latest = e
		return e
	}
	step := goal.Sub(d.handle.Scene)
	e.To = d.turn.T().Mul(goal)
	e.Attach = d.settle(d.attach, d.attach.Add(d.turn.T().Mul(vec.V3{step[0], step[1], 0})), grid, free)
	if rise := d.along[2]; math.Abs(step[2]) > 1e-9 && rise > 0.05 {
		e.Length = math.Max(onGrid(d.length+step[2]/rise, grid), grid)
	}
	d.latest = e
	return e
}

// settle rounds the coordinates that have changed, or lets them catch on a line nearby.
func (d *drag) settle(from, to vec.V3, grid float64, free bool) vec.V3 {
	for k := range 3 {
		if math.Abs(to[k]-from[k]) < 1e-9 {
			to[k] = from[k]
			continue
		}
		reach, hit := snapReach/d.camera.Scale, math.NaN()
		for _, t := range d.targets[k] {
			if r := math.Abs(t - to[k]); r < reach && !free {
				reach, hit = r, t
			}
		}
		if figure.Finite(hit) {
			to[k] = hit
			d.snaps = append(d.snaps, snap{k, hit})
			continue
		}
		to[k] = onGrid(to[k], grid)
	}
	return to
}

// onGrid rounds to a multiple of a step, to the nearest decimal number.
func onGrid(x, step float64) float64 {
	if !(step > 0) {
		return x
	}
	if n := math.Round(1 / step); step < 1 && n < 1e9 {
		return math.Round(x*n) / n
	}
	return math.Round(x/step) * step
}

// nudged moves a coordinate to the next multiple of a step in the direction of sign.
func nudged(x, step, sign float64) float64 {
	n := math.Round(1 / step)
	if sign > 0 {
		return (math.Floor(x*n+1e-6) + 1) / n
	}
	return (math.Ceil(x*n-1e-6) - 1) / n
}

// Steps of the arrow keys, metres.
const (
	stepPlain = 0.01
	stepShift = 0.1
	stepAlt   = 0.001
)

// nudge moves the handle by one press of an arrow key, in the axes of its view. now is where the
// handle stands, from a drag held in the scene as it is now.
func (d *drag) nudge(key string, step float64) (Edit, bool) {
	axis, sign := 0, 1.0
	switch key {
	case "ArrowRight":
	case "ArrowLeft":
		sign = -1
	case "ArrowUp", "ArrowDown":
		axis = 2
		if d.handle.View == inPlan {
			axis = 1
		}
		if key == "ArrowDown" {
			sign = -1
		}
	default:
		return Edit{}, false
	}
	e := d.start()
	d.moved = true
	switch {
	case e.Kind != KindVehicle:
		e.To[axis] = nudged(e.To[axis], step, sign)
	case axis == 2:
		e.Length = math.Max(nudged(e.Length, step, sign), step)
		e.To = e.To.Add(d.turn.T().Mul(d.along.Scale(e.Length - d.length)))
	default:
		e.Attach[axis] = nudged(e.Attach[axis], step, sign)
		e.To[axis] += e.Attach[axis] - d.attach[axis]
	}
	d.latest = e
	return e, true
}

// guides draws the lines a dragged point has caught on.
func (c Camera) guides(p *pen, s *Scene, snaps []snap, view rect) {
	for _, q := range snaps {
		at := vec.V3{}
		at[q.axis] = q.at
		o, d := c.At(s.Turn.Mul(at)), c.Along(s.Turn.T()[q.axis])
		switch {
		case math.Hypot(d.X, d.Y) < 0.3*c.Scale: // an axis seen end on
		case math.Abs(d.X) > math.Abs(d.Y):
			p.line(classSnap, Point{o.X, view.y0}, Point{o.X, view.y1})
		default:
			p.line(classSnap, Point{view.x0, o.Y}, Point{view.x1, o.Y})
		}
	}
}
