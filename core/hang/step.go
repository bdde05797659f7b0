package hang

import "math"

// lower takes one step that lowers the energy, making the shift larger until one does. It ends when the
// energy has no digits left to tell.
func (b *body) lower(x spot, e float64, shift *float64, unit float64, g *vec6, h, low *mat6) (spot, bool) {
	for range 100 {
		if !h.factor(*shift, low) {
			*shift = math.Max(4**shift, 1e-3*unit)
			continue
		}
		step := low.solve(g.scale(-1))
		gain := -g.dot(&step) // twice what a pure Newton step gains
		if gain <= 1e-12*b.weight*b.reach && *shift == 0 {
			return x, true
		}
		if long := step.norm(); long > b.reach || turned(&step) > b.size {
			*shift = math.Max(4**shift, 1e-3*unit)
			continue
		}
		y := b.move(x, &step)
		curve := h.mul(&step)
		expected := gain - 0.5*step.dot(&curve)
		switch fall := e - b.energy(y); {
		case fall >= 0.1*expected && expected > 0:
			if fall > 0.5*expected {
				*shift /= 16
			}
			if *shift < 1e-4*unit {
				*shift = 0
			}
			return y, false
		case expected <= 1e-14*b.weight*b.reach:
			return x, true
		}
		*shift = math.Max(4**shift, 1e-3*unit)
	}
	return x, true
}

// polish takes Newton steps while they make the gradient smaller, for close to rest the energy has too few
// digits. It tells whether the gradient is as small as rounding allows.
func (b *body) polish(x spot, g *vec6, h, low *mat6, held bool) (spot, bool) {
	size := g.norm()
	for range 8 {
		if !h.factor(0, low) && !h.factor(2*b.neutral(), low) {
			break
		}
		step := low.solve(g.scale(-1))
		y := b.move(x, &step)
		b.slope(y, g, h)
		if held {
			hold(g, h)
		}
		next := g.norm()
		if !(next < size) {
			b.slope(x, g, h)
			break
		}
		x, size = y, next
	}
	return x, size <= 100*b.precision()
}

// leave steps down from a stationary point that is no minimum, along the direction of most negative curvature.
func (b *body) leave(x spot, h *mat6) (spot, bool) {
	values, vectors := h.eigen(6)
	worst := 0
	for i := range values {
		if values[i] < values[worst] {
			worst = i
		}
	}
	if values[worst] >= -b.neutral() {
		return x, false
	}
	e := b.energy(x)
	for long := 0.1 * b.size; long > 1e-6*b.size; long /= 4 {
		step := vectors.column(worst).scale(long)
		back := step.scale(-1)
		y, z := b.move(x, &step), b.move(x, &back)
		ey, ez := b.energy(y), b.energy(z)
		if ez < ey {
			y, ey = z, ez
		}
		if ey < e {
			return y, true
		}
	}
	return x, false
}

// neutral is the curvature that counts as none, N/m: rounding of the Hessian is a thousandth of it, (12.9).
func (b *body) neutral() float64 { return 1e-6 * b.weight / b.reach }

// hold takes the turns out of gradient and Hessian.
func hold(g *vec6, h *mat6) {
	for i := 3; i < 6; i++ {
		g[i] = 0
		for j := range h {
			h[i][j], h[j][i] = 0, 0
		}
		h[i][i] = 1
	}
}

// turned is the part of a step that turns, m.
func turned(step *vec6) float64 {
	return math.Sqrt(float64(step[3]*step[3]) + float64(step[4]*step[4]) + float64(step[5]*step[5]))
}
