package solve

import "math"

// stride finds the steps of the pulls for those of y and t, and how long primal and dual may be.
func (n *way) stride(part float64) (primal, dual float64) {
	primal, dual = n.strideLines(part, 1, 1)
	dy, dt := &n.dy, n.dt
	for i := range n.pulls {
		o := &n.pulls[i]
		x := float64((o.q[0] + dot6(&o.v[0], dy) - float64(o.m[0]*dt)) * o.ix)
		y := float64((o.q[1] + dot6(&o.v[1], dy) - float64(o.m[1]*dt)) * o.iy)
		z := float64((o.q[2] + dot6(&o.v[2], dy) - float64(o.m[2]*dt)) * o.iz)
		y -= float64(o.lz * z)
		x -= float64(o.lx*y) + float64(o.ly*z)
		o.d = [3]float64{x, y, z}
		if o.half {
			o.ds = z + float64(part*o.p)
			o.dz = o.o - float64(o.w*z)
			primal, dual = least(primal, o.s, o.ds), least(dual, o.z, o.dz)
		}
		for j := o.c0; j < o.c1; j++ {
			c := &n.cones[j]
			va, vx, vy, vz := float64(c.zc*z), x, y, float64(c.fz*z)
			if c.moves {
				va += float64(c.g.a * dt)
				vx += float64(c.g.x * dt)
				vy += float64(c.g.y * dt)
				vz += float64(c.g.z * dt)
			}
			w, q, p, e2 := &c.w, &c.o, &c.p, c.e2
			d := 2 * e2 * (float64(w.a*va) - float64(w.x*vx) - float64(w.y*vy) - float64(w.z*vz))
			c.dz = four{q.a + float64(e2*va) - float64(d*w.a), q.x - float64(e2*vx) + float64(d*w.x), q.y - float64(e2*vy) + float64(d*w.y), q.z - float64(e2*vz) + float64(d*w.z)}
			c.ds = four{va + float64(part*p.a), vx + float64(part*p.x), vy + float64(part*p.y), vz + float64(part*p.z)}
			if !inside(&c.s, &c.ds, primal) {
				primal = min(primal, edge(&c.s, &c.ds))
			}
			if !inside(&c.z, &c.dz, dual) {
				dual = min(dual, edge(&c.z, &c.dz))
			}
		}
	}
	return primal, dual
}

// inside tells that l + α d is in the cone.
func inside(l, d *four, alpha float64) bool {
	a, x, y, z := l.a+float64(alpha*d.a), l.x+float64(alpha*d.x), l.y+float64(alpha*d.y), l.z+float64(alpha*d.z)
	return a >= 0 && float64(a*a) >= float64(x*x)+float64(y*y)+float64(z*z)
}

// edge is the largest α with l + α d in the cone.
func edge(l, d *four) float64 {
	// l + α d has the determinant A α² + 2 B α + C: the smallest positive root.
	A := float64(d.a*d.a) - float64(d.x*d.x) - float64(d.y*d.y) - float64(d.z*d.z)
	B := float64(l.a*d.a) - float64(l.x*d.x) - float64(l.y*d.y) - float64(l.z*d.z)
	C := float64(l.a*l.a) - float64(l.x*l.x) - float64(l.y*l.y) - float64(l.z*l.z)
	root := math.Sqrt(larger(float64(B*B)-float64(A*C), 0))
	if B <= 0 {
		return C / (root - B)
	}
	if A >= 0 {
		return math.Inf(1)
	}
	return -(B + root) / A
}

// move takes the steps.
func (n *way) move(primal, dual float64) {
	n.t += float64(primal * n.dt)
	for k := range 6 {
		n.y[k] += float64(dual * n.dy[k])
	}
	n.moveLines(primal, dual)
	for i := range n.pulls {
		o := &n.pulls[i]
		for k := range 3 {
			o.f[k] += float64(primal * o.d[k])
		}
		if o.half {
			o.s += float64(primal * o.ds)
			o.z += float64(dual * o.dz)
		}
		for j := o.c0; j < o.c1; j++ {
			c := &n.cones[j]
			c.s = c.s.axpy(primal, c.ds)
			c.z = c.z.axpy(dual, c.dz)
		}
	}
}
