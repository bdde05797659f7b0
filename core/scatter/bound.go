package scatter

import "math"

// bound is what no errors within the box exceed, those of attachments apart, (16.10): at fixed attachments the
// utilisation is convex in the payload's mass, in its centre of mass and in the drag, quasi-convex in the
// density, each with the others held, and falls with every thrust. So it is largest at a corner of a box around
// them. NaN for a rigid team that leans in the wind or whose thrusts turn its axis: its attitude enters otherwise.
func (w *searcher) bound() float64 {
	g := w.rig
	winds := w.winds()
	if g.leans && (!g.even || len(winds) > 1 || winds[0][0] != -g.m.Plan.Site.Wind) {
		return math.NaN()
	}
	var corner []Error
	clear(w.x)
	for _, e := range w.s.Errors {
		switch e.Kind {
		case PayloadMass, COM, Density:
			corner = append(corner, e)
		case Thrust:
			w.x[e.at] = -Cut * e.SD
		}
	}
	worst := math.Inf(-1)
	for _, v := range winds {
		w.x[atWind], w.x[atWindTo] = v[0], v[1]
		for signs := range 1 << len(corner) {
			for k, e := range corner {
				w.x[e.at] = Cut * e.SD * float64(2*(signs>>k&1)-1)
			}
			t, _ := w.ask()
			w.solves++
			if worst = math.Max(worst, t); math.IsInf(worst, 1) {
				return worst
			}
		}
	}
	return worst
}

// arc is the most degrees between corners of the polygon around the winds.
const arc = 15

// winds are offsets of speed and direction whose drags, as vectors, are the corners of a polygon around
// all drags within the box.
func (w *searcher) winds() [][2]float64 {
	var speed, to float64
	for _, e := range w.s.Errors {
		switch e.Kind {
		case Wind:
			speed = Cut * e.SD
		case WindTo:
			to = math.Min(180, Cut*e.SD)
		}
	}
	plan := w.rig.m.Plan.Site.Wind
	fast, slow := plan+speed, math.Max(0, plan-speed)
	if fast == 0 {
		return [][2]float64{{-plan, 0}}
	}
	if to == 0 {
		return [][2]float64{{slow - plan, 0}, {fast - plan, 0}}
	}
	n := math.Ceil(2 * to / arc)
	out := [][2]float64{{fast - plan, -to}, {fast - plan, to}, {slow - plan, -to}, {slow - plan, to}}
	if slow == 0 {
		out = out[:3]
	}
	for k := range int(n) {
		half := to / n
		// drag grows with the square of speed: the tangents of two ends of a piece of arc meet at 1/cos of it
		v := fast / math.Sqrt(math.Cos(half*math.Pi/180))
		out = append(out, [2]float64{v - plan, -to + half*float64(2*k+1)})
	}
	return out
}
