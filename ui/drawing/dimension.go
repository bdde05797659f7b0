package drawing

import (
	"math"
	"strconv"
	"unicode/utf8"

	"cohoist/core/vec"
	"cohoist/ui/figure"
)

// dimension draws an aligned dimension of a–b: extension lines off screen units to the right of the
// way from a to b (below, when b lies to the right of a), the line between, and the text where part
// of the way, 0 to 1, says.
func (p *pen) dimension(a, b Point, off float64, text string, part float64) {
	dx, dy := b.X-a.X, b.Y-a.Y
	n := math.Hypot(dx, dy)
	if !(n > 2) || !drawable(a) || !drawable(b) {
		return
	}
	if w := 5.8 * float64(utf8.RuneCountInString(text)); part == 0.5 && n < w { // the text stands beyond the end
		part = 1 + (w/2+4)/n
	}
	dx, dy = dx/n, dy/n
	nx, ny := -dy, dx // to the right of the way, y running down
	out := func(q Point, d float64) Point { return Point{q.X + nx*d, q.Y + ny*d} }
	p.line(classDim, out(a, 3), out(a, off+4))
	p.line(classDim, out(b, 3), out(b, off+4))
	s, e := out(a, off), out(b, off)
	p.line(classDim, s, e)
	if part > 1 {
		end := n*(part-1) + 2.9*float64(utf8.RuneCountInString(text))
		p.line(classDim, e, Point{e.X + dx*end, e.Y + dy*end})
	}
	if n > 24 {
		head := func(q Point, k float64) {
			p.poly(classDimHead, q, Point{q.X + k*(7*dx) + 1.6*nx, q.Y + k*(7*dy) + 1.6*ny},
				Point{q.X + k*(7*dx) - 1.6*nx, q.Y + k*(7*dy) - 1.6*ny})
		}
		head(s, 1)
		head(e, -1)
	} else {
		for _, q := range [2]Point{s, e} { // too short for heads: oblique strokes
			p.line(classDim, Point{q.X - 3*(dx+nx), q.Y - 3*(dy+ny)}, Point{q.X + 3*(dx+nx), q.Y + 3*(dy+ny)})
		}
	}
	p.alongside(textSmall, text, Point{s.X + dx*n*part, s.Y + dy*n*part}, dx, dy, 4)
}

// alongside writes text along a direction, gap above it, never upside down.
func (p *pen) alongside(class, text string, at Point, dx, dy, gap float64) {
	if dx < -1e-9 || math.Abs(dx) <= 1e-9 && dy > 0 {
		dx, dy = -dx, -dy // read from the left or from below
	}
	slope := math.Round(math.Atan2(dy, dx)*180/math.Pi*10) / 10
	p.sloped(class, text, Point{at.X + gap*dy, at.Y - gap*dx}, slope)
}

// payloadLength dimensions the payload's length in the elevation, below it.
func (c Camera) payloadLength(p *pen, s *Scene, u Units) {
	if !s.HasPay {
		return
	}
	y := (s.PayMin[1] + s.PayMax[1]) / 2
	a := c.At(s.Turn.Mul(vec.V3{s.PayMin[0], y, s.PayMin[2]}))
	b := c.At(s.Turn.Mul(vec.V3{s.PayMax[0], y, s.PayMin[2]}))
	part := 0.5
	if g := c.At(s.COM); s.HasCOM && s.Weight > 0 && b.X-a.X > 1 { // beside the weight arrow
		t := (g.X - a.X) / (b.X - a.X)
		if w := 26 / (b.X - a.X); math.Abs(t-0.5) < w && t > 0 && t < 1 {
			part = t / 2
			if t < 0.5 {
				part = (1 + t) / 2
			}
			if b.X-a.X < 100 { // no room in a half: beyond the end
				part = 1 + 24/(b.X-a.X)
			}
		}
	}
	p.dimension(a, b, 16, u.length(s.PayMax[0]-s.PayMin[0]), part)
}

// payloadWidth dimensions the payload's width in the plan, left of everything.
func (c Camera) payloadWidth(p *pen, s *Scene, left float64, u Units) {
	if !s.HasPay || s.Lean > 0.05 {
		return
	}
	a := c.At(vec.V3{s.PayMin[0], s.PayMax[1], 0})
	b := c.At(vec.V3{s.PayMin[0], s.PayMin[1], 0})
	if b.Y-a.Y < 9 {
		return
	}
	p.dimension(a, b, a.X-math.Max(left-12, 14), u.length(s.PayMax[1]-s.PayMin[1]), 0.5)
}

// Cables up to which each has its length written on it when they differ.
const cablesLabelled = 12

// cableLengths writes the length along the cables: once, on the leftmost, when they are all the same.
func (c Camera) cableLengths(p *pen, s *Scene, u Units) {
	first, n, same := -1, 0, true
	for i, v := range s.Craft {
		if !v.Cable {
			continue
		}
		n++
		if first < 0 {
			first = i
			continue
		}
		same = same && u.length(length(v)) == u.length(length(s.Craft[first]))
		if a, b := c.At(v.Centre), c.At(s.Craft[first].Centre); a.X < b.X-0.5 {
			first = i
		}
	}
	var taken []Point
	write := func(v Craft, text string) {
		a, b := c.At(v.Attach), c.At(v.Centre)
		d := math.Hypot(b.X-a.X, b.Y-a.Y)
		if d < 40 {
			return
		}
		dx, dy := (b.X-a.X)/d, (b.Y-a.Y)/d
		for _, gap := range [2]float64{5, -13} { // on one side, else on the other
			at := Point{(a.X + b.X) / 2, (a.Y + b.Y) / 2}
			q := Point{at.X + gap*dy, at.Y - gap*dx}
			free := true
			for _, t := range taken {
				free = free && math.Hypot(t.X-q.X, t.Y-q.Y) > 15
			}
			if free {
				taken = append(taken, q)
				p.alongside(textSmall, text, at, dx, dy, gap)
				return
			}
		}
	}
	switch {
	case n == 0:
	case same && n > 1:
		write(s.Craft[first], whole(n)+" × "+u.length(length(s.Craft[first])))
	case n <= cablesLabelled:
		for _, v := range s.Craft {
			if v.Cable {
				write(v, u.length(length(v)))
			}
		}
	}
}

func length(v Craft) float64 { return v.Centre.Sub(v.Attach).Norm() }

// centreLines draws the payload's centre lines through its origin.
func (c Camera) centreLines(p *pen, s *Scene) {
	if !s.HasPay {
		return
	}
	for k := range 3 {
		a, b := vec.V3{}, vec.V3{}
		over := 14 / c.Scale
		a[k], b[k] = math.Min(s.PayMin[k], 0)-over, math.Max(s.PayMax[k], 0)+over
		pa, pb := c.At(s.Turn.Mul(a)), c.At(s.Turn.Mul(b))
		if math.Hypot(pb.X-pa.X, pb.Y-pa.Y) > 30 {
			p.line(classCentre, pa, pb)
		}
	}
}

// bars draws the scale bar and, when there are forces, the bar of newtons.
func (f Frame) bars(p *pen, u Units) {
	y := f.PlanBottom + 24
	in := orUnit(u.Length, "m")
	long := figure.Round125(96 / f.Scale / in.Size)
	w := long * in.Size * f.Scale
	x := 84.0
	parts := 5
	if lead := strconv.FormatFloat(long, 'e', 0, 64); lead[0] == '2' {
		parts = 4
	}
	for i := range parts {
		class := classBar
		if i%2 == 1 {
			class = classBarEmpty
		}
		l, r := x+w*float64(i)/float64(parts), x+w*float64(i+1)/float64(parts)
		p.poly(class, Point{l, y}, Point{r, y}, Point{r, y + 4}, Point{l, y + 4})
	}
	p.text(textSmall, "0", Point{x, y + 16})
	p.text(textSmall, u.length(long*in.Size), Point{x + w, y + 16})
	if f.Force == 0 {
		return
	}
	fu := orUnit(u.Force, "N")
	n := figure.Round125(80 / f.Force / fu.Size)
	w = n * fu.Size * f.Force
	x = 236
	p.arrow(classForce, classForceHead, Point{x, y + 2}, Point{x + w, y + 2}, 8)
	p.text(textSmall, "force "+u.force(n*fu.Size), Point{x + w/2, y + 16})
}
