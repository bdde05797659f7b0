package beam

import "math"

// Section is the cross-section of a bar. Pairs are for bending Upright (about y) and Level (about z).
type Section struct {
	Area    float64    // m²
	Second  [2]float64 // second moment of area, m⁴
	Modulus [2]float64 // section modulus, m³
	Size    [2]float64 // depth along z and width along y, m
	Round   bool       // the two bending stresses add up as vectors, not as corners
}

// Rectangle is a full or hollow box section, (9.6): width along y, depth along z, wall thickness (m); a
// wall of half the smaller side, or NaN, is a full one.
func Rectangle(width, depth, wall float64) Section {
	in := [2]float64{math.Max(0, depth-2*wall), math.Max(0, width-2*wall)}
	if !(wall > 0) || in[0] == 0 || in[1] == 0 {
		in = [2]float64{}
	}
	out := [2]float64{depth, width}
	s := Section{Area: float64(depth*width) - float64(in[0]*in[1]), Size: out}
	for p := range 2 {
		b, h := out[1-p], out[p]
		s.Second[p] = (float64(b*h*h*h) - float64(in[1-p]*in[p]*in[p]*in[p])) / 12 // (9.6)
		s.Modulus[p] = s.Second[p] / (h / 2)
	}
	return s
}

// Pipe is a round section, (9.7): outer and inner radius (m); inner 0 is a full one.
func Pipe(outer, inner float64) Section {
	o2, i2 := float64(outer*outer), float64(inner*inner)
	second := math.Pi / 4 * (float64(o2*o2) - float64(i2*i2)) // (9.7)
	return Section{
		Area:    math.Pi * (o2 - i2),
		Second:  [2]float64{second, second},
		Modulus: [2]float64{second / outer, second / outer},
		Size:    [2]float64{2 * outer, 2 * outer},
		Round:   true,
	}
}

// Stress returns the largest size of the normal stress (Pa) at x, (9.8); at a jump the larger side.
func (d Diagram) Stress(x float64) float64 {
	worst := 0.0
	for i := range d.Axial.P {
		if d.Axial.X[i] <= x && x <= d.Axial.X[i+1] {
			worst = math.Max(worst, d.StressIn(i, x-d.Axial.X[i]))
		}
	}
	return worst
}

// StressIn is (9.8) in piece i, s metres along it, Pa.
func (d Diagram) StressIn(i int, s float64) float64 {
	c := d.Bar.Section
	n := math.Abs(d.Axial.P[i].At(s)) / c.Area
	m := [2]float64{d.Planes[Upright].Moment.P[i].At(s), d.Planes[Level].Moment.P[i].At(s)}
	if c.Round {
		return n + math.Hypot(m[0], m[1])/c.Modulus[0]
	}
	return n + math.Abs(m[0])/c.Modulus[0] + math.Abs(m[1])/c.Modulus[1]
}

// Stressed is a section of the bar with what acts on it.
type Stressed struct {
	X      float64    // m
	Axial  float64    // N
	Moment [2]float64 // N m, Upright and Level
	Stress float64    // Pa, (9.8)
}

// WorstStress returns the section with the largest stress, exactly: at a knot, or where the derivative
// of (9.8) is zero for one of the signs its terms can have.
func (d Diagram) WorstStress() Stressed {
	worst := Stressed{X: math.NaN(), Stress: -1}
	for i := range d.Axial.P {
		h := d.Axial.X[i+1] - d.Axial.X[i]
		for _, s := range append([]float64{0, h}, d.stationary(i, h)...) {
			if v := d.StressIn(i, s); v > worst.Stress {
				worst = Stressed{d.Axial.X[i] + s, d.Axial.P[i].At(s),
					[2]float64{d.Planes[Upright].Moment.P[i].At(s), d.Planes[Level].Moment.P[i].At(s)}, v}
			}
		}
	}
	return worst
}

// stationary lists where in piece i the stress can have a peak inside.
func (d Diagram) stationary(i int, h float64) []float64 {
	c := d.Bar.Section
	n := Poly(nil).plus(1/c.Area, d.Axial.P[i])
	a := Poly(nil).plus(1/c.Modulus[0], d.Planes[Upright].Moment.P[i])
	b := Poly(nil).plus(1/c.Modulus[1], d.Planes[Level].Moment.P[i])
	if c.Round { // σ = ±n + √q, q = a² + b²: q′² = 4 q n′²
		q := a.times(a).plus(1, b.times(b))
		dq, dn := q.derivative(), n.derivative()
		return append(dq.roots(h), dq.times(dq).plus(-4, q.times(dn).times(dn)).roots(h)...)
	}
	var out []float64
	for _, sb := range []float64{1, -1} {
		for _, sn := range []float64{1, -1} {
			out = append(out, a.plus(sb, b).plus(sn, n).derivative().roots(h)...)
		}
	}
	return out
}
