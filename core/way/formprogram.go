package way

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// wide is the radius of the disc that stands for a half-plane, in pulls, as in (17.2).
const wide = 200

// program is that of one round, (20.18): its scalar is the utilisation for a team that spreads or has a width given, the
// farthest place from the centre of mass for one that gathers, and half the width over all for one in line.
func (f *former) program(ease float64) *solve.Program {
	least := f.ask.Shape == plan.Spread || f.ask.Shape == plan.InLine && !math.IsNaN(f.ask.Width)
	p := f.m.Within(f.limit)
	p.Goal = 1
	if least {
		p = f.m.Even(0)
	}
	for i := range f.m.Craft {
		cones := append([]solve.Cone(nil), p.Pulls[i].Cones...)
		cones = f.apart(cones, i, ease)
		switch {
		case f.ask.Shape == plan.InLine && least:
			cones = f.between(cones, i, f.ask.Width/2, 0)
		case f.ask.Shape == plan.InLine:
			cones = f.between(cones, i, 0, 1)
		case !least:
			cones = append(cones, f.near(i))
		}
		p.Pulls[i].Cones = cones
	}
	return p
}

// side keeps a vehicle where n · q ≤ edge + t · grow: n · F ≤ (edge + t grow − n · a) |F|/L, as a large disc.
func (f *former) side(i int, n vec.V3, edge, grow float64) solve.Cone {
	c := &f.m.Craft[i]
	k := f.pulls[i] / c.Length
	radius := wide * f.pulls[i]
	return solve.Cone{Flat: true, B: n.Scale(radius - k*(edge-n.Dot(c.At))), C: radius, T: k * grow}
}

// apart adds the planes between a vehicle and the others, a part of the spacing off.
func (f *former) apart(to []solve.Cone, i int, ease float64) []solve.Cone {
	cone := math.Sin(f.m.Plan.Limits.Cone * math.Pi / 180)
	for j := range f.m.Craft {
		d := f.need(i, j) * ease * (1 + 1e-6)
		away := f.at[i].Sub(f.at[j])
		if j == i || d == 0 || away.Norm() == 0 {
			continue
		}
		n := away.Unit()
		edge := n.Dot(f.at[i].Add(f.at[j]))/2 + d/2
		if c := &f.m.Craft[i]; edge-n.Dot(c.At) < -c.Length*cone {
			continue // the cone keeps it
		}
		to = append(to, f.side(i, n.Scale(-1), -edge, 0))
	}
	return to
}

// between keeps a vehicle's rotors within a width about the line.
func (f *former) between(to []solve.Cone, i int, half, grow float64) []solve.Cone {
	reach, middle := f.m.Craft[i].Vehicle.Reach, f.across.Dot(f.m.Body.COM)
	return append(to, f.side(i, f.across, half-reach+middle, grow), f.side(i, f.across.Scale(-1), half-reach-middle, grow))
}

// near keeps a vehicle within t of the vertical through the centre of mass: |F_xy + (a − c) |F|/L| ≤ t |F|/L.
func (f *former) near(i int) solve.Cone {
	c := &f.m.Craft[i]
	k := f.pulls[i] / c.Length
	return solve.Cone{Flat: true, B: flat(c.At.Sub(f.m.Body.COM)).Scale(k), T: k}
}
