package solve

import "math"

// four is an element of a second-order cone: a[0] ≥ |a[1:]|. A flat cone keeps its last entry at 0.
type four [4]float64

// soc is one second-order cone of a Pull with its Nesterov–Todd scaling.
//
//	s = h τ + G F + g t, where G F = (z0 F_z; F_x, F_y, F_z or 0)
type soc struct {
	pull int
	flat bool
	z0   float64
	h, g four
	s, z four
	// W = η (2 v vᵀ − J) with v the scaled point's root, (6.9); w is the point itself
	eta2 float64
	w    four
	lam  four
	p    four // room for right-hand sides
	ds   four
	dz   four
}

func dot(a, b *four) float64 {
	return float64(a[0]*b[0]) + float64(a[1]*b[1]) + float64(a[2]*b[2]) + float64(a[3]*b[3])
}

// det is a0² − |a1|², without losing digits at the edge.
func det(a *four) float64 {
	n := math.Sqrt(float64(a[1]*a[1]) + float64(a[2]*a[2]) + float64(a[3]*a[3]))
	return (a[0] - n) * (a[0] + n)
}

// scale finds W with W z = W⁻¹ s = λ, (6.9). It reports whether s and z are inside the cone.
func (c *soc) scale() bool {
	ds, dz := det(&c.s), det(&c.z)
	if !(ds > 0 && dz > 0 && c.s[0] > 0 && c.z[0] > 0) {
		return false
	}
	rs, rz := 1/math.Sqrt(ds), 1/math.Sqrt(dz)
	sz := float64(rs*rz) * dot(&c.s, &c.z)
	gamma := math.Sqrt((1 + sz) / 2)
	half := 0.5 / gamma
	c.w[0] = half * (float64(rs*c.s[0]) + float64(rz*c.z[0]))
	for i := 1; i < 4; i++ {
		c.w[i] = half * (float64(rs*c.s[i]) - float64(rz*c.z[i]))
	}
	c.eta2 = math.Sqrt(ds) * rz // η² = √(det s/det z)
	c.lam = c.mulW(&c.z)
	return true
}

// mulW is W a = η (w0 a0 + w1·a1; a1 + (a0 + w1·a1/(1+w0)) w1).
func (c *soc) mulW(a *four) four { return c.applyW(a, math.Sqrt(c.eta2), 1) }

// divW is W⁻¹ a.
func (c *soc) divW(a *four) four { return c.applyW(a, 1/math.Sqrt(c.eta2), -1) }

func (c *soc) applyW(a *four, eta, sign float64) four {
	d := sign * (float64(c.w[1]*a[1]) + float64(c.w[2]*a[2]) + float64(c.w[3]*a[3]))
	k := sign * (a[0] + d/(1+c.w[0]))
	return four{
		eta * (float64(c.w[0]*a[0]) + d),
		eta * (a[1] + float64(k*c.w[1])),
		eta * (a[2] + float64(k*c.w[2])),
		eta * (a[3] + float64(k*c.w[3])),
	}
}

// divW2 is W⁻² a = η⁻² (2 (Jw)(Jw)ᵀ − J) a.
func (c *soc) divW2(a *four) four {
	d := 2 / c.eta2 * (float64(c.w[0]*a[0]) - float64(c.w[1]*a[1]) - float64(c.w[2]*a[2]) - float64(c.w[3]*a[3]))
	e := 1 / c.eta2
	return four{
		float64(d*c.w[0]) - float64(e*a[0]),
		-float64(d*c.w[1]) + float64(e*a[1]),
		-float64(d*c.w[2]) + float64(e*a[2]),
		-float64(d*c.w[3]) + float64(e*a[3]),
	}
}

// circ is the cone's product a ∘ b = (a·b; a0 b1 + b0 a1).
func circ(a, b *four) four {
	return four{dot(a, b), float64(a[0]*b[1]) + float64(b[0]*a[1]), float64(a[0]*b[2]) + float64(b[0]*a[2]), float64(a[0]*b[3]) + float64(b[0]*a[3])}
}

// over solves λ ∘ x = a for x.
func (c *soc) over(a *four) four {
	l := &c.lam
	d := det(l)
	n := float64(l[1]*a[1]) + float64(l[2]*a[2]) + float64(l[3]*a[3])
	x0 := (float64(l[0]*a[0]) - n) / d
	return four{x0, (a[1] - float64(x0*l[1])) / l[0], (a[2] - float64(x0*l[2])) / l[0], (a[3] - float64(x0*l[3])) / l[0]}
}

// step is the largest α ≤ most with a + α d in the cone, a inside it.
func step(a, d *four, most float64) float64 {
	// (a0 + α d0)² − |a1 + α d1|² = A α² + 2 B α + C
	A := float64(d[0]*d[0]) - float64(d[1]*d[1]) - float64(d[2]*d[2]) - float64(d[3]*d[3])
	B := float64(a[0]*d[0]) - float64(a[1]*d[1]) - float64(a[2]*d[2]) - float64(a[3]*d[3])
	C := det(a)
	disc := float64(B*B) - float64(A*C)
	if B >= 0 && A >= 0 {
		return most
	}
	disc = math.Max(0, disc)
	// smallest positive root, written so that nothing cancels
	var root float64
	if B <= 0 {
		root = C / (-B + math.Sqrt(disc))
	} else { // A < 0
		root = (B + math.Sqrt(disc)) / -A
	}
	return math.Min(most, root)
}
