package way

import "math"

// active is a bound that holds: row · x = its low (sign +1) or its high (−1).
type active struct {
	bound      int
	sign       float64
	multiplier float64 // of ½ xᵀHx
	n, y       []float64
	need       float64
}

// broken is by how much of a metre a control point may lie outside its box.
const broken = 1e-11

// keep moves x, the least of the quadratic form whose factor is h, into the bounds: the dual method of Goldfarb and
// Idnani, (20.7). Every waypoint lies in its boxes, so there is an answer: stopping at every one of them.
func (x *axis) keep(h *band, to []float64) bool {
	x.active = x.active[:0]
	free := append([]float64(nil), to...)
	for range 50 * (1 + len(x.bounds)) {
		p, ok := x.worst(to)
		if !ok {
			return x.polish(free, to)
		}
		p.y = append([]float64(nil), p.n...)
		h.solve(p.y)
		if !x.add(p, to) {
			return false
		}
	}
	return false
}

// worst is the bound that x breaks most.
func (x *axis) worst(at []float64) (active, bool) {
	best, most := active{}, broken
	for i, b := range x.bounds {
		where, row, _ := b.row(x.durations[b.leg])
		value := 0.0
		for k := range 4 {
			v := x.from[where][k]
			if u := x.index[where][k]; u >= 0 {
				v = at[u]
			}
			value += float64(row[k] * v)
		}
		scale := 1 + math.Abs(value)
		if d := (b.low - value) / scale; d > most {
			best, most = active{bound: i, sign: 1}, d
		}
		if d := (value - b.high) / scale; d > most {
			best, most = active{bound: i, sign: -1}, d
		}
	}
	if most <= broken {
		return best, false
	}
	b := x.bounds[best.bound]
	where, row, _ := b.row(x.durations[b.leg])
	best.n = make([]float64, x.unknown)
	best.need = b.low
	if best.sign < 0 {
		best.need = -b.high
	}
	for k := range 4 {
		if u := x.index[where][k]; u >= 0 {
			best.n[u] = best.sign * row[k]
		} else {
			best.need -= best.sign * row[k] * x.from[where][k]
		}
	}
	return best, true
}

// add makes a broken bound hold, letting others go on the way when their multipliers come to nothing.
func (x *axis) add(p active, to []float64) bool {
	for range 1 + 2*len(x.bounds) {
		r, ok := x.gram(func(a active) float64 { return dot(a.n, p.y) })
		if !ok {
			return false
		}
		z := append([]float64(nil), p.y...)
		for i, a := range x.active {
			axpy(-r[i], a.y, z)
		}
		rise := dot(z, p.n)
		partial, drop := math.Inf(1), -1
		for i, a := range x.active {
			if r[i] > 0 && a.multiplier/r[i] < partial {
				partial, drop = a.multiplier/r[i], i
			}
		}
		full := math.Inf(1)
		if rise > 1e-12*dot(p.y, p.n) {
			full = (p.need - dot(p.n, to)) / rise
			if full < 0 {
				full = 0
			}
		}
		step := math.Min(partial, full)
		if math.IsInf(step, 1) {
			return false
		}
		if !math.IsInf(full, 1) {
			axpy(step, z, to)
		}
		for i := range x.active {
			x.active[i].multiplier -= step * r[i]
		}
		p.multiplier += step
		if full <= partial {
			x.active = append(x.active, p)
			return true
		}
		x.active = append(x.active[:drop], x.active[drop+1:]...)
	}
	return false
}

// polish solves once more for the bounds found, so that no rounding of the steps is left.
func (x *axis) polish(free, to []float64) bool {
	u, ok := x.gram(func(a active) float64 { return a.need - dot(a.n, free) })
	if !ok {
		return false
	}
	copy(to, free)
	for i := range x.active {
		x.active[i].multiplier = u[i]
		axpy(u[i], x.active[i].y, to)
	}
	return true
}

// gram solves (Nᵀ H⁻¹ N) r = right over the bounds that hold.
func (x *axis) gram(right func(active) float64) ([]float64, bool) {
	n := len(x.active)
	s, r := newBand(n, max(0, n-1)), make([]float64, n)
	for i, a := range x.active {
		for j := range i + 1 {
			*s.at(i, j) = dot(a.n, x.active[j].y)
		}
		r[i] = right(a)
	}
	if !s.factor() {
		return nil, false
	}
	s.solve(r)
	return r, true
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i := range a {
		sum += float64(a[i] * b[i])
	}
	return sum
}

func axpy(k float64, a, to []float64) {
	for i := range a {
		to[i] += float64(k * a[i])
	}
}
