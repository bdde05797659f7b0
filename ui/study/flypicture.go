package study

import (
	"math"

	"github.com/vugu/vugu"

	"cohoist/core/formation"
	"cohoist/core/vec"
	"cohoist/ui/figure"
	"cohoist/ui/format"
)

// Size of the plan view.
const flyWide, flyMost, flyLeast = 560.0, 460.0, 180.0

func (c *Fly) view() vugu.Builder { return node{c.seen()} }

// seen is the formation from above: circles of half the separation may touch.
func (c *Fly) seen() *vugu.VGNode {
	half := c.model.Plan.Limits.Separation / 2
	at := []vec.V3{c.model.Payload.COM}
	for _, craft := range c.model.Craft {
		at = append(at, craft.At)
	}
	f := formOf(c.Plan.Payload).framed(at...)
	var all []vec.V3
	f.each(func(p vec.V3) { all = append(all, p) })
	for i, p := range c.found.Parts {
		r := math.Max(half, c.model.Craft[i].Vehicle.Reach)
		all = append(all, c.model.Craft[i].At, p.Position.Add(vec.V3{r, r, 0}), p.Position.Sub(vec.V3{r, r, 0}))
	}
	high := math.Min(math.Max(flyWide*tall(all), flyLeast), flyMost)
	s := fromTop.fit(all, flyWide, high, 14, 14, 14)
	pic := image("fl-svg", c.words(), flyWide, high+30)
	path(pic, "hg-load", s.shape(f, func(p vec.V3) vec.V3 { return p }))
	for i, p := range c.found.Parts {
		craft := c.model.Craft[i]
		at := s.at(p.Position)
		circle(pic, "fl-room", at, s.scale*half)
		circle(pic, "fl-reach", at, s.scale*craft.Vehicle.Reach)
		if !craft.Rigid {
			s.stroke(pic, "hg-line", craft.At, p.Position)
			circle(pic, "hg-com", s.at(craft.At), 2.5)
		}
		circle(pic, "hg-top", at, 3)
	}
	for _, g := range c.found.Flags {
		a, b := s.at(c.place(g.Upper)), s.at(c.place(g.Lower))
		line(pic, "fl-flag", a[0], a[1], b[0], b[1])
	}
	for i, p := range c.found.Parts {
		at := s.at(p.Position)
		text(pic, "hg-mid", at[0], at[1]-7, c.model.Craft[i].ID)
	}
	c.ruler(pic, s, high+20)
	return pic
}

// tall is the height of points seen from above over their width.
func tall(all []vec.V3) float64 {
	lo, hi := vec.V3{math.Inf(1), math.Inf(1)}, vec.V3{math.Inf(-1), math.Inf(-1)}
	for _, p := range all {
		for k := range 2 {
			lo[k], hi[k] = math.Min(lo[k], p[k]), math.Max(hi[k], p[k])
		}
	}
	return (hi[1] - lo[1]) / math.Max(hi[0]-lo[0], 1e-3)
}

// ruler draws a round length.
func (c *Fly) ruler(pic *vugu.VGNode, s sight, y float64) {
	long := figure.Round125(120 / s.scale)
	line(pic, "sl-axis", 14, y, 14+long*s.scale, y)
	line(pic, "sl-axis", 14, y-4, 14, y+4)
	line(pic, "sl-axis", 14+long*s.scale, y-4, 14+long*s.scale, y+4)
	text(pic, "hg-quiet", 22+long*s.scale, y+4, c.Units.Show(format.Length, long)+", x to the right")
}

func (c *Fly) place(id string) vec.V3 {
	for i, p := range c.found.Parts {
		if c.model.Craft[i].ID == id {
			return p.Position
		}
	}
	return vec.V3{}
}

// words are the picture for those who do not see it.
func (c *Fly) words() string {
	text := "The formation from above, " + c.found.Status.String() + "; the nearest two are " + c.Units.Small(c.found.Nearest) + " apart."
	if c.found.Status == formation.Apart && c.found.Stacked {
		text += " Some fly above others."
	}
	return text
}
