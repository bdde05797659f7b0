package hang

import "math"

// Steps of a descent before it gives up: the short one is tried first, for most starts are near.
const (
	quick   = 20
	patient = 2000
)

// A strain at which lines are soft enough for a descent from anywhere, and by how much they are made stiffer
// from one stage to the next, (12.10).
const (
	softest = 1e-2
	stiffer = 1e-2
)

// rest goes down from a spot to an equilibrium, with the steps of (12.10).
func (b *body) rest(x spot) (spot, bool) {
	y, ok := b.descend(x, quick, false)
	if ok {
		return y, true
	}
	from := b.energy(x)
	if z, ok := b.stages(x); ok && b.energy(z) <= from {
		return z, true
	}
	return b.descend(y, patient, false)
}

// stages descends with soft lines, and again with ever stiffer ones, each from where the last came to rest, (12.10).
func (b *body) stages(x spot) (spot, bool) {
	soft := *b
	soft.springs = make([]spring, len(b.springs))
	for strain := softest; ; strain *= stiffer {
		same := true
		soft.stiff = 0
		for i, s := range b.springs {
			if most := b.weight / (strain * math.Max(s.rest, 1e-3)); s.k > most {
				s.k, same = most, false
			}
			soft.springs[i] = s
			soft.stiff += s.k
		}
		y, ok := soft.descend(x, patient, false)
		if same || !ok {
			return y, ok
		}
		x = y
	}
}

// precision is what rounding leaves of the gradient, N: each line's length is good to 1e-16 of itself and the places.
func (b *body) precision() float64 { return 1e-12*b.weight + 1e-15*b.stiff*b.reach }

// descend takes Newton steps with a shift (Levenberg) that never raise the energy, and leaves a saddle along
// its steepest fall, (12.10). With the attitude held only the centre of mass moves, which is a convex problem.
func (b *body) descend(x spot, most int, held bool) (spot, bool) {
	var g vec6
	var h, low mat6
	unit := b.weight / b.reach // of the shift: the stiffness of a pendulum
	shift := 0.0
	e := b.slope(x, &g, &h)
	for range most {
		if held {
			hold(&g, &h)
		}
		end := g.norm() <= b.precision()
		if !end {
			x, end = b.lower(x, e, &shift, unit, &g, &h, &low)
		}
		if end {
			y, ok := b.polish(x, &g, &h, &low, held)
			if held {
				return y, ok
			}
			z, left := b.leave(y, &h)
			if !left {
				return y, ok
			}
			x, shift = z, 0
		}
		e = b.slope(x, &g, &h)
	}
	return x, false
}

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
