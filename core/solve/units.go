package solve

import "math"

// units picks the unit of t and a unit of force for every Line and Pull, (6.7), so that what is
// solved is about 1 whether a rotor gives 1e-3 N or 1e5 N.
func (s *Solver) units() {
	p := s.p
	// What the wrench asks for, in N; moments by the length scale of the columns.
	var force, turn, perT, capacity float64
	for i := range p.Lines {
		c := &p.Lines[i].Column
		l := &p.Lines[i]
		size := larger(math.Abs(below(l.Hi)), math.Abs(below(l.Lo)))
		force += longest(c[0], c[1], c[2])
		turn += longest(c[3], c[4], c[5])
		perT += math.Abs(l.HiT)
		capacity += size
	}
	for i := range p.Pulls {
		q := &p.Pulls[i]
		force++
		turn += longest(q.At[0], q.At[1], q.At[2])
		for j := range q.Cones {
			if c := &q.Cones[j]; !c.Flat && !math.IsInf(c.C, 1) {
				perT += math.Abs(c.T)
				capacity += math.Abs(c.C)
				break
			}
		}
	}
	s.arm = 1
	if force > 0 && turn > 0 {
		s.arm = turn / force
	}
	w := &p.Wrench
	need := size3(w[0], w[1], w[2]) + size3(w[3], w[4], w[5])/s.arm
	s.force = need
	s.t0 = 0
	s.opening = perT > 0
	if perT > 0 { // t opens bounds: what share of them the need takes
		s.t0 = need / perT
		for i := range p.Pulls {
			s.t0 = max(s.t0, opens(&p.Pulls[i]))
		}
		for i := range p.Lines {
			l := &p.Lines[i]
			if l.HiT != 0 {
				s.t0 = max(s.t0, (max(0, below(l.Lo))-below(l.Hi))/math.Abs(l.HiT))
			}
		}
	}
	w = &p.WrenchT
	if m := size3(w[0], w[1], w[2]) + size3(w[3], w[4], w[5])/s.arm; m > 0 && perT == 0 {
		s.t0 = max(capacity, need) / m
	}
	if !(s.t0 > 0) || math.IsInf(s.t0, 0) {
		s.t0 = 1
	}
	n := float64(s.nl + s.np)
	for i := range p.Lines {
		l := &p.Lines[i]
		f := larger(math.Abs(below(l.Lo)), math.Abs(below(l.Hi))+math.Abs(l.HiT*s.t0))
		if !(f > 0) || math.IsInf(f, 0) {
			c := &l.Column
			f = orElse(need/n/orElse(max(size3(c[0], c[1], c[2]), size3(c[3], c[4], c[5])/s.arm), 1), 1)
		}
		s.lines[i].unit = f
	}
	for i := range p.Pulls {
		q := &p.Pulls[i]
		f := 0.0
		for j := range q.Cones {
			if c := &q.Cones[j]; !c.Flat && !math.IsInf(c.C, 1) {
				if v := math.Abs(c.C) + math.Abs(c.T*s.t0) + length(c.B); f == 0 || v < f {
					f = v
				}
			}
		}
		s.pulls[i].unit = orElse(max(f, math.Abs(below(q.MinZ))), need/n)
	}
}

// opens is a t at which the first thrust bound of a pull has room for its own shift.
func opens(q *Pull) float64 {
	for j := range q.Cones {
		if c := &q.Cones[j]; !c.Flat && c.T != 0 {
			return (length(c.B) + math.Abs(below(q.MinZ))) / math.Abs(c.T)
		}
	}
	return 0
}

func orElse(f, other float64) float64 {
	if f > 0 && !math.IsInf(f, 0) {
		return f
	}
	if other > 0 && !math.IsInf(other, 0) {
		return other
	}
	return 1
}

// below is x, or 0 when it is infinite.
func below(x float64) float64 {
	if math.IsInf(x, 0) {
		return 0
	}
	return x
}

func size3(x, y, z float64) float64 {
	return max(math.Abs(x), max(math.Abs(y), math.Abs(z)))
}

// lightly is the weight of t's column beside those of the forces when the rows are made orthonormal.
const lightly = 1e-3

// unitOfT takes the weight away again. When t is nothing but a part of the wanted wrench, its unit
// becomes what the shortest forces of about a third of every unit give, (6.7).
func (s *Solver) unitOfT() {
	for i := range s.tcol {
		s.tcol[i] /= lightly
	}
	v := norm6(&s.tcol)
	if s.opening || !(v > 0) {
		return
	}
	k := 0.3 * math.Sqrt(float64(s.nl+3*s.np)) / v
	k = max(k, 1e-6)
	s.t0 *= k
	for i := range s.tcol {
		s.tcol[i] *= k
	}
	for i := range s.lines {
		s.lines[i].ht *= k
	}
	for i := range s.cones {
		s.cones[i].g = s.cones[i].g.scale(k)
	}
}
