package way

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/vec"
)

// nudge is the step of the differences that turn a rigid team's lean into spin, s: errors of 1e-6 of what changes in
// a second, and of 1e-8 rad/s² from rounding.
const nudge = 2e-3

// motion is how the body moves on a leg at s from 0 to 1, (20.9). A rigid team leans with the force that it gives; its
// spin comes from the attitudes shortly before and after.
func motion(m *share.Model, p *Path, leg int, s float64) (share.Motion, State) {
	x := p.on(leg, s)
	v := share.Motion{Velocity: x.Velocity, Acceleration: x.Acceleration}
	if m.Cables {
		v.Attitude = m.Upright(x.Heading, vec.V3{})
		v.Spin, v.SpinRate = vec.V3{0, 0, x.Turn}, vec.V3{0, 0, x.TurnRate}
		return v, x
	}
	v.Attitude = leant(m, x, vec.Identity, 50)
	h := nudge / p.Durations[leg]
	back := logarithm(v.Attitude.T().MulM(leant(m, p.on(leg, s-h), v.Attitude, 4)))
	ahead := logarithm(v.Attitude.T().MulM(leant(m, p.on(leg, s+h), v.Attitude, 4)))
	v.Spin = ahead.Sub(back).Scale(1 / (2 * nudge))
	v.SpinRate = ahead.Add(back).Scale(1 / (nudge * nudge))
	return v, x
}

// leant is the attitude of a rigid team that gives mass times (g + a) minus drag along its full-thrust axis, by so many
// rounds from one that is near. A round leaves of an error what drag is of the weight.
func leant(m *share.Model, x State, near vec.M3, most int) vec.M3 {
	inertia := x.Acceleration.Add(vec.V3{0, 0, share.Gravity}).Scale(m.Body.Mass)
	r, before := near, vec.V3{}
	for range most {
		force := inertia.Sub(m.Air(r, x.Velocity))
		r = m.Upright(x.Heading, force)
		if d := force.Sub(before); d.Dot(d) < 1e-26*force.Dot(force) {
			break
		}
		before = force
	}
	return r
}

// logarithm is the rotation vector of a small turn.
func logarithm(r vec.M3) vec.V3 {
	v := vec.V3{r[2][1] - r[1][2], r[0][2] - r[2][0], r[1][0] - r[0][1]}.Scale(0.5) // axis times sine
	sin := v.Norm()
	if sin == 0 {
		return v
	}
	return v.Scale(math.Atan2(sin, (r[0][0]+r[1][1]+r[2][2]-1)/2) / sin)
}
