package way

import (
	"math"

	"cohoist/core/vec"
)

// Opening is a door or a window in an upright wall that goes on to all sides.
type Opening struct {
	At            vec.V3  // its middle, m, level axes
	Normal        float64 // radians: the direction across the wall
	Width, Height float64 // m
	Clearance     float64 // m, kept to its sides
}

// across is the direction along the wall, to the left of the normal.
func (o Opening) across() vec.V3 { return vec.V3{-math.Sin(o.Normal), math.Cos(o.Normal), 0} }

// depth is how far a point is behind the wall.
func (o Opening) depth(p vec.V3) float64 {
	return vec.V3{math.Cos(o.Normal), math.Sin(o.Normal), 0}.Dot(p.Sub(o.At))
}

// Pass is what a team takes up of an opening, m from its middle: across to the left, and upwards, (20.24).
type Pass struct {
	From, To               float64 // s; From > To: nothing comes into the wall
	Right, Left, Low, High float64
	Room                   float64 // m to the nearest side; negative: it hits
	What                   string  // is nearest there: a vehicle's id, empty for the payload
	Cable                  bool    // and it is that vehicle's cable, not its rotors
	Side                   string  // left, right, lower or upper
	When                   float64 // s
}

// Width and Height are what is taken up.
func (p Pass) Width() float64  { return p.Left - p.Right }
func (p Pass) Height() float64 { return p.High - p.Low }

// fine is how far the payload goes between two looks at an opening, m.
const fine = 0.03

// pass looks at every instant at which something is in the wall, and often between them.
func (w *watch) pass(o Opening) Pass {
	inf := math.Inf(1)
	p := Pass{From: inf, To: -inf, Right: inf, Left: -inf, Low: inf, High: -inf, Room: inf, When: math.NaN()}
	before := 0.0
	for k, i := range w.seen {
		if i.Places == nil {
			continue
		}
		lo, hi := w.span(o, i)
		in := lo <= 0 && hi >= 0
		if in {
			w.into(o, &p, i)
		}
		side := math.Copysign(1, hi)
		if k > 0 && (in || before == 0 || side != before) {
			w.between(o, &p, k)
		}
		before = side
		if in {
			before = 0
		}
	}
	return p
}

// between looks between an instant and the one before.
func (w *watch) between(o Opening, p *Pass, k int) {
	a, b := w.times[k-1], w.times[k]
	n := int(math.Min(24, math.Ceil(w.seen[k].State.At.Sub(w.seen[k-1].State.At).Norm()/fine)))
	for j := 1; j < n; j++ {
		i, ok := w.at(a + (b-a)*float64(j)/float64(n))
		if !ok {
			continue
		}
		if lo, hi := w.span(o, i); lo <= 0 && hi >= 0 {
			w.into(o, p, i)
		}
	}
}

// span is how far the team reaches before and behind the wall.
func (w *watch) span(o Opening, i Instant) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	put := func(p vec.V3, r float64) {
		d := o.depth(p)
		lo, hi = math.Min(lo, d-r), math.Max(hi, d+r)
	}
	for _, body := range w.form {
		for _, p := range body {
			put(w.moved(i, p), 0)
		}
	}
	for k, p := range i.Places {
		put(p, w.m.Craft[k].Vehicle.Reach)
	}
	return lo, hi
}

// moved is where a point of the payload is, level axes.
func (w *watch) moved(i Instant, p vec.V3) vec.V3 {
	return i.State.At.Add(i.Motion.Attitude.Mul(p.Sub(w.m.Body.COM)))
}

// into notes what of the team is in the wall at an instant: bodies and cables where they cross it, and the whole of a
// disc of rotors that touches it.
func (w *watch) into(o Opening, p *Pass, i Instant) {
	for _, body := range w.form {
		at := make([]vec.V3, len(body))
		for n, q := range body {
			at[n] = w.moved(i, q)
			for _, r := range at[:n] {
				w.cut(o, p, at[n], r, Pass{When: i.Time})
			}
		}
	}
	turn := i.Motion.Attitude
	for k, at := range i.Places {
		c := &w.m.Craft[k]
		name := Pass{When: i.Time, What: c.ID}
		up := turn.Mul(i.Parts[k].Thrust).Unit()
		half := func(axis vec.V3) float64 {
			x := up.Dot(axis)
			return c.Vehicle.Reach * math.Sqrt(math.Max(0, 1-float64(x*x)))
		}
		normal := vec.V3{math.Cos(o.Normal), math.Sin(o.Normal), 0}
		if math.Abs(o.depth(at)) <= half(normal) {
			wide, high := o.across().Scale(half(o.across())), vec.V3{0, 0, half(vec.V3{0, 0, 1})}
			for _, q := range [...]vec.V3{wide, wide.Scale(-1), high, high.Scale(-1)} {
				p.put(o, at.Add(q), name)
			}
		}
		if !c.Rigid {
			name.Cable = true
			w.cut(o, p, w.moved(i, c.At), at, name)
		}
	}
}

// cut notes where a straight line between two points crosses the wall.
func (w *watch) cut(o Opening, p *Pass, a, b vec.V3, what Pass) {
	x, y := o.depth(a), o.depth(b)
	if x*y > 0 || x == y {
		return
	}
	p.put(o, a.Add(b.Sub(a).Scale(x/(x-y))), what)
}

// put notes a point in the wall.
func (p *Pass) put(o Opening, at vec.V3, what Pass) {
	u, v := o.across().Dot(at.Sub(o.At)), at[2]-o.At[2]
	p.From, p.To = math.Min(p.From, what.When), math.Max(p.To, what.When)
	p.Right, p.Left = math.Min(p.Right, u), math.Max(p.Left, u)
	p.Low, p.High = math.Min(p.Low, v), math.Max(p.High, v)
	sides := [...]struct {
		name string
		room float64
	}{{"left", o.Width/2 - u}, {"right", o.Width/2 + u}, {"upper", o.Height/2 - v}, {"lower", o.Height/2 + v}}
	for _, s := range sides {
		if s.room < p.Room {
			p.Room, p.Side, p.What, p.Cable, p.When = s.room, s.name, what.What, what.Cable, what.When
		}
	}
}
