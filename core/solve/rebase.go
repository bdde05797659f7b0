package solve

// rebase turns the balance rows so that the forces with the most room fill the first rows and leave
// exact zeros in the others, (6.17): Householder's QR with column pivoting, blocks weighed by their
// room. When few forces stay free near the answer, S adds their large room to the small room of the
// rest; in rows turned like this the small is not lost in the large.
func (s *Solver) rebase() {
	r := s.rank.r
	for i := range r {
		best, at := 0.0, -1
		for j := range s.lines {
			if v := tail(&s.col[j], i) * s.lines[j].ih; v > best {
				best, at = v, j
			}
		}
		axis := 0
		for j := range s.pulls {
			v := &s.pulls[j].v
			for c := range 3 {
				n := 0.0
				for k := i; k < 6; k++ {
					n += float64(v[k][c] * v[k][c])
				}
				if n > best {
					best, at, axis = n, s.nl+j, c
				}
			}
		}
		if at < 0 {
			return
		}
		var h [6]float64
		if at < s.nl {
			h = s.col[at]
		} else {
			for k := range 6 {
				h[k] = s.pulls[at-s.nl].v[k][axis]
			}
		}
		for k := range i {
			h[k] = 0
		}
		n := norm6(&h)
		if h[i] < 0 {
			n = -n
		}
		h[i] += n
		two := dot6(&h, &h)
		if !(two > 0) {
			return
		}
		two = 2 / two
		mirror := func(x *[6]float64) {
			d := two * dot6(&h, x)
			for k := i; k < 6; k++ {
				x[k] -= float64(d * h[k])
			}
		}
		for j := range s.col {
			mirror(&s.col[j])
		}
		if at < s.nl {
			for k := i + 1; k < 6; k++ {
				s.col[at][k] = 0
			}
		}
		for j := range s.pulls {
			v := &s.pulls[j].v
			for c := range 3 {
				x := [6]float64{v[0][c], v[1][c], v[2][c], v[3][c], v[4][c], v[5][c]}
				mirror(&x)
				for k := range 6 {
					v[k][c] = x[k]
				}
			}
		}
		mirror(&s.tcol)
		mirror(&s.b)
		mirror(&s.y)
		mirror(&s.kept.y)
		mirror(&s.step.a.ry)
		s.rank.mirror(&h, two)
	}
}

// tail is the squared length of a from row i on.
func tail(a *[6]float64, i int) (n float64) {
	for k := i; k < 6; k++ {
		n += float64(a[k] * a[k])
	}
	return n
}

// mirror remembers a turn of the rows for in and out.
func (k *rank) mirror(h *[6]float64, two float64) {
	if !k.turned {
		k.turned = true
		for i := range 6 {
			k.turn[i] = [6]float64{}
			k.turn[i][i] = 1
		}
	}
	for i := range 6 { // column i of the turn
		x := [6]float64{k.turn[0][i], k.turn[1][i], k.turn[2][i], k.turn[3][i], k.turn[4][i], k.turn[5][i]}
		d := two * dot6(h, &x)
		for j := range 6 {
			k.turn[j][i] = x[j] - float64(d*h[j])
		}
	}
}
