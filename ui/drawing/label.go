package drawing

import (
	"math"
	"unicode/utf8"
)

// A rect is a place on the screen that is taken.
type rect struct{ x0, y0, x1, y1 float64 }

func (a rect) meets(b rect) bool { return a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1 }

// labels finds places for texts so that none covers another.
type labels struct {
	pen    *pen
	taken  []rect
	within rect
}

// Size of the text of labels: a row, and the mean width of a letter.
const (
	row    = 12.5
	letter = 6.9
)

func boxAt(at Point, text string) rect {
	w := float64(utf8.RuneCountInString(text)) * letter / 2
	return rect{at.X - w, at.Y - row + 2.5, at.X + w, at.Y + 2.5}
}

// take marks a place as covered.
func (l *labels) take(r rect) { l.taken = append(l.taken, r) }

// put writes text centred at the first of the places that is free, with a leader to the point it
// names when it had to go to its side. Without a free place it is left out, or put at the first when it must be.
func (l *labels) put(class, text string, of Point, must bool, places ...Point) {
	if text == "" || len(places) == 0 {
		return
	}
	w := float64(utf8.RuneCountInString(text)) * letter
	try := append([]Point(nil), places...)
	for _, dx := range [4]float64{0.6 * w, -0.6 * w, 1.1 * w, -1.1 * w} {
		for _, q := range places {
			try = append(try, Point{q.X + dx, q.Y})
		}
	}
	best, found := l.inside(places[0], text), false
	for _, q := range try {
		q = l.inside(q, text)
		if b := boxAt(q, text); !l.covered(b) {
			best, found = q, true
			break
		}
	}
	if !found && !must {
		return
	}
	l.take(boxAt(best, text))
	if dx := best.X - of.X; math.Abs(dx) > 0.4*w {
		q := Point{best.X - math.Copysign(w/2+1, dx), best.Y - 4}
		if math.Abs(dx) < w/2 { // above or below it still
			q = Point{best.X, best.Y + 2}
		}
		l.pen.line(classDim, of, q)
	}
	l.pen.text(class, text, best)
}

// inside moves a place just so far that its text stays within the view.
func (l *labels) inside(q Point, text string) Point {
	b := boxAt(q, text)
	q.X += math.Max(0, l.within.x0-b.x0) - math.Max(0, b.x1-l.within.x1)
	q.Y += math.Max(0, l.within.y0-b.y0) - math.Max(0, b.y1-l.within.y1)
	return q
}

func (l *labels) covered(b rect) bool {
	for _, t := range l.taken {
		if b.meets(t) {
			return true
		}
	}
	return false
}

// around lists places about a point: rows over it or under it, under first when it says so.
func around(at Point, up, down float64, under bool) []Point {
	over := []Point{{at.X, at.Y - up}, {at.X, at.Y - up - row}}
	below := []Point{{at.X, at.Y + down + row - 2}, {at.X, at.Y + down + 2*row - 2}}
	if under {
		over, below = below, over
	}
	out := []Point{over[0], over[1], below[0], below[1]}
	for _, k := range [4]float64{2, 3, 4, 5} {
		out = append(out, Point{at.X, at.Y - up - row*k})
	}
	return out
}

// Labels of vehicles in one view; beyond, only those that matter have one.
const labelled = 24

// names labels the vehicles: id and utilisation, and "over" beyond the limit. short leaves the
// utilisation of the sound ones to the other views.
func (c Camera) names(l *labels, s *Scene, short bool, perN float64) {
	c.keepClear(l, s, perN)
	plan, middle := c.Near[2] > 0.99, c.At(s.Turn.Mul(s.PayMin.Add(s.PayMax).Scale(0.5))).Y
	n := 0
	for _, pass := range [2]bool{true, false} { // those over the limit and the selected one first
		for i, v := range s.Craft {
			urgent := s.Over(v) || i == s.Selected
			if urgent != pass || n >= labelled || !pass && len(s.Craft) > labelled {
				continue
			}
			n++
			text, class := v.ID, textID
			if utf8.RuneCountInString(text) > 14 {
				text = string([]rune(text)[:13]) + "…"
			}
			if i == s.Selected {
				class = textPicked
			}
			if q := percent(v.Use); q != "" && !(short && !s.Over(v)) {
				text += "\u2002" + q
			}
			if s.Over(v) {
				text += ", over"
				class = textOver
			}
			tall := math.Abs(c.Up.Dot(v.Axes.T()[2]))
			r := v.reach() * c.Scale * math.Sqrt(math.Max(0, 1-tall*tall))
			r = math.Max(r, 5)
			if s.Over(v) {
				r = math.Max(r, overMark)
			} else if i == s.Selected {
				r = math.Max(r, pickedMark)
			}
			up, at := r, c.At(v.Centre)
			if tip, ok := c.tip(v, perN); ok && !v.Cable && tip.Y < at.Y {
				up = math.Max(up, at.Y-tip.Y)
			}
			l.put(class, text, at, urgent, around(at, up+5, r+2, plan && at.Y > middle+8)...)
		}
	}
}

// keepClear marks where vehicles and force arrows stand as taken.
func (c Camera) keepClear(l *labels, s *Scene, perN float64) {
	for i, v := range s.Craft {
		if i == labelled {
			return
		}
		a, m := c.At(v.Attach), c.At(v.Centre)
		if b, ok := c.tip(v, perN); ok {
			l.take(rect{math.Min(a.X, b.X) - 3, math.Min(a.Y, b.Y) - 2, math.Max(a.X, b.X) + 3, math.Max(a.Y, b.Y)})
		}
		tall := c.Up.Dot(v.Axes.T()[2])
		r := v.reach() * c.Scale
		h := math.Max(r*math.Sqrt(math.Max(0, 1-tall*tall)), 3)
		l.take(rect{m.X - 0.8*r, m.Y - h, m.X + 0.8*r, m.Y + h})
	}
}
