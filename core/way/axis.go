package way

import "math"

// node are place, velocity, acceleration and jerk of one axis at a point.
type node [4]float64

// axis is the quadratic program of one axis, (20.4): of all ways through its points with the durations given, the one
// with the least integral of the squared snap. NaN marks what is not known in from.
type axis struct {
	durations []float64
	from      []node
	bounds    []bound

	index   [][4]int // of the unknowns; −1: known
	unknown int
	active  []active // bounds that hold the answer, with their multipliers
}

// bound keeps one control point of a leg within a box: low ≤ row · (p, v, a, j) ≤ high, (20.6).
type bound struct {
	leg, point int // of the control points 1 to 6
	low, high  float64
}

// row is a bound's row on the node that it stands at, by real time, and its derivative by the leg's duration.
func (b bound) row(duration float64) (node int, row, change [4]float64) {
	node, sign, at := b.leg, 1.0, b.point
	if b.point > 3 {
		node, sign, at = b.leg+1, -1, 7-b.point
	}
	for k, x := range control[at] {
		if k%2 == 1 {
			x *= sign
		}
		row[k] = x * pow(duration, k)
		if k > 0 {
			change[k] = float64(k) * x * pow(duration, k-1)
		}
	}
	return node, row, change
}

// number gives every unknown its index.
func (x *axis) number() {
	x.index = make([][4]int, len(x.from))
	x.unknown = 0
	for i := range x.from {
		for k := range 4 {
			x.index[i][k] = -1
			if math.IsNaN(x.from[i][k]) {
				x.index[i][k] = x.unknown
				x.unknown++
			}
		}
	}
}

// system is the band matrix of (20.4) and its right-hand side.
func (x *axis) system() (*band, []float64) {
	h, g := newBand(x.unknown, 7), make([]float64, x.unknown)
	for leg, T := range x.durations {
		for i := range 8 {
			ni, ki := leg+i/4, i%4
			row := x.index[ni][ki]
			if row < 0 {
				continue
			}
			for j := range 8 {
				nj, kj := leg+j/4, j%4
				w := snap[i][j] * pow(T, ki+kj-7) // (20.3)
				switch col := x.index[nj][kj]; {
				case col < 0:
					g[row] -= float64(w * x.from[nj][kj])
				case col <= row:
					*h.at(row, col) += w
				}
			}
		}
	}
	return h, g
}

// solve gives the values at every node. False: the numbers are beyond what can be solved.
func (x *axis) solve() ([]node, bool) {
	x.number()
	h, g := x.system()
	if !h.factor() {
		return nil, false
	}
	h.solve(g)
	if len(x.bounds) > 0 && !x.keep(h, g) {
		return nil, false
	}
	out := make([]node, len(x.from))
	for i := range out {
		for k := range 4 {
			out[i][k] = x.from[i][k]
			if at := x.index[i][k]; at >= 0 {
				out[i][k] = g[at]
			}
		}
	}
	return out, true
}

// scaled are the ends of a leg.
func scaled(nodes []node, leg int, T float64) (e ends) {
	for i := range 8 {
		e[i] = nodes[leg+i/4][i%4] * pow(T, i%4)
	}
	return e
}

// cost is the integral of the squared snap, and adds times weight to change how it moves with each duration when the
// rest is best again (the answer's own moves count for nothing), (20.5).
func (x *axis) cost(nodes []node, weight float64, change []float64) float64 {
	total := 0.0
	for leg, T := range x.durations {
		e := scaled(nodes, leg, T)
		var grow ends // d e/d ln T
		for i := range grow {
			grow[i] = float64(i%4) * e[i]
		}
		own, moved := 0.0, 0.0
		for i := range 8 {
			for j := range 8 {
				own += float64(snap[i][j] * e[i] * e[j])
				moved += float64(snap[i][j] * e[i] * grow[j])
			}
		}
		own *= pow(T, -7)
		total += own
		change[leg] += weight * (2*moved*pow(T, -8) - 7*own/T)
	}
	for _, a := range x.active { // a bound whose control point moves with the duration
		at, _, by := x.bounds[a.bound].row(x.durations[x.bounds[a.bound].leg])
		sum := 0.0
		for k := range 4 {
			sum += float64(by[k] * nodes[at][k])
		}
		change[x.bounds[a.bound].leg] -= weight * 2 * a.multiplier * a.sign * sum
	}
	return total
}
