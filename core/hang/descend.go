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
	for strain := softest; ; strain *= stiffer {
		soft, same := b.soft(strain)
		y, ok := soft.descend(x, patient, false)
		if same || !ok {
			return y, ok
		}
		x = y
	}
}

// soft is the body on lines that stretch at least so much under the whole weight, and whether they do anyway.
func (b *body) soft(strain float64) (*body, bool) {
	soft, same := *b, true
	soft.springs, soft.stiff = make([]spring, len(b.springs)), 0
	for i, s := range b.springs {
		if most := b.weight / (strain * math.Max(s.rest, 1e-3)); s.k > most {
			s.k, same = most, false
		}
		soft.springs[i] = s
		soft.stiff += s.k
	}
	return &soft, same
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
