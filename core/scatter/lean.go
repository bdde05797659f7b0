package scatter

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/vec"
)

// steady is where the lean has settled: change of the wanted direction per round. Below it lies
// rounding.
const steady = 1e-14

// turn sets the vertical and the wind in body axes: those of the lean (5.9).
func (g *rig) turn(x offset, rho, speed, mass float64) bool {
	sin, cos := math.Sincos((g.m.Plan.Site.WindTo + x[atWindTo]) * math.Pi / 180)
	v := vec.V3{speed * cos, speed * sin, 0}
	g.up, g.wind = vec.V3{0, 0, 1}, v
	if !g.leans {
		return true
	}
	if !g.even {
		g.axis = g.fullThrust(x)
	}
	weight := (mass + g.grip) * share.Gravity
	q := rho / 2 * speed
	want, change, step := g.want, math.Inf(1), 1.0
	if speed == 0 {
		want = vec.V3{0, 0, 1}
	}
	for range 200 {
		a := between(g.axis, want)
		w := a.T().Mul(v)
		if speed == 0 {
			g.up, g.wind = a.T().Mul(vec.V3{0, 0, 1}), w
			return true
		}
		drag := a.Mul(vec.V3{q * g.area[0] * w[0], q * g.area[1] * w[1], q * g.area[2] * w[2]})
		aim := unit(vec.V3{0, 0, weight}.Sub(drag))
		next := unit(want.Scale(1 - step).Add(aim.Scale(step)))
		moved := length(next.Sub(want))
		if moved > change { // swinging about the fixed point: take half steps
			step = math.Max(step/2, 0.125)
		}
		change, want = moved, next
		if change < steady {
			break
		}
	}
	a := between(g.axis, want).T()
	g.up, g.wind = a.Mul(vec.V3{0, 0, 1}), a.Mul(v)
	return change < 1e-9
}

// fullThrust is the direction in which the rotors push together when each gives all it can.
func (g *rig) fullThrust(x offset) vec.V3 {
	var sum vec.V3
	for i := range g.m.Craft {
		for _, r := range g.m.Craft[i].Rotors {
			sum = sum.Add(r.Force.Scale(r.Max * (1 + x[atCraft+perCraft*i])))
		}
	}
	return unit(sum)
}

// between is the smallest turn that takes unit vector a to unit vector b, not its opposite:
// 1 + [n] + [n]²/(1 + a·b) with n = a × b.
func between(a, b vec.V3) vec.M3 {
	n := a.Cross(b)
	c := a.Dot(b)
	k := 1 / (1 + c)
	return vec.M3{
		{c + float64(k*n[0]*n[0]), float64(k*n[0]*n[1]) - n[2], float64(k*n[0]*n[2]) + n[1]},
		{float64(k*n[1]*n[0]) + n[2], c + float64(k*n[1]*n[1]), float64(k*n[1]*n[2]) - n[0]},
		{float64(k*n[2]*n[0]) - n[1], float64(k*n[2]*n[1]) + n[0], c + float64(k*n[2]*n[2])},
	}
}

// length and unit are those of vectors far from overflow, in a fifth of the time.
func length(a vec.V3) float64 { return math.Sqrt(a.Dot(a)) }

func unit(a vec.V3) vec.V3 { return a.Scale(1 / length(a)) }
