package beam

import "math"

// Poly is a polynomial by ascending powers.
type Poly []float64

// At returns the value at s, by Horner's rule.
func (p Poly) At(s float64) float64 {
	var v float64
	for i := len(p) - 1; i >= 0; i-- {
		v = float64(v*s) + p[i]
	}
	return v
}

// derivative is dp/ds.
func (p Poly) derivative() Poly {
	if len(p) < 2 {
		return nil
	}
	d := make(Poly, len(p)-1)
	for i := range d {
		d[i] = float64(i+1) * p[i+1]
	}
	return d
}

// integral is ∫p ds from 0, plus start.
func (p Poly) integral(start float64) Poly {
	q := make(Poly, len(p)+1)
	q[0] = start
	for i, c := range p {
		q[i+1] = c / float64(i+1)
	}
	return q
}

// plus is p + k q.
func (p Poly) plus(k float64, q Poly) Poly {
	out := make(Poly, max(len(p), len(q)))
	copy(out, p)
	for i, c := range q {
		out[i] += float64(k * c)
	}
	return out
}

// times is p q.
func (p Poly) times(q Poly) Poly {
	if len(p) == 0 || len(q) == 0 {
		return nil
	}
	out := make(Poly, len(p)+len(q)-1)
	for i, a := range p {
		for j, b := range q {
			out[i+j] += float64(a * b)
		}
	}
	return out
}

// roots lists the places in [0, h] where p changes sign, in order, each to the last digit or two.
// Between neighbouring roots of dp/ds p is monotone, so bisection cannot miss one. A root where
// p only touches zero is among the roots of dp/ds and is given too, when it is exactly zero there.
func (p Poly) roots(h float64) []float64 {
	for len(p) > 0 && p[len(p)-1] == 0 {
		p = p[:len(p)-1]
	}
	if len(p) < 2 || !(h > 0) {
		return nil
	}
	var out []float64
	a, fa := 0.0, p[0]
	for _, b := range append(p.derivative().roots(h), h) {
		fb := p.At(b)
		switch {
		case fa == 0:
			out = append(out, a)
		case (fa < 0) != (fb < 0) && fb != 0:
			out = append(out, p.bisect(a, b, fa < 0))
		}
		a, fa = b, fb
	}
	if fa == 0 {
		out = append(out, a)
	}
	return out
}

// bisect closes in on the only root between a and b until no float64 lies between.
func (p Poly) bisect(a, b float64, rising bool) float64 {
	for {
		m := a + (b-a)/2
		if m <= a || m >= b {
			return m
		}
		if (p.At(m) < 0) == rising {
			a = m
		} else {
			b = m
		}
	}
}

// Curve is a piecewise polynomial along x: between X[i] and X[i+1] it is P[i] of x − X[i]. It may
// jump at the knots.
type Curve struct {
	X []float64 // m, ascending, one more than P
	P []Poly
}

// Peak is a value and where it stands.
type Peak struct{ X, Value float64 }

// At returns the value at x; at a jump, the value just after it, and at the right end just before.
func (c Curve) At(x float64) float64 {
	i := len(c.P) - 1
	for i > 0 && c.X[i] > x {
		i--
	}
	return c.P[i].At(x - c.X[i])
}

// Extremes returns the least and the largest value with their places: at the knots, on both
// sides of a jump, and where the derivative is zero.
func (c Curve) Extremes() (least, largest Peak) {
	least, largest = Peak{math.NaN(), math.Inf(1)}, Peak{math.NaN(), math.Inf(-1)}
	for i, p := range c.P {
		h := c.X[i+1] - c.X[i]
		for _, s := range append([]float64{0, h}, p.derivative().roots(h)...) {
			v := p.At(s)
			if v < least.Value {
				least = Peak{c.X[i] + s, v}
			}
			if v > largest.Value {
				largest = Peak{c.X[i] + s, v}
			}
		}
	}
	return least, largest
}

// Worst returns the extreme of largest size, with its sign.
func (c Curve) Worst() Peak {
	least, largest := c.Extremes()
	if -least.Value > largest.Value {
		return least
	}
	return largest
}

// Points samples the curve for drawing: n steps a piece, both sides of every jump.
func (c Curve) Points(n int) []Peak {
	var out []Peak
	for i, p := range c.P {
		h := c.X[i+1] - c.X[i]
		for j := 0; j <= n; j++ {
			s := h * float64(j) / float64(n)
			out = append(out, Peak{c.X[i] + s, p.At(s)})
		}
	}
	return out
}

// integral is ∫c dx from the left end, continuous, plus start and a slope: start + slope (x − left) + ∫c.
func (c Curve) integral(start, slope float64) Curve {
	out := Curve{X: c.X, P: make([]Poly, len(c.P))}
	for i, p := range c.P {
		out.P[i] = p.integral(start)
		out.P[i][1] += slope
		start = out.P[i].At(c.X[i+1] - c.X[i])
	}
	return out
}

// scale is k c.
func (c Curve) scale(k float64) Curve {
	out := Curve{X: c.X, P: make([]Poly, len(c.P))}
	for i, p := range c.P {
		out.P[i] = Poly(nil).plus(k, p)
	}
	return out
}
