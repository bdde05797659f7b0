package study

import (
	"math"
	"strconv"

	"github.com/vugu/vugu"

	"cohoist/core/unit"
	"cohoist/ui/chart"
)

// picture is the map as a component.
func (w *WhereCost) picture() vugu.Builder { return &costMap{w.cost, w.c} }

// shade is a band in the legend.
type shade struct {
	Band, Name string
	Over       bool
}

// legend are the bands that occur.
func (w *WhereCost) legend() []shade {
	var out []shade
	for i, name := range w.cost.names {
		for _, v := range w.cost.values {
			if w.cost.band(v) == i {
				out = append(out, shade{strconv.Itoa(i), name, i >= within})
				break
			}
		}
	}
	return out
}

// highest is the utilisation up to which the chart draws, in percent.
const highest = 150

// chart is the utilisation over the place along a bar.
func (w *WhereCost) chart() vugu.Builder {
	s, u := w.cost, w.c.units
	curve, limit := chart.Series{Name: "worst"}, chart.Series{Name: "limit"}
	step := max(1, len(s.values)/coarseLine)
	for i, v := range s.values {
		if i%step > 0 && i < len(s.values)-1 {
			continue
		}
		x := s.at(i)[s.axis] / unit.Scale(u.Length)
		if v = 100 * v; v > highest {
			v = math.NaN()
		}
		if i == 0 || i == len(s.values)-1 {
			limit.X, limit.Y = append(limit.X, x), append(limit.Y, 100*s.limit)
		}
		curve.X, curve.Y = append(curve.X, x), append(curve.Y, v)
	}
	return &chart.Line{Title: "Worst utilisation as " + w.Who + " moves, %", Summary: s.words(w.c), X: chart.Axis{Title: axisName(s.axis) + " of " + w.Who + ", " + u.Length},
		Series: []chart.Series{curve, limit}, Now: w.c.plan.Team[s.who].Attach[s.axis] / unit.Scale(u.Length), NowName: "now"}
}
