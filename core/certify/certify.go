// Package certify multiplies out what a solver claims, from the Program, the forces and the duals
// alone. It shares no code with the solver, only the types.
//
// Restriction: figures are as good as float64; what rounding leaves is given, relative, in Stray.
// Calculation: THEORY (6.4), (6.5).
package certify

import (
	"math"

	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Proof is what multiplying out gave.
type Proof struct {
	// Of the forces: what is left of the balance over the largest force in it, or a thousandth
	// of the largest bound (moments: times the longest arm), and by how much the worst bound is broken over the largest term of that
	// bound, or a thousandth of the largest force.
	Imbalance, Broken float64

	// Of the duals: (6.4) is met up to Stray, relative to the terms in it; duals below zero or outside
	// their cone count too. Every answer then keeps Gamma t ≥ Value.
	Stray, Gamma, Value float64
}

// Bound is what the duals prove: t ≥ Bound for Goal +1, t ≤ Bound for −1; infinite when they prove
// nothing.
func (c Proof) Bound(goal float64) float64 {
	if !(c.Gamma*goal > 0) {
		return math.Inf(-int(goal))
	}
	return c.Value / c.Gamma
}

// Excludes is the largest |t| for which the duals prove that there is no answer: infinite when t
// drops out altogether, 0 when they prove nothing.
func (c Proof) Excludes() float64 {
	if !(c.Value > 0) {
		return 0
	}
	return c.Value / math.Abs(c.Gamma)
}

// tally adds up terms and remembers the largest.
type tally struct{ sum, size float64 }

func (t *tally) add(v float64) {
	t.sum += v
	t.size = math.Max(t.size, math.Abs(v))
}

// Forces multiplies out the balance and the bounds at t.
func Forces(p *solve.Program, u []float64, f []vec.V3, t float64) (c Proof) {
	floor := math.Max(1e-3*c.balance(p, u, f, t), nothing)
	broken := func(short float64, terms ...float64) {
		size := floor
		for _, v := range terms {
			if !math.IsInf(v, 0) {
				size = math.Max(size, math.Abs(v))
			}
		}
		if short > 0 {
			c.Broken = math.Max(c.Broken, short/size)
		}
	}
	for i, l := range p.Lines {
		hi := l.Hi + l.HiT*t
		broken(l.Lo-u[i], l.Lo, u[i], l.Hi, l.HiT*t)
		broken(u[i]-hi, l.Lo, u[i], l.Hi, l.HiT*t)
	}
	for i, q := range p.Pulls {
		most := f[i].Norm()
		for _, k := range q.Cones {
			v := f[i].Add(k.B).Add(k.D.Scale(t))
			if k.Flat {
				v[2] = 0
			}
			most = math.Max(most, k.B.Norm())
			r := k.Z*f[i][2] + k.T*t + k.C
			broken(v.Norm()-r, v.Norm(), k.B.Norm(), k.D.Norm()*t, k.Z*f[i][2], k.T*t, most)
		}
		broken(q.MinZ-f[i][2], q.MinZ, most)
	}
	return c
}

// nothing is the force, N, that forces are measured by when nothing pulls at all.
const nothing = 1e-3

// balance fills in Imbalance and returns the largest force or bound, N.
func (c *Proof) balance(p *solve.Program, u []float64, f []vec.V3, t float64) float64 {
	var row [6]tally
	arm, able := 0.0, 0.0
	for k := range 6 {
		row[k].add(-p.Wrench[k])
		row[k].add(-t * p.WrenchT[k])
	}
	for i, l := range p.Lines {
		for k := range 6 {
			row[k].add(l.Column[k] * u[i])
		}
		n := vec.V3{l.Column[0], l.Column[1], l.Column[2]}.Norm()
		if n > 0 {
			arm = math.Max(arm, vec.V3{l.Column[3], l.Column[4], l.Column[5]}.Norm()/n)
		}
		if hi := l.Hi + l.HiT*t; !math.IsInf(hi, 0) {
			able = math.Max(able, math.Abs(hi)*n)
		}
	}
	for i, q := range p.Pulls {
		m := q.At.Cross(f[i])
		arm = math.Max(arm, q.At.Norm())
		for k := range 3 {
			row[k].add(f[i][k])
			row[k+3].add(m[k])
		}
		for _, k := range q.Cones {
			if !math.IsInf(k.C, 0) {
				able = math.Max(able, math.Abs(k.C+k.T*t))
			}
		}
	}
	var force, turn float64
	for k := range 3 {
		force = math.Max(force, row[k].size)
		turn = math.Max(turn, row[k+3].size)
	}
	force = math.Max(force, math.Max(1e-3*able, nothing))
	if arm == 0 {
		arm = 1
	}
	turn = math.Max(turn, force*arm)
	for k := range 3 {
		if force > 0 {
			c.Imbalance = math.Max(c.Imbalance, math.Abs(row[k].sum)/force)
		}
		if turn > 0 {
			c.Imbalance = math.Max(c.Imbalance, math.Abs(row[k+3].sum)/turn)
		}
	}
	return math.Max(force, able)
}

// Duals multiplies out the duals, (6.4) and (6.5), into c.
func (c *Proof) Duals(p *solve.Program, r *solve.Result) {
	var gamma, value tally
	y := r.Y
	dual := dualSize(p, y)
	stray := func(left, size float64) {
		if left != 0 {
			c.Stray = math.Max(c.Stray, math.Abs(left)/math.Max(size, dual))
		}
	}
	for k := range 6 {
		gamma.add(-y[k] * p.WrenchT[k])
		value.add(y[k] * p.Wrench[k])
	}
	for i, l := range p.Lines {
		var d tally
		for k := range 6 {
			d.add(l.Column[k] * y[k])
		}
		lo, hi := r.LineLo[i], r.LineHi[i]
		d.add(lo)
		d.add(-hi)
		n := vec.V3{l.Column[0], l.Column[1], l.Column[2]}.Norm()
		if n == 0 {
			n = vec.V3{l.Column[3], l.Column[4], l.Column[5]}.Norm()
		}
		if n > 0 {
			stray(d.sum/n, d.size/n)
			stray(math.Min(0, math.Min(lo, hi))/n, d.size/n)
		}
		if lo != 0 {
			value.add(l.Lo * lo)
		}
		if hi != 0 {
			value.add(-l.Hi * hi)
			gamma.add(l.HiT * hi)
		}
	}
	n := 0
	for i, q := range p.Pulls {
		turn := vec.V3{y[3], y[4], y[5]}.Cross(q.At)
		var d [3]tally
		for k := range 3 {
			d[k].add(y[k])
			d[k].add(turn[k])
		}
		d[2].add(r.PullZ[i])
		if r.PullZ[i] != 0 {
			value.add(q.MinZ * r.PullZ[i])
		}
		outside := math.Max(0, -r.PullZ[i])
		for _, k := range q.Cones {
			z := r.Cones[n]
			n++
			if z == (solve.Dual{}) {
				continue
			}
			for a := range 3 {
				d[a].add(z.V[a])
			}
			d[2].add(k.Z * z.A)
			outside = math.Max(outside, z.V.Norm()-z.A)
			if k.Flat {
				outside = math.Max(outside, math.Abs(z.V[2]))
			}
			value.add(-k.C * z.A)
			gamma.add(k.T * z.A)
			for a := range 3 {
				value.add(-k.B[a] * z.V[a])
				gamma.add(k.D[a] * z.V[a])
			}
		}
		size := math.Max(d[0].size, math.Max(d[1].size, d[2].size))
		for k := range 3 {
			stray(d[k].sum, size)
		}
		stray(outside, size)
	}
	c.Gamma, c.Value = gamma.sum, value.sum
	if math.Abs(gamma.sum) <= 1e-14*gamma.size { // nothing but rounding
		c.Gamma = 0
	}
}

// dualSize is the largest part of y, moments counted by the longest arm in the program.
func dualSize(p *solve.Program, y solve.Wrench) float64 {
	arm := 0.0
	for _, l := range p.Lines {
		if n := (vec.V3{l.Column[0], l.Column[1], l.Column[2]}).Norm(); n > 0 {
			arm = math.Max(arm, vec.V3{l.Column[3], l.Column[4], l.Column[5]}.Norm()/n)
		}
	}
	for _, q := range p.Pulls {
		arm = math.Max(arm, q.At.Norm())
	}
	if arm == 0 {
		arm = 1
	}
	return math.Max(vec.V3{y[0], y[1], y[2]}.Norm(), arm*vec.V3{y[3], y[4], y[5]}.Norm())
}
