package study

import (
	"math"
	"strconv"

	"github.com/vugu/vugu"

	"cohoist/core/place"
	"cohoist/ui/chart"
	"cohoist/ui/figure"
	"cohoist/ui/format"
)

// mostPairs is how many placements of a front are shown at most, evenly spread over it.
const mostPairs = 12

// pairRow is a placement of a front.
type pairRow struct {
	I             int // in the front
	N             string
	First, Second string
	Places        string
	x, y          float64
	now           bool
}

// front is the front as a component.
func (f *found) front(t *Turn) *WhereFront {
	w := &WhereFront{Fresh: f.current(t), Names: [2]string{capital(goalName(f.goals[0])), capital(goalName(f.goals[1]))}, units: f.kept.units, goals: f.goals}
	n := len(f.reply.Front)
	shown := min(n, mostPairs)
	for k := range shown {
		i := k
		if n > shown {
			i = int(math.Round(float64(k) * float64(n-1) / float64(shown-1)))
		}
		p := f.reply.Front[i]
		r := pairRow{I: i, N: strconv.Itoa(k + 1), First: f.show1(f.goals[0], p.Values[0]), Second: f.show1(f.goals[1], p.Values[1]), x: inUnits(f.goals[0], p.Values[0]), y: inUnits(f.goals[1], p.Values[1])}
		r.now = f.has(t, p.Places)
		for m, at := range p.Places {
			if m > 0 {
				r.Places += "; "
			}
			r.Places += f.of.Team[m].ID + " " + spot(f.kept.units, at)
		}
		w.Rows = append(w.Rows, r)
	}
	if n > shown {
		w.Lead = "Of " + strconv.Itoa(n) + " placements " + strconv.Itoa(shown) + " are shown, evenly spread. "
	}
	w.Lead += "None beats another in both."
	return w
}

// inUnits is a value as an axis shows it: percent, or N m.
func inUnits(g place.Goal, v float64) float64 {
	if g == place.Utilisation {
		return 100 * v
	}
	return v
}

// chart draws the front, its points as buttons that take them.
func (w *WhereFront) chart() vugu.Builder {
	s := chart.Series{}
	for _, r := range w.Rows {
		s.X, s.Y = append(s.X, r.x), append(s.Y, r.y)
	}
	l := &chart.Line{Title: w.Names[1] + ", " + axisUnit(w.goals[1]), Summary: w.Lead, X: chart.Axis{Title: goalName(w.goals[0]) + ", " + axisUnit(w.goals[0])}, Series: []chart.Series{s}}
	if w.Fresh {
		l.Mark = func(k int, x, y float64) *vugu.VGNode { return w.Rows[k].button(x, y) }
	}
	return l
}

func axisUnit(g place.Goal) string {
	if g == place.Utilisation {
		return "%"
	}
	return format.SI.Unit(format.Moment)
}

// pointSize is the side of a point's button, in units of the chart.
const pointSize = 20.0

// button is the point of a placement in the chart.
func (r pairRow) button(x, y float64) *vugu.VGNode {
	b := figure.HTML("button", figure.Attrs{"type", "button", "class", "wh-point", "id", "where-point-" + r.N, "data-do", "where front " + strconv.Itoa(r.I),
		"aria-label", "Take placement " + r.N + ": " + r.First + ", " + r.Second}, figure.Text(r.N))
	return figure.SVG("foreignObject", figure.Attrs{"x", figure.Num(x - pointSize/2), "y", figure.Num(y - pointSize/2), "width", figure.Num(pointSize), "height", figure.Num(pointSize)}, b)
}

// class is the row's: the placement that the plan has is marked.
func (r pairRow) class() string {
	if r.now {
		return "tr wh-least"
	}
	return "tr"
}
