package way

import "math"

// groups are runs of legs whose total is given by the times of their ends; the last may be free.
type group struct {
	from, to int     // legs, to is past the last
	total    float64 // s
	free     bool
}

// guess is a first duration of every leg: as the square root of its length, a turn counted by Arm, and no leg as shorter than
// a twentieth of their mean length.
func (r Route) guess() []float64 {
	lengths, heading, mean := make([]float64, len(r.Points)-1), 0.0, 0.0
	for k := range lengths {
		a, b := r.Points[k], r.Points[k+1]
		lengths[k] = b.At.Sub(a.At).Norm()
		if !math.IsNaN(b.Heading) {
			lengths[k] = math.Hypot(lengths[k], r.Arm*(b.Heading-heading))
			heading = b.Heading
		}
		mean += lengths[k] / float64(len(lengths))
	}
	for k, d := range lengths {
		lengths[k] = math.Sqrt(math.Max(d, mean/20))
	}
	return lengths
}

// groups finds them, and first durations.
func (r Route) groups() ([]group, []float64, error) {
	durations := r.guess()
	var out []group
	from, since := 0, 0.0
	if t := r.Points[0].Time; t != 0 && !math.IsNaN(t) {
		return nil, nil, ErrTimes
	}
	for k := range durations {
		end := r.Points[k+1].Time
		if math.IsNaN(end) {
			continue
		}
		if !(end > since) {
			return nil, nil, ErrTimes
		}
		out = append(out, group{from, k + 1, end - since, false})
		from, since = k+1, end
	}
	if from < len(durations) {
		rest := total(durations[from:])
		if from > 0 { // at the pace of the legs before, whose times are given: else these would make way for it
			rest *= since / total(durations[:from])
		}
		out = append(out, group{from, len(durations), rest, true})
	}
	for _, g := range out {
		g.fit(durations)
	}
	return out, durations, nil
}

// fit scales the legs of a group to its total.
func (g group) fit(durations []float64) {
	sum := 0.0
	for _, d := range durations[g.from:g.to] {
		sum += d
	}
	for k := g.from; k < g.to; k++ {
		durations[k] *= g.total / sum
	}
}

// descent looks for the least of a function of the durations with the total of every group kept: BFGS on their
// logarithms, which are free then, (20.12). f also gives the change by every duration. A move that f has no value for
// counts as too long; a gain of enough or less ends it.
func descent(groups []group, durations []float64, rounds int, enough float64, f func([]float64) (float64, []float64)) []float64 {
	n := len(durations)
	at := func(x []float64) []float64 {
		d := make([]float64, n)
		for i := range d {
			d[i] = math.Exp(x[i])
		}
		for _, g := range groups {
			g.fit(d)
		}
		return d
	}
	slope := func(d, change []float64) []float64 { // by the logarithms
		out := make([]float64, n)
		for _, g := range groups {
			mean := 0.0
			for k := g.from; k < g.to; k++ {
				mean += d[k] * change[k] / g.total
			}
			for k := g.from; k < g.to; k++ {
				out[k] = d[k] * (change[k] - mean)
			}
		}
		return out
	}
	x := make([]float64, n)
	for i, d := range durations {
		x[i] = math.Log(d)
	}
	d := at(x)
	value, change := f(d)
	if math.IsNaN(value) {
		return durations
	}
	grad := slope(d, change)
	inverse := identity(n)
	for range rounds {
		step := make([]float64, n)
		for i := range step {
			step[i] = -dot(inverse[i], grad)
		}
		down := dot(step, grad)
		if !(down < 0) {
			break
		}
		length := 1.0
		for _, s := range step {
			length = math.Min(length, 0.5/math.Abs(s)) // at most by e^½ at once
		}
		next, found := make([]float64, n), false
		var v float64
		for range 20 {
			copy(next, x)
			axpy(length, step, next)
			d = at(next)
			if !lopsided(d) {
				if v, change = f(d); v <= value+1e-4*length*down {
					found = true
					break
				}
			}
			length /= 2
		}
		if !found {
			break
		}
		g := slope(d, change)
		update(inverse, next, x, g, grad)
		gain := value - v
		x, grad, value = next, g, v
		if gain <= enough {
			break
		}
	}
	return at(x)
}

// lopsided tells that a leg has less than a twentieth of the mean duration: the seventh powers of the durations would then have
// too little in common to be solved together.
func lopsided(d []float64) bool {
	least, sum := math.Inf(1), 0.0
	for _, x := range d {
		least, sum = math.Min(least, x), sum+x
	}
	return least*20*float64(len(d)) < sum
}

func identity(n int) [][]float64 {
	m := make([][]float64, n)
	for i := range m {
		m[i] = make([]float64, n)
		m[i][i] = 1
	}
	return m
}

// update is that of Broyden, Fletcher, Goldfarb and Shanno for the inverse of the Hessian.
func update(h [][]float64, x, before, g, old []float64) {
	n := len(x)
	s, y, hy := make([]float64, n), make([]float64, n), make([]float64, n)
	for i := range s {
		s[i], y[i] = x[i]-before[i], g[i]-old[i]
	}
	sy := dot(s, y)
	if !(sy > 1e-14*math.Sqrt(dot(s, s)*dot(y, y))) {
		return
	}
	for i := range hy {
		hy[i] = dot(h[i], y)
	}
	k := (1 + dot(y, hy)/sy) / sy
	for i := range n {
		for j := range n {
			h[i][j] += k*s[i]*s[j] - (hy[i]*s[j]+s[i]*hy[j])/sy
		}
	}
}
