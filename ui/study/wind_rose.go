package study

import (
	"math"
	"strconv"

	"github.com/vugu/vugu"

	"cohoist/core/gust"
	"cohoist/ui/figure"
	"cohoist/ui/format"
)

// The rose: speeds from the middle, in the direction in which the wind blows; payload x to the right.
const (
	roseMiddle = 200.0
	roseRadius = 150.0
)

func (c *Wind) rose() vugu.Builder {
	most := math.Max(c.Rose.Gust, c.Rose.Mean)
	for _, s := range c.Rose.Sides {
		most = math.Max(most, s.Speed)
	}
	if !(most > 0) {
		most = 1
	}
	step := figure.Round125(most / 2)
	if math.Ceil(most/step-1e-9)*step > 1.3*most { // much room for nothing
		step = figure.Round125(step * 0.99)
	}
	rings := math.Ceil(most/step - 1e-9)
	p := rosePen{pic: figure.SVG("svg", figure.Attrs{"class", "wr-svg", "viewBox", "0 0 400 400", "width", "400", "role", "img", "aria-label", c.words()}),
		scale: roseRadius / (rings * step)}
	c.field(p)
	for k := 1.0; k <= rings; k++ {
		p.ring("wr-ring", k*step)
	}
	p.axes()
	c.site(p)
	for _, s := range c.Rose.Sides {
		sign, _ := mark(s.EndedBy)
		at := p.at(s.Speed, s.To)
		text(p.pic, "wr-mark wr-"+sideClass(s.EndedBy), at[0], at[1]+3.6, sign)
	}
	for k := 1.0; k <= rings; k++ {
		label := c.Units.Bare(format.Speed, k*step)
		if k == rings {
			label += "\u202fm/s"
		}
		text(p.pic, "wr-label", roseMiddle+5, roseMiddle-k*step*p.scale-3, label)
	}
	return node{p.pic}
}

// sideClass is the class of a mark: the colour goes with the sign.
func sideClass(l gust.Limit) string {
	switch l {
	case gust.Utilisation:
		return "a"
	case gust.Tilt, gust.Lean:
		return "b"
	case gust.Cone, gust.Slack, gust.WorkingLoad:
		return "c"
	case gust.None:
		return "d"
	}
	return "e"
}

// rosePen draws in a rose.
type rosePen struct {
	pic   *vugu.VGNode
	scale float64 // units for 1 m/s
}

// at is the place of a speed towards a direction.
func (p rosePen) at(speed, deg float64) [2]float64 {
	sin, cos := math.Sincos(deg * math.Pi / 180)
	if !(speed >= 0) {
		speed = 0
	}
	return [2]float64{roseMiddle + speed*p.scale*cos, roseMiddle - speed*p.scale*sin}
}

// field draws what is held.
func (c *Wind) field(p rosePen) {
	d := "M"
	for i, s := range c.Rose.Sides {
		if i > 0 {
			d += "L"
		}
		at := p.at(s.Speed, s.To)
		d += figure.Num(at[0]) + " " + figure.Num(at[1])
	}
	path(p.pic, "wr-held", d+"Z")
}

func (p rosePen) ring(class string, speed float64) {
	p.pic.AppendChild(figure.SVG("circle", figure.Attrs{"class", class, "cx", figure.Num(roseMiddle), "cy", figure.Num(roseMiddle), "r", figure.Num(speed * p.scale)}))
}

func (p rosePen) axes() {
	line(p.pic, "wr-axis", roseMiddle-roseRadius, roseMiddle, roseMiddle+roseRadius, roseMiddle)
	line(p.pic, "wr-axis", roseMiddle, roseMiddle-roseRadius, roseMiddle, roseMiddle+roseRadius)
	text(p.pic, "wr-way wr-start", roseMiddle+roseRadius+8, roseMiddle+4, "0° x")
	text(p.pic, "wr-way", roseMiddle, roseMiddle-roseRadius-16, "90° y")
	text(p.pic, "wr-way wr-end", roseMiddle-roseRadius-8, roseMiddle+4, "180°")
	text(p.pic, "wr-way", roseMiddle, roseMiddle+roseRadius+18, "270°")
}

// site draws the site's wind as an arrow and its gusts as a circle.
func (c *Wind) site(p rosePen) {
	if !(c.Rose.Mean > 0) {
		return
	}
	p.ring("wr-gust", c.Rose.Gust)
	to := c.Rose.Site.To
	tip := p.at(c.Rose.Mean, to)
	line(p.pic, "wr-wind", roseMiddle, roseMiddle, tip[0], tip[1])
	sin, cos := math.Sincos(to * math.Pi / 180)
	d := "M" + figure.Num(tip[0]) + " " + figure.Num(tip[1])
	for _, side := range [2]float64{4, -4} {
		d += "L" + figure.Num(tip[0]-9*cos-side*sin) + " " + figure.Num(tip[1]+9*sin-side*cos)
	}
	path(p.pic, "wr-tip", d+"Z")
}

// words are the rose for those who do not see it.
func (c *Wind) words() string {
	text := "The wind that is held, by the direction in which it blows."
	for _, e := range c.ends() {
		text += " " + e
	}
	return text
}

func (c *Wind) caption() string {
	text := "The wind that is held in each of " + strconv.Itoa(gust.Sides) + " directions, seen from above: it blows from the middle outwards, 0° along the payload's x axis and 90° along y. Each mark is what ends it."
	if c.Rose.Mean > 0 {
		text += " The arrow is the site's wind, the dashed circle its gusts from anywhere."
	}
	return text
}
