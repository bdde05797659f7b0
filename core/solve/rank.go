package solve

import "math"

// rankTolerance is the part of the longest row of its kind, and in metres of arm, below which a
// balance row counts as one that the others already say. Rounding leaves about 1e-15.
const rankTolerance = 1e-11

// missTolerance is the part of the wanted wrench that may lie outside what the team can give.
const missTolerance = 1e-9

// rank is the row space of the balance: rows = L Q with r orthonormal rows Q, (6.8).
type rank struct {
	r      int
	piv    [6]int        // row taken at step k
	l      [6][6]float64 // rows in terms of Q
	b      [6]float64    // L b = Wrench on the pivot rows
	miss   int           // a row that Wrench breaks, or −1
	over   float64       // by how much
	turn   [6][6]float64 // of the rows since, by rebase
	turned bool
}

// find turns the columns and t's column, in place, into the rows of Q: modified Gram–Schmidt on
// the rows, the row with the largest part left taken first.
func (k *rank) find(col [][6]float64, t *[6]float64, w Wrench) {
	*k = rank{miss: -1}
	var first, left [6]float64
	for i := range col {
		c := &col[i]
		for j := range 6 {
			left[j] += float64(c[j] * c[j])
		}
	}
	var tol [6]float64
	for j := range 6 {
		left[j] += float64(t[j] * t[j])
		first[j] = left[j]
	}
	force := math.Sqrt(max(first[0], max(first[1], first[2])))
	turn := max(force, math.Sqrt(max(first[3], max(first[4], first[5]))))
	for j := range 6 {
		tol[j] = rankTolerance * force
		if j >= 3 {
			tol[j] = rankTolerance * turn
		}
	}
	row := [6]int{0, 1, 2, 3, 4, 5} // which row stands where
	for k.r < 6 {
		at, best := -1, 0.0
		for j := k.r; j < 6; j++ {
			if first[j] > 0 && left[j] > best*first[j] && math.Sqrt(left[j]) > tol[j]+rankTolerance*math.Sqrt(first[j]) {
				at, best = j, left[j]/first[j]
			}
		}
		if at < 0 {
			break
		}
		r := k.r
		row[r], row[at] = row[at], row[r]
		first[r], first[at] = first[at], first[r]
		tol[r], tol[at] = tol[at], tol[r]
		k.piv[r] = row[r]
		long := math.Sqrt(left[at])
		k.l[row[r]][r] = long
		d := bring(col, t, r, at, 1/long)
		left = take(col, t, r, &d)
		for j := r + 1; j < 6; j++ {
			k.l[row[j]][r] = d[j]
		}
		k.r++
	}
	for i := range col {
		for j := k.r; j < 6; j++ {
			col[i][j] = 0
		}
	}
	for j := k.r; j < 6; j++ {
		t[j] = 0
	}
	k.want(w)
}

// bring swaps rows r and at, makes row r 1 long by n and gives the parts of the later rows along it.
func bring(col [][6]float64, t *[6]float64, r, at int, n float64) (d [6]float64) {
	for i := range col {
		c := &col[i]
		v := c[at] * n
		c[at] = c[r]
		c[r] = v
		for j := r + 1; j < 6; j++ {
			d[j] += float64(v * c[j])
		}
	}
	t[r], t[at] = t[at], t[r]
	t[r] *= n
	for j := r + 1; j < 6; j++ {
		d[j] += float64(t[r] * t[j])
	}
	return d
}

// take takes those parts away and gives what is left, squared.
func take(col [][6]float64, t *[6]float64, r int, d *[6]float64) (left [6]float64) {
	for i := range col {
		c := &col[i]
		v := c[r]
		for j := r + 1; j < 6; j++ {
			c[j] -= float64(d[j] * v)
			left[j] += float64(c[j] * c[j])
		}
	}
	for j := r + 1; j < 6; j++ {
		t[j] -= float64(d[j] * t[r])
		left[j] += float64(t[j] * t[j])
	}
	return left
}

// want finds b, and whether the rows left over agree with it.
func (k *rank) want(w Wrench) {
	k.b = k.in(w)
	k.miss, k.over = -1, 0
	arm := k.arm()
	size := size3(w[0], w[1], w[2]) + size3(w[3], w[4], w[5])/arm
	for j := range 6 {
		if k.taken(j) {
			continue
		}
		v := w[j]
		for i := range k.r {
			v -= float64(k.l[j][i] * k.b[i])
		}
		if j >= 3 {
			v /= arm
		}
		if math.Abs(v) > missTolerance*size && math.Abs(v) > math.Abs(k.over) {
			k.miss, k.over = j, v
		}
	}
}

// in gives a wrench in the rows of Q, by its pivot rows.
func (k *rank) in(w Wrench) (b [6]float64) {
	for i := range k.r {
		p := k.piv[i]
		v := w[p]
		for m := range i {
			v -= float64(k.l[p][m] * b[m])
		}
		b[i] = v / k.l[p][i]
	}
	if k.turned {
		x := b
		for i := range 6 {
			b[i] = dot6(&k.turn[i], &x)
		}
	}
	return b
}

// out turns a dual of the rows of Q into one of the wrench, on the pivot rows.
func (k *rank) out(y *[6]float64) (w Wrench) {
	if k.turned {
		var x [6]float64
		for i := range 6 {
			for j := range 6 {
				x[j] += float64(k.turn[i][j] * y[i])
			}
		}
		y = &x
	}
	for i := k.r - 1; i >= 0; i-- {
		v := y[i]
		for m := i + 1; m < k.r; m++ {
			v -= float64(k.l[k.piv[m]][i] * w[k.piv[m]])
		}
		w[k.piv[i]] = v / k.l[k.piv[i]][i]
	}
	return w
}

// missing is the direction y with yᵀ(columns) = 0 that the wrench breaks, y·w > 0.
func (k *rank) missing() Wrench {
	var y [6]float64
	for i := range k.r {
		y[i] = -k.l[k.miss][i]
	}
	w := k.out(&y)
	w[k.miss] = 1
	if k.over < 0 {
		for i := range w {
			w[i] = -w[i]
		}
	}
	return w
}

func (k *rank) taken(j int) bool {
	for i := range k.r {
		if k.piv[i] == j {
			return true
		}
	}
	return false
}

// arm is the ratio of the longest moment row and the longest force row, in m; 1 when one is 0.
func (k *rank) arm() float64 {
	var f, m float64
	for j := range 6 {
		n := 0.0
		for i := range k.r {
			n += float64(k.l[j][i] * k.l[j][i])
		}
		if j < 3 {
			f = max(f, n)
		} else {
			m = max(m, n)
		}
	}
	if f > 0 && m > 0 {
		return math.Sqrt(m / f)
	}
	return 1
}
