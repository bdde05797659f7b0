package study

import (
	"math"
	"strconv"

	"github.com/vugu/vugu"

	"cohoist/core/report"
	"cohoist/core/unit"
	"cohoist/ui/figure"
	"cohoist/ui/format"
)

// The diagrams of a beam stand under one another over one axis, the beam with its holds on top.
const (
	bandLeft, bandRight = 16.0, 664.0
	bandHigh, bandGap   = 66.0, 30.0
	beamAt, beamRoom    = 62.0, 96.0
	bandsWide           = 680.0
)

// band is one diagram.
type band struct {
	name, class string
	of          func(report.BeamPoint) float64
	show        func(float64) string
}

func megapascal(x float64) string { return unit.Format(x, "MPa", 3) }

func (c *Bent) bands() []band {
	force := func(x float64) string { return c.Units.Show(format.Force, x) }
	moment := func(x float64) string { return c.Units.Show(format.Moment, x) }
	length := func(x float64) string { return c.Units.Small(x) }
	list := []band{
		{"Shear force", "bm-a", func(p report.BeamPoint) float64 { return p.Shear }, force},
		{"Bending moment; above the line it sags", "bm-b", func(p report.BeamPoint) float64 { return p.Moment }, moment},
		{"Axial force; above the line it pulls", "bm-a", func(p report.BeamPoint) float64 { return p.Axial }, force},
		{"Moment sideways", "bm-b", func(p report.BeamPoint) float64 { return p.MomentLevel }, moment},
		{"Deflection", "bm-c", func(p report.BeamPoint) float64 { return p.Deflection }, length},
		{"Deflection sideways", "bm-c", func(p report.BeamPoint) float64 { return p.Sideways }, length},
		{"Stress at the worst fibre", "bm-d", func(p report.BeamPoint) float64 { return p.Stress }, megapascal},
	}
	always := map[int]bool{0: true, 1: true, 4: true, 6: true}
	largest := func(k int) float64 {
		m := 0.0
		for _, p := range c.Report.Beam.Points {
			m = math.Max(m, math.Abs(list[k].of(p)))
		}
		return m
	}
	beside := []float64{largest(0), largest(1), largest(0), largest(1), largest(4), largest(4), largest(6)}
	var out []band
	for k, b := range list { // what is nothing beside its like is left out
		if always[k] || largest(k) > 1e-3*beside[k] {
			out = append(out, b)
		}
	}
	return out
}

func (c *Bent) diagrams() vugu.Builder { return node{c.picture()} }

// node is a built picture as a component.
type node struct{ n *vugu.VGNode }

// Build gives the picture.
func (n node) Build(*vugu.BuildIn) *vugu.BuildOut { return &vugu.BuildOut{Out: []*vugu.VGNode{n.n}} }

func (c *Bent) caption() string {
	return "The payload from its left end, x = " + c.Units.Show(format.Length, c.Report.Beam.From) + ", to x = " + c.Units.Show(format.Length, c.Report.Beam.To) +
		", under its own weight and the forces of the team. Each diagram has its own scale; its largest value is written at its place."
}

func (c *Bent) picture() *vugu.VGNode {
	b, bands := c.Report.Beam, c.bands()
	high := beamRoom + float64(len(bands))*(bandHigh+bandGap)
	pic := figure.SVG("svg", figure.Attrs{"class", "bm-svg", "viewBox", "0 0 " + figure.Num(bandsWide) + " " + figure.Num(high), "role", "img", "aria-label", c.words()})
	x := func(at float64) float64 { return bandLeft + (at-b.From)/(b.To-b.From)*(bandRight-bandLeft) }
	for _, h := range b.Holds {
		line(pic, "bm-guide", x(h.X), beamAt, x(h.X), high-bandGap/2)
	}
	rect(pic, "bm-beam", x(b.From), beamAt-3, x(b.To)-x(b.From), 6)
	c.holds(pic, x)
	for k, d := range bands {
		c.draw(pic, d, x, beamRoom+float64(k)*(bandHigh+bandGap)+bandGap*0.7)
	}
	return pic
}

// holds draws the forces of the team on the beam, names spread so that they do not overlap.
func (c *Bent) holds(pic *vugu.VGNode, x func(float64) float64) {
	most := 0.0
	for _, h := range c.Report.Beam.Holds {
		most = math.Max(most, math.Abs(h.Force))
	}
	byPlace := map[string][]report.BeamHold{}
	var order []string
	for _, h := range c.Report.Beam.Holds { // those that hold the same place are one arrow
		key := strconv.FormatFloat(h.X, 'f', 3, 64)
		if byPlace[key] == nil {
			order = append(order, key)
		}
		byPlace[key] = append(byPlace[key], h)
	}
	for _, key := range order {
		at, sum, names := x(byPlace[key][0].X), 0.0, ""
		for i, h := range byPlace[key] {
			if i > 0 {
				names += ", "
			}
			names += h.ID
			sum += h.Force
		}
		long := 26 * math.Min(1, math.Abs(sum)/most)
		line(pic, "bm-force", at, beamAt-4, at, beamAt-6-long)
		path(pic, "bm-tip", "M"+figure.Num(at-4)+" "+figure.Num(beamAt-long)+"L"+figure.Num(at)+" "+figure.Num(beamAt-9-long)+"L"+figure.Num(at+4)+" "+figure.Num(beamAt-long)+"Z")
		text(pic, "bm-mid", math.Min(math.Max(at, bandLeft+18), bandRight-18), beamAt-14-long, names+" "+c.Units.Show(format.Force, sum))
	}
}

// draw draws one diagram, its zero line at least touching the band.
func (c *Bent) draw(pic *vugu.VGNode, d band, x func(float64) float64, top float64) {
	b := c.Report.Beam
	lo, hi, worst := 0.0, 0.0, b.Points[0]
	for _, p := range b.Points {
		v := d.of(p)
		lo, hi = math.Min(lo, v), math.Max(hi, v)
		if math.Abs(v) > math.Abs(d.of(worst))*(1+1e-9) {
			worst = p
		}
	}
	if hi == lo {
		hi = 1
	}
	y := func(v float64) float64 { return top + 6 + (hi-v)/(hi-lo)*(bandHigh-12) }
	area := "M" + figure.Num(x(b.Points[0].X)) + " " + figure.Num(y(0))
	for _, p := range b.Points {
		area += "L" + figure.Num(x(p.X)) + " " + figure.Num(y(d.of(p)))
	}
	area += "L" + figure.Num(x(b.Points[len(b.Points)-1].X)) + " " + figure.Num(y(0)) + "Z"
	path(pic, "bm-area "+d.class, area)
	line(pic, "bm-zero", bandLeft, y(0), bandRight, y(0))
	text(pic, "bm-name", bandLeft, top-4, d.name)
	v := d.of(worst)
	px, py := x(worst.X), y(v)
	pic.AppendChild(figure.SVG("circle", figure.Attrs{"class", "bm-dot", "cx", figure.Num(px), "cy", figure.Num(py), "r", "3"}))
	class, at := "bm-value", px+6
	if px > (bandLeft+bandRight)/2 {
		class, at = "bm-value bm-end", px-6
	}
	side := py - 5
	if v < 0 {
		side = py + 12
	}
	text(pic, class, at, math.Min(math.Max(side, top+8), top+bandHigh+8), d.show(v))
}

// words are the picture for those who do not see it.
func (c *Bent) words() string {
	s := "Diagrams of the payload as a beam."
	for _, p := range c.peaks() {
		s += " " + p
	}
	return s
}

func line(pic *vugu.VGNode, class string, x1, y1, x2, y2 float64) {
	path(pic, class, "M"+figure.Num(x1)+" "+figure.Num(y1)+"L"+figure.Num(x2)+" "+figure.Num(y2))
}

func path(pic *vugu.VGNode, class, d string) {
	pic.AppendChild(figure.SVG("path", figure.Attrs{"class", class, "d", d}))
}

func rect(pic *vugu.VGNode, class string, x, y, w, h float64) {
	pic.AppendChild(figure.SVG("rect", figure.Attrs{"class", class, "x", figure.Num(x), "y", figure.Num(y), "width", figure.Num(w), "height", figure.Num(h)}))
}

func text(pic *vugu.VGNode, class string, x, y float64, s string) {
	pic.AppendChild(figure.SVG("text", figure.Attrs{"class", class, "x", figure.Num(x), "y", figure.Num(y)}, figure.Text(s)))
}
