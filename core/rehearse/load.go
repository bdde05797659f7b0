package rehearse

import (
	"math"

	"cohoist/core/vec"
)

// load finds forces (level axes, without weight), moments (body axes) and tensions.
func (w *World) load(poses []Pose, t float64) {
	var air vec.V3
	if w.Density > 0 && w.Wind != nil {
		air = w.Wind(w.Time + t)
	}
	for i := range poses {
		b, p := &w.Bodies[i], &poses[i]
		w.turns[i] = Matrix(p.Attitude)
		now := b.push
		if t > 0 {
			now = w.after(b, t)
		}
		turn := &w.turns[i]
		w.force[i] = vec.V3{turn[0][2] * now.Thrust, turn[1][2] * now.Thrust, turn[2][2] * now.Thrust}
		w.moment[i] = now.Moment
		if w.Density > 0 {
			w.drag(i, air.Sub(p.Velocity))
		}
		if len(b.Feet) > 0 && !math.IsInf(w.Ground, -1) {
			w.stand(i, p)
		}
	}
	w.taut = 0
	for k := range w.Lines {
		w.pull(k, poses)
		if w.Tension[k] > 0 {
			w.taut |= 1 << (k % 64)
		}
	}
}

// drag is that of chapter 3, of the air as the body meets it, (3.4).
func (w *World) drag(i int, v vec.V3) {
	turn, a := &w.turns[i], &w.Bodies[i].DragArea
	speed := sqrt(v.Dot(v))
	if speed == 0 {
		return
	}
	k := w.Density / 2 * speed
	var f vec.V3
	for axis := range 3 {
		along := float64(turn[0][axis]*v[0]) + float64(turn[1][axis]*v[1]) + float64(turn[2][axis]*v[2])
		along *= k * a[axis]
		for row := range 3 {
			f[row] += float64(turn[row][axis] * along)
		}
	}
	w.force[i] = w.force[i].Add(f)
}

// end is a line's end: where it is, how it moves, and from the centre of mass in level axes.
func (w *World) end(body int, at vec.V3, poses []Pose) (place, velocity, arm vec.V3) {
	if body < 0 {
		return at, vec.V3{}, vec.V3{}
	}
	p := &poses[body]
	if at == (vec.V3{}) {
		return p.At, p.Velocity, vec.V3{}
	}
	turn := &w.turns[body]
	arm = turn.Mul(at)
	return p.At.Add(arm), p.Velocity.Add(turn.Mul(p.Spin.Cross(at))), arm
}

// pull adds what a line does to its ends, (21.3).
func (w *World) pull(k int, poses []Pose) {
	l := &w.Lines[k]
	w.Tension[k] = 0
	if l.Cut {
		return
	}
	a, va, ra := w.end(l.A, l.AtA, poses)
	b, vb, rb := w.end(l.B, l.AtB, poses)
	d := b.Sub(a)
	length := sqrt(d.Dot(d))
	if length <= l.Length {
		return
	}
	d = d.Scale(1 / length)
	tension := float64(l.Stiffness*(length-l.Length)) + float64(l.Damping*d.Dot(vb.Sub(va)))
	if tension <= 0 {
		return
	}
	w.Tension[k] = tension
	f := d.Scale(tension)
	w.add(l.A, f, ra)
	w.add(l.B, f.Scale(-1), rb)
}

// add puts a force on a body at an arm from its centre of mass, both in level axes.
func (w *World) add(body int, f, arm vec.V3) {
	if body < 0 {
		return
	}
	w.force[body] = w.force[body].Add(f)
	if arm == (vec.V3{}) {
		return
	}
	m, turn := arm.Cross(f), &w.turns[body]
	for a := range 3 {
		w.moment[body][a] += float64(turn[0][a]*m[0]) + float64(turn[1][a]*m[1]) + float64(turn[2][a]*m[2])
	}
}

// stand holds a body's feet on the ground: springs that only push, and friction against sliding, (21.4).
func (w *World) stand(i int, p *Pose) {
	turn := &w.turns[i]
	for _, foot := range w.Bodies[i].Feet {
		arm := turn.Mul(foot)
		depth := w.Ground - p.At[2] - arm[2]
		if depth <= 0 {
			continue
		}
		v := p.Velocity.Add(turn.Mul(p.Spin.Cross(foot)))
		up := float64(w.Bodies[i].firm*depth) - float64(w.Bodies[i].dull*v[2])
		if up <= 0 {
			continue
		}
		slide := math.Hypot(v[0], v[1])
		grip := -Friction * up / math.Max(slide, creep)
		w.add(i, vec.V3{grip * v[0], grip * v[1], up}, arm)
	}
}

// creep is the sliding speed at which friction is full, m/s.
const creep = 0.02
