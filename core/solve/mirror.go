package solve

import (
	"math"

	"cohoist/core/vec"
)

// mirrors turn a program half round about z, or mirror it in the planes x = 0 and y = 0: signs of a
// wrench. Moments are axial: a mirror turns those about the axes in its plane.
var mirrors = [3]Wrench{{-1, -1, 1, -1, -1, 1}, {-1, 1, 1, 1, -1, -1}, {1, -1, 1, -1, 1, -1}}

// alike is how near, relative, numbers must be to count as mirror images.
const alike = 1e-12

// Reversible tells that a half turn about z or a mirror turns the program into itself with −t in place of t,
// so that t goes as far one way as the other. A team that looks the same from both sides is asked once.
func (p *Program) Reversible() bool {
	arm := p.reach()
	for i := range mirrors {
		m := &mirrors[i]
		if imaged(&p.Wrench, &p.Wrench, m, 1, arm) && imaged(&p.WrenchT, &p.WrenchT, m, -1, arm) && p.lineImages(m, arm) && p.pullImages(m, arm) {
			return true
		}
	}
	return false
}

// reach is how far out the program's forces act, m.
func (p *Program) reach() float64 {
	r := 0.0
	for i := range p.Lines {
		c := &p.Lines[i].Column
		r = larger(size3(c[3], c[4], c[5]), r)
	}
	for i := range p.Pulls {
		a := &p.Pulls[i].At
		r = larger(size3(a[0], a[1], a[2]), r)
	}
	return r
}

// imaged tells that k times the image of a is b; rounding leaves moments of forces times arm.
func imaged(a, b, m *Wrench, k, arm float64) bool {
	f := size3(a[0], a[1], a[2])
	r := alike * larger(size3(a[3], a[4], a[5]), float64(arm*f))
	f *= alike
	for i := range 3 {
		if !(math.Abs(float64(k*m[i]*a[i])-b[i]) <= f && math.Abs(float64(k*m[i+3]*a[i+3])-b[i+3]) <= r) {
			return false
		}
	}
	return true
}

// reflects is imaged for a vector, by a size.
func reflects(a, b *vec.V3, m *Wrench, k, size float64) bool {
	for i := range 3 {
		if !(math.Abs(float64(k*m[i]*a[i])-b[i]) <= alike*size) {
			return false
		}
	}
	return true
}

func same(a, b float64) bool {
	return a == b || math.Abs(a-b) <= alike*max(math.Abs(a), math.Abs(b))
}

func (p *Program) lineImages(m *Wrench, arm float64) bool {
	for i := range p.Lines {
		a, found := &p.Lines[i], false
		c := a.Column
		f := alike * larger(size3(c[0], c[1], c[2]), size3(c[3], c[4], c[5])/arm)
		r := f * arm
		for k := range c {
			c[k] *= m[k]
		}
		for j := range p.Lines {
			b := &p.Lines[j]
			d := &b.Column
			if math.Abs(c[3]-d[3]) <= r && math.Abs(c[4]-d[4]) <= r && math.Abs(c[5]-d[5]) <= r &&
				math.Abs(c[0]-d[0]) <= f && math.Abs(c[1]-d[1]) <= f && math.Abs(c[2]-d[2]) <= f &&
				same(a.Lo, b.Lo) && same(a.Hi, b.Hi) && same(a.HiT, -b.HiT) {
				found = true
				break
			}
		}
		if !found {
			return false
		}
	}
	return true
}

func (p *Program) pullImages(m *Wrench, arm float64) bool {
	for i := range p.Pulls {
		a, found := &p.Pulls[i], false
		for j := range p.Pulls {
			b := &p.Pulls[j]
			if reflects(&a.At, &b.At, m, 1, arm) && a.image(b, m) {
				found = true
				break
			}
		}
		if !found {
			return false
		}
	}
	return true
}

// image tells that the bounds of b are the image of those of a.
func (a *Pull) image(b *Pull, m *Wrench) bool {
	if !same(a.MinZ, b.MinZ) || len(a.Cones) != len(b.Cones) {
		return false
	}
	for i := range a.Cones {
		k, l := &a.Cones[i], &b.Cones[i]
		f, d := size3(k.B[0], k.B[1], k.B[2]), size3(k.D[0], k.D[1], k.D[2])
		if k.Flat != l.Flat || !same(k.Z, l.Z) || !same(k.C, l.C) || !(math.Abs(k.T+l.T) <= alike*larger(math.Abs(k.T), d)) ||
			!reflects(&k.B, &l.B, m, 1, f) || !reflects(&k.D, &l.D, m, -1, d) {
			return false
		}
	}
	return true
}
