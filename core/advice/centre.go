package advice

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/vec"
)

// moveCentre looks for the shortest way that the centre of mass would have to move in the plane: 16
// directions and those towards the vehicles, then nearer ones beside the best. A direction is only
// searched when it does better at the distance found so far.
func (d *doctor) moveCentre() {
	most := d.reach()
	if !(most > 0) || d.payload.Mass == 0 {
		return
	}
	with := func(p plan.Plan, v vec.V3) plan.Plan {
		p = edit(p)
		d.shift(&p, v)
		return p
	}
	d.search(func(a aim) (Remedy, bool) {
		good := func(v vec.V3) bool { return a.good(with(d.plan, v)) }
		best, way := most, vec.V3{}
		likely := func(v vec.V3) bool { return a.likely(with(d.plan, v)) }
		look := func(w vec.V3) {
			if way != (vec.V3{}) {
				if x := best * (1 - 1e-3); likely(w.Scale(x)) && good(w.Scale(x)) {
					best, way = narrow(func(x float64) bool { return good(w.Scale(x)) }, 0, x), w
				}
				return
			}
			if x, ok := least(func(x float64) bool { return likely(w.Scale(x)) }, func(x float64) bool { return good(w.Scale(x)) }, best); ok {
				best, way = x, w
			}
		}
		if v := d.middle(); v.Norm() > 0 && good(v) { // the set of good places is convex, or nearly: one is known
			way = v.Unit()
			best = narrow(func(x float64) bool { return good(way.Scale(x)) }, 0, v.Norm())
		}
		if v := d.onto(); v.Norm() > 0 && (way == (vec.V3{}) || v.Norm() < best) && good(v) {
			way, best = v.Unit(), v.Norm()
		}
		for _, w := range d.ways() {
			look(w)
		}
		for turn := math.Pi / around; way != (vec.V3{}) && turn > 0.02; turn /= 2 {
			middle := way
			look(turned(middle, turn))
			look(turned(middle, -turn))
		}
		v, ok := d.rounded(good, way.Scale(best))
		if !ok {
			return Remedy{}, false
		}
		to := d.payload.COM.Add(v)
		who := d.towards(v.Unit())
		return Remedy{Kind: Balance, Who: who, Unit: "m", From: 0, To: v.Norm(), Size: v.Norm() / most, Plan: with(d.given, v),
			Sentence: "Move the centre of mass by " + amount(v.Norm(), "m") + " " + toward(who) + ", to " + point(to) + " m."}, true
	})
}

// rounded makes a shift a whole number of millimetres, a little longer.
func (d *doctor) rounded(good func(vec.V3) bool, v vec.V3) (vec.V3, bool) {
	if v.Norm() == 0 {
		return v, false
	}
	grain := 0.001
	if d.reach() < 0.25 {
		grain = 1e-4
	}
	way := v.Unit()
	x := safe(func(x float64) bool { return good(way.Scale(x)) }, 0, v.Norm(), grain)
	return way.Scale(x), good(way.Scale(x))
}

// middle is the shift in the plane from the centre of mass to where each vehicle would work equally hard:
// the centre of the attachments by the lift that vehicles have to spare.
func (d *doctor) middle() vec.V3 {
	m := d.model(d.plan, false)
	if m == nil {
		return vec.V3{}
	}
	var sum vec.V3
	total := 0.0
	for _, c := range m.Craft {
		spare := math.Max(0, d.plan.Limits.Utilisation*c.Vehicle.ThrustMax-c.Vehicle.Mass*share.Gravity)
		sum = sum.Add(c.At.Scale(spare))
		total += spare
	}
	if total == 0 {
		return vec.V3{}
	}
	return level(sum.Scale(1 / total).Sub(d.payload.COM))
}

// onto is the shift from the centre of mass to the nearest point of the line that attachments in one
// line make, or to the only attachment; zero when they make neither.
func (d *doctor) onto() vec.V3 {
	m := d.model(d.plan, false)
	if m == nil {
		return vec.V3{}
	}
	line, ok := m.InLine()
	if !ok {
		return vec.V3{}
	}
	v := level(d.plan.Team[0].Attach.Sub(d.payload.COM))
	return v.Sub(line.Scale(v.Dot(line)))
}

func turned(v vec.V3, angle float64) vec.V3 {
	sin, cos := math.Sincos(angle)
	return vec.V3{float64(v[0]*cos) - float64(v[1]*sin), float64(v[0]*sin) + float64(v[1]*cos), v[2]}
}
