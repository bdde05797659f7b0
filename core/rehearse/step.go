package rehearse

import "math"

func sqrt(x float64) float64 { return math.Sqrt(x) }

// finer is into how many parts a step is cut in which a line goes slack or taut.
const finer = 8

// Step moves the world on by h seconds, (21.1). A step in which a line goes slack or taut is done again in parts.
func (w *World) Step(h float64) {
	copy(w.before, w.Poses)
	if w.once(h) {
		return
	}
	copy(w.Poses, w.before)
	for i := range w.Bodies {
		w.Bodies[i].push = w.Bodies[i].was
	}
	w.Time -= h
	for range finer {
		w.once(h / finer)
	}
}

// once is one step of the classical Runge–Kutta rule. It tells that no line went slack or taut.
func (w *World) once(h float64) bool {
	w.slope(w.Poses, 0, w.rates[0])
	taut, same := w.taut, true
	for k, part := range [3]float64{h / 2, h / 2, h} {
		for i := range w.Poses {
			w.stage[i] = moved(&w.Poses[i], &w.rates[k][i], part)
		}
		w.slope(w.stage, part, w.rates[k+1])
		same = same && w.taut == taut
	}
	for i := range w.Poses {
		p := &w.Poses[i]
		for k, part := range [4]float64{h / 6, h / 3, h / 3, h / 6} {
			*p = moved(p, &w.rates[k][i], part)
		}
		p.Attitude = unit(p.Attitude)
	}
	for i := range w.Bodies {
		b := &w.Bodies[i]
		b.was, b.push = b.push, w.after(b, h)
	}
	w.Time += h
	return same
}

func moved(p *Pose, r *rate, h float64) Pose {
	out := *p
	for a := range 3 {
		out.At[a] += float64(h * r.at[a])
		out.Velocity[a] += float64(h * r.velocity[a])
		out.Spin[a] += float64(h * r.spin[a])
	}
	for a := range 4 {
		out.Attitude[a] += float64(h * r.attitude[a])
	}
	return out
}

// after is what a body's rotors do t seconds on: motors lag by one time constant, (21.5).
func (w *World) after(b *Body, t float64) Push {
	if b.lag == 0 {
		return b.target
	}
	if t != w.ahead || b.lag != w.lag {
		w.ahead, w.lag, w.left = t, b.lag, math.Exp(-t/b.lag)
	}
	return Push{b.target.Thrust + float64(w.left*(b.push.Thrust-b.target.Thrust)),
		b.target.Moment.Add(b.push.Moment.Sub(b.target.Moment).Scale(w.left))}
}

// slope is how poses change t seconds after the start of the step.
func (w *World) slope(poses []Pose, t float64, out []rate) {
	w.load(poses, t)
	for i := range poses {
		p, b, r := &poses[i], &w.Bodies[i], &out[i]
		r.at = p.Velocity
		r.velocity = w.force[i].Scale(1 / b.Mass)
		r.velocity[2] -= w.Gravity
		r.spin = b.inv.Mul(w.moment[i].Sub(p.Spin.Cross(b.Inertia.Mul(p.Spin)))) // (21.2)
		q, s := &p.Attitude, &p.Spin
		r.attitude = [4]float64{ // q̇ = ½ q (0, ω)
			(-float64(q[1]*s[0]) - float64(q[2]*s[1]) - float64(q[3]*s[2])) / 2,
			(float64(q[0]*s[0]) + float64(q[2]*s[2]) - float64(q[3]*s[1])) / 2,
			(float64(q[0]*s[1]) + float64(q[3]*s[0]) - float64(q[1]*s[2])) / 2,
			(float64(q[0]*s[2]) + float64(q[1]*s[1]) - float64(q[2]*s[0])) / 2,
		}
	}
}
