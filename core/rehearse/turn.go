package rehearse

import "cohoist/core/vec"

// Matrix is the attitude of a unit quaternion.
func Matrix(q [4]float64) vec.M3 {
	w, x, y, z := q[0], q[1], q[2], q[3]
	return vec.M3{
		{1 - 2*(float64(y*y)+float64(z*z)), 2 * (float64(x*y) - float64(w*z)), 2 * (float64(x*z) + float64(w*y))},
		{2 * (float64(x*y) + float64(w*z)), 1 - 2*(float64(x*x)+float64(z*z)), 2 * (float64(y*z) - float64(w*x))},
		{2 * (float64(x*z) - float64(w*y)), 2 * (float64(y*z) + float64(w*x)), 1 - 2*(float64(x*x)+float64(y*y))},
	}
}

func unit(q [4]float64) [4]float64 {
	n := 1 / sqrt(float64(q[0]*q[0])+float64(q[1]*q[1])+float64(q[2]*q[2])+float64(q[3]*q[3]))
	return [4]float64{q[0] * n, q[1] * n, q[2] * n, q[3] * n}
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
		a, _, _ := w.end(l.A, l.AtA, w.Poses)
		b, _, _ := w.end(l.B, l.AtB, w.Poses)
		if s := b.Sub(a).Norm() - l.Length; s > 0 {
			energy += l.Stiffness * s * s / 2
		}
	}
	return energy, momentum, spin
}
