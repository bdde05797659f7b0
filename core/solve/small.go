package solve

import "math"

// small is the bordered system of the balance rows and t, (6.14):
//
//	S dy + q dt = g,   −qᵀ dy + η dt = f
//
// factored by elimination with row pivoting. Near the answer S can be all but singular in the
// direction of y while q is not, so S alone is never factored.
type small struct {
	m    [7][7]float64
	row  [7]int
	inv  [7]float64
	weak bool // a pivot came out of cancellation
}

// cancelled is the part of its row below which a pivot is mostly rounding.
const cancelled = 1e-9

// factor takes the lower triangle of S. Rows from rank on are unit rows. With held, t stays.
func (k *small) factor(S *[21]float64, q *[6]float64, eta float64, rank int, held bool) bool {
	n := 0
	for i := range 6 {
		for j := 0; j <= i; j++ {
			v := S[n]
			n++
			if i >= rank {
				v = 0
				if i == j {
					v = 1
				}
			}
			k.m[i][j], k.m[j][i] = v, v
		}
		v := q[i]
		if i >= rank || held {
			v = 0
		}
		k.m[i][6], k.m[6][i] = v, -v
	}
	if held {
		eta = 1
	}
	k.m[6][6] = eta
	k.weak = false
	var size [7]float64
	for i := range 7 {
		k.row[i] = i
		for j := range 7 {
			size[i] = larger(math.Abs(k.m[i][j]), size[i])
		}
		if !(size[i] > 0) || math.IsInf(size[i], 0) {
			return false
		}
		size[i] = 1 / size[i]
	}
	for c := range 7 {
		best, at := 0.0, c
		for i := c; i < 7; i++ {
			if v := math.Abs(k.m[i][c]) * size[i]; v > best {
				best, at = v, i
			}
		}
		if best == 0 {
			return false
		}
		if at != c {
			k.m[c], k.m[at] = k.m[at], k.m[c]
			size[c], size[at] = size[at], size[c]
			k.row[c], k.row[at] = k.row[at], k.row[c]
		}
		k.weak = k.weak || best < cancelled
		k.inv[c] = 1 / k.m[c][c]
		for i := c + 1; i < 7; i++ {
			f := k.m[i][c] * k.inv[c]
			if f == 0 {
				continue
			}
			k.m[i][c] = f
			for j := c + 1; j < 7; j++ {
				k.m[i][j] -= float64(f * k.m[c][j])
			}
		}
	}
	return true
}

func (k *small) solve(g *[6]float64, f float64) (y [6]float64, t float64) {
	var b [7]float64
	for i, r := range k.row {
		if r < 6 {
			b[i] = g[r]
		} else {
			b[i] = f
		}
	}
	for i := 1; i < 7; i++ {
		v := b[i]
		for j := range i {
			v -= float64(k.m[i][j] * b[j])
		}
		b[i] = v
	}
	for i := 6; i >= 0; i-- {
		v := b[i]
		for j := i + 1; j < 7; j++ {
			v -= float64(k.m[i][j] * b[j])
		}
		b[i] = v * k.inv[i]
	}
	copy(y[:], b[:6])
	return y, b[6]
}
