package hang

import (
	"errors"
	"math"

	"cohoist/core/vec"
)

// body is a rig made ready to be computed with. Its six coordinates about a spot are a shift of the centre of
// mass (m) and a turn about level axes times size (m), so that all six are alike, (12.2).
type body struct {
	springs []spring
	load    vec.V3  // on the centre of mass, weight included, N
	weight  float64 // |load|, N
	com     vec.V3  // payload frame, m
	size    float64 // of the payload, m: a turn of one radian moves its parts by about as much
	reach   float64 // longest line and size, m
	stiff   float64 // Σ k, N/m
}

// spring is a line.
type spring struct {
	top    vec.V3  // level axes, m
	arm    vec.V3  // from the centre of mass to the attachment, payload axes, m
	rest   float64 // m
	k      float64 // N/m
	rigid  bool    // k stands for a line that does not stretch
	number int     // in Rig.Lines
}

// spot is a pose by its centre of mass.
type spot struct {
	at   vec.V3
	turn vec.M3
}

// Errors of a rig that cannot hang.
var (
	ErrNothing   = errors.New("nothing pulls on the payload, so it does not hang")
	ErrNoLine    = errors.New("no line holds the payload")
	ErrNumber    = errors.New("a length, place, stiffness or mass of the rig is no number, or negative")
	ErrUnsettled = errors.New("the payload found no rest within the steps allowed")
)

// body checks a rig and makes it ready.
func (r Rig) body() (*body, error) {
	l := r.Load
	b := &body{load: l.weight(), com: l.COM}
	b.weight = b.load.Norm()
	sum := l.Mass + l.COM.Norm() + b.weight
	turning := l.Inertia[0][0] + l.Inertia[1][1] + l.Inertia[2][2]
	sum += turning
	if !(l.Mass >= 0) || math.IsNaN(sum) || math.IsInf(sum, 0) {
		return nil, ErrNumber
	}
	if b.weight == 0 {
		return nil, ErrNothing
	}
	if l.Mass > 0 {
		b.size = math.Sqrt(math.Max(0, turning) / (2 * l.Mass))
	}
	for i, line := range r.Lines {
		s := spring{top: line.Top, arm: line.At.Sub(l.COM), rest: line.Length, k: line.stiffness(b.weight), rigid: math.IsInf(line.Stiffness, 1), number: i}
		sum := s.top.Norm() + s.arm.Norm() + s.rest + s.k
		if !(line.Length >= 0) || !(s.k >= 0) || math.IsNaN(sum) || math.IsInf(sum, 0) {
			return nil, ErrNumber
		}
		if s.k == 0 {
			continue
		}
		b.springs = append(b.springs, s)
		b.size = math.Max(b.size, s.arm.Norm())
		b.reach = math.Max(b.reach, s.rest)
		b.stiff += s.k
	}
	if len(b.springs) == 0 {
		return nil, ErrNoLine
	}
	if b.size == 0 {
		b.size = math.Max(b.reach, 1e-3) // a point: no turn matters
	}
	b.reach += b.size
	return b, nil
}

// spot is where the centre of mass of a pose is.
func (b *body) spot(p Pose) spot { return spot{p.Place(b.com), p.Attitude} }

// pose is the pose of a spot.
func (b *body) pose(x spot) Pose { return Pose{x.at.Sub(x.turn.Mul(b.com)), x.turn} }

// move takes a step in the six coordinates, (12.2).
func (b *body) move(x spot, step *vec6) spot {
	turn := vec.V3{step[3], step[4], step[5]}.Scale(1 / b.size)
	return spot{x.at.Add(vec.V3{step[0], step[1], step[2]}), vec.Rot(turn).MulM(x.turn)} // (12.2)
}

// energy is the potential energy at a spot, J.
func (b *body) energy(x spot) float64 {
	e := -b.load.Dot(x.at)
	for i := range b.springs {
		s := &b.springs[i]
		d := s.top.Sub(x.at).Sub(x.turn.Mul(s.arm))
		if long := math.Sqrt(d.Dot(d)) - s.rest; long > 0 {
			e += 0.5 * s.k * long * long // (12.1)
		}
	}
	return e
}

// slope is the energy with its gradient and Hessian in the six coordinates.
func (b *body) slope(x spot, g *vec6, h *mat6) float64 {
	e := -b.load.Dot(x.at)
	*g, *h = vec6{-b.load[0], -b.load[1], -b.load[2]}, mat6{}
	for i := range b.springs {
		s := &b.springs[i]
		r := x.turn.Mul(s.arm)
		d := s.top.Sub(x.at).Sub(r)
		l := math.Sqrt(d.Dot(d))
		long := l - s.rest
		if long <= 0 {
			continue
		}
		t := s.k * long
		e += 0.5 * t * long // (12.1)
		b.add(r.Scale(1/b.size), d.Scale(1/l), t, t/l, s.k, g, h)
	}
	for i := range h {
		for j := range i {
			h[j][i] = h[i][j]
		}
	}
	return e
}

// add is the part of one taut line: its arm r over size, direction n, tension t, t over its length, and its
// stiffness. Of the Hessian it adds to the lower triangle.
func (b *body) add(r, n vec.V3, t, across, k float64, g *vec6, h *mat6) {
	v := r.Cross(n)
	along := k - across
	dot := r.Dot(n)
	square := float64(across*r.Dot(r)) + float64(t/b.size*dot)
	skew := vec.M3{{0, r[2], -r[1]}, {-r[2], 0, r[0]}, {r[1], -r[0], 0}} // A of (12.5)
	for i := range 3 {
		g[i] -= float64(t * n[i])   // (12.4)
		g[3+i] -= float64(t * v[i]) // (12.4)
		h[i][i] += across           // (12.6)
		h[3+i][3+i] += square       // (12.6), (12.7)
		for j := range 3 {
			if j <= i {
				lean := float64(n[i]*r[j]) + float64(r[i]*n[j])
				h[i][j] += float64(along * n[i] * n[j])                                                          // (12.6)
				h[3+i][3+j] += float64(along*v[i]*v[j]) - float64(across*r[i]*r[j]) - float64(0.5*t/b.size*lean) // (12.6), (12.7)
			}
			h[3+i][j] += float64(across*skew[j][i]) + float64(along*v[i]*n[j]) // (12.6)
		}
	}
}
