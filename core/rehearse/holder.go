package rehearse

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/vec"
)

// What the control of rigid holds is made of. Rates are those of pilots on cables; gains are common practice, no source.
const (
	holdOmega  = 1.6 // rad/s, of the position loop, sideways
	riseOmega  = 2.5 // rad/s, the same in height
	holdSum    = 0.8 // s⁻³, of the integral, sideways
	riseSum    = 4.0 // s⁻³, in height
	leanOmega  = 8.0 // rad/s, of the attitude loop
	leanSum    = 100 // s⁻³, of its integral
	headOmega  = 1.5 // rad/s, about the body's z axis: rotors have little to turn with
	headSum    = 0.5 // s⁻³
	reserve    = 0.9 // of the team's thrust for height: the rest is left to the attitude
	mostTurned = 0.5 // rad: farther off, the integral would only make it worse
)

// holder flies one vehicle that holds rigidly. It knows its own pose and its place in the team, and so where the body is and how
// it moves; the team's mass and inertia, and its own rows of the mixer, from before the lift; its part of the score. Of what the
// others do now it knows nothing.
type holder struct {
	rows    []demand
	yaw     float64
	most    float64 // N, of the team's rotors together
	tilt    float64 // rad, its own most
	steady  bool    // with cables: level, and nothing is summed sideways
	mass    float64 // of the body, kg
	inertia vec.M3  // kg m²

	full   bool // a rotor gives all it can
	told   stand
	sum    vec.V3     // integral, m s
	force  vec.V3     // wanted of the rigid holds, N, level axes
	axis   vec.V3     // that the force is to be along, body axes
	wanted [4]float64 // attitude
	turned vec.V3     // integral of the attitude's error, rad s
	thrust []float64  // of its rotors now, N
	target []float64  // what they are told
}

// place is the position loop: from where the body is to the force and the attitude that are wanted, (21.14), (21.15).
func (p *holder) place(body *Pose, s stand) {
	const h = 1 / placeRate
	p.told = s
	off, slow := s.place.Sub(body.At), s.velocity.Sub(body.Velocity)
	if s.grip == 1 && float64(off[0]*off[0])+float64(off[1]*off[1]) < 1 && math.Abs(off[2]) < 1 {
		more := off
		if p.full {
			more[2] = min(more[2], 0)
		}
		if p.steady {
			more[0], more[1] = 0, 0
		}
		p.sum = p.sum.Add(more.Scale(h))
	}
	turn := Matrix(s.attitude)
	p.force = turn.Mul(s.lift)
	for a, k := range [3][3]float64{{holdOmega, holdSum}, {holdOmega, holdSum}, {riseOmega, riseSum}} {
		acc := float64(k[0]*k[0]*off[a]) + float64(2*placeDamping*k[0]*slow[a]) + float64(k[1]*p.sum[a])
		p.force[a] += float64(p.mass * acc) // (21.14)
	}
	p.limit()
	p.axis = s.lift.Unit()
	p.wanted = s.attitude
	if p.axis != (vec.V3{}) && p.force[2] > 0 {
		p.wanted = times(align(turn.Mul(p.axis), p.force.Unit()), s.attitude) // (21.15)
	}
}

// limit keeps height before place, and within the tilt.
func (p *holder) limit() {
	f, weight := &p.force, p.mass*share.Gravity
	if p.steady { // part of the weight hangs on cables
		weight = p.told.lift.Norm()
	}
	f[2] = min(max(f[2], thrustLeast*weight), reserve*p.most)
	most := f[2] * math.Tan(p.tilt)
	if n := sqrt(float64(f[0]*f[0]) + float64(f[1]*f[1])); n > most {
		f[0], f[1] = f[0]*most/n, f[1]*most/n
	}
}

// motors is the attitude loop: what the vehicle's own rotors are told, (21.16) to (21.18).
func (p *holder) motors(body *Pose) {
	const h = 1 / motorRate
	e := like(times(conjugate(p.wanted), body.Attitude), [4]float64{1}) // from the wanted attitude to the body's
	var rate vec.V3
	w := &body.Spin
	near := p.told.grip == 1 && math.Abs(e[1])+math.Abs(e[2])+math.Abs(e[3]) < mostTurned/2
	for a := range 3 {
		k, sum := leanOmega, float64(leanSum)
		if a == 2 {
			k, sum = headOmega, headSum
		}
		off := 2 * e[1+a]
		if near {
			p.turned[a] += float64(off * h)
		}
		rate[a] = -float64(k*k*off) - float64(2*turnDamping*k*(w[a]-p.told.spin[a])) - float64(sum*p.turned[a]) // (21.16)
	}
	planned := p.told.spin
	m := p.inertia.Mul(rate).Add(w.Cross(p.inertia.Mul(*w))).Sub(planned.Cross(p.inertia.Mul(planned)))
	turn := Matrix(body.Attitude)
	along := p.force.Dot(turn.Mul(p.axis)) - p.told.lift.Norm()
	d := demand{along, m[0], m[1], min(max(m[2], -p.yaw), p.yaw)}
	for j := range p.target {
		u := 0.0
		for a := range d {
			u += float64(p.rows[j][a] * d[a]) // (21.17)
		}
		p.target[j] = u
	}
}

// give is what the rotors are told in the end: the plan's thrusts and what is added, within their bounds, (21.18).
func (p *holder) give(now, next []float64, rotors []share.Rotor) {
	s := &p.told
	p.full = false
	for j := range p.target {
		planned := now[j] + float64(s.part*(next[j]-now[j]))
		p.full = p.full || s.grip*(planned+p.target[j]) > rotors[j].Max
		p.target[j] = min(max(float64(s.grip*(planned+p.target[j])), 0), rotors[j].Max)
	}
}

// follow lets the rotors follow what they are told for one tick, (21.5).
func (p *holder) follow(left float64) {
	for j, t := range p.target {
		p.thrust[j] = t + float64(left*(p.thrust[j]-t))
	}
}
