package rehearse

import "cohoist/core/vec"

// Matrix is the attitude of a unit quaternion.
func Matrix(q [4]float64) (m vec.M3) {
	matrix(q[0], q[1], q[2], q[3], &m)
	return m
}

func matrix(w, x, y, z float64, m *vec.M3) {
	xx, yy, zz := float64(x*x), float64(y*y), float64(z*z)
	xy, xz, yz, wx, wy, wz := float64(x*y), float64(x*z), float64(y*z), float64(w*x), float64(w*y), float64(w*z)
	m[0][0], m[0][1], m[0][2] = 1-2*(yy+zz), 2*(xy-wz), 2*(xz+wy)
	m[1][0], m[1][1], m[1][2] = 2*(xy+wz), 1-2*(xx+zz), 2*(yz-wx)
	m[2][0], m[2][1], m[2][2] = 2*(xz-wy), 2*(yz+wx), 1-2*(xx+yy)
}

// inverse of a symmetric matrix; of a point mass, whose inertia is nothing, nothing.
func inverse(m vec.M3) vec.M3 {
	c := vec.M3{m[1].Cross(m[2]), m[2].Cross(m[0]), m[0].Cross(m[1])}
	det := m[0].Dot(c[0])
	if det == 0 {
		return vec.M3{}
	}
	for i := range c {
		c[i] = c[i].Scale(1 / det)
	}
	return c.T()
}

// Energy is kinetic, of height and in the lines, J. Momentum is in kg m/s; Spin is the angular momentum about the
// origin, kg m²/s. Level axes.
func (w *World) Energy() (energy float64, momentum, spin vec.V3) {
	for i := range w.Poses {
		p, b := &w.Poses[i], &w.Bodies[i]
		turning := b.Inertia.Mul(p.Spin)
		energy += b.Mass*(p.Velocity.Dot(p.Velocity)/2+w.Gravity*p.At[2]) + p.Spin.Dot(turning)/2
		mv := p.Velocity.Scale(b.Mass)
		momentum = momentum.Add(mv)
		spin = spin.Add(p.At.Cross(mv)).Add(Matrix(p.Attitude).Mul(turning))
	}
	for k := range w.Lines {
		l := &w.Lines[k]
		if l.Cut {
			continue
		}
		if s := w.place(l.B, l.AtB).Sub(w.place(l.A, l.AtA)).Norm() - l.Length; s > 0 {
			energy += l.Stiffness * s * s / 2
		}
	}
	return energy, momentum, spin
}

// place is where a point of a body is, level axes.
func (w *World) place(body int, at vec.V3) vec.V3 {
	if body < 0 {
		return at
	}
	return w.Poses[body].At.Add(Matrix(w.Poses[body].Attitude).Mul(at))
}
