package solve

import (
	"math"

	"cohoist/core/vec"
)

// four is an element of a second-order cone, a ≥ |(x, y, z)|. Flat cones keep z at 0. It is a
// struct, not an array, so that the compiler keeps it in registers.
type four struct{ a, x, y, z float64 }

// cone is one second-order cone of a Pull, in the pull's unit of force:
//
//	s = h τ + G F + g t in the cone, G F = (Z F_z; F_x, F_y, F_z or 0 when flat)
type cone struct {
	flat   bool
	tight  bool    // s lies on the edge
	zc     float64 // Z
	h, g   four
	s, z   four
	w      four    // Nesterov–Todd point, determinant 1, (6.9)
	eta    float64 // W = eta W̄(w)
	ieta   float64
	det    float64 // of λ
	lam    four    // W z = W⁻¹ s
	res    four    // the residual h τ + G F + g t − s
	p      four    // W⁻¹ of it
	o      four    // right-hand side of W⁻¹ ds + W dz
	ds, dz four    // W⁻¹ ds, W dz; ds also holds right-hand sides before
	one    four    // W⁻¹ (h + G x₁ + g t₁) of the column of τ
	q      [4]four // orthonormal columns of W⁻¹ (G g), (6.12)
}

func (a four) dot(b four) float64 {
	return float64(a.a*b.a) + float64(a.x*b.x) + (float64(a.y*b.y) + float64(a.z*b.z))
}

func (a four) axpy(k float64, b four) four { // a + k b
	return four{a.a + float64(k*b.a), a.x + float64(k*b.x), a.y + float64(k*b.y), a.z + float64(k*b.z)}
}

func (a four) scale(k float64) four { return four{k * a.a, k * a.x, k * a.y, k * a.z} }

func (a four) sub(b four) four { return four{a.a - b.a, a.x - b.x, a.y - b.y, a.z - b.z} }

// det is a² − |v|², by factors so that little cancels at the edge.
func (a four) det() float64 {
	n := math.Sqrt(float64(a.x*a.x) + float64(a.y*a.y) + float64(a.z*a.z))
	return float64((a.a - n) * (a.a + n))
}

// wbar is W̄ b = (w₀b₀ + w₁·b₁; b₁ + (b₀ + w₁·b₁/(1 + w₀)) w₁), (6.9).
func (w four) wbar(b four) four {
	d := float64(w.x*b.x) + float64(w.y*b.y) + float64(w.z*b.z)
	k := b.a + d/(1+w.a)
	return four{float64(w.a*b.a) + d, b.x + float64(k*w.x), b.y + float64(k*w.y), b.z + float64(k*w.z)}
}

// inverse is the point whose W̄ undoes that of w.
func (w four) inverse() four { return four{w.a, -w.x, -w.y, -w.z} }

// scaling finds W with W z = W⁻¹ s = λ, (6.9); false when s or z is not inside the cone.
func (c *cone) scaling() bool {
	ds, dz := c.s.det(), c.z.det()
	if !(ds > 0 && dz > 0 && c.s.a > 0 && c.z.a > 0) {
		return false
	}
	rs, rz := 1/math.Sqrt(ds), 1/math.Sqrt(dz)
	gamma := math.Sqrt(0.5 + 0.5*float64(float64(rs*rz)*c.s.dot(c.z)))
	k := 0.5 / gamma
	ks, kz := float64(k*rs), float64(k*rz)
	w := four{0, float64(ks*c.s.x) - float64(kz*c.z.x), float64(ks*c.s.y) - float64(kz*c.z.y), float64(ks*c.s.z) - float64(kz*c.z.z)}
	w.a = math.Sqrt(1 + float64(w.x*w.x) + float64(w.y*w.y) + float64(w.z*w.z))
	c.w = w
	c.eta = math.Sqrt(math.Sqrt(ds) * rz)
	c.ieta = 1 / c.eta
	c.lam = w.wbar(c.z).scale(c.eta)
	c.det = c.lam.det()
	return c.lam.a > 0 && c.det > 0
}

// over solves λ ∘ x = a, with λ ∘ x = (λ·x; λ₀x₁ + x₀λ₁) and det the determinant of λ.
func over(l, a four, det float64) four {
	n := float64(l.x*a.x) + float64(l.y*a.y) + float64(l.z*a.z)
	x := (float64(l.a*a.a) - n) / det
	i := 1 / l.a
	return four{x, float64(i * (a.x - float64(x*l.x))), float64(i * (a.y - float64(x*l.y))), float64(i * (a.z - float64(x*l.z)))}
}

// circ is a ∘ b.
func circ(a, b four) four {
	return four{a.dot(b), float64(a.a*b.x) + float64(b.a*a.x), float64(a.a*b.y) + float64(b.a*a.y), float64(a.a*b.z) + float64(b.a*a.z)}
}

// reachFrom is 1/α for the largest α with l + α d in the cone, C the determinant of l; 0 when there is no end.
func reachFrom(l, d four, C float64) float64 {
	// (l + α d) has determinant A α² + 2 B α + C; the smallest positive root as 1/α.
	A := float64(d.a*d.a) - float64(d.x*d.x) - float64(d.y*d.y) - float64(d.z*d.z)
	B := float64(l.a*d.a) - float64(l.x*d.x) - float64(l.y*d.y) - float64(l.z*d.z)
	if !(C > 0) {
		return math.Inf(1)
	}
	disc := float64(B*B) - float64(A*C)
	if B >= 0 && A >= 0 {
		return 0
	}
	if disc < -1e-14*float64(B*B) {
		return 0
	}
	root := 0.0
	if disc > 0 {
		root = math.Sqrt(disc)
	}
	if B <= 0 {
		return (root - B) / C
	}
	return -A / (B + root)
}

// value is G F + g t.
func (c *cone) value(x, y, z, t float64) four {
	v := four{float64(c.zc*z) + float64(c.g.a*t), x + float64(c.g.x*t), y + float64(c.g.y*t), z + float64(c.g.z*t)}
	if c.flat {
		v.z = 0
	}
	return v
}

// larger is math.Max without its care for NaN, which the sums over the blocks catch.
func larger(a, b float64) float64 {
	if a > b {
		return a
	}
	return b
}

// length is |v| for numbers whose squares are within range, as forces are.
func length(v vec.V3) float64 {
	return math.Sqrt(float64(v[0]*v[0]) + float64(v[1]*v[1]) + float64(v[2]*v[2]))
}

// longest is the largest |component|.
func longest(x, y, z float64) float64 {
	return larger(math.Abs(x), larger(math.Abs(y), math.Abs(z)))
}
