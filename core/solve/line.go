package solve

import "math"

// The steps of one iteration on the Lines, as for the Pulls, in closed form.

func (s *Solver) lineResidual(a *sums) {
	q := 0.0
	if s.quad {
		q = 1
	}
	for i := range s.lines {
		o := &s.lines[i]
		c := &s.col[i]
		o.rx = float64(q*o.u) - dot6(c, &s.y) - o.zl + o.zh
		o.pl = (o.u - float64(o.lo*s.tau) - o.sl) * o.hasLo
		o.ph = (float64(o.hi*s.tau) + float64(o.ht*s.t) - o.u - o.sh) * o.hasHi
		a.mu += float64(o.sl*o.zl) + float64(o.sh*o.zh)
		a.mix += float64(o.pl*o.zl) + float64(o.ph*o.zh) + float64(o.u*o.rx)
		a.rt -= float64(o.ht * o.zh)
		for k := range 6 {
			a.ry[k] += float64(c[k] * o.u)
		}
		a.rx = larger(a.rx, math.Abs(o.rx))
		a.pay += math.Abs(o.rx)
		a.p = larger(a.p, larger(math.Abs(o.pl), math.Abs(o.ph)))
		o.isl, o.ish = 1/o.sl, 1/o.sh
		o.wl, o.wh = o.zl*o.isl, o.zh*o.ish
	}
}

// lineFactor adds the lines to the small system, (6.13), with the column of τ.
func (s *Solver) lineFactor(a *sums, one *side) {
	q := 1e-30
	if s.quad {
		q = 1
	}
	itau := 1 / s.tau
	for i := range s.lines {
		o := &s.lines[i]
		c := &s.col[i]
		h := o.wl + o.wh + q
		if o.hasLo+o.hasHi == 0 {
			h += 1e-7
		}
		o.ih = 1 / h
		both := (o.wl + q) * o.wh * o.ih
		a.eta += float64(both * float64(o.ht*o.ht))
		k := o.wh * o.ht * o.ih
		// the column of τ, less the point itself over τ, (6.16)
		el, eh, rx := -float64(o.wl*o.pl)*itau, -float64(o.wh*o.ph)*itau, o.rx*itau
		f := (el - eh + rx) * o.ih
		one.f += float64(float64(o.ht*o.ih) * (float64((o.wl+q)*eh) + float64(o.wh*(el+rx))))
		m := 0
		for j := range 6 {
			a.q[j] += float64(k * c[j])
			one.g[j] -= float64(f * c[j])
			v := c[j] * o.ih
			for l := 0; l <= j; l++ {
				a.s[m] += float64(v * c[l])
				m++
			}
		}
	}
}

// lineSide is the right-hand side of a step, (6.15).
func (s *Solver) lineSide(part, aim float64, correct bool, a *side) {
	q := 0.0
	if s.quad {
		q = 1
	}
	for i := range s.lines {
		o := &s.lines[i]
		c := &s.col[i]
		el, eh := -o.zl, -o.zh
		if correct {
			el += (aim - float64(o.dsl*o.dzl)) * o.isl * o.hasLo
			eh += (aim - float64(o.dsh*o.dzh)) * o.ish * o.hasHi
		}
		el -= float64(part * float64(o.wl*o.pl))
		eh -= float64(part * float64(o.wh*o.ph))
		o.el, o.eh = el, eh
		f := (el - eh - float64(part*o.rx)) * o.ih
		a.f += float64(float64(o.ht*o.ih) * (float64((o.wl+q)*eh) + float64(o.wh*el) - float64(part*float64(o.wh*o.rx))))
		for k := range 6 {
			a.g[k] -= float64(f * c[k])
		}
	}
}

// lineFirst solves for the column of τ and adds its part of the pivot of τ, (6.16). Slacks and
// duals are written so that what a tight bound makes large does not meet its like with another sign.
func (s *Solver) lineFirst(y *[6]float64, t float64) (pivot float64) {
	itau := 1 / s.tau
	for i := range s.lines {
		o := &s.lines[i]
		el, eh := -float64(o.wl*o.pl)*itau, -float64(o.wh*o.ph)*itau
		ay := dot6(&s.col[i], y) + float64(o.rx*itau)
		ht := float64(o.ht * t)
		u := o.ih * (el - eh + ay + float64(o.wh*ht))
		o.u1 = u + float64(o.u*itau)
		o.sl1 = u + float64((o.sl+o.pl)*itau)
		o.sh1 = ht - u + float64((o.sh+o.ph)*itau)
		o.zl1 = o.ih*(float64(o.wh*el)-o.wl*(ay+float64(o.wh*ht)-eh)) - float64(o.zl*itau)
		o.zh1 = o.ih*(float64(o.wl*eh)+o.wh*(ay+el-float64(o.wl*ht))) - float64(o.zh*itau)
		pivot -= float64(o.zl1*o.sl1)*o.hasLo + float64(o.zh1*o.sh1)*o.hasHi
	}
	return pivot
}

// lineSecond solves for the rest and returns (s + p)ᵀz₂ − part xᵀrx, (6.16).
func (s *Solver) lineSecond(part float64, y *[6]float64, t float64) (sz float64) {
	q := 0.0
	if s.quad {
		q = 1
	}
	for i := range s.lines {
		o := &s.lines[i]
		ay := dot6(&s.col[i], y) - float64(part*o.rx)
		ht := float64(o.ht * t)
		o.u2 = o.ih * (o.el - o.eh + ay + float64(o.wh*ht))
		o.l2 = o.ih * (float64((o.wh+q)*o.el) - o.wl*(ay+float64(o.wh*ht)-o.eh))
		o.h2 = o.ih * (float64((o.wl+q)*o.eh) + o.wh*(ay+o.el-float64((o.wl+q)*ht)))
		sz += float64((o.sl+o.pl)*o.l2) + float64((o.sh+o.ph)*o.h2) - float64(part*float64(o.u*o.rx))
	}
	return sz
}

func (s *Solver) lineStep(part, dtau, dt2 float64) (most float64) {
	for i := range s.lines {
		o := &s.lines[i]
		o.du = o.u2 + float64(dtau*o.u1)
		o.dzl = o.l2 + float64(dtau*o.zl1)
		o.dzh = o.h2 + float64(dtau*o.zh1)
		o.dsl = (o.u2 + float64(dtau*o.sl1) + float64(part*o.pl)) * o.hasLo
		o.dsh = (float64(o.ht*dt2) - o.u2 + float64(dtau*o.sh1) + float64(part*o.ph)) * o.hasHi
		most = larger(most, larger(-o.dsl*o.isl, -o.dsh*o.ish))
		if -o.dzl > most*o.zl {
			most = -o.dzl / o.zl
		}
		if -o.dzh > most*o.zh {
			most = -o.dzh / o.zh
		}
	}
	return most
}

func (s *Solver) lineMove(a float64) {
	for i := range s.lines {
		o := &s.lines[i]
		o.u += float64(a * o.du)
		o.sl += float64(a * o.dsl)
		o.sh += float64(a * o.dsh)
		o.zl += float64(a * o.dzl)
		o.zh += float64(a * o.dzh)
	}
}

func dot6(a, b *[6]float64) float64 {
	return float64(a[0]*b[0]) + float64(a[1]*b[1]) + (float64(a[2]*b[2]) + float64(a[3]*b[3])) + (float64(a[4]*b[4]) + float64(a[5]*b[5]))
}

func norm6(c *[6]float64) float64 { return math.Sqrt(dot6(c, c)) }
