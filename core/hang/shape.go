package hang

import (
	"fmt"
	"math"

	"cohoist/core/vec"
)

// shape makes the larger of shift and turn × size 1 m, and the largest of the six parts positive.
func (m *Mode) shape(size float64) {
	shift := vec.V3{m.Shape[0], m.Shape[1], m.Shape[2]}.Norm()
	turn := size * vec.V3{m.Shape[3], m.Shape[4], m.Shape[5]}.Norm()
	largest := 0.0
	for i, s := range m.Shape {
		if i >= 3 {
			s *= size
		}
		if math.Abs(s) > math.Abs(largest)*(1+1e-6) {
			largest = s
		}
	}
	scale := math.Copysign(1/math.Max(shift, turn), largest)
	for i := range m.Shape {
		if m.Shape[i] *= scale; math.Abs(m.Shape[i]) < 1e-12 {
			m.Shape[i] = 0
		}
	}
}

// word is where most of a motion's kinetic energy is: level shift, upright shift, or turn about level x, y or z.
func (m *Mode) word(turn vec.M3, l Load) string {
	s := vec.V3{m.Shape[0], m.Shape[1], m.Shape[2]}
	w := vec.V3{m.Shape[3], m.Shape[4], m.Shape[5]}
	spin := turn.MulM(l.Inertia).MulM(turn.T()).Mul(w)
	level, upright := l.Mass*(s[0]*s[0]+s[1]*s[1]), l.Mass*s[2]*s[2]
	roll, pitch, twist := w[0]*spin[0], w[1]*spin[1], w[2]*spin[2]
	switch most := math.Max(math.Max(level, upright), math.Max(twist, math.Max(roll, pitch))); most {
	case level:
		return sway(s)
	case upright:
		return "bounce"
	case twist:
		return "twist"
	case roll:
		return "roll"
	}
	return "pitch"
}

// sway names a level shift by its direction, to a degree, between −90 and 90 from x.
func sway(s vec.V3) string {
	angle := math.Round(math.Atan2(s[1], s[0]) * 180 / math.Pi)
	if angle > 90 {
		angle -= 180
	}
	if angle <= -90 {
		angle += 180
	}
	switch {
	case math.Abs(angle) <= 5:
		return "sway along x"
	case math.Abs(angle) >= 85:
		return "sway along y"
	}
	return fmt.Sprintf("sway at %g° from x", angle)
}
