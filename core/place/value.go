package place

import (
	"math"

	"cohoist/core/beam"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// upright tells that upright forces answer a scenario, (10.2): on cables, without wind, all places at one height.
func (b *bench) upright(s *scenario) bool {
	return b.cables && b.flat && s.plan.Site.Wind == 0 && s.shift == (vec.V3{})
}

// utilisation solves one scenario, (5.10), with its dual: about the payload's origin, body axes.
func (b *bench) utilisation(s *scenario, posts []vec.V3, lost int) (float64, solve.Wrench) {
	if b.upright(s) {
		return b.lift(s, posts, lost)
	}
	m := b.model(s, posts, lost)
	if !m.Settled {
		return math.Inf(1), solve.Wrench{}
	}
	r := b.solver.Solve(m.Even(0))
	t := r.T
	switch r.Status {
	case solve.Optimal:
	case solve.Unsolved:
		b.unsolved++
		fallthrough
	default:
		t = math.Inf(1)
	}
	y := r.Y // about the body's centre of mass
	turn := vec.V3{y[3], y[4], y[5]}.Cross(m.Body.COM)
	for i := range 3 {
		y[i] -= turn[i]
	}
	return t, y
}

// lift is (10.2) for a scenario.
func (b *bench) lift(s *scenario, posts []vec.V3, lost int) (float64, solve.Wrench) {
	b.spots = b.spots[:0]
	c := b.payload.COM
	for i, p := range posts {
		if i == lost {
			continue
		}
		k := &s.craft[b.group[i]]
		most := k.WorkingLoad
		if math.IsNaN(most) {
			most = math.Inf(1)
		}
		b.spots = append(b.spots, spot{p[0] - c[0], p[1] - c[1], k.Vehicle.ThrustMax, k.Vehicle.Mass * share.Gravity, b.Plan.Limits.TensionMin, most})
	}
	if len(b.spots) == 0 {
		return math.Inf(1), solve.Wrench{}
	}
	t, y := upright(b.spots, b.weight, s.off, b.across)
	z := posts[0][2]
	return t, solve.Wrench{float64(y.a * z), float64(y.b * z), y.l - float64(y.a*c[0]) - float64(y.b*c[1]), y.b, -y.a, 0}
}

// evaluate finds the worst utilisation over all scenarios, or stops at the first that is no better than
// best. It returns the scenario and dual that decided.
func (b *bench) evaluate(posts []vec.V3, best float64) (worst float64, scen int, y solve.Wrench) {
	scen = -1
	for k := range b.scen {
		s := &b.scen[k]
		from, to := -1, 0
		if s.lost >= 0 {
			from = b.first(s.lost)
			to = from + len(b.groups[s.lost].members)
		}
		for lost := from; lost < max(to, from+1); lost++ {
			if t, dual := b.utilisation(s, posts, lost); t > worst || scen < 0 {
				worst, scen, y = t, k, dual
			}
			if !(worst < best) {
				return worst, scen, y
			}
		}
	}
	return worst, scen, y
}

// cases lists the worst utilisation scenario by scenario.
func (b *bench) cases(posts []vec.V3) []Case {
	var out []Case
	all := b.scen
	for k := range all {
		b.scen = all[k : k+1]
		t, _, _ := b.evaluate(posts, math.Inf(1))
		out = append(out, Case{all[k].name, all[k].lost >= 0, t})
	}
	b.scen = all
	return out
}

// value is the goal of a placement. It may be cut short when it is no better than best.
func (b *bench) value(posts []vec.V3, best float64) (float64, int, solve.Wrench) {
	switch b.Goal {
	case Moment:
		return b.bending(posts), -1, solve.Wrench{}
	case Agility:
		return b.agility(posts, best), -1, solve.Wrench{}
	}
	return b.evaluate(posts, best)
}

// hover is the first scenario without a loss.
func (b *bench) hover() *scenario {
	for k := range b.scen {
		if b.scen[k].lost < 0 {
			return &b.scen[k]
		}
	}
	return &b.scen[0]
}

// bending is the largest size of the upright bending moment in hover, N m, (9.2); +Inf when the
// team does not hold the load within the crew's limit.
func (b *bench) bending(posts []vec.V3) float64 {
	s := *b.hover()
	s.off, s.shift = 0, vec.V3{}
	if b.upright(&s) {
		t, _ := b.lift(&s, posts, -1)
		return b.uprightBending(&s, posts, t)
	}
	m := b.model(&s, posts, -1)
	a := m.Share(b.solver)
	if a.Parts == nil || !(a.T <= b.Plan.Limits.Utilisation*(1+1e-6)) {
		return math.Inf(1)
	}
	l := b.beam.Weight(m.Up.Scale(-share.Gravity).Add(m.Drag.Scale(1 / b.payload.Mass)))
	for i, p := range a.Parts {
		l.Points = append(l.Points, b.beam.Act(m.Craft[i].At, p.Force, p.Moment))
	}
	return math.Abs(b.beam.Bend(l, posts[0][0], posts[0][0]).Planes[beam.Upright].Moment.Worst().Value)
}

// uprightBending settles the ties of an even effort of upright forces, and bends the beam.
func (b *bench) uprightBending(s *scenario, posts []vec.V3, t float64) float64 {
	if !(t <= b.Plan.Limits.Utilisation*(1+1e-6)) {
		return math.Inf(1)
	}
	n := len(posts)
	low, most := make([]float64, n), make([]float64, n)
	for i, v := range b.spots {
		low[i] = v.low
		most[i] = math.Min(v.most, math.Max(v.low, float64(t*(1+1e-9)*v.thrust)-v.own))
	}
	force, err := beam.Settle(b.weight, b.payload.COM, posts, low, most)
	if err != nil {
		return math.Inf(1)
	}
	l := b.beam.Weight(vec.V3{0, 0, -share.Gravity})
	for i, f := range force {
		l.Points = append(l.Points, b.beam.Act(posts[i], vec.V3{0, 0, f}, vec.V3{}))
	}
	return math.Abs(b.beam.Upright(l).Worst().Value)
}

// agility is the largest moment about x and y, the weaker way, that the team can add in hover at full thrust,
// N m, (7.1). It stops early when it is no better than best.
func (b *bench) agility(posts []vec.V3, best float64) float64 {
	s := *b.hover()
	s.off, s.shift = 0, vec.V3{}
	m := b.model(&s, posts, -1)
	if !m.Settled {
		return math.Inf(-1)
	}
	p := m.Within(1)
	axes := []vec.V3{{0, 1, 0}, {0, -1, 0}, {1, 0, 0}, {-1, 0, 0}}
	if !b.across {
		axes = axes[:2]
	}
	weakest := math.Inf(1)
	for _, e := range axes {
		m.Push(p, vec.V3{}, e)
		r := b.solver.Solve(p)
		switch {
		case r.Status == solve.Infeasible:
			return math.Inf(-1)
		case r.Status == solve.Unbounded:
			continue
		case r.Status != solve.Optimal:
			return math.Inf(-1)
		}
		if weakest = math.Min(weakest, r.T); !(weakest > best) {
			return weakest
		}
	}
	return weakest
}
