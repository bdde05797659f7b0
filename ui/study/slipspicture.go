package study

import (
	"math"
	"strconv"

	"github.com/vugu/vugu"

	"cohoist/core/unit"
	"cohoist/ui/figure"
	"cohoist/ui/format"
)

// Size of the histogram.
const (
	histWide, histHigh  = 640.0, 220.0
	histLeft, histRight = 14.0, 626.0
	histTop, histFoot   = 44.0, 182.0
)

func (c *SlipsSeen) histogram() vugu.Builder { return node{c.picture()} }

func (c *SlipsSeen) picture() *vugu.VGNode {
	h, limit := c.Run.seen.Histogram, c.Run.study.Plan.Limits.Utilisation
	first, last := len(h.Bins), 0
	most := 1
	for i, n := range h.Bins {
		if n > 0 {
			first, last, most = min(first, i), max(last, i), max(most, n)
		}
	}
	pic := image("sl-hist", c.words(), histWide, histHigh)
	if first > last {
		text(pic, "sl-quiet", histLeft, histTop, "No sample has a balance.")
		return pic
	}
	lo, hi := h.Width*float64(first), h.Width*float64(last+1)
	lo, hi = math.Min(lo, limit-h.Width), math.Max(hi, limit+h.Width)
	x := func(t float64) float64 { return histLeft + (histRight-histLeft)*(t-lo)/(hi-lo) }
	c.scale(pic, lo, hi, x)
	within, beyond := "", ""
	for i, n := range h.Bins {
		if n == 0 {
			continue
		}
		a, b := x(h.Width*float64(i)), x(h.Width*float64(i+1))
		high := (histFoot - histTop) * float64(n) / float64(most)
		d := "M" + figure.Num(a+0.4) + " " + figure.Num(histFoot) + "V" + figure.Num(histFoot-high) + "H" + figure.Num(b-0.4) + "V" + figure.Num(histFoot) + "Z"
		if h.Width*(float64(i)+0.5) > limit {
			beyond += d
		} else {
			within += d
		}
	}
	path(pic, "sl-within", within)
	path(pic, "sl-beyond", beyond)
	c.marks(pic, limit, x)
	return pic
}

// scale draws the axis.
func (c *SlipsSeen) scale(pic *vugu.VGNode, lo, hi float64, x func(float64) float64) {
	line(pic, "sl-axis", histLeft, histFoot, histRight, histFoot)
	step := figure.Round125((hi - lo) / 6 * 1.999)
	for k := math.Ceil(lo/step - 1e-9); k*step <= hi*(1+1e-12); k++ {
		line(pic, "sl-axis", x(k*step), histFoot, x(k*step), histFoot+4)
		text(pic, "sl-mid sl-quiet", math.Min(math.Max(x(k*step), histLeft+12), histRight-12), histFoot+17, unit.Figures(100*k*step, 4)+"\u202f%")
	}
	text(pic, "sl-mid sl-quiet", (histLeft+histRight)/2, histHigh-6, "of the hardest-working vehicle’s thrust")
}

// marks draws the limit, and what 5, 50 and 95 of 100 samples stay below.
func (c *SlipsSeen) marks(pic *vugu.VGNode, limit float64, x func(float64) float64) {
	line(pic, "sl-limit", x(limit), histTop-36, x(limit), histFoot)
	class, at := "sl-end", x(limit)-5
	if at < (histLeft+histRight)/2 {
		class, at = "sl-start", x(limit)+5
	}
	text(pic, class, at, histTop-27, "limit "+format.Share(limit))
	for i, name := range []string{"5", "half", "95"} {
		if q := c.Run.seen.Quantiles[2+i]; figure.Finite(q) { // of scatter.Levels
			line(pic, "sl-level", x(q), histTop-4, x(q), histFoot)
			text(pic, "sl-mid sl-quiet", x(q), histTop-8, name)
		}
	}
}

// words are the picture for those who do not see it.
func (c *SlipsSeen) words() string {
	return "Histogram of how hard the hardest-working vehicle works. " + c.Run.outcome()
}

// progress is how far a run is, of 100.
func (c *SlipsRun) progress() string {
	return strconv.FormatFloat(100*float64(c.Run.ran())/float64(c.Run.study.N), 'f', 1, 64)
}

// button is what the button of the run says, and does.
func (c *SlipsRun) button() (words, do string) {
	switch r := c.Run; {
	case r != nil && c.Fresh && r.going:
		return "Stop", "errors stop"
	case r != nil && c.Fresh && r.study.N == c.N && r.ran() < c.N:
		return "Go on", "errors on"
	}
	return "Run " + many(c.N) + " samples", "errors run"
}

func (c *SlipsRun) says() string { w, _ := c.button(); return w }
func (c *SlipsRun) does() string { _, d := c.button(); return d }

// state says how far it is.
func (c *SlipsRun) state() string {
	r := c.Run
	if r == nil {
		return "Not run yet."
	}
	text := many(r.ran()) + " of " + many(r.study.N) + " samples"
	if r.rate() > 0 {
		rate, _ := strconv.ParseFloat(strconv.FormatFloat(r.rate(), 'g', 2, 64), 64)
		text += ", " + many(int(math.Round(rate))) + " a second"
	}
	switch {
	case !c.Fresh:
		text += ". The plan has changed since."
	case r.going:
		text += " …"
	case r.ran() < r.study.N:
		text += ". Stopped."
	default:
		text += ". Done."
	}
	return text
}
