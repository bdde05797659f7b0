package share

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Vehicles on cables must keep limits.separation. Hung straight above attachments that are nearer
// than that they would not, so the cables lean apart, (5.18). The bound is not convex: places for the vehicles
// are chosen first, then each is kept on its own side of the planes between the places, which is.

const (
	roomy      = 1.13 // times the separation: the distance that is tried first, so that the check is not thin
	neighbours = 3    // planes for each vehicle, to the nearest others; the rest is checked afterwards
	rounds     = 6    // of the program, each with the tensions of the one before
	flatness   = 20   // radius of the disc that stands for a half-plane, in tensions
	spread     = 1e-3 // by how much t may be above its smallest, so that drag does not fall on one vehicle
	mostApart  = 200  // vehicles; beyond, only the check speaks
)

// Apart says how the cables were leant to keep the vehicles apart. Nil: they hang as they like.
type Apart struct {
	cones [][]solve.Cone // of every cable, half-planes as large discs, for the planned payload
}

// spreadOut leans the cables of an answer apart when vehicles on them come too near. It returns
// false when they need not or cannot; the check then says what is so.
func (m *Model) spreadOut(s *solve.Solver, a *Answer) bool {
	if !plan.WithinLimits(m.Plan.Policy) || !m.Cables || len(m.Craft) > mostApart || !m.TooNear(a.Parts, m.Plan.Limits.Separation) {
		return false
	}
	for _, factor := range [2]float64{roomy, 1} {
		if places, ok := m.places(factor * m.Plan.Limits.Separation); ok && m.keepTo(s, a, places, factor*m.Plan.Limits.Separation) {
			return true
		}
	}
	return false
}

// TooNear tells that two vehicles, not both rigid, are nearer than a distance.
func (m *Model) TooNear(parts []Part, distance float64) bool {
	for i := range parts {
		for j := range i {
			if m.Craft[i].Rigid && m.Craft[j].Rigid {
				continue
			}
			if parts[i].Position.Sub(parts[j].Position).Norm() < distance*(1-1e-9) {
				return true
			}
		}
	}
	return false
}

// places pushes points above the attachments apart, pair by pair and all at once, until every two
// are as far apart as they must be. Rigid vehicles stay; a vehicle on a cable stays within its cone.
func (m *Model) places(distance float64) ([]vec.V3, bool) {
	n := len(m.Craft)
	at, push := make([]vec.V3, n), make([]vec.V3, n)
	for i, c := range m.Craft {
		at[i] = vec.V3{c.At[0], c.At[1], 0}
		if !c.Rigid { // so that two attachments in one point know where to go
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
			at[i] = at[i].Add(vec.V3{cos, sin, 0}.Scale(1e-6 * distance))
		}
	}
	reach := math.Sin(m.Plan.Limits.Cone * math.Pi / 180)
	for range 1000 {
		clear := true
		for i := range push {
			push[i] = vec.V3{}
		}
		for i := range n {
			for j := range i {
				d := at[i].Sub(at[j])
				gap := distance*(1+1e-4) - d.Norm()
				if gap <= 0 || m.Craft[i].Rigid && m.Craft[j].Rigid {
					continue
				}
				clear = clear && gap <= 1e-4*distance
				part := 0.5
				if m.Craft[i].Rigid || m.Craft[j].Rigid {
					part = 1
				}
				d = d.Unit().Scale(part * gap)
				push[i], push[j] = push[i].Add(d), push[j].Sub(d)
			}
		}
		if clear {
			return at, true
		}
		for i, c := range m.Craft {
			if c.Rigid {
				continue
			}
			home := vec.V3{c.At[0], c.At[1], 0}
			out := at[i].Add(push[i].Scale(0.7)).Sub(home)
			if most := 0.999 * c.Length * reach; out.Norm() > most {
				out = out.Unit().Scale(most)
			}
			at[i] = home.Add(out)
		}
	}
	return nil, false
}

// keepTo solves with every vehicle on its own side of the planes between the places. The pull in
// a plane's bound is that of the round before.
func (m *Model) keepTo(s *solve.Solver, a *Answer, places []vec.V3, distance float64) bool {
	planes := m.planes(places, distance)
	parts, enough := a.Parts, math.Max(m.Plan.Limits.Separation, 0.99*distance)
	t := 0.0
	for range rounds {
		p := m.Even(0)
		kept := &Apart{}
		pull := 0
		for i := range m.Craft {
			if m.Craft[i].Rigid {
				continue
			}
			discs := m.discs(i, planes[i], parts[i].Tension*m.Craft[i].Keep())
			kept.cones = append(kept.cones, discs)
			p.Pulls[pull].Cones = append(p.Pulls[pull].Cones, discs...)
			pull++
		}
		var r solve.Result
		if t > 0 { // of the round before: mostly near enough, and one solve less
			r = s.Settle(p, t*(1+spread))
		}
		if !sound(r) {
			if r = s.Solve(p); !sound(r) {
				return false
			}
			t = r.T
			if even := s.Settle(p, t*(1+spread)); sound(even) {
				r = even
			}
		}
		parts = m.parts(r.U, r.F)
		if !m.TooNear(parts, enough) {
			a.Parts, a.Apart = parts, kept
			return true
		}
	}
	return false
}

// plane is the bound n · p ≥ c on where a vehicle may be.
type plane struct {
	n vec.V3
	c float64
}

// planes are every vehicle's bounds, to its nearest others.
func (m *Model) planes(places []vec.V3, distance float64) [][]plane {
	out := make([][]plane, len(places))
	for i := range places {
		near := make([]int, 0, neighbours+1)
		for j := range places {
			if j == i {
				continue
			}
			near = append(near, j)
			for k := len(near) - 1; k > 0 && places[near[k]].Sub(places[i]).Norm() < places[near[k-1]].Sub(places[i]).Norm(); k-- {
				near[k], near[k-1] = near[k-1], near[k]
			}
			near = near[:min(len(near), neighbours)]
		}
		for _, j := range near {
			n := places[i].Sub(places[j]).Unit()
			c := n.Dot(places[i].Add(places[j]).Scale(0.5)) + distance/2
			if m.Craft[j].Rigid {
				c = n.Dot(places[j]) + distance
			}
			out[i] = append(out[i], plane{n, c})
		}
	}
	return out
}

// discs are the planes of a vehicle on a cable as bounds on its pull F, of length about tension:
// n · (a + L F/|F|) ≥ c is n · F ≥ |F| (c − n · a)/L, a half-plane for F_xy, and a disc of great radius
// inside it.
func (m *Model) discs(i int, planes []plane, tension float64) []solve.Cone {
	c := m.Craft[i]
	out := make([]solve.Cone, len(planes))
	for k, p := range planes {
		radius := flatness * tension
		lean := (p.c - p.n.Dot(c.At)) / c.Length
		out[k] = solve.Cone{Flat: true, B: p.n.Scale(-(float64(lean*tension) + radius)), C: radius} // (5.18)
	}
	return out
}

// keepApart adds the leaning of an answer to a program whose t is the payload's mass: pulls grow
// with the payload, so the discs do, too.
func (m *Model) keepApart(p *solve.Program, apart *Apart) {
	if apart == nil || m.Payload.Mass <= 0 {
		return
	}
	for i, discs := range apart.cones {
		for _, d := range discs {
			p.Pulls[i].Cones = append(p.Pulls[i].Cones, solve.Cone{Flat: true, D: d.B.Scale(1 / m.Payload.Mass), T: d.C / m.Payload.Mass})
		}
	}
}
