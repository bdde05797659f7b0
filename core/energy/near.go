package energy

import "math"

// What is near changes the power: the ground, the payload below, the vehicles themselves. Each is a function with the range where its
// formula holds; outside, ok is false and the value NaN.

// GroundRange is where GroundEffect is asked: of a single rotor, optimistic to unknown for several; below half a radius it is kept off.
var GroundRange = Range{"z/R", 0.5, math.Inf(1), "from memory"}

// GroundEffect is the thrust at a height z above the ground over that far from it, at the same power, of a rotor of radius R, m:
// 1/(1 − (R/4z)²), I. C. Cheeseman and W. E. Bennett, ARC R&M 3021, 1955 (from memory), (18.21).
func GroundEffect(height, radius float64) (ratio float64, ok bool) {
	if !GroundRange.Holds(height / radius) {
		return math.NaN(), false
	}
	r := radius / (4 * height)
	return 1 / (1 - r*r), true // (18.21)
}

// DownloadRange is where Download is asked: of fuselages up to a tenth.
var DownloadRange = Range{"f/A", 0, 0.1, "1 to 4 % of weight is typical, over 10 % in single designs: heli-air.net 2016, vertical drag and download penalty"}

// Download is thrust over weight with a body in the wake whose drag area (C_d times area, m²) is f, under discs of area A: the wake blows at
// twice the induced velocity, D = ½ρ(2v_h)² f = T f/A, so that T = W/(1 − f/A), (18.22).
func Download(dragArea, discs float64) (ratio float64, ok bool) {
	if !DownloadRange.Holds(dragArea / discs) {
		return math.NaN(), false
	}
	return 1 / (1 - dragArea/discs), true // (18.22)
}

// Wake is the air below rotors in hover.
type Wake struct {
	Speed  float64 // m/s, far: twice the induced
	Radius float64 // m, of one rotor's, far: R/√2
	Full   float64 // m below the disc: contracted, a quarter of R
	Merged float64 // m below: the rotors' wakes are one jet, 2.5 diameters of the vehicle
}

// WakeOf is the wake of a vehicle whose rotors of radius R (m) thrust so much each (N), tip to tip across m, (18.23).
func WakeOf(thrust, radius, across, rho float64) Wake {
	v := Hover(thrust, math.Pi*radius*radius, rho)
	return Wake{Speed: 2 * v, Radius: radius / math.Sqrt2, Full: radius / 4, Merged: 2.5 * across} // (18.23)
}

// PressureRange is how far below the rotors, over the distance at which their wakes merge, Pressure is asked.
var PressureRange = Range{"depth/merging distance", 0, 1, "L. Bauersfeld et al., arXiv 2403.13321, 2024: one turbulent jet after 2.5 diameters"}

// Pressure is the dynamic pressure of the wake at a depth below the disc, Pa: that of the far wake from Full on. Above, the wake still
// contracts and quickens, and the far value is on the safe side. ok is false past Merged, where nothing here tells how the jet slows.
func (w Wake) Pressure(depth, rho float64) (pa float64, ok bool) {
	if !PressureRange.Holds(depth / w.Merged) {
		return math.NaN(), false
	}
	return rho / 2 * w.Speed * w.Speed, true
}

// Overlap is the area that a disc of radius r about (x, y) shares with the rectangle −a…a, −b…b, m²: exact, by the area under the
// disc's edge.
func Overlap(x, y, r, a, b float64) float64 {
	corner := func(x, y float64) float64 { return quadrant(x, y, r) }
	lox, hix, loy, hiy := -a-x, a-x, -b-y, b-y
	return corner(hix, hiy) - corner(lox, hiy) - corner(hix, loy) + corner(lox, loy)
}

// quadrant is the area of a disc about the origin left of x and below y.
func quadrant(x, y, r float64) float64 {
	x, y = math.Max(-r, math.Min(r, x)), math.Max(-r, math.Min(r, y))
	// ∫ from −r to x of the height between −√(r²−s²) and min(y, √(r²−s²)), none where y is below the disc
	under := func(s float64) float64 { // ∫₀ˢ √(r²−s²)
		s = math.Max(-r, math.Min(r, s))
		return (s*math.Sqrt(math.Max(0, r*r-s*s)) + r*r*math.Asin(s/r)) / 2
	}
	e := math.Sqrt(math.Max(0, r*r-y*y)) // the chord at y is −e…e
	left, right := math.Min(x, -e), math.Min(x, e)
	if y < 0 { // only the cap below the chord
		if x <= -e {
			return 0
		}
		return y*(right+e) + under(right) - under(-e)
	}
	area := 2 * (under(left) - under(-r)) // left of the chord the whole height
	if x > -e {
		area += y*(right+e) + under(right) - under(-e)
	}
	if x > e {
		area += 2 * (under(x) - under(e))
	}
	return area
}
