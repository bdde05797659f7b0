package hang

import (
	"math"

	"cohoist/core/vec"
)

// axes are level x, y, z and the principal axes of the inertia, in columns, with the masses that belong to them, kg:
// the moments are over size².
func (b *body) axes(turn vec.M3, l Load) (mat6, vec6) {
	j := turn.MulM(l.Inertia).MulM(turn.T())
	var tensor mat6
	for i := range 3 {
		for k := range 3 {
			tensor[i][k] = (j[i][k] + j[k][i]) / 2 / (b.size * b.size)
		}
	}
	moments, principal := tensor.eigen(3)
	var axes mat6
	var inertia vec6
	for i := range 3 {
		axes[i][i], inertia[i], inertia[3+i] = 1, l.Mass, moments[i]
		for k := range 3 {
			axes[3+i][3+k] = principal[i][k]
		}
	}
	return axes, inertia
}

// turnInto is Qᵀ m Q.
func turnInto(m, q mat6) mat6 {
	var out mat6
	for j := range q {
		column := q.column(j)
		image := m.mul(&column)
		for i := range q {
			row := q.column(i)
			out[i][j] = row.dot(&image)
		}
	}
	return out
}

type motion struct {
	square float64
	shape  vec6
}

// motions are the eigenvectors of a matrix. Where several belong to one value any mixture would do, and a
// preference of one axis over the next, too small to show in the values, picks those along the axes. The values are those
// without it, by Rayleigh's quotient.
func motions(m mat6, n int, preference float64) []motion {
	preferring := m
	for i := range min(3, n) { // the shifts, of which none is ever left out
		preferring[i][i] += preference * float64(i)
	}
	_, vectors := preferring.eigen(n)
	out := make([]motion, n)
	for i := range out {
		v := vectors.column(i)
		image := m.mul(&v)
		out[i] = motion{v.dot(&image), v}
	}
	return out
}

// follow fills in the turns about axes without inertia, which stand where the energy is least, (12.13).
func follow(h *mat6, inertia vec6, least, neutral float64, y *vec6) {
	for range 50 { // Gauss and Seidel's steps; there are at most three such axes
		for i := range inertia {
			if inertia[i] > least || h[i][i] <= neutral {
				continue
			}
			y[i] -= h[i].dot(y) / h[i][i]
		}
	}
}

// stretch is twice the energy of a motion in the stretch of lines along themselves, that of lines that should not, and
// all of its energy.
func (b *body) stretch(x spot, y *vec6) (lines, rigid, all float64) {
	var g vec6
	var h mat6
	b.slope(x, &g, &h)
	image := h.mul(y)
	shift, turn := vec.V3{y[0], y[1], y[2]}, vec.V3{y[3], y[4], y[5]}.Scale(1/b.size)
	for _, s := range b.springs {
		r := x.turn.Mul(s.arm)
		d := s.top.Sub(x.at).Sub(r)
		if d.Norm() <= s.rest {
			continue
		}
		longer := d.Unit().Dot(shift.Add(turn.Cross(r)))
		lines += s.k * longer * longer
		if s.rigid {
			rigid += s.k * longer * longer
		}
	}
	return lines, rigid, math.Max(lines, y.dot(&image))
}
