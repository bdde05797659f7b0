package drawing

import (
	"math"

	"cohoist/core/vec"
	"cohoist/ui/figure"
)

// Frame is where a scene is put on paper: scale and place of each view. It is chosen from a scene
// and kept while a handle is moved, so that the picture stays still under the pointer.
type Frame struct {
	Scale      float64 // of elevation and plan, screen units a metre
	Elevation  Point   // where the scene's origin lies in the elevation
	Plan       Point   // and in the plan
	ElevTop    float64 // where the elevation begins, under its title
	ElevBottom float64 // where its band of axes begins
	PlanTop    float64
	PlanBottom float64
	Height     float64 // of the sheet
	Left       float64 // of everything drawn: dimension lines of the plan stand left of it
	Force      float64 // screen units a newton
	TurnScale  float64
	TurnAt     vec.V3 // the point of the scene in the middle of the turnable view
}

// Sizes of the sheet and the turnable view, in screen units: a phone's width at its own scale.
const (
	SheetWidth = 360.0
	TurnSize   = 300.0

	marginLeft  = 36.0
	marginRight = 16.0
	tallest     = 256.0 // height a view may take
	titleRow    = 20.0
	labelRoom   = 30.0 // above the vehicles, for two rows of labels
	axesBand    = 30.0
	barBand     = 46.0
	weightLong  = 72.0 // longest weight arrow
	forceLong   = 54.0 // longest force arrow
)

// Least extent that a sheet shows, metres: what is smaller does not fill it.
const leastExtent = 0.02

type bounds struct {
	lo, hi vec.V3
	set    bool
}

func (b *bounds) add(p vec.V3, r vec.V3) {
	for k := range 3 {
		if !b.set || p[k]-r[k] < b.lo[k] {
			b.lo[k] = p[k] - r[k]
		}
		if !b.set || p[k]+r[k] > b.hi[k] {
			b.hi[k] = p[k] + r[k]
		}
	}
	b.set = true
}

// bounds of all that stands in the scene.
func (s *Scene) bounds() bounds {
	var b bounds
	for _, x := range s.Bodies {
		for _, p := range x.points {
			b.add(p, vec.V3{})
		}
	}
	for _, c := range s.Craft {
		b.add(c.Attach, vec.V3{})
		n, r := c.Axes.T()[2], c.reach() // extent of a disc of radius r with normal n
		var e vec.V3
		for k := range 3 {
			e[k] = r * math.Sqrt(math.Max(0, 1-n[k]*n[k]))
		}
		b.add(c.Centre, e)
	}
	if s.HasCOM {
		b.add(s.COM, vec.V3{})
	}
	if len(s.Bodies) == 0 && len(s.Craft) == 0 { // an empty sheet of a metre
		b.add(vec.V3{}, vec.V3{0.5, 0.5, 0.5})
	}
	return b
}

// radius of the sphere about a point that holds the scene.
func (s *Scene) radius(at vec.V3) float64 {
	r := 0.0
	for _, x := range s.Bodies {
		for _, p := range x.points {
			r = math.Max(r, p.Sub(at).Norm())
		}
	}
	for _, c := range s.Craft {
		r = math.Max(r, math.Max(c.Attach.Sub(at).Norm(), c.Centre.Sub(at).Norm()+c.reach()))
	}
	return r
}

// fit chooses the frame for a scene.
func fit(s *Scene) Frame {
	b := s.bounds()
	size := b.hi.Sub(b.lo)
	for k := range 3 {
		size[k] = math.Max(size[k], leastExtent)
	}
	var f Frame
	wide := SheetWidth - marginLeft - marginRight
	f.Scale = figure.Preferred(math.Min(wide/size[0], math.Min(tallest/size[2], tallest/size[1])))
	f.Force = s.forceScale()
	mid := b.lo.Add(b.hi).Scale(0.5)
	f.Elevation.X = marginLeft + wide/2 - mid[0]*f.Scale
	f.Plan.X = f.Elevation.X
	f.Left = f.Elevation.X + b.lo[0]*f.Scale

	// The elevation: title, labels, the scene, then what hangs below it.
	rise, drop := s.arrows(f, b)
	f.ElevTop = titleRow
	f.Elevation.Y = f.ElevTop + labelRoom + rise + b.hi[2]*f.Scale
	f.ElevBottom = f.Elevation.Y - b.lo[2]*f.Scale + drop
	f.PlanTop = f.ElevBottom + axesBand + titleRow
	f.Plan.Y = f.PlanTop + labelRoom/2 + b.hi[1]*f.Scale
	f.PlanBottom = f.Plan.Y - b.lo[1]*f.Scale + labelRoom/2
	f.Height = f.PlanBottom + barBand

	f.TurnAt = mid
	f.TurnScale = figure.Preferred((TurnSize/2 - 20) / math.Max(s.radius(mid), leastExtent))
	return f
}

// forceScale makes the weight and the strongest pull fit their lengths.
func (s *Scene) forceScale() float64 {
	k := math.Inf(1)
	if s.Weight > 0 && usable(s.Weight) {
		k = weightLong / s.Weight
	}
	for _, c := range s.Craft {
		if f := c.Force.Norm(); c.HasForce && f > 0 {
			k = math.Min(k, forceLong/f)
		}
	}
	if math.IsInf(k, 1) || !(k > 1e-9) {
		return 0
	}
	return figure.Preferred(k)
}

// arrows returns how far force arrows rise above the scene and how far the weight arrow and the
// dimension line hang below it, in screen units.
func (s *Scene) arrows(f Frame, b bounds) (rise, drop float64) {
	drop = 30
	if s.HasCOM && usable(s.Weight) {
		drop = math.Max(drop, s.Weight*f.Force+16-(s.COM[2]-b.lo[2])*f.Scale)
	}
	for _, c := range s.Craft {
		if c.HasForce {
			rise = math.Max(rise, (c.Attach[2]-b.hi[2])*f.Scale+c.Force[2]*f.Force)
		}
	}
	return math.Max(rise, 0), math.Min(drop, weightLong+30)
}

func (f Frame) elevation() Camera { return Elevation(f.Scale, f.Elevation) }
func (f Frame) plan() Camera      { return PlanView(f.Scale, f.Plan) }

// turned is the camera of the turnable view, TurnAt in its middle.
func (f Frame) turned(azimuth, height float64) Camera {
	c := Turned(azimuth, height, f.TurnScale, Point{})
	at := c.At(f.TurnAt)
	c.Origin = Point{TurnSize/2 - at.X, TurnSize/2 - at.Y}
	return c
}

// grid is the step that dragging rounds to: 1, 2 or 5 times a power of ten, about a screen unit.
func (f Frame) grid() float64 { return figure.Round125(1.5 / f.Scale) }
