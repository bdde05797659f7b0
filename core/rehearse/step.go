package rehearse

import "math"

func sqrt(x float64) float64 { return math.Sqrt(x) }

// state is a pose, or its change, in a row: place, attitude, velocity, spin. Small loops over it are much faster as
// WebAssembly than vectors handed about.
type state [13]float64

func (s *state) of(p *Pose) {
	s[0], s[1], s[2] = p.At[0], p.At[1], p.At[2]
	s[3], s[4], s[5], s[6] = p.Attitude[0], p.Attitude[1], p.Attitude[2], p.Attitude[3]
	s[7], s[8], s[9] = p.Velocity[0], p.Velocity[1], p.Velocity[2]
	s[10], s[11], s[12] = p.Spin[0], p.Spin[1], p.Spin[2]
}

// to gives a pose the state, its attitude made a unit quaternion.
func (s *state) to(p *Pose) {
	n := 1 / sqrt(float64(s[3]*s[3])+float64(s[4]*s[4])+float64(s[5]*s[5])+float64(s[6]*s[6]))
	for a := range 4 {
		s[3+a] *= n
		p.Attitude[a] = s[3+a]
	}
	for a := range 3 {
		p.At[a], p.Velocity[a], p.Spin[a] = s[a], s[7+a], s[10+a]
	}
}

// finer is into how many parts a step is cut in which a line goes slack or taut.
const finer = 8

// Step moves the world on by h seconds, (21.1). A step in which a line goes slack or taut is done again in parts.
func (w *World) Step(h float64) {
	for i := range w.Poses {
		w.now[i].of(&w.Poses[i])
	}
	copy(w.before, w.now)
	if !w.once(h) {
		copy(w.now, w.before)
		for i := range w.Bodies {
			w.Bodies[i].push = w.Bodies[i].was
		}
		w.Time -= h
		for range finer {
			w.once(h / finer)
		}
	}
	for i := range w.Poses {
		w.now[i].to(&w.Poses[i])
	}
}

// once is one step of the classical Runge–Kutta rule. It tells that no line went slack or taut.
func (w *World) once(h float64) bool {
	w.slope(w.now, 0, w.rates[0])
	taut, same := w.taut, true
	for k, part := range [3]float64{h / 2, h / 2, h} {
		rates := w.rates[k]
		for i := range w.now {
			x, y, r := &w.now[i], &w.stage[i], &rates[i]
			for a := range x {
				y[a] = x[a] + float64(part*r[a])
			}
		}
		w.slope(w.stage, part, w.rates[k+1])
		same = same && w.taut == taut
	}
	sixth := h / 6
	for i := range w.now {
		x, a, b, c, d := &w.now[i], &w.rates[0][i], &w.rates[1][i], &w.rates[2][i], &w.rates[3][i]
		for j := range x {
			x[j] += float64(sixth * (a[j] + float64(2*(b[j]+c[j])) + d[j]))
		}
	}
	for i := range w.Bodies {
		b := &w.Bodies[i]
		b.was = b.push
		w.after(b, h, &b.push)
	}
	w.Time += h
	return same
}

// after is what a body's rotors do t seconds on: motors lag by one time constant, (21.5).
func (w *World) after(b *Body, t float64, out *Push) {
	if b.lag == 0 {
		*out = b.target
		return
	}
	if t != w.ahead || b.lag != w.lag {
		w.ahead, w.lag, w.left = t, b.lag, math.Exp(-t/b.lag)
	}
	left := w.left
	for a := range 3 {
		out.Force[a] = b.target.Force[a] + float64(left*(b.push.Force[a]-b.target.Force[a]))
		out.Moment[a] = b.target.Moment[a] + float64(left*(b.push.Moment[a]-b.target.Moment[a]))
	}
}

// slope is how the world changes t seconds after the start of the step.
func (w *World) slope(x []state, t float64, out []state) {
	w.load(x, t)
	for i := range x {
		s, r, b, f, m := &x[i], &out[i], &w.Bodies[i], &w.force[i], &w.moment[i]
		r[0], r[1], r[2] = s[7], s[8], s[9]
		light := 1 / b.Mass
		r[7], r[8], r[9] = f[0]*light, f[1]*light, f[2]*light-w.Gravity
		qw, qx, qy, qz, p, q, u := s[3], s[4], s[5], s[6], s[10], s[11], s[12]
		j := &b.Inertia
		hx := float64(j[0][0]*p) + float64(j[0][1]*q) + float64(j[0][2]*u)
		hy := float64(j[1][0]*p) + float64(j[1][1]*q) + float64(j[1][2]*u)
		hz := float64(j[2][0]*p) + float64(j[2][1]*q) + float64(j[2][2]*u)
		mx := m[0] - (float64(q*hz) - float64(u*hy))
		my := m[1] - (float64(u*hx) - float64(p*hz))
		mz := m[2] - (float64(p*hy) - float64(q*hx))
		j = &b.inv
		r[10] = float64(j[0][0]*mx) + float64(j[0][1]*my) + float64(j[0][2]*mz) // (21.2)
		r[11] = float64(j[1][0]*mx) + float64(j[1][1]*my) + float64(j[1][2]*mz)
		r[12] = float64(j[2][0]*mx) + float64(j[2][1]*my) + float64(j[2][2]*mz)
		r[3] = (-float64(qx*p) - float64(qy*q) - float64(qz*u)) / 2 // q̇ = ½ q (0, ω)
		r[4] = (float64(qw*p) + float64(qy*u) - float64(qz*q)) / 2
		r[5] = (float64(qw*q) + float64(qz*p) - float64(qx*u)) / 2
		r[6] = (float64(qw*u) + float64(qx*q) - float64(qy*p)) / 2
	}
}
