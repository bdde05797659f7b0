package study

import (
	"math"

	"github.com/vugu/vugu"

	"cohoist/core/patch"
	"cohoist/core/solve"
	"cohoist/core/unit"
	"cohoist/ui/figure"
	"cohoist/ui/format"
)

// The plan view: payload x to the right, y upwards, as large as there is room for.
const (
	viewWide, viewMost = 560.0, 400.0
	viewRim            = 40.0
	viewLeast          = 130.0 // height of a slender payload's picture
)

// patchView draws to scale.
type patchView struct {
	pic    *vugu.VGNode
	lo, hi [2]float64 // m
	scale  float64    // units for 1 m
	high   float64
}

func (c *Patch) view() vugu.Builder {
	v := &patchView{lo: [2]float64{math.Inf(1), math.Inf(1)}, hi: [2]float64{math.Inf(-1), math.Inf(-1)}}
	c.measure(v)
	wide, tall := math.Max(v.hi[0]-v.lo[0], 1e-3), math.Max(v.hi[1]-v.lo[1], 1e-3)
	v.scale = math.Min((viewWide-2*viewRim)/wide, (viewMost-2*viewRim)/tall)
	v.high = math.Max(viewLeast, tall*v.scale+2*viewRim)
	v.pic = figure.SVG("svg", figure.Attrs{"class", "pa-svg", "viewBox", "0 0 " + figure.Num(viewWide) + " " + figure.Num(v.high+24), "width", figure.Num(viewWide), "role", "img", "aria-label", c.words()})
	for _, o := range c.Outlines {
		points := make([]patch.XY, len(o))
		for i, p := range o {
			points[i] = patch.XY{p.X, p.Y}
		}
		v.area("pa-body", points)
	}
	c.patches(v)
	for _, m := range c.Plan.Team {
		at := v.at(patch.XY{m.Attach[0], m.Attach[1]})
		rect(v.pic, "pa-hold", at[0]-3, at[1]-3, 6, 6)
		text(v.pic, "pa-id", at[0], at[1]-8, clipped(m.ID, 7))
	}
	c.centre(v)
	v.bar(c.Units)
	return node{v.pic}
}

// measure takes in all that is drawn.
func (c *Patch) measure(v *patchView) {
	for _, o := range c.Outlines {
		for _, p := range o {
			v.take(patch.XY{p.X, p.Y}, 0)
		}
	}
	for _, m := range c.Plan.Team {
		v.take(patch.XY{m.Attach[0], m.Attach[1]}, 0)
	}
	for _, p := range c.Patch.Outer {
		v.take(p, 0)
	}
	for _, p := range c.each() {
		for _, q := range p.Inner {
			v.take(q, 0)
		}
	}
	if p := c.Patch.Present; figure.Finite(p[0] + p[1]) {
		v.take(p, math.Max(0, c.Plan.Limits.COMError))
	}
}

// take makes room for a circle.
func (v *patchView) take(p patch.XY, r float64) {
	for k := range 2 {
		v.lo[k], v.hi[k] = math.Min(v.lo[k], p[k]-r), math.Max(v.hi[k], p[k]+r)
	}
}

// at is where a place is drawn.
func (v *patchView) at(p patch.XY) [2]float64 {
	return [2]float64{viewWide/2 + (p[0]-(v.lo[0]+v.hi[0])/2)*v.scale, v.high/2 - (p[1]-(v.lo[1]+v.hi[1])/2)*v.scale}
}

// area draws a polygon, a segment or a point.
func (v *patchView) area(class string, polygon []patch.XY) {
	if len(polygon) == 0 {
		return
	}
	if len(polygon) == 1 {
		at := v.at(polygon[0])
		circle(v.pic, class, at, 4)
		return
	}
	d := "M"
	for i, p := range polygon {
		if i > 0 {
			d += "L"
		}
		at := v.at(p)
		d += figure.Num(at[0]) + " " + figure.Num(at[1])
	}
	path(v.pic, class, d+"Z")
}

// patches draws the patch, between what is held and what can be, and what is left after losses.
func (c *Patch) patches(v *patchView) {
	v.area("pa-inner", c.Patch.Inner)
	if len(c.Patch.Outer) > 2 {
		v.area("pa-outer", c.Patch.Outer)
	}
	for i, p := range c.each() {
		if v.area("pa-each", p.Inner); len(p.Inner) > 0 {
			at := v.at(middle(p.Inner))
			text(v.pic, "pa-gone", at[0], at[1]+4, "without "+clipped(c.Plan.Team[i].ID, 7))
		}
	}
	if c.Losses != nil && c.Losses.All.Status == solve.Optimal {
		v.area("pa-lost", c.Losses.All.Inner)
	}
}

// middle is a place within a patch.
func middle(polygon []patch.XY) (m patch.XY) {
	for _, p := range polygon {
		m[0] += p[0] / float64(len(polygon))
		m[1] += p[1] / float64(len(polygon))
	}
	return m
}

// each are the patches after a loss that are drawn one by one.
func (c *Patch) each() []patch.Patch {
	if c.Losses == nil || len(c.Losses.Each) > usual {
		return nil
	}
	return c.Losses.Each
}

// centre draws the centre of mass, how wrong it may be, and its way to the edge.
func (c *Patch) centre(v *patchView) {
	p := c.Patch
	if !figure.Finite(p.Present[0] + p.Present[1]) {
		return
	}
	at := v.at(p.Present)
	if d := math.Abs(p.Edge); d*v.scale > 2 {
		end := v.at(patch.XY{p.Present[0] + d*p.Toward[0], p.Present[1] + d*p.Toward[1]})
		line(v.pic, "pa-way", at[0], at[1], end[0], end[1])
		class, dx := "pa-far", 7.0
		if p.Toward[0] < -0.3 {
			class, dx = "pa-far pa-end", -7
		}
		text(v.pic, class, (at[0]+end[0])/2+dx, (at[1]+end[1])/2+14, c.length(d))
	}
	circle(v.pic, "pa-com", at, comRadius)
	d := ""
	for _, r := range [2]float64{comRadius, -comRadius} { // two quarters in ink
		d += "M" + figure.Num(at[0]) + " " + figure.Num(at[1]) + "v" + figure.Num(-r) + "a" + figure.Num(comRadius) + " " + figure.Num(comRadius) + " 0 0 1 " + figure.Num(r) + " " + figure.Num(r) + "z"
	}
	path(v.pic, "pa-com-fill", d)
	if e := c.Plan.Limits.COMError; e > 0 {
		circle(v.pic, "pa-error", at, e*v.scale)
	}
}

// comRadius is how large the sign of the centre of mass is drawn.
const comRadius = 4.5

// bar draws a scale, a round length.
func (v *patchView) bar(u format.Units) {
	one := unit.Scale(u.Unit(format.Length))
	long := figure.Round125(120/v.scale/one) * one
	y := v.high + 10
	line(v.pic, "pa-bar", 10, y, 10+long*v.scale, y)
	line(v.pic, "pa-bar", 10, y-4, 10, y+4)
	line(v.pic, "pa-bar", 10+long*v.scale, y-4, 10+long*v.scale, y+4)
	text(v.pic, "pa-scale", 16+long*v.scale, y+4, u.Small(long))
	text(v.pic, "pa-scale pa-end", viewWide-10, y+4, "seen from above: x to the right, y up")
}

// words are the picture for those who do not see it.
func (c *Patch) words() string {
	s := "Where the centre of mass may stand, over the payload seen from above."
	for _, t := range c.sentences() {
		s += " " + t
	}
	return s
}

func (c *Patch) caption() string {
	s := "The payload to scale, its attachments by the vehicle, and the centre of mass (quartered disc). Within the shaded patch every vehicle keeps within the limits; 0° is along payload x, 90° along y."
	if c.Plan.Limits.COMError > 0 {
		s += " The dashed circle is how wrong the plan may be about the centre of mass."
	}
	if c.Losses != nil {
		s += " Thin outlines are the patches after the loss of one vehicle; what they share is drawn with dots."
	}
	return s
}
