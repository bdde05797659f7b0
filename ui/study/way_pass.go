package study

import (
	"errors"
	"math"
	"strconv"

	"cohoist/core/plan"
	"cohoist/core/solve"
	"cohoist/core/vec"
	"cohoist/core/way"
)

// passes are the buttons of the openings that can be passed: there is a way, and a leg of it crosses the wall.
func passes(p plan.Plan) (list []string) {
	for i, o := range p.Way.Openings {
		if crossing(p.Way.Points, o) >= 0 {
			list = append(list, strconv.Itoa(i+1))
		}
	}
	return list
}

// behind is how far a place is behind an opening's wall, m.
func behind(o plan.Opening, at vec.V3) float64 {
	sin, cos := math.Sincos(o.Normal * math.Pi / 180)
	return vec.V3{cos, sin, 0}.Dot(at.Sub(o.At))
}

// crossing is the first leg from before the wall of an opening to behind it, counted from 0; −1: there is none.
func crossing(points []plan.Waypoint, o plan.Opening) int {
	for k := 1; k < len(points); k++ {
		if a, b := behind(o, points[k-1].At), behind(o, points[k].At); a*b < 0 || b == 0 && k < len(points)-1 {
			return k - 1
		}
	}
	return -1
}

// aside is how many times as far from the wall as the approach's first waypoint those of the way stay: the turn and the change of
// formation need room.
const aside = 1.5

// pass puts the waypoints of an approach in place of those near an opening, and its boxes on the legs between them.
func (w *ways) pass(t *Turn, which string) {
	p := t.Plan.Clone()
	n, err := strconv.Atoi(which)
	if err != nil || n < 1 || n > len(p.Way.Openings) {
		return
	}
	o := p.Way.Openings[n-1]
	m, leg := t.model(), crossing(p.Way.Points, o)
	if m == nil || leg < 0 {
		return
	}
	s := solve.NewSolver()
	full, _ := plan.Assume(p)
	r, limits := way.Of(full, m)
	heading := 0.0
	for _, q := range p.Way.Points[:leg+1] {
		if !math.IsNaN(q.Heading) {
			heading = q.Heading * math.Pi / 180
		}
	}
	points, box, err := r.Approach(r.Openings[n-1], p.Way.Points[leg].At, heading, m, m.Share(s).Apart, formOf(m.Plan.Payload), limits, s)
	if err != nil {
		why := err.Error()
		var at *way.FormError
		if errors.As(err, &at) {
			why = "the team cannot pass opening " + which + ": " + at.Why
		}
		w.refused, w.of = capital(why)+".", wayText(t.Plan, t.Units)
		return
	}
	w.refused = ""
	near := aside * math.Abs(behind(o, points[0].At))
	before, after := []plan.Waypoint{}, []plan.Waypoint{}
	for k, q := range p.Way.Points {
		ends := k == 0 || k == len(p.Way.Points)-1
		switch far := math.Abs(behind(o, q.At)) > near; {
		case k <= leg && (far || ends):
			before = append(before, q)
		case k > leg && (far || ends):
			after = append(after, q)
		}
	}
	from := len(before)
	p.Way.Boxes = spared(p.Way.Boxes, from, len(p.Way.Points)-len(after), from+3)
	for k, q := range points {
		one := plan.Waypoint{At: tidy(q.At), Heading: tenth(q.Heading * 180 / math.Pi), Time: math.NaN(), Spacing: math.NaN(), Width: math.NaN(), Along: math.NaN()}
		if q.Formation.Shape == plan.InLine {
			one.Formation, one.Spacing, one.Width, one.Along = plan.InLine, q.Formation.Spacing, q.Formation.Width, o.Normal
		}
		before = append(before, one)
		if k > 0 {
			p.Way.Boxes = append(p.Way.Boxes, plan.Corridor{Leg: from + k, Min: tidy(box.Min), Max: tidy(box.Max)})
		}
	}
	p.Way.Points = append(before, after...)
	t.Take(p, "way-points")
}

// spared are the boxes of legs that stay as they are: those that end before the new points, and those that begin behind them.
func spared(boxes []plan.Corridor, from, until, now int) (out []plan.Corridor) {
	for _, b := range boxes {
		switch {
		case b.Leg < from:
			out = append(out, b)
		case b.Leg > until:
			b.Leg += now - until
			out = append(out, b)
		}
	}
	return out
}

// tidy is a place to the millimetre, and tenth an angle to a tenth of a degree.
func tidy(v vec.V3) vec.V3 {
	for a, x := range v {
		v[a] = math.Round(x*1000) / 1000
	}
	return v
}

func tenth(x float64) float64 { return math.Round(x*10) / 10 }

// passing is what the button of an opening says.
func passing(which string) string {
	return "Put in waypoints through opening " + which
}
