package way

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// starts are places to begin with: where the vehicles are, and spread on a ring; for a line, nearer to it and pushed apart
// along it from four shifts to and fro.
func (f *former) starts() [][]vec.V3 {
	move := func(to func(i int, at vec.V3) vec.V3) []vec.V3 {
		out := make([]vec.V3, len(f.m.Craft))
		for i, part := range f.first.Parts {
			out[i] = to(i, flat(part.Position)).Add(f.ring(i).Scale(1e-3))
		}
		return out
	}
	list := [][]vec.V3{
		move(func(_ int, at vec.V3) vec.V3 { return at }),
		move(func(i int, at vec.V3) vec.V3 { return at.Add(f.ring(i)) }),
	}
	if f.ask.Shape != plan.InLine {
		return list
	}
	along := vec.V3{f.across[1], -f.across[0], 0}
	for _, nearer := range []float64{0.6, 0.2} {
		for k := range 4 {
			at := move(func(i int, at vec.V3) vec.V3 {
				c := f.m.Craft[i].At.Sub(f.m.Body.COM)
				shift := math.Copysign(0.1*f.ask.Spacing, f.across.Dot(c))
				if k%2 == 0 {
					shift = math.Copysign(shift, shift*along.Dot(c))
				}
				if k > 1 {
					shift = -shift
				}
				off := f.across.Dot(at.Sub(f.m.Body.COM)) * (nearer - 1)
				return at.Add(f.across.Scale(off)).Add(along.Scale(shift))
			})
			f.push(at, along)
			list = append(list, at)
		}
	}
	return list
}

// ring is half the spacing, outwards by the vehicle's number.
func (f *former) ring(i int) vec.V3 {
	sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(len(f.m.Craft)))
	return vec.V3{cos, sin, 0}.Scale(f.ask.Spacing / 2)
}

// push moves places along a line, pair by pair, until they are the spacing apart.
func (f *former) push(at []vec.V3, along vec.V3) {
	for range 200 {
		clear := true
		for i := range at {
			for j := range i {
				d := at[i].Sub(at[j])
				x := along.Dot(d)
				gap := math.Sqrt(math.Max(0, f.ask.Spacing*f.ask.Spacing-d.Dot(d)+x*x)) - math.Abs(x)
				if gap <= 1e-6*f.ask.Spacing {
					continue
				}
				clear = false
				by := along.Scale(math.Copysign(gap/2, x))
				at[i], at[j] = at[i].Add(by), at[j].Sub(by)
			}
		}
		if clear {
			return
		}
	}
}
