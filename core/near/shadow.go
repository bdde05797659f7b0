package near

import (
	"math"

	"cohoist/core/vec"
)

// Flat is the drag coefficient of a flat body across the flow: a square plate's, Aeronautical Engineer's Data Book (C. Matthews),
// fig. 5.13(b), p. 95.
const Flat = 1.17

// Shadow is what of the payload stands in a rotor's wake.
type Shadow struct {
	Share float64 // f/A: the wake presses on the payload with this part of the rotor's thrust, along the wake, (22.2)
	At    vec.V3  // where it presses, payload frame, m
	Area  float64 // of the payload in it, m²: counted by the wake's momentum where it is a jet
	Depth float64 // m: way of the air to the nearest face; +Inf: it meets none
	Jet   bool    // a face is met by the one jet of the vehicle
}

// Shadow finds what of the payload stands in the wake of rotor j, (22.4). Faces do not shade each other, but together they take no more than
// the whole wake.
func (v *Rotors) Shadow(j int, faces []Face) Shadow {
	out := Shadow{Depth: math.Inf(1)}
	area := math.Pi * v.Radius * v.Radius
	var sum vec.V3
	for i := range faces {
		f := &faces[i]
		at, way, ok := v.hit(v.At.Add(v.Places[j]), f.At[2])
		if !ok {
			continue
		}
		var part, mx, my float64 // of the wake's momentum, and its moments along the face
		jet := way > Merged(v.Reach)
		if jet {
			at, _, _ = v.hit(v.At, f.At[2])
			x, y := f.seen(at)
			part, mx, my = gaussian(x, y, Width(v.Reach, v.Radius, way), f.A, f.B) // (22.6)
		} else {
			x, y := f.seen(at)
			part, mx, my = overlap(x, y, Contraction*v.Radius, f.A, f.B)
			whole := math.Pi * (Contraction * v.Radius) * (Contraction * v.Radius)
			part, mx, my = part/whole, mx/whole, my/whole
		}
		if !(part > 1e-12) { // rounding at the edge
			continue
		}
		sin, cos := math.Sincos(f.Yaw)
		sum = sum.Add(vec.V3{part*f.At[0] + cos*mx - sin*my, part*f.At[1] + sin*mx + cos*my, part * f.At[2]})
		out.Share += part
		out.Depth, out.Jet = math.Min(out.Depth, way), out.Jet || jet
	}
	if out.Share == 0 {
		out.At = v.At
		return out
	}
	out.At = sum.Scale(1 / out.Share)
	part := math.Min(out.Share, 1)
	out.Area = part * Contraction * Contraction * area
	out.Share = Flat * out.Area / area // (22.2), f = C_d S
	return out
}

// seen is a point seen from a face's middle, along its length and width, m.
func (f *Face) seen(p vec.V3) (x, y float64) {
	sin, cos := math.Sincos(f.Yaw)
	dx, dy := p[0]-f.At[0], p[1]-f.At[1]
	return cos*dx + sin*dy, cos*dy - sin*dx
}

// gaussian is the part of a jet's momentum within −a…a, −b…b, the jet of radius wide about (x, y), and its first moments: the momentum
// goes with exp(−4 r²/wide²), the square of a speed that goes with exp(−2 r²/wide²), (22.6).
func gaussian(x, y, wide, a, b float64) (part, mx, my float64) {
	one := func(at, half float64) (part, moment float64) {
		lo, hi := 2*(-half-at)/wide, 2*(half-at)/wide
		part = (math.Erf(hi) - math.Erf(lo)) / 2
		moment = at*part + wide/(4*math.Sqrt(math.Pi))*(math.Exp(-lo*lo)-math.Exp(-hi*hi))
		return part, moment
	}
	px, momentX := one(x, a)
	py, momentY := one(y, b)
	return px * py, momentX * py, px * momentY
}

// overlap is the area that a disc of radius r about (x, y) shares with the rectangle −a…a, −b…b, m², and its first moments about the
// rectangle's middle, m³: exact, by the area under the disc's edge.
func overlap(x, y, r, a, b float64) (area, mx, my float64) {
	lox, hix, loy, hiy := -a-x, a-x, -b-y, b-y
	if lox >= r || hix <= -r || loy >= r || hiy <= -r {
		return 0, 0, 0
	}
	for _, c := range [4]struct{ x, y, sign float64 }{{hix, hiy, 1}, {lox, hiy, -1}, {hix, loy, -1}, {lox, loy, 1}} {
		s, m := quadrant(c.x, c.y, r)
		_, n := quadrant(c.y, c.x, r)
		area, mx, my = area+c.sign*s, mx+c.sign*m, my+c.sign*n
	}
	return area, mx + x*area, my + y*area
}

// quadrant is the area of a disc about the origin left of x and below y, and its first moment along x.
func quadrant(x, y, r float64) (area, moment float64) {
	x, y = math.Max(-r, math.Min(r, x)), math.Max(-r, math.Min(r, y))
	// ∫ from −r to x of the height between −√(r²−s²) and min(y, √(r²−s²)), none where y is below the disc
	under := func(s float64) (area, moment float64) { // ∫₀ˢ √(r²−s²), and of s times that but for a constant
		s = math.Max(-r, math.Min(r, s))
		root := math.Sqrt(math.Max(0, r*r-s*s))
		return (s*root + r*r*math.Asin(s/r)) / 2, -root * root * root / 3
	}
	add := func(from, to, roof, floor float64) { // the heights of roof times the edge and floor times y, from … to
		if !(to > from) {
			return
		}
		a0, m0 := under(from)
		a1, m1 := under(to)
		area += roof*(a1-a0) + floor*y*(to-from)
		moment += roof*(m1-m0) + floor*y*(to*to-from*from)/2
	}
	e := math.Sqrt(math.Max(0, r*r-y*y)) // the chord at y is −e…e
	if y < 0 {                           // only the cap below the chord
		add(-e, math.Min(x, e), 1, 1)
		return area, moment
	}
	add(-r, math.Min(x, -e), 2, 0) // left of the chord the whole height
	add(-e, math.Min(x, e), 1, 1)
	add(e, x, 2, 0)
	return area, moment
}
