package way

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/vec"
)

// The reach of a held team's instant, (20.22): along the line from rest in its formation to the instant every bound of chapter
// 5 is a quadratic, so that ρ is a root.

// cone is the least x ≥ 0 from which on |x u + v| ≤ x c + d; infinite when rest itself, |u| ≤ c, is at the bound.
func cone(u, v vec.V3, c, d float64) float64 {
	a, b, e := u.Dot(u)-float64(c*c), u.Dot(v)-float64(c*d), v.Dot(v)-float64(d*d)
	if c <= 0 || a >= 0 {
		return math.Inf(1)
	}
	if r := float64(b*b) - float64(a*e); r > 0 {
		return math.Max(0, (-b-math.Sqrt(r))/a)
	}
	return 0
}

// line is the same for x u + v ≥ 0.
func line(u, v float64) float64 {
	if u <= 0 {
		return math.Inf(1)
	}
	return math.Max(0, -v/u)
}

// tightest is the limit that a held team's instant comes closest to, and whose it is; a pair for the separation.
type tightest struct {
	reach float64
	limit Limit
	who   [2]int
}

// hardest is the largest reach of a moment.
func (h *held) hardest(m *moment, limits Limits) (most tightest) {
	for i := range m.pull {
		for _, l := range [...]Limit{Utilisation, Tilt, Cone, Slack, WorkingLoad} {
			if x := h.reach(m, limits, l, i, i); x > most.reach {
				most = tightest{x, l, [2]int{i, i}}
			}
		}
		for j := range i {
			if x := h.reach(m, limits, Separation, j, i); x > most.reach {
				most = tightest{x, Separation, [2]int{j, i}}
			}
		}
	}
	return most
}

// reach is that of one limit of a vehicle or a pair.
func (h *held) reach(m *moment, limits Limits, l Limit, i, j int) float64 {
	c := &h.m.Craft[i]
	u := m.rest[i]
	v := m.pull[i].Sub(u)
	weight := vec.V3{0, 0, float64(c.Vehicle.Mass * share.Gravity)}
	switch l {
	case Utilisation:
		return cone(u.Add(weight), v.Add(m.own[i]).Sub(weight), limits.Utilisation*c.Vehicle.ThrustMax, 0) // (5.5)
	case Tilt:
		f, g := u.Add(weight), v.Add(m.own[i]).Sub(weight)
		return cone(flat(f), flat(g), h.tilt[i]*f[2], h.tilt[i]*g[2]) // (5.6)
	case Cone:
		return cone(flat(u), flat(v), h.lean*u[2], h.lean*v[2]) // (5.7)
	case Slack:
		return line(u[2]-h.m.Plan.Limits.TensionMin, v[2]) // (5.8)
	case WorkingLoad:
		if math.IsNaN(c.WorkingLoad) {
			return 0
		}
		return cone(u, v, c.WorkingLoad, 0) // (5.8)
	}
	return h.nearing(m, i, j)
}

// nearing is how much of what two vehicles may come nearer to each other they do.
func (h *held) nearing(m *moment, i, j int) float64 {
	a, b, least := &h.m.Craft[i], &h.m.Craft[j], h.m.Plan.Limits.Separation
	foot := a.At.Sub(b.At)
	then := long(foot.Add(m.still[i]).Sub(m.still[j]))
	now := long(foot.Add(m.cable[i]).Sub(m.cable[j]))
	if then <= least {
		return math.Inf(1)
	}
	return math.Max(0, (then-now)/(then-least))
}

// again is about what the reach of a limit becomes on another path, the cables turning as they did.
func (h *held) again(old *moment, p *Path, i instant, limits Limits) float64 {
	v, x := motion(h.m, p, i.leg, i.s)
	m := moment{stand: h.at(v, i.leg, i.s), motion: v, state: x, own: append([]vec.V3(nil), old.own...)}
	a := v.Attitude.T().Mul(v.Acceleration).Sub(old.motion.Attitude.T().Mul(old.motion.Acceleration))
	for _, k := range i.most.who {
		m.own[k] = old.own[k].Add(a.Scale(h.m.Craft[k].Vehicle.Mass))
	}
	return h.reach(&m, limits, i.most.limit, i.most.who[0], i.most.who[1])
}
