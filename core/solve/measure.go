package solve

import "math"

// The passes of one step over the pulls. They are long and plain because every call and copy in
// them is paid for by each cone of each pull in each step.

// measure finds the residuals, the scaling and the small system with the predictor's right-hand
// side, (6.24); false when a point has left its cone by rounding.
func (n *way) measure(tcol, b *[6]float64, goal float64) bool {
	n.waySums = waySums{rt: goal - dot6(tcol, &n.y), q: *tcol}
	for k := range 6 {
		n.ry[k] = float64(tcol[k]*n.t) - b[k]
	}
	if n.quad {
		n.rt = 0
	}
	n.measureLines()
	y := &n.y
	var mu, gap, eta, rt, rf, worstP, worstX, pay float64
	for i := range n.pulls {
		o := &n.pulls[i]
		x, v, z := o.f[0], o.f[1], o.f[2]
		rx, ry, rz := -dot6(&o.a[0], y), -dot6(&o.a[1], y), -dot6(&o.a[2], y)
		for k := range 6 {
			n.ry[k] += float64(o.a[0][k]*x) + float64(o.a[1][k]*v) + float64(o.a[2][k]*z)
		}
		reg := 1e-12
		if n.quad {
			reg = 1
			rx, ry, rz = rx+x, ry+v, rz+z
		}
		xx, xy, yy, xz, yz, zz := reg, 0.0, reg, 0.0, 0.0, reg
		var mx, my, mz, qx, qy, qz float64
		if o.half {
			o.p = z - o.minZ - o.s
			rz -= o.z
			mu += float64(o.s * o.z)
			gap += float64(o.p * o.z)
			worstP = larger(worstP, float64(o.p*o.p))
			o.w = o.z / o.s
			o.o = -o.z - float64(o.w*o.p)
			zz += o.w
			qz += o.o
		}
		for j := o.c0; j < o.c1; j++ {
			c := &n.cones[j]
			s, u := &c.s, &c.z
			h := &c.h
			p := four{float64(c.zc*z) + h.a - s.a, x + h.x - s.x, v + h.y - s.y, float64(c.fz*z) + h.z - s.z}
			if c.moves {
				p.a += float64(c.g.a * n.t)
				p.x += float64(c.g.x * n.t)
				p.y += float64(c.g.y * n.t)
				p.z += float64(c.g.z * n.t)
			}
			c.p = p
			worstP = larger(worstP, float64(p.a*p.a)+float64(p.x*p.x)+(float64(p.y*p.y)+float64(p.z*p.z)))
			rx -= u.x
			ry -= u.y
			rz -= float64(c.zc*u.a) + float64(c.fz*u.z)
			ds := float64(s.a*s.a) - float64(s.x*s.x) - float64(s.y*s.y) - float64(s.z*s.z)
			dz := float64(u.a*u.a) - float64(u.x*u.x) - float64(u.y*u.y) - float64(u.z*u.z)
			if !(ds > 0 && dz > 0 && s.a > 0 && u.a > 0) {
				return false
			}
			sz := float64(s.a*u.a) + float64(s.x*u.x) + float64(s.y*u.y) + float64(s.z*u.z)
			mu += sz
			gap += float64(p.a*u.a) + float64(p.x*u.x) + float64(p.y*u.y) + float64(p.z*u.z)
			g := math.Sqrt(ds * dz)
			e2, i2 := g/ds, ds/g
			ks := 1 / math.Sqrt(2*(ds+float64(sz*i2))) // 1/(2 γ √det s)
			kz := ks * i2
			w := four{float64(ks*s.a) + float64(kz*u.a), float64(ks*s.x) - float64(kz*u.x), float64(ks*s.y) - float64(kz*u.y), float64(ks*s.z) - float64(kz*u.z)}
			c.w, c.e2 = w, e2
			// W⁻² = (2 ŵ ŵᵀ − J)/η² with ŵ = (w₀, −w₁)
			d := 2 * e2 * (float64(w.a*p.a) - float64(w.x*p.x) - float64(w.y*p.y) - float64(w.z*p.z))
			hp := four{float64(d*w.a) - float64(e2*p.a), float64(e2*p.x) - float64(d*w.x), float64(e2*p.y) - float64(d*w.y), float64(e2*p.z) - float64(d*w.z)}
			c.hp = hp
			q := four{-u.a - hp.a, -u.x - hp.x, -u.y - hp.y, -u.z - hp.z}
			c.o = q
			qx += q.x
			qy += q.y
			qz += float64(c.zc*q.a) + float64(c.fz*q.z)
			gz := float64(c.zc*w.a) - float64(c.fz*w.z)
			ex, ey, ez := -2*e2*w.x, -2*e2*w.y, 2*e2*gz
			xx += e2 - float64(ex*w.x)
			xy -= float64(ex * w.y)
			yy += e2 - float64(ey*w.y)
			xz += float64(ex * gz)
			yz += float64(ey * gz)
			zz += float64(ez*gz) + float64(e2*(c.fz-float64(c.zc*c.zc)))
			if c.moves {
				g := &c.g
				d := float64(w.a*g.a) - float64(w.x*g.x) - float64(w.y*g.y) - float64(w.z*g.z)
				mx += float64(d*ex) + float64(e2*g.x)
				my += float64(d*ey) + float64(e2*g.y)
				mz += float64(d*ez) + float64(e2*(float64(c.fz*g.z)-float64(c.zc*g.a)))
				eta += float64(2*e2*d*d) - float64(e2*(float64(g.a*g.a)-float64(g.x*g.x)-float64(g.y*g.y)-float64(g.z*g.z)))
				rt -= float64(g.a*u.a) + float64(g.x*u.x) + float64(g.y*u.y) + float64(g.z*u.z)
				rf += float64(g.a*q.a) + float64(g.x*q.x) + float64(g.y*q.y) + float64(g.z*q.z)
			}
		}
		o.rx = [3]float64{rx, ry, rz}
		gap += float64(x*rx) + float64(v*ry) + float64(z*rz)
		size := float64(rx*rx) + float64(ry*ry) + float64(rz*rz)
		worstX = larger(worstX, size)
		pay += float64(o.pay * math.Sqrt(3*size))
		// L D Lᵀ
		ix := 1 / xx
		lx, ly := float64(xy*ix), float64(xz*ix)
		iy := 1 / (yy - float64(lx*xy))
		yz -= float64(lx * xz)
		lz := float64(yz * iy)
		iz := 1 / (zz - float64(ly*xz) - float64(lz*yz))
		if !(ix > 0 && iy > 0 && iz > 0) {
			return false
		}
		o.lx, o.ly, o.lz, o.ix, o.iy, o.iz = lx, ly, lz, ix, iy, iz
		my -= float64(lx * mx)
		mz -= float64(ly*mx) + float64(lz*my)
		o.m = [3]float64{mx, my, mz}
		eta -= float64(float64(mx*mx)*ix) + float64(float64(my*my)*iy) + float64(float64(mz*mz)*iz)
		mx, my, mz = mx*ix, my*iy, mz*iz
		m := 0
		for k := range 6 {
			vx := o.a[0][k]
			vy := o.a[1][k] - float64(lx*vx)
			vz := o.a[2][k] - float64(ly*vx) - float64(lz*vy)
			o.v[0][k], o.v[1][k], o.v[2][k] = vx, vy, vz
			n.q[k] -= float64(vx*mx) + float64(vy*my) + float64(vz*mz)
			vx, vy, vz = vx*ix, vy*iy, vz*iz
			for l := 0; l <= k; l++ {
				n.s[m] += float64(vx*o.v[0][l]) + float64(vy*o.v[1][l]) + float64(vz*o.v[2][l])
				m++
			}
		}
		n.side(o, qx-rx, qy-ry, qz-rz)
	}
	for k := range 6 {
		n.r.g[k] -= n.ry[k]
	}
	n.mu += mu
	n.eta += eta
	n.pay += pay
	n.rx, n.p = larger(n.rx, math.Sqrt(worstX)), larger(n.p, math.Sqrt(worstP))
	n.rt += rt
	n.r.f += rf - n.rt
	n.gap += gap + n.mu + float64(n.t*n.rt) + dot6(&n.ry, y)
	if n.quad {
		n.r.f = 0
	}
	return true
}

// side adds a pull's part of the small right-hand side.
func (n *way) side(o *wayPull, x, y, z float64) {
	y -= float64(o.lx * x)
	z -= float64(o.ly*x) + float64(o.lz*y)
	o.q = [3]float64{x, y, z}
	x, y, z = x*o.ix, y*o.iy, z*o.iz
	n.r.f -= float64(o.m[0]*x) + float64(o.m[1]*y) + float64(o.m[2]*z)
	for k := range 6 {
		n.r.g[k] -= float64(o.v[0][k]*x) + float64(o.v[1][k]*y) + float64(o.v[2][k]*z)
	}
}

// correct is the right-hand side of a step that takes away part of the residuals and aims at σμ,
// with the predictor's products, (6.15).
func (n *way) correct(part, aim float64) {
	n.r = side{f: -part * n.rt}
	for k := range 6 {
		n.r.g[k] = -part * n.ry[k]
	}
	n.correctLines(part, aim)
	for i := range n.pulls {
		o := &n.pulls[i]
		qx, qy, qz := -part*o.rx[0], -part*o.rx[1], -part*o.rx[2]
		if o.half {
			o.o = (aim-float64(o.ds*o.dz))/o.s - o.z - float64(part*float64(o.w*o.p))
			qz += o.o
		}
		for j := o.c0; j < o.c1; j++ {
			c := &n.cones[j]
			w, u, e := &c.w, &c.z, &c.dz
			iw := 1 / (1 + w.a)
			// λ/η = W̄ z and the predictor's W̄ dz
			d := float64(w.x*u.x) + float64(w.y*u.y) + float64(w.z*u.z)
			k := u.a + float64(d*iw)
			la, lx, ly, lz := float64(w.a*u.a)+d, u.x+float64(k*w.x), u.y+float64(k*w.y), u.z+float64(k*w.z)
			d = float64(w.x*e.x) + float64(w.y*e.y) + float64(w.z*e.z)
			k = e.a + float64(d*iw)
			ea, ex, ey, ez := float64(w.a*e.a)+d, e.x+float64(k*w.x), e.y+float64(k*w.y), e.z+float64(k*w.z)
			aa := float64(ea*ea) + float64(ex*ex) + float64(ey*ey) + float64(ez*ez) + float64(aim*c.e2)
			ea *= 2
			ex, ey, ez = ea*ex, ea*ey, ea*ez
			det := float64(la*la) - float64(lx*lx) - float64(ly*ly) - float64(lz*lz)
			xa := (float64(la*aa) - float64(lx*ex) - float64(ly*ey) - float64(lz*ez)) / det
			il := 1 / la
			ex, ey, ez = (ex-float64(xa*lx))*il, (ey-float64(xa*ly))*il, (ez-float64(xa*lz))*il
			d = float64(w.x*ex) + float64(w.y*ey) + float64(w.z*ez)
			k = xa - float64(d*iw)
			hp := &c.hp
			q := four{float64(w.a*xa) - d + e.a - u.a - float64(part*hp.a),
				ex - float64(k*w.x) + e.x - u.x - float64(part*hp.x),
				ey - float64(k*w.y) + e.y - u.y - float64(part*hp.y),
				ez - float64(k*w.z) + e.z - u.z - float64(part*hp.z)}
			c.o = q
			qx += q.x
			qy += q.y
			qz += float64(c.zc*q.a) + float64(c.fz*q.z)
			if c.moves {
				g := &c.g
				n.r.f += float64(g.a*q.a) + float64(g.x*q.x) + float64(g.y*q.y) + float64(g.z*q.z)
			}
		}
		n.side(o, qx, qy, qz)
	}
	if n.quad {
		n.r.f = 0
	}
}
