package agility

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// aside are the directions in which the sideways acceleration is asked for.
var aside = [4]vec.V3{{1, 0, 0}, {-1, 0, 0}, {0, 1, 0}, {0, -1, 0}}

// hung fills in climb and sideways acceleration of a payload on cables, held level, (7.4).
func hung(m *share.Model, a share.Answer, s *solve.Solver, p *solve.Program, v *Moves) {
	m.Accelerate(p, vec.V3{0, 0, 1}, vec.V3{})
	v.ClimbAcc = most(s, p, m.Weight())
	v.Climb = m.Mass * v.ClimbAcc // (7.3)
	v.SideAcc = math.Inf(1)
	swing := 0.0
	if _, inLine := m.InLine(); inLine {
		swing = swung(m, a)
	}
	for _, d := range [2]vec.V3{{1, 0, 0}, {0, 1, 0}} {
		for _, a := range ways(s, p, m.Weight(), func(sign float64) { m.Accelerate(p, d.Scale(sign), vec.V3{}) }) {
			if a = math.Max(swing, a); !(a >= v.SideAcc) { // NaN wins
				v.SideAcc = a
			}
		}
	}
}

// swung is the sideways acceleration of a load that hangs from one line or point and leans with its
// cables as a whole, as in a gravity turned to g − a: utilisations grow with √(1 + (a/g)²), cables and
// thrusts lean by atan(a/g) more, (7.5). Still air.
func swung(m *share.Model, a share.Answer) float64 {
	angle := math.Acos(math.Min(1, a.Even.T))
	for i, part := range a.Parts {
		angle = math.Min(angle, m.Craft[i].Vehicle.TiltMax-part.Tilt)
		angle = math.Min(angle, m.Plan.Limits.Cone*math.Pi/180-part.CableAngle)
	}
	return share.Gravity * math.Tan(math.Max(0, angle))
}

// leaning fills in climb and sideways acceleration of a rigid team: it leans until its full-thrust
// axis points along mass times (g + a) minus drag, the drag taken as in hover, (7.3), (7.5).
func leaning(m *share.Model, s *solve.Solver, p *solve.Program, v *Moves) {
	m.Push(p, m.Axis, vec.V3{})
	extra := most(s, p, m.Weight())
	if math.IsNaN(extra) {
		return
	}
	need := m.Attitude.Mul(m.Need) // level axes
	most := need.Norm() + extra
	v.ClimbAcc = reach(need, vec.V3{0, 0, 1}, most) / m.Mass
	v.Climb = m.Mass * v.ClimbAcc
	v.SideAcc = math.Inf(1)
	for _, d := range aside {
		a := math.Min(reach(need, d, most)/m.Mass, tilted(m, need, d))
		if !m.Aligned() { // leant vehicles can also push sideways without leaning the body
			m.Accelerate(p, m.Attitude.T().Mul(d), vec.V3{})
			if r := s.Solve(p); r.Status == solve.Optimal {
				a = math.Max(a, r.T)
			}
		}
		v.SideAcc = math.Min(v.SideAcc, a)
	}
}

// reach is the largest x with |need + x d| ≤ most, d a unit vector; 0 when need alone is as much.
func reach(need, d vec.V3, most float64) float64 {
	along := need.Dot(d)
	room := float64(along*along) + float64(most*most) - need.Dot(need)
	return math.Max(0, math.Sqrt(math.Max(0, room))-along)
}

// tilted is the largest acceleration in direction d, m/s², at which every vehicle keeps within its
// tilt; 0 when one is beyond it in hover. The body leans by the smallest turn, (7.5).
func tilted(m *share.Model, need, d vec.V3) float64 {
	aligned, least := m.Aligned(), math.Inf(1)
	for _, c := range m.Craft {
		least = math.Min(least, c.Vehicle.TiltMax)
	}
	within := func(a float64) bool {
		push := need.Add(d.Scale(m.Mass * a))
		if aligned { // every vehicle leans as the body's thrust does
			return math.Atan2(math.Hypot(push[0], push[1]), push[2]) <= least
		}
		turn := share.Align(m.Axis, push.Unit())
		for i := range m.Craft {
			c := &m.Craft[i]
			up := turn.Mul(c.Axes.Mul(vec.V3{0, 0, 1}))
			if math.Atan2(math.Hypot(up[0], up[1]), up[2]) > c.Vehicle.TiltMax {
				return false
			}
		}
		return true
	}
	lo, hi := 0.0, 1.0
	if !within(lo) {
		return 0
	}
	for within(hi) && hi < 1e6 {
		lo, hi = hi, 2*hi
	}
	for range 60 {
		mid := lo + (hi-lo)/2
		if within(mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}
