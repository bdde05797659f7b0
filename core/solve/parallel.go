package solve

import (
	"math"

	"cohoist/core/vec"
)

// parallel tries the answer in which every pull is on its first bound on |F + B + t D| and all those
// vectors point one way n, (6.25):
//
//	n (Σ C + t Σ T) = a + t b,  a = Σ B + w,  b = Σ D + w_t, forces only
//
// Then (y_F, y_M) = (η n, 0) proves it. Symmetric teams are like this; it holds when the moments
// balance, too, and no other bound is broken.
func (s *Solver) parallel() bool {
	p := s.p
	if s.nl > 0 || s.np == 0 || s.quad || s.idle || s.inside {
		return false
	}
	a, b := vec.V3(p.Wrench[:3]), vec.V3(p.WrenchT[:3])
	var c, d float64
	for i := range p.Pulls {
		j := rounded(&p.Pulls[i])
		if j < 0 || p.Pulls[i].level {
			return false
		}
		k := &p.Pulls[i].Cones[j]
		a, b = a.Add(k.B), b.Add(k.D)
		c += k.C
		d += k.T
	}
	t, ok := meet(a, b, c, d, p.Goal)
	if !ok {
		return false
	}
	sum := a.Add(b.Scale(t))
	n := sum.Scale(1 / (c + float64(t*d)))
	eta := p.Goal / (d - n.Dot(b))
	if !(eta > 0) || math.IsInf(eta, 0) {
		return false
	}
	m := vec.V3(p.Wrench[3:]).Add(vec.V3(p.WrenchT[3:]).Scale(t)) // what the moments leave
	for i := range p.Pulls {
		q := &p.Pulls[i]
		k := &q.Cones[rounded(q)]
		f := n.Scale(k.C + float64(k.T*t)).Sub(k.B).Sub(k.D.Scale(t))
		if !q.keeps(f, t, 1e-12*s.pulls[i].unit) {
			return false
		}
		m = m.Sub(q.At.Cross(f))
		s.pulls[i].f = f.Scale(1 / s.pulls[i].unit)
	}
	if !(longest(m[0], m[1], m[2]) <= 1e-12*s.arm*s.force) {
		return false
	}
	s.t, s.tau, s.kap = t/s.t0, 1, 0
	for i := range s.rank.r {
		s.y[i] = 0
		for k := range 3 {
			s.y[i] += float64(s.rank.l[k][i]*n[k]) * eta / s.t0
		}
	}
	for i := range s.pulls {
		o := &s.pulls[i]
		o.z = 0
		at := rounded(&p.Pulls[i])
		x := o.c0
		for j := range p.Pulls[i].Cones {
			if !s.used[s.first[i]+j] {
				if j == at {
					return false
				}
				continue
			}
			s.cones[x].z = four{}
			if j == at {
				z := eta * o.unit / s.t0
				s.cones[x].z = four{z, -z * n[0], -z * n[1], -z * n[2]}
			}
			x++
		}
	}
	return true
}

// rounded is the first bound on |F + B + t D| of a pull, −1 when there is none.
func rounded(q *Pull) int {
	for j := range q.Cones {
		if k := &q.Cones[j]; !k.Flat && k.Z == 0 && !math.IsInf(k.C, 1) {
			return j
		}
	}
	return -1
}

// meet is the best t with |a + t b| = c + t d: the least for goal +1, the largest for −1, of those
// that go on to worse.
func meet(a, b vec.V3, c, d, goal float64) (t float64, ok bool) {
	A := b.Dot(b) - float64(d*d)
	B := a.Dot(b) - float64(c*d)
	C := a.Dot(a) - float64(c*c)
	disc := float64(B*B) - float64(A*C)
	if !(disc > 0) {
		return 0, false
	}
	// goal +1: |a + t b| − c − t d falls through 0 there, goal −1: it rises
	root := goal * math.Sqrt(disc)
	if goal*B < 0 {
		t = C / (root - B)
	} else {
		t = -(B + root) / A
	}
	return t, c+float64(t*d) > 0 && !math.IsInf(t, 0)
}

// keeps tells that a force is within every bound of its pull, or beyond it by slack, N, at most.
func (q *Pull) keeps(f vec.V3, t, slack float64) bool {
	if !(f[2] >= q.MinZ-slack) {
		return false
	}
	for j := range q.Cones {
		k := &q.Cones[j]
		if math.IsInf(k.C, 1) {
			continue
		}
		v := four{float64(k.Z*f[2]) + float64(k.T*t) + k.C + slack, f[0] + k.B[0] + float64(k.D[0]*t), f[1] + k.B[1] + float64(k.D[1]*t), f[2] + k.B[2] + float64(k.D[2]*t)}
		if k.Flat {
			v.z = 0
		}
		if !(v.a >= 0 && float64(v.a*v.a) >= float64(v.x*v.x)+float64(v.y*v.y)+float64(v.z*v.z)) {
			return false
		}
	}
	return true
}
