package study

import (
	"math"

	"github.com/vugu/vugu"

	"cohoist/core/unit"
	"cohoist/core/way"
	"cohoist/ui/figure"
)

// strip is one plot along the time of a way.
type strip struct {
	name, class string
	of          func(way.Instant) float64
	limit       float64 // NaN or infinite: none
	least       bool    // it is the least that is allowed
	show        func(float64) string
}

// lasts is how long the frames last, s.
func (j *journey) lasts() float64 { return j.frames[len(j.frames)-1].Time }

// Size of the plots.
const stripLeft, stripRight, stripHigh, stripGap, stripTop = 16.0, 664.0, 92.0, 30.0, 16.0

func (j *journey) strips() []strip {
	list := []strip{
		{"Hardest-working vehicle", "wy-a", func(f way.Instant) float64 { u, _ := j.hardest(f); return u }, j.limits.Utilisation, false, used},
		{"Speed of the payload", "wy-b", func(f way.Instant) float64 { return f.State.Velocity.Norm() }, j.limits.Speed, false, func(x float64) string { return amount(x, "m/s") }},
	}
	if j.model.Cables {
		list = append(list, strip{"Cable that leans most", "wy-c", j.lean, j.model.Plan.Limits.Cone * math.Pi / 180, false, inDegrees})
	}
	if j.name != planned {
		if !j.model.Cables {
			list = append(list, strip{"Payload tilts", "wy-c", func(f way.Instant) float64 { return math.Acos(min(1, max(-1, f.Motion.Attitude[2][2]))) }, math.NaN(), false, inDegrees})
		}
		return append(list, strip{"Payload off its way", "wy-d", j.off, math.NaN(), false, j.units.Small})
	}
	tilt := math.Inf(1)
	for _, c := range j.model.Craft {
		tilt = math.Min(tilt, c.Vehicle.TiltMax)
	}
	list = append(list, strip{"Vehicle that tilts most", "wy-d", j.tilt, tilt, false, inDegrees})
	if j.model.Cables && !math.IsInf(j.watched.Least, 1) {
		list = append(list, strip{"Nearest two vehicles", "wy-a", apartOf, j.model.Plan.Limits.Separation, true, j.units.Small})
	}
	return list
}

func (c *WayShow) plot() vugu.Builder { return node{c.Journey.plots()} }

// plots draws the strips under one another over one axis of time, with an upright line at the instant that is drawn.
func (j *journey) plots() *vugu.VGNode {
	list := j.strips()
	high := stripTop + float64(len(list))*(stripHigh+stripGap) + 46
	pic := image("wy-svg wy-plot", j.plotWords(list), stageWide, high)
	long := j.lasts()
	from := j.frames[0].Time
	x := func(t float64) float64 { return stripLeft + math.Min((t-from)/(long-from), 1)*(stripRight-stripLeft) }
	foot := high - 46
	for k := range len(j.legs) + 1 {
		line(pic, "wy-joint", x(j.found.Start(k)), stripTop+4, x(j.found.Start(k)), foot)
		if k == 0 || x(j.found.Start(k))-x(j.found.Start(k-1)) > 12 {
			text(pic, "bm-mid wy-quiet", x(j.found.Start(k)), stripTop, digits(k+1))
		}
	}
	var ys []func(float64) float64
	for k, s := range list {
		ys = append(ys, j.strip(pic, s, x, stripTop+float64(k)*(stripHigh+stripGap)+stripGap))
	}
	step := figure.Round125((long - from) / 6 * 1.999)
	for t := math.Ceil(from/step) * step; t <= long*(1+1e-9); t += step {
		text(pic, "bm-mid wy-quiet", x(t), foot+17, unit.Figures(t, 4))
	}
	text(pic, "bm-mid wy-quiet", (stripLeft+stripRight)/2, foot+39, "time, s")
	frames := figure.SVG("g", figure.Attrs{"data-frames", j.name})
	for i, f := range j.frames {
		g := figure.SVG("g", nil)
		if i == j.worst {
			g.Attr = append(g.Attr, vugu.VGAttribute{Key: "data-on", Val: ""})
		}
		line(g, "wy-now", x(f.Time), stripTop+6, x(f.Time), foot)
		for k, s := range list {
			if v := s.of(f); figureOf(v) {
				circle(g, "wy-dot", dot{x(f.Time), ys[k](v)}, 3)
			}
		}
		frames.AppendChild(g)
	}
	pic.AppendChild(frames)
	return pic
}

// strip draws one plot and gives its scale.
func (j *journey) strip(pic *vugu.VGNode, s strip, x func(float64) float64, top float64) func(float64) float64 {
	most, least, limited := 0.0, math.Inf(1), figureOf(s.limit)
	for _, f := range j.frames {
		if v := s.of(f); figureOf(v) {
			most, least = math.Max(most, v), math.Min(least, v)
		}
	}
	roof := math.Max(most, 1e-9)
	if limited && s.limit < 3*roof {
		roof = math.Max(roof, s.limit)
	}
	y := func(v float64) float64 { return top + 4 + (1-v/(1.05*roof))*(stripHigh-8) }
	line(pic, "wy-zero", stripLeft, y(0), stripRight, y(0))
	d, broken := "", true
	for _, f := range j.frames {
		v := s.of(f)
		if !figureOf(v) {
			broken = true
			continue
		}
		letter := "L"
		if broken {
			letter = "M"
		}
		d += letter + figure.Num(x(f.Time)) + " " + figure.Num(y(v))
		broken = false
	}
	path(pic, "wy-line "+s.class, d)
	title := s.name + ": up to " + s.show(most)
	if s.least {
		title = s.name + ": down to " + s.show(math.Min(least, j.watched.Least))
	}
	if limited {
		title += "; limit " + s.show(s.limit)
		if s.limit <= roof {
			line(pic, "wy-limit", stripLeft, y(s.limit), stripRight, y(s.limit))
		}
	}
	text(pic, "wy-name", stripLeft, top-4, title)
	return y
}

// plotWords are the plots for those who do not see them.
func (j *journey) plotWords(list []strip) string {
	words := "Along " + lasts(j.lasts()) + "."
	for _, s := range list {
		least, most := math.Inf(1), math.Inf(-1)
		for _, f := range j.frames {
			if v := s.of(f); figureOf(v) {
				least, most = math.Min(least, v), math.Max(most, v)
			}
		}
		words += " " + s.name + ": " + s.show(least) + " to " + s.show(most)
		if figureOf(s.limit) {
			words += ", limit " + s.show(s.limit)
		}
		words += "."
	}
	return words
}

// last is the last frame's number, and ms how long one lasts.
func (c *WayShow) last() string { return digits(len(c.Journey.frames) - 1) }

func (c *WayShow) ms() string {
	return figure.Num(1000 * (c.Journey.lasts() - c.Journey.frames[0].Time) / float64(len(c.Journey.frames)-1))
}
