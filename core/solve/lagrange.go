package solve

import "cohoist/core/vec"

// Lagrangian is that of a program at a fixed answer with its duals, (11.2). At the answer of the
// program itself it is t; its change with the program's data is the change of t.
func Lagrangian(p *Program, r *Result) float64 {
	l := float64(p.Goal * r.T)
	var sum Wrench // wanted less given
	for k := range 6 {
		sum[k] = p.Wrench[k] + float64(r.T*p.WrenchT[k])
	}
	for i := range p.Lines {
		line, u := &p.Lines[i], r.U[i]
		for k := range 6 {
			sum[k] -= float64(line.Column[k] * u)
		}
		if r.LineLo[i] > 0 {
			l += float64(r.LineLo[i] * (line.Lo - u))
		}
		if r.LineHi[i] > 0 {
			l += float64(r.LineHi[i] * (u - line.Hi - float64(line.HiT*r.T)))
		}
	}
	n := 0
	for i := range p.Pulls {
		q, f := &p.Pulls[i], r.F[i]
		turn := q.At.Cross(f)
		for k := range 3 {
			sum[k] -= f[k]
			sum[3+k] -= turn[k]
		}
		if r.PullZ[i] > 0 {
			l += float64(r.PullZ[i] * (q.MinZ - f[2]))
		}
		for j := range q.Cones {
			d := &r.Cones[n]
			n++
			if d.A > 0 {
				l -= coned(&q.Cones[j], d, f, r.T)
			}
		}
	}
	for k := range 6 {
		l += float64(r.Y[k] * sum[k])
	}
	return l
}

// coned is the dual of a cone times what the cone leaves free: A (Z F_z + T t + C) + V · (F + B + t D).
func coned(c *Cone, d *Dual, f vec.V3, t float64) float64 {
	x := f.Add(c.B).Add(c.D.Scale(t))
	if c.Flat {
		x[2] = 0
	}
	return float64(d.A*(float64(c.Z*f[2])+float64(c.T*t)+c.C)) + d.V.Dot(x)
}
