package way

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/vec"
)

// Of is the route of an assumed plan and what limits it. Arm is how far the outermost attachment is from the vertical
// through the centre of mass.
func Of(p plan.Plan, m *share.Model) (Route, Limits) {
	r := Route{Arm: 0.01} // m, when all attachments stand on that vertical: a turn is then nearly free
	for _, c := range m.Craft {
		d := c.At.Sub(m.Body.COM)
		r.Arm = math.Max(r.Arm, math.Hypot(d[0], d[1]))
	}
	for _, w := range p.Way.Points {
		f := Formation{Shape: w.Formation, Spacing: w.Spacing, Width: w.Width, Along: w.Along * math.Pi / 180}
		r.Points = append(r.Points, Point{At: w.At, Heading: w.Heading * math.Pi / 180, Time: w.Time, Stop: w.Pass == plan.Stop, Formation: f})
	}
	for _, b := range p.Way.Boxes {
		r.Boxes = append(r.Boxes, Box{Leg: b.Leg - 1, Min: open(b.Min, -1), Max: open(b.Max, 1)})
	}
	for _, o := range p.Way.Openings {
		clear := o.Clearance
		if math.IsNaN(clear) {
			clear = 0
		}
		r.Openings = append(r.Openings, Opening{At: o.At, Normal: o.Normal * math.Pi / 180, Width: o.Width, Height: o.Height, Clearance: clear})
	}
	limits := Limits{Utilisation: p.Limits.Utilisation, Speed: p.Way.SpeedMax}
	if math.IsNaN(limits.Speed) || limits.Speed == 0 {
		limits.Speed = math.Inf(1)
	}
	return r, limits
}

// open makes a corner's sides that were left out infinite.
func open(corner vec.V3, sign int) vec.V3 {
	for a, x := range corner {
		if math.IsNaN(x) {
			corner[a] = math.Inf(sign)
		}
	}
	return corner
}
