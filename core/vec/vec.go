// Package vec has the three-vectors and 3×3 matrices of the core.
//
// Axes are the caller's business and stand in the caller's names. Products are written
// float64(a*b) + float64(c*d), so that no machine fuses a multiply with an add and every
// machine prints the same report.
package vec

import "math"

// V3 is a vector or a point, in the axes its name tells.
type V3 [3]float64

// M3 is a 3×3 matrix, by rows. As an attitude it turns body axes into payload axes.
type M3 [3]V3

// Add returns a + b.
func (a V3) Add(b V3) V3 { return V3{a[0] + b[0], a[1] + b[1], a[2] + b[2]} }

// Sub returns a − b: the vector from b to a, when both are points.
func (a V3) Sub(b V3) V3 { return V3{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }

// Scale returns s a, rounded, so that a sum after it is not fused with it.
func (a V3) Scale(s float64) V3 { return V3{float64(s * a[0]), float64(s * a[1]), float64(s * a[2])} }

// Dot returns a · b.
func (a V3) Dot(b V3) float64 {
	return float64(a[0]*b[0]) + float64(a[1]*b[1]) + float64(a[2]*b[2])
}

// Cross returns a × b.
func (a V3) Cross(b V3) V3 {
	return V3{
		float64(a[1]*b[2]) - float64(a[2]*b[1]),
		float64(a[2]*b[0]) - float64(a[0]*b[2]),
		float64(a[0]*b[1]) - float64(a[1]*b[0]),
	}
}

// Norm returns |a|, without overflow.
func (a V3) Norm() float64 { return math.Hypot(math.Hypot(a[0], a[1]), a[2]) }

// Unit returns a/|a|, or the zero vector when a is zero.
func (a V3) Unit() V3 {
	n := a.Norm()
	if n == 0 {
		return V3{}
	}
	return a.Scale(1 / n)
}

// Identity is the matrix that turns nothing.
var Identity = M3{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}

// Mul returns m a.
func (m M3) Mul(a V3) V3 { return V3{m[0].Dot(a), m[1].Dot(a), m[2].Dot(a)} }

// MulM returns m n.
func (m M3) MulM(n M3) M3 {
	t := n.T()
	var out M3
	for i := range 3 {
		for j := range 3 {
			out[i][j] = m[i].Dot(t[j])
		}
	}
	return out
}

// T returns the transpose.
func (m M3) T() M3 {
	return M3{{m[0][0], m[1][0], m[2][0]}, {m[0][1], m[1][1], m[2][1]}, {m[0][2], m[1][2], m[2][2]}}
}

// AddM returns m + n.
func (m M3) AddM(n M3) M3 { return M3{m[0].Add(n[0]), m[1].Add(n[1]), m[2].Add(n[2])} }

// Diag is the diagonal matrix of d.
func Diag(d V3) M3 { return M3{{d[0], 0, 0}, {0, d[1], 0}, {0, 0, d[2]}} }

// Rot returns the turn by the rotation vector r (axis times angle, radians), by Rodrigues' formula.
func Rot(r V3) M3 {
	a := r.Norm()
	if a == 0 {
		return Identity
	}
	n := r.Scale(1 / a)
	s, c := math.Sin(a), math.Cos(a)
	var m M3
	for i := range 3 {
		for j := range 3 {
			m[i][j] = float64((1 - c) * n[i] * n[j])
		}
		m[i][i] += c
	}
	k := n.Scale(s)
	m[0][1] -= k[2]
	m[0][2] += k[1]
	m[1][0] += k[2]
	m[1][2] -= k[0]
	m[2][0] -= k[1]
	m[2][1] += k[0]
	return m
}

// Euler returns Rz(c) Ry(b) Rx(a): a turn about the fixed x, then y, then z axis. Radians.
func Euler(a, b, c float64) M3 {
	return Rot(V3{0, 0, c}).MulM(Rot(V3{0, b, 0})).MulM(Rot(V3{a, 0, 0}))
}
