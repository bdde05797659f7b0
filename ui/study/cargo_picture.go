package study

import (
	"math"
	"strings"

	"github.com/vugu/vugu"

	"cohoist/core/cargo"
	"cohoist/core/vec"
	"cohoist/ui/figure"
	"cohoist/ui/format"
)

// yard is the picture of a cargo: from the side above, from above below, to one scale and under one another.
type yard struct {
	*Cargo
	forms     []form
	high, top sight
	sideways  bool
	height    float64
	lo, hi    vec.V3
}

// Size of the picture.
const yardWide, yardTall, yardEdge, yardGap = 1000.0, 620.0, 26.0, 40.0

func (c *Cargo) picture() vugu.Builder { return node{newYard(c).draw()} }

func newYard(c *Cargo) *yard {
	y := &yard{Cargo: c, high: fromSide, top: fromTop, lo: vec.V3{math.Inf(1), math.Inf(1), math.Inf(1)}, hi: vec.V3{math.Inf(-1), math.Inf(-1), math.Inf(-1)}}
	y.reach(c.Study.Has.Home)
	for i := range c.Study.Items {
		it := &c.Study.Items[i]
		y.forms = append(y.forms, formOf(it.Plan.Payload))
		if c.at[i] > 0 {
			y.forms[i].each(func(p vec.V3) { y.reach(it.Pick.Point(p)); y.reach(it.Set.Point(p)) })
			y.reach(y.over(it)[1])
		}
	}
	if y.hi[1]-y.lo[1] > y.hi[0]-y.lo[0] {
		y.sideways = true
		y.high, y.top = fromEnd, sight{right: vec.V3{0, 1, 0}, up: vec.V3{-1, 0, 0}}
	}
	span := func(axis vec.V3) float64 { return math.Max(math.Abs(axis.Dot(y.hi.Sub(y.lo))), 1) }
	across, deep := span(y.high.right), span(y.top.up)
	scale := math.Min((yardWide-2*yardEdge)/across, (yardTall-2*yardEdge-yardGap)/(deep+span(upright)))
	mid := y.lo.Add(y.hi).Scale(0.5)
	y.high.scale, y.top.scale = scale, scale
	y.high.x = yardWide/2 - scale*y.high.right.Dot(mid)
	y.top.x = y.high.x
	y.high.y = yardEdge + scale*y.hi[2]
	under := yardEdge + scale*span(upright) + yardGap
	y.top.y = under + scale*(deep/2+y.top.up.Dot(mid))
	y.height = under + scale*deep + yardEdge + 24
	return y
}

func (y *yard) reach(p vec.V3) {
	for a := range 3 {
		if !math.IsNaN(p[a]) {
			y.lo[a], y.hi[a] = math.Min(y.lo[a], p[a]), math.Max(y.hi[a], p[a])
		}
	}
}

// over are the corners of an item's way, of the origin of its frame: where it is picked, above that, above where it is set, there.
func (y *yard) over(it *cargo.Item) [4]vec.V3 {
	high := y.Study.Top + y.Study.Has.Clearance - it.Bottom
	a, b := it.Pick.At, it.Set.At
	return [4]vec.V3{a, {a[0], a[1], high}, {b[0], b[1], high}, b}
}

func (y *yard) sights() []sight { return []sight{y.high, y.top} }

func (y *yard) draw() *vugu.VGNode {
	pic := image("cg-svg", y.words(), yardWide, y.height)
	ground := y.high.at(y.Study.Has.Home)[1]
	line(pic, "wy-floor", yardEdge/2, ground, yardWide-yardEdge/2, ground)
	for _, v := range y.sights() {
		var all strings.Builder
		for i := range y.Study.Items {
			if y.at[i] > 0 {
				all.WriteString(v.shape(y.forms[i], y.Study.Items[i].Set.Point))
			}
		}
		path(pic, "cg-ghost", all.String())
	}
	frames := figure.SVG("g", figure.Attrs{"data-frames", cargoFrames})
	for k := range len(y.Study.Best.Stops) + 1 {
		frames.AppendChild(y.frame(k))
	}
	pic.AppendChild(frames)
	y.numbers(pic, y.top, y.Study.Best.Stops, func(it *cargo.Item) vec.V3 { return it.Set.At })
	for _, v := range y.sights() {
		at := v.at(y.Study.Has.Home)
		path(pic, "cg-home", "M"+figure.Num(at[0]-6)+" "+figure.Num(at[1]+5)+"h12l-6-11z")
		text(pic, "cg-quiet", at[0]+10, at[1]+4, "home")
	}
	y.ruler(pic)
	return pic
}

// frame is what stands and lies where after so many steps, and the way of the last.
func (y *yard) frame(k int) *vugu.VGNode {
	g := figure.SVG("g", nil)
	if k == len(y.Study.Best.Stops) {
		g.Attr = append(g.Attr, vugu.VGAttribute{Key: "data-on", Val: ""})
	}
	for _, v := range y.sights() {
		var waits, stands strings.Builder
		for i := range y.Study.Items {
			it := &y.Study.Items[i]
			switch {
			case y.at[i] == 0:
			case y.at[i] > k:
				waits.WriteString(v.shape(y.forms[i], it.Pick.Point))
			default:
				stands.WriteString(v.shape(y.forms[i], it.Set.Point))
			}
		}
		path(g, "cg-waits", waits.String())
		path(g, "cg-stands", stands.String())
		y.numbers(g, v, y.Study.Best.Stops[k:], func(it *cargo.Item) vec.V3 { return it.Pick.At })
		if k > 0 {
			it := &y.Study.Items[y.Study.Best.Stops[k-1].Item]
			path(g, "cg-last", v.shape(y.forms[y.Study.Best.Stops[k-1].Item], it.Set.Point))
			w := y.over(it)
			path(g, "cg-way", stroke(v.at(w[0]), v.at(w[1]))+stroke(v.at(w[1]), v.at(w[2])))
			arrow(g, "cg-way", v.at(w[2]), v.at(w[3]))
			if v.up != upright {
				arrow(g, "cg-way", v.at(w[1]), v.at(w[2]))
				continue
			}
			y.numbers(g, v, y.Study.Best.Stops[k-1:k], func(it *cargo.Item) vec.V3 { return it.Set.At })
		}
	}
	return g
}

// numbers writes the places of stops in the order where their items are; of several in one place, one beside the other.
func (y *yard) numbers(pic *vugu.VGNode, v sight, stops []cargo.Stop, where func(*cargo.Item) vec.V3) {
	type label struct {
		at   dot
		text string
	}
	var list []label
	for _, stop := range stops {
		it := &y.Study.Items[stop.Item]
		p, n := where(it), digits(y.at[stop.Item])
		if v.up == upright {
			p[2] += it.Peak
		}
		at, beside := v.at(p), false
		for k := range list {
			if near := math.Hypot(list[k].at[0]-at[0], list[k].at[1]-at[1]) < 14; near && !beside {
				list[k].text, beside = list[k].text+" "+n, true
			}
		}
		if !beside {
			list = append(list, label{at, n})
		}
	}
	up := 4.0
	if v.up == upright {
		up = -5
	}
	for _, l := range list {
		text(pic, "cg-number", l.at[0], l.at[1]+up, l.text)
	}
}

// ruler draws a round length, and says where the axes are.
func (y *yard) ruler(pic *vugu.VGNode) {
	long, at := figure.Round125(160/y.top.scale), y.height-14
	end := yardEdge + long*y.top.scale
	path(pic, "sl-axis", stroke(dot{yardEdge, at}, dot{end, at})+stroke(dot{yardEdge, at - 4}, dot{yardEdge, at + 4})+stroke(dot{end, at - 4}, dot{end, at + 4}))
	axes := "x to the right, y up"
	if y.sideways {
		axes = "y to the right, x down"
	}
	text(pic, "cg-quiet", end+10, at+4, y.Units.Show(format.Length, long)+"; from above: "+axes)
}

// words are the picture for those who do not see it.
func (y *yard) words() string {
	return "The items from the side and from above, where they are picked and where they are set, numbered in the order found, after one of its steps."
}
