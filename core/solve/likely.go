package solve

import "math"

// suspect is the part of its slack that a dual must be to make a bound tight in a guess, where the force
// would otherwise be held by nothing curved: a bound too many is let go again, but forces
// that nothing holds run away.
const suspect = 1e-1

// amid is how far out of its cone's axis a slack must be, of the cone's width there, to count as near the edge:
// where a cone is narrow every slack is small.
const amid = 0.2

// likely is tight for a guess: bounds near whose edge the slack is not are left, and pulls that nothing
// curved holds get the bound that is most likely to.
func (s *Solver) likely() {
	clear := 4 / float64(s.nl+s.np)
	s.tight(clear)
	for i := range s.pulls {
		o := &s.pulls[i]
		best, at := suspect*clear, -1
		for j := o.c0; j < o.c1; j++ {
			c := &s.cones[j]
			n := math.Sqrt(float64(c.s.x*c.s.x) + float64(c.s.y*c.s.y) + float64(c.s.z*c.s.z))
			c.tight = c.tight && n > amid*c.s.a
			if v := c.z.a / (c.s.a - n); v > best && n > amid*c.s.a {
				best, at = v, j
			}
		}
		if at >= 0 {
			s.cones[at].tight = true
		}
	}
}
