package study

import (
	"math"

	"github.com/vugu/vugu"

	"cohoist/core/plan"
	"cohoist/core/vec"
	"cohoist/ui/figure"
	"cohoist/ui/format"
)

// A picture from above is so wide, in units of its viewBox, and so high at most.
const (
	boardWide = 420.0
	boardHigh = 300.0
	boardEdge = 22.0
)

// board maps the payload, seen from above, to a picture; x goes to the right, y up.
type board struct {
	lo, hi vec.V3 // m, of what is shown
	scale  float64
	wide   float64
	high   float64
	below  float64 // free under what is shown
}

// newBoard fits what lies between lo and hi, with room above and below for names.
func newBoard(lo, hi vec.V3, above, below float64) board {
	b := board{lo: lo, hi: hi, wide: boardWide, below: below}
	b.scale = (boardWide - 2*boardEdge) / math.Max(hi[0]-lo[0], 1e-9)
	b.scale = math.Min(b.scale, (boardHigh-above-below)/math.Max(hi[1]-lo[1], 1e-9))
	b.high = b.scale*(hi[1]-lo[1]) + above + below
	return b
}

func (b board) x(x float64) float64 { return b.wide/2 + b.scale*(x-(b.lo[0]+b.hi[0])/2) }
func (b board) y(y float64) float64 { return b.high - b.below - b.scale*(y-b.lo[1]) }

// sheet starts the picture: an image with a name and a description.
func (b board) sheet(title, summary string) *vugu.VGNode {
	return figure.SVG("svg", figure.Attrs{"class", "wh-svg", "viewBox", "0 0 " + figure.Num(b.wide) + " " + figure.Num(b.high), "role", "img", "aria-label", title},
		figure.SVG("desc", nil, figure.Text(summary)))
}

// drawn is the payload's box as it is drawn: a bar as a bar.
func (c *choices) drawn() (lo, hi vec.V3) {
	lo, hi = c.lo, c.hi
	if long, across, axis := c.size(); c.slender() {
		k, thin := 1-axis, math.Min(across, long/60)
		mid := (lo[k] + hi[k]) / 2
		lo[k], hi[k] = mid-thin/2, mid+thin/2
	}
	return lo, hi
}

// outline draws the payload's box.
func (b board) outline(c *choices) *vugu.VGNode {
	lo, hi := c.drawn()
	return figure.SVG("rect", figure.Attrs{"class", "wh-payload", "x", figure.Num(b.x(lo[0])), "y", figure.Num(b.y(hi[1])),
		"width", figure.Num(b.scale * (hi[0] - lo[0])), "height", figure.Num(b.scale * (hi[1] - lo[1]))})
}

// ends writes the x of the payload's ends under it.
func (b board) ends(pic *vugu.VGNode, c *choices) {
	for _, x := range []float64{c.lo[0], c.hi[0]} {
		pic.AppendChild(words("wh-t wh-quiet wh-mid", math.Min(math.Max(b.x(x), 30), b.wide-30), b.high-5, "x "+c.units.Show(format.Length, x)))
	}
}

func words(class string, x, y float64, s string) *vugu.VGNode {
	return figure.SVG("text", figure.Attrs{"class", class, "x", figure.Num(x), "y", figure.Num(y)}, figure.Text(s))
}

func disc(class string, x, y, r float64) *vugu.VGNode {
	return figure.SVG("circle", figure.Attrs{"class", class, "cx", figure.Num(x), "cy", figure.Num(y), "r", figure.Num(r)})
}

// planView is the payload from above with its points, and who stands where.
type planView struct {
	c      *choices
	places []vec.V3 // best; nil: none yet
}

func (c *choices) board() *planView { return &planView{c: c} }

func (v *planView) best(places []vec.V3) { v.places = places }

// key says in words what the picture shows.
func (v *planView) key() string {
	text := "From above. Rings: where the vehicles are now."
	if v.places != nil {
		text += " Discs: the best places found."
	}
	for i := range v.c.asks.Free {
		if !v.c.asks.Free[i] {
			text += " Squares: vehicles that stay."
			break
		}
	}
	if len(v.c.holes) > 0 {
		text += " Dots: holes."
	}
	if len(v.c.zones) > 0 {
		text += " Hatched: kept out."
	}
	return text
}

// summary is the picture for those who do not see it.
func (v *planView) summary() string {
	text := ""
	for i, m := range v.c.plan.Team {
		text += m.ID + " now at " + spot(v.c.units, m.Attach)
		if i < len(v.places) {
			text += ", best at " + spot(v.c.units, v.places[i])
		}
		text += ". "
	}
	return text
}

// at is the size of what is shown: the payload, the team and the holes.
func (v *planView) at() (lo, hi vec.V3) {
	lo, hi = v.c.drawn()
	grow := func(p vec.V3) {
		for k := range 2 {
			if figure.Finite(p[k]) {
				lo[k], hi[k] = math.Min(lo[k], p[k]), math.Max(hi[k], p[k])
			}
		}
	}
	for _, m := range v.c.plan.Team {
		grow(m.Attach)
	}
	for _, h := range v.c.holes {
		grow(h)
	}
	return lo, hi
}

func (v *planView) team() []plan.Member { return v.c.plan.Team }
