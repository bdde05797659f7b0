package patch

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/solve"
)

var nan = math.NaN()

// Area of what is held, m².
func (p Patch) Area() float64 { return area(p.Inner) }

// Sentence says where the centre of mass may stand, and how far from the edge it does.
func (p Patch) Sentence() string {
	switch {
	case p.Status == solve.NotRun:
		return "There is no safe patch: " + p.Note + "."
	case p.Status == solve.Infeasible && p.Least < math.Inf(1):
		return "There is no safe patch: " + p.Note + ". At the best place, " + point(p.Best) + " m, it would need " + share.Short(p.Least) + " of its thrust."
	case p.Status == solve.Infeasible:
		return "There is no safe patch: " + p.Note + "."
	case p.Status != solve.Optimal:
		return "The safe patch was not found: " + p.Note + "."
	}
	return p.extent() + " " + p.stand() + "."
}

// extent says how large a patch is.
func (p Patch) extent() string {
	switch len(p.Inner) {
	case 1:
		return "The centre of mass may stand at " + point(p.Inner[0]) + " m only: " + p.note() + "."
	case 2:
		return "The centre of mass may stand on a line " + share.Short(p.Inner[0].distance(p.Inner[1])) + " m long, from " + point(p.Inner[0]) + " to " +
			point(p.Inner[1]) + " m: " + p.note() + "."
	}
	return "The centre of mass may stand anywhere in a patch of " + share.Short(p.Area()) + " m²."
}

func (p Patch) note() string {
	if p.Note == "" {
		return "that is all there is"
	}
	return p.Note
}

// stand says where in it the present centre of mass is.
func (p Patch) stand() string {
	switch {
	case p.Edge > 0:
		return "As planned it stands " + share.Short(p.Edge) + " m inside; the nearest edge is towards " + angle(p.Toward) + " from the long side"
	case p.Edge < 0:
		return "As planned it stands " + share.Short(-p.Edge) + " m outside; the patch is towards " + angle(p.Toward) + " from the long side"
	}
	return "As planned it stands on the edge"
}

// Sentence says what is left of the patch whichever vehicle is lost.
func (l Losses) Sentence() string {
	switch {
	case l.Stopped:
		return "Stopped before all losses were asked."
	case l.All.Status == solve.Infeasible:
		return "No place serves the loss of any one vehicle: " + l.All.Note + "."
	case l.All.Status != solve.Optimal:
		return "What is left after a loss was not found: " + l.All.Note + "."
	}
	return "With any one vehicle lost: " + lower(l.All.Sentence()) + " The loss of " + l.Worst + " leaves it the least."
}

// lower makes a sentence go on.
func lower(s string) string { return "t" + s[1:] }

func point(c XY) string { return "(" + share.Short(c[0]) + ", " + share.Short(c[1]) + ")" }

// angle of a direction from payload x, anticlockwise.
func angle(d XY) string {
	a := math.Round(math.Atan2(d[1], d[0]) * 180 / math.Pi)
	if a == -180 {
		a = 180
	}
	return share.Short(a) + "°"
}
