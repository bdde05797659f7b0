package rehearse

import (
	"math"

	"cohoist/core/vec"
)

// load finds forces (level axes, without weight), moments (body axes) and tensions.
func (w *World) load(x []state, t float64) {
	var air vec.V3
	if w.Density > 0 && w.Wind != nil {
		air = w.Wind(w.Time + t)
	}
	for i := range x {
		b, s, turn := &w.Bodies[i], &x[i], &w.turns[i]
		matrix(s[3], s[4], s[5], s[6], turn)
		now := &b.push
		if t > 0 {
			now = &w.later
			w.after(b, t, now)
		}
		f, m := &w.force[i], &w.moment[i]
		fx, fy, fz := now.Force[0], now.Force[1], now.Force[2]
		f[0] = float64(turn[0][0]*fx) + float64(turn[0][1]*fy) + float64(turn[0][2]*fz)
		f[1] = float64(turn[1][0]*fx) + float64(turn[1][1]*fy) + float64(turn[1][2]*fz)
		f[2] = float64(turn[2][0]*fx) + float64(turn[2][1]*fy) + float64(turn[2][2]*fz)
		m[0], m[1], m[2] = now.Moment[0], now.Moment[1], now.Moment[2]
		if w.Density > 0 {
			drag(w.Density, turn, &b.DragArea, air[0]-s[7], air[1]-s[8], air[2]-s[9], f)
			for k := range b.Sails {
				w.sail(i, s, &b.Sails[k], &air)
			}
		}
		if len(b.Feet) > 0 && s[2]-b.reach < w.Ground {
			w.stand(i, s)
		}
	}
	w.taut = 0
	for k := range w.Lines {
		if w.pull(k, x) {
			w.taut |= 1 << (k % 64)
		}
	}
}

// drag adds that of chapter 3, of the air as the body meets it, (3.4).
func drag(density float64, turn *vec.M3, area *vec.V3, x, y, z float64, f *vec.V3) {
	speed := sqrt(float64(x*x) + float64(y*y) + float64(z*z))
	if speed == 0 {
		return
	}
	k := density / 2 * speed
	for a := range 3 {
		along := float64(turn[0][a]*x) + float64(turn[1][a]*y) + float64(turn[2][a]*z)
		along *= k * area[a]
		f[0] += float64(turn[0][a] * along)
		f[1] += float64(turn[1][a] * along)
		f[2] += float64(turn[2][a] * along)
	}
}

// sail adds the drag of a part of a body, of the air as that part meets it.
func (w *World) sail(i int, s *state, part *Sail, air *vec.V3) {
	e := &w.ends[0]
	f := w.blown(i, s, part, air, e)
	w.add(i, f[0], f[1], f[2], e)
}

// blown is the drag of a part of a body, N, level axes.
func (w *World) blown(i int, s *state, part *Sail, air *vec.V3, e *end) (f vec.V3) {
	turn, at := &w.turns[i], &part.At
	e.armX = float64(turn[0][0]*at[0]) + float64(turn[0][1]*at[1]) + float64(turn[0][2]*at[2])
	e.armY = float64(turn[1][0]*at[0]) + float64(turn[1][1]*at[1]) + float64(turn[1][2]*at[2])
	e.armZ = float64(turn[2][0]*at[0]) + float64(turn[2][1]*at[1]) + float64(turn[2][2]*at[2])
	vx := float64(s[11]*at[2]) - float64(s[12]*at[1])
	vy := float64(s[12]*at[0]) - float64(s[10]*at[2])
	vz := float64(s[10]*at[1]) - float64(s[11]*at[0])
	x := air[0] - s[7] - (float64(turn[0][0]*vx) + float64(turn[0][1]*vy) + float64(turn[0][2]*vz))
	y := air[1] - s[8] - (float64(turn[1][0]*vx) + float64(turn[1][1]*vy) + float64(turn[1][2]*vz))
	z := air[2] - s[9] - (float64(turn[2][0]*vx) + float64(turn[2][1]*vy) + float64(turn[2][2]*vz))
	drag(w.Density, turn, &part.Area, x, y, z, &f)
	return f
}

// end is a line's end: where it is, and how it lies from the centre of mass, level axes.
type end struct{ x, y, z, armX, armY, armZ float64 }

func (w *World) end(e *end, body int, at *vec.V3, x []state) {
	if body < 0 {
		e.x, e.y, e.z = at[0], at[1], at[2]
		return
	}
	s := &x[body]
	e.x, e.y, e.z = s[0], s[1], s[2]
	ax, ay, az := at[0], at[1], at[2]
	if ax == 0 && ay == 0 && az == 0 {
		e.armX, e.armY, e.armZ = 0, 0, 0
		return
	}
	turn := &w.turns[body]
	e.armX = float64(turn[0][0]*ax) + float64(turn[0][1]*ay) + float64(turn[0][2]*az)
	e.armY = float64(turn[1][0]*ax) + float64(turn[1][1]*ay) + float64(turn[1][2]*az)
	e.armZ = float64(turn[2][0]*ax) + float64(turn[2][1]*ay) + float64(turn[2][2]*az)
	e.x, e.y, e.z = e.x+e.armX, e.y+e.armY, e.z+e.armZ
}

// along is the speed of a body's point along a direction, m/s.
func (w *World) along(body int, at *vec.V3, x []state, dx, dy, dz float64) float64 {
	if body < 0 {
		return 0
	}
	s, turn := &x[body], &w.turns[body]
	vx := float64(s[11]*at[2]) - float64(s[12]*at[1])
	vy := float64(s[12]*at[0]) - float64(s[10]*at[2])
	vz := float64(s[10]*at[1]) - float64(s[11]*at[0])
	return float64(dx*(s[7]+float64(turn[0][0]*vx)+float64(turn[0][1]*vy)+float64(turn[0][2]*vz))) +
		float64(dy*(s[8]+float64(turn[1][0]*vx)+float64(turn[1][1]*vy)+float64(turn[1][2]*vz))) +
		float64(dz*(s[9]+float64(turn[2][0]*vx)+float64(turn[2][1]*vy)+float64(turn[2][2]*vz)))
}

// pull adds what a line does to its ends, (21.3). It tells that the line is taut.
func (w *World) pull(k int, x []state) bool {
	l := &w.Lines[k]
	w.Tension[k] = 0
	if l.Cut {
		return false
	}
	a, b := &w.ends[0], &w.ends[1]
	w.end(a, l.A, &l.AtA, x)
	w.end(b, l.B, &l.AtB, x)
	dx, dy, dz := b.x-a.x, b.y-a.y, b.z-a.z
	square := float64(dx*dx) + float64(dy*dy) + float64(dz*dz)
	if square <= l.Length*l.Length {
		return false
	}
	length := sqrt(square)
	dx, dy, dz = dx/length, dy/length, dz/length
	tension := float64(l.Stiffness * (length - l.Length))
	if l.Damping != 0 {
		tension += float64(l.Damping * (w.along(l.B, &l.AtB, x, dx, dy, dz) - w.along(l.A, &l.AtA, x, dx, dy, dz)))
	}
	if tension <= 0 {
		return false
	}
	w.Tension[k] = tension
	w.add(l.A, dx*tension, dy*tension, dz*tension, a)
	w.add(l.B, -dx*tension, -dy*tension, -dz*tension, b)
	return true
}

// add puts a force on a body at an arm from its centre of mass, both in level axes.
func (w *World) add(body int, x, y, z float64, e *end) {
	if body < 0 {
		return
	}
	f := &w.force[body]
	f[0], f[1], f[2] = f[0]+x, f[1]+y, f[2]+z
	mx := float64(e.armY*z) - float64(e.armZ*y)
	my := float64(e.armZ*x) - float64(e.armX*z)
	mz := float64(e.armX*y) - float64(e.armY*x)
	m, turn := &w.moment[body], &w.turns[body]
	m[0] += float64(turn[0][0]*mx) + float64(turn[1][0]*my) + float64(turn[2][0]*mz)
	m[1] += float64(turn[0][1]*mx) + float64(turn[1][1]*my) + float64(turn[2][1]*mz)
	m[2] += float64(turn[0][2]*mx) + float64(turn[1][2]*my) + float64(turn[2][2]*mz)
}

// stand holds a body's feet on the ground: springs that only push, and friction against sliding, (21.4).
func (w *World) stand(i int, s *state) {
	turn, b := &w.turns[i], &w.Bodies[i]
	spin := vec.V3{s[10], s[11], s[12]}
	for _, foot := range b.Feet {
		arm := turn.Mul(foot)
		depth := w.Ground - s[2] - arm[2]
		if depth <= 0 {
			continue
		}
		v := vec.V3{s[7], s[8], s[9]}.Add(turn.Mul(spin.Cross(foot)))
		up := float64(b.firm*depth) - float64(b.dull*v[2])
		if up <= 0 {
			continue
		}
		slide := math.Hypot(v[0], v[1])
		grip := -Friction * up / max(slide, creep)
		w.add(i, grip*v[0], grip*v[1], up, &end{armX: arm[0], armY: arm[1], armZ: arm[2]})
	}
}

// creep is the sliding speed at which friction is full, m/s.
const creep = 0.02
