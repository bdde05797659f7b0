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

func unit(q [4]float64) [4]float64 {
	n := 1 / sqrt(float64(q[0]*q[0])+float64(q[1]*q[1])+float64(q[2]*q[2])+float64(q[3]*q[3]))
	return [4]float64{q[0] * n, q[1] * n, q[2] * n, q[3] * n}
}

func conjugate(q [4]float64) [4]float64 { return [4]float64{q[0], -q[1], -q[2], -q[3]} }

// times is the turn b, then a.
func times(a, b [4]float64) [4]float64 {
	return [4]float64{
		float64(a[0]*b[0]) - float64(a[1]*b[1]) - float64(a[2]*b[2]) - float64(a[3]*b[3]),
		float64(a[0]*b[1]) + float64(a[1]*b[0]) + float64(a[2]*b[3]) - float64(a[3]*b[2]),
		float64(a[0]*b[2]) + float64(a[2]*b[0]) + float64(a[3]*b[1]) - float64(a[1]*b[3]),
		float64(a[0]*b[3]) + float64(a[3]*b[0]) + float64(a[1]*b[2]) - float64(a[2]*b[1]),
	}
}

// like is the one of q and −q, which are the same attitude, that is nearer to another.
func like(q, other [4]float64) [4]float64 {
	if float64(q[0]*other[0])+float64(q[1]*other[1])+float64(q[2]*other[2])+float64(q[3]*other[3]) < 0 {
		return [4]float64{-q[0], -q[1], -q[2], -q[3]}
	}
	return q
}

// blend is an attitude part of the way from a to b.
func blend(a, b [4]float64, part float64) [4]float64 {
	b = like(b, a)
	for x := range 4 {
		a[x] += float64(part * (b[x] - a[x]))
	}
	return unit(a)
}

// align is the smallest turn that takes unit vector a to unit vector b, which is not its opposite.
func align(a, b vec.V3) [4]float64 {
	n := a.Cross(b)
	return unit([4]float64{1 + a.Dot(b), n[0], n[1], n[2]})
}

// quaternion is a turn's unit quaternion: its largest part from the diagonal, the others from that.
func quaternion(m vec.M3) [4]float64 {
	parts := [4][4]float64{
		{1 + m[0][0] + m[1][1] + m[2][2], m[2][1] - m[1][2], m[0][2] - m[2][0], m[1][0] - m[0][1]},
		{m[2][1] - m[1][2], 1 + m[0][0] - m[1][1] - m[2][2], m[0][1] + m[1][0], m[0][2] + m[2][0]},
		{m[0][2] - m[2][0], m[0][1] + m[1][0], 1 - m[0][0] + m[1][1] - m[2][2], m[1][2] + m[2][1]},
		{m[1][0] - m[0][1], m[0][2] + m[2][0], m[1][2] + m[2][1], 1 - m[0][0] - m[1][1] + m[2][2]},
	}
	best := 0
	for k := range parts {
		if parts[k][k] > parts[best][best] {
			best = k
		}
	}
	return unit(parts[best])
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
