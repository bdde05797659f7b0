package solve

import (
	"math"

	"cohoist/core/vec"
)

// far tells that a cone can be left out: because another bound on |F| is tighter wherever it is, or
// because the forces that a fixed wrench asks for on average stay well inside. The second is a guess
// that keeps checks afterwards.
func (s *Solver) far(q *Pull, j int) bool {
	if s.inside || s.whole || s.quad {
		return false
	}
	k := &q.Cones[j]
	if k.T != 0 || k.D != (vec.V3{}) {
		return false
	}
	if !k.Flat && k.Z == 0 && k.B == (vec.V3{}) {
		for i := range q.Cones {
			if o := &q.Cones[i]; i != j && !o.Flat && o.Z == 0 && o.T == 0 && o.D == (vec.V3{}) && o.C+length(o.B) < k.C {
				return true
			}
		}
	}
	if s.p.WrenchT != (Wrench{}) || s.np == 0 {
		return false
	}
	f := s.p.Wrench[2] / float64(s.np)
	v := k.slackAt(vec.V3{0, 0, f})
	n := math.Sqrt(float64(v.x*v.x) + float64(v.y*v.y) + float64(v.z*v.z))
	if f > 0 && v.a-n > farAway*f && opensLater(q, j) {
		s.dropped = true
		return true
	}
	return false
}

// farAway is the slack, over the mean force, of a bound that is guessed not to matter.
const farAway = 1

// opensLater tells that another cone of the pull, one that t opens, bounds |F| all the same.
func opensLater(q *Pull, j int) bool {
	for i := range q.Cones {
		if o := &q.Cones[i]; i != j && !o.Flat && o.Z == 0 && o.T != 0 {
			return true
		}
	}
	return false
}

// keeps tells whether an answer keeps the cones that were left out.
func (s *Solver) keeps(r *Result) bool {
	n := 0
	for i := range s.p.Pulls {
		q := &s.p.Pulls[i]
		for j := range q.Cones {
			if !s.used[n] {
				v := q.Cones[j].slackAt(r.F[i])
				if !(v.a >= math.Sqrt(float64(v.x*v.x)+float64(v.y*v.y)+float64(v.z*v.z))) {
					return false
				}
			}
			n++
		}
	}
	return true
}
