package advice

import (
	"math"

	"cohoist/core/vec"
)

// around is how many even directions are tried in the plane.
const around = 16

// ways are unit directions in the plane from the centre of mass: towards vehicles, and 16 around.
func (l *lift) ways() []vec.V3 {
	var list []vec.V3
	for i, m := range l.plan.Team {
		if d := level(m.Attach.Sub(l.payload.COM)); i < around && d.Norm() > 1e-9 {
			list = append(list, d.Unit())
		}
	}
	for i := range around {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / around)
		list = append(list, vec.V3{cos, sin, 0})
	}
	return list
}

// towards names a direction in the plane: the vehicle it points at, or two neighbours that it points
// between, or the angle from payload x.
func (l *lift) towards(way vec.V3) string {
	const at = 10 * math.Pi / 180 // near enough to be pointing at it
	left, right, nearest := -1, -1, -1
	var l0, r0, n0 float64
	for i, m := range l.plan.Team {
		d := level(m.Attach.Sub(l.payload.COM))
		if d.Norm() < 1e-9 {
			continue
		}
		a := math.Atan2(way.Cross(d)[2], way.Dot(d))
		if nearest < 0 || math.Abs(a) < n0*(1-1e-9) {
			nearest, n0 = i, math.Abs(a)
		}
		if a >= 0 && (left < 0 || a < l0*(1-1e-9)) {
			left, l0 = i, a
		}
		if a <= 0 && (right < 0 || -a < r0*(1-1e-9)) {
			right, r0 = i, -a
		}
	}
	switch {
	case nearest >= 0 && n0 <= at:
		return l.plan.Team[nearest].ID
	case left >= 0 && right >= 0 && l0+r0 < 0.75*math.Pi:
		return "between " + l.plan.Team[min(left, right)].ID + " and " + l.plan.Team[max(left, right)].ID
	}
	for k := range 2 {
		if math.Abs(way[k]) > math.Cos(at) {
			return "along " + map[bool]string{true: "−", false: "+"}[way[k] < 0] + axes[k]
		}
	}
	return short(math.Atan2(way[1], way[0])*180/math.Pi) + "° from the long side"
}

func level(v vec.V3) vec.V3 { return vec.V3{v[0], v[1], 0} }
