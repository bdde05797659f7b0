package rehearse

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/vec"
)

// What the control is made of. Rates and gains are common practice, no source.
const (
	placeRate    = 100.0 // Hz, of the position loop
	motorRate    = 600.0 // Hz, of the motor commands
	motorLag     = 0.04  // s, first order
	placeOmega   = 2.5   // rad/s, of the position loop
	placeDamping = 0.9
	placeSum     = 0.8 // s⁻³, of the integral
	turnOmega    = 12  // rad/s, of the attitude loop
	turnDamping  = 0.8
	yawOmega     = 3.0  // rad/s, about the thrust: rotors have little to turn with
	yawShare     = 0.15 // of a rotor's thrust, for yaw
	noticing     = 0.3  // s, in which a change of the pull beside the plan is noticed: until then the vehicle gives way
	yielding     = 0.8  // s, in which a place yields to the line's pull
	yieldSide    = 2.0  // times pull over length: stiffness sideways
	answered     = 0.6  // of a pull beside the plan by thrust; the rest is left to the place, so that lines share it
	yieldMost    = 0.6  // m
	shy          = 4.0  // s⁻², of a vehicle too near another
	tooNear      = 0.9  // of the separation: closer, it gives way
	thrustLeast  = 0.15 // of the vehicle's weight: it never drops itself
)

// pilot flies one vehicle. It knows its own pose, its line's pull, where its neighbours are, and its part of the score.
type pilot struct {
	vehicle share.Craft
	inertia vec.M3
	wind    vec.V3  // of the plan, m/s
	air     float64 // ½ ρ C_d A, kg/m
	yaw     float64 // beside the payload's heading
	felt    vec.V3  // pull beside the plan, noticed, N
	give    vec.V3  // how far its place has yielded, m
	sum     vec.V3  // integral, m s
	force   vec.V3  // wanted thrust, N, level axes
	size    float64 // of it, N
	turn    vec.M3  // attitude as a matrix
	heading float64
	failed  bool
}

// place is the position loop: own pose, pull of the line on the vehicle, places of the others, (21.7) to (21.11).
func (p *pilot) place(own *Pose, pull vec.V3, others []vec.V3, a aim, separation float64) {
	const h = 1 / placeRate
	along := a.pull.Unit()
	across := func(v vec.V3) vec.V3 { return v.Sub(along.Scale(v.Dot(along))) }
	p.felt = p.felt.Add(pull.Add(a.pull).Sub(p.felt).Scale(h / noticing)) // (21.7); the planned pull on the vehicle is −a.pull
	var to vec.V3
	if f := a.pull.Norm(); f > 0 {
		to = across(p.felt).Scale(p.vehicle.Length / (yieldSide * f))
	}
	if n := to.Norm(); n > yieldMost {
		to = to.Scale(yieldMost / n)
	}
	p.give = p.give.Add(to.Sub(p.give).Scale(h / yielding)) // (21.8)
	off := a.place.Add(p.give).Sub(own.At)
	if off.Norm() < 1 { // far off, the sum would only make it worse
		p.sum = p.sum.Add(across(off).Scale(h))
	}
	acc := a.acceleration.Add(off.Scale(placeOmega * placeOmega)).
		Add(a.velocity.Sub(own.Velocity).Scale(2 * placeDamping * placeOmega)).
		Add(p.sum.Scale(placeSum)) // (21.9)
	for _, o := range others {
		if gap := tooNear*separation - apart(&own.At, &o); gap > 0 {
			acc = acc.Add(own.At.Sub(o).Unit().Scale(shy * gap)) // (21.10)
		}
	}
	m := p.vehicle.Vehicle.Mass
	p.force = p.limit(acc.Add(vec.V3{0, 0, share.Gravity}).Scale(m).Add(a.pull).Sub(p.drag(a.velocity)).Sub(p.felt.Scale(answered))) // (21.11)
	p.size = p.force.Norm()
	p.heading = a.heading + p.yaw
}

// drag is that of the vehicle in the plan's wind as it should move, N, level axes, (3.4).
func (p *pilot) drag(velocity vec.V3) vec.V3 {
	v := p.wind.Sub(velocity)
	return v.Scale(p.air * sqrt(v.Dot(v)))
}

// limit keeps the wanted thrust within what the vehicle has: height before place, and never beyond its tilt.
func (p *pilot) limit(f vec.V3) vec.V3 {
	v := &p.vehicle.Vehicle
	f[2] = min(max(f[2], thrustLeast*v.Mass*share.Gravity), v.ThrustMax)
	most := min(f[2]*math.Tan(v.TiltMax), math.Sqrt(max(0, v.ThrustMax*v.ThrustMax-f[2]*f[2])))
	if n := math.Hypot(f[0], f[1]); n > most {
		f[0], f[1] = f[0]*most/n, f[1]*most/n
	}
	return f
}

// motors is the attitude loop: it turns the wanted thrust into what the rotors are told, (21.12), (21.13).
func (p *pilot) motors(own *Pose) Push {
	if p.failed {
		return Push{}
	}
	matrix(own.Attitude[0], own.Attitude[1], own.Attitude[2], own.Attitude[3], &p.turn)
	t, f, w, j := &p.turn, &p.force, &own.Spin, &p.inertia
	ux, uy, uz := t[0][2], t[1][2], t[2][2]
	over := float64(turnOmega*turnOmega) / p.size
	x := float64((float64(uy*f[2]) - float64(uz*f[1])) * over) // the turn that would set the thrust right, level axes
	y := float64((float64(uz*f[0]) - float64(ux*f[2])) * over)
	z := float64((float64(ux*f[1]) - float64(uy*f[0])) * over)
	off := p.heading - math.Atan2(t[1][0], t[0][0])
	if math.Abs(off) > math.Pi {
		off = math.Remainder(off, 2*math.Pi)
	}
	var rate vec.V3 // (21.12)
	rate[0] = float64(t[0][0]*x) + float64(t[1][0]*y) + float64(t[2][0]*z) - float64(2*turnDamping*turnOmega*w[0])
	rate[1] = float64(t[0][1]*x) + float64(t[1][1]*y) + float64(t[2][1]*z) - float64(2*turnDamping*turnOmega*w[1])
	rate[2] = float64(off*yawOmega*yawOmega) - float64(2*turnDamping*yawOmega*w[2])
	moment := j.Mul(rate).Add(w.Cross(j.Mul(*w)))
	return p.mix(Push{vec.V3{0, 0, max(0, float64(f[0]*ux)+float64(f[1]*uy)+float64(f[2]*uz))}, moment})
}

// mix is what rotors within their bounds make of a wanted push, (21.13): least squares, yaw no more than a part of
// the thrust. Fewer than four rotors, or rotors in one point, cannot choose; their moments count as given.
func (p *pilot) mix(w Push) Push {
	rotors := p.vehicle.Vehicle.Rotors
	var xx, yy, kk float64
	for k := range rotors {
		r := &rotors[k]
		xx += r.At[0] * r.At[0]
		yy += r.At[1] * r.At[1]
		if !math.IsNaN(r.Torque) {
			kk += r.Torque * r.Torque
		}
	}
	if len(rotors) < 4 || xx == 0 || yy == 0 {
		w.Force[2] = min(w.Force[2], p.vehicle.Vehicle.ThrustMax)
		return w
	}
	n, yaw := float64(len(rotors)), 0.0
	if kk > 0 {
		most := yawShare * w.Force[2] / n * math.Sqrt(kk*n) // the shares of the rotors are alike
		yaw = min(max(w.Moment[2], -most), most)
	}
	var out Push
	for k := range rotors {
		r := &rotors[k]
		u := w.Force[2]/n + w.Moment[0]*r.At[1]/yy - w.Moment[1]*r.At[0]/xx
		if yaw != 0 {
			u += yaw * r.Torque / kk
		}
		u = min(max(u, 0), r.Max)
		out.Force[2] += u
		out.Moment[0] += u * r.At[1]
		out.Moment[1] -= u * r.At[0]
		if kk > 0 {
			out.Moment[2] += u * r.Torque
		}
	}
	return out
}
