package way

import (
	"math"

	"cohoist/core/air"
	"cohoist/core/share"
	"cohoist/core/vec"
)

// held is a team that changes its formation on the way. Between waypoints its pulls at rest blend, (20.19); what an instant
// asks beyond rest is shared by the least change of them, (20.20), so that places are as smooth as the payload's motion, and
// a vehicle's acceleration is its own, with that of its turning cable, (20.21).
type held struct {
	m      *share.Model
	forms  []Formed
	calm   []float64       // wrench of rest
	change [][3][6]float64 // of every pull, by what the wrench changes by
	lean   float64         // tangent of the cone
	tilt   []float64       // tangents of the vehicles' limits
	hinged bool            // everything hangs from one line or point
	moving share.Model     // room
}

// hold makes one; nil when no formation is asked for.
func hold(m *share.Model, forms []Formed) *held {
	if forms == nil {
		return nil
	}
	h := &held{m: m, forms: forms, change: make([][3][6]float64, len(m.Craft))}
	_, _, h.hinged = m.Hinge()
	h.lean = math.Tan(m.Plan.Limits.Cone * math.Pi / 180)
	for _, c := range m.Craft {
		h.tilt = append(h.tilt, math.Tan(c.Vehicle.TiltMax))
	}
	rest := m.InWind(0, 0).Wrench()
	h.calm = rest[:]
	var sum [6][6]float64
	column := make([][3][6]float64, len(m.Craft))
	for i, c := range m.Craft {
		r := c.At.Sub(m.Body.COM)
		for a := range 3 {
			var e vec.V3
			e[a] = 1
			turn := r.Cross(e)
			column[i][a] = [6]float64{e[0], e[1], e[2], turn[0], turn[1], turn[2]}
			t := c.Vehicle.ThrustMax
			for x := range 6 {
				for y := range 6 {
					sum[x][y] += float64(t * t * column[i][a][x] * column[i][a][y])
				}
			}
		}
	}
	inverse := pseudo(sum)
	for i, c := range m.Craft {
		t := c.Vehicle.ThrustMax
		for a := range 3 {
			for x := range 6 {
				for y := range 6 {
					h.change[i][a][x] += t * t * column[i][a][y] * inverse[y][x] // (20.20)
				}
			}
		}
	}
	return h
}

// smooth is the move from rest to rest of (20.2), from 0 to 1.
func smooth(s float64) float64 { return s * s * s * s * (35 + s*(-84+s*(70-20*s))) }

// stand is the team's part of an instant: what its cables pull at rest in the formation of that instant, and what they
// pull, N; and the cables from payload to vehicle both times, m, body axes.
type stand struct {
	rest, pull, still, cable []vec.V3
}

// wrench is what a motion asks for, like the balance of the model that Moving gives.
func (h *held) wrench(v share.Motion) [6]float64 {
	if h.hinged {
		h.m.MoveTo(&h.moving, v)
		return h.moving.Wrench()
	}
	b := &h.m.Body
	f := v.Attitude.T().Mul(v.Acceleration.Add(vec.V3{0, 0, share.Gravity}).Scale(b.Mass).Sub(h.m.Air(v.Attitude, v.Velocity)))
	turn := b.Inertia.Mul(v.SpinRate).Add(v.Spin.Cross(b.Inertia.Mul(v.Spin)))
	return [6]float64{f[0], f[1], f[2], turn[0], turn[1], turn[2]}
}

// at is a stand.
func (h *held) at(v share.Motion, leg int, s float64) stand {
	n := len(h.change)
	room := make([]vec.V3, 4*n)
	out := stand{room[:n:n], room[n : 2*n : 2*n], room[2*n : 3*n : 3*n], room[3*n:]}
	h.pulls(v, leg, s, out.rest, out.pull)
	for i := range h.change {
		out.still[i] = h.along(i, out.rest[i])
		out.cable[i] = h.along(i, out.pull[i])
	}
	return out
}

// along is a cable, as it is pulled.
func (h *held) along(i int, pull vec.V3) vec.V3 {
	return pull.Scale(h.m.Craft[i].Length / long(pull))
}

// pulls are those at rest in the formation of an instant, and those of the instant.
func (h *held) pulls(v share.Motion, leg int, s float64, rest, pull []vec.V3) {
	w := h.wrench(v)
	for k := range w {
		w[k] -= h.calm[k]
	}
	a, b, by := h.forms[leg].Pulls, h.forms[leg+1].Pulls, smooth(s)
	for i := range a {
		rest[i] = a[i].Add(b[i].Sub(a[i]).Scale(by)) // (20.19)
		pull[i] = rest[i]
		for k := range 3 {
			c := &h.change[i][k]
			pull[i][k] += float64(c[0]*w[0]) + float64(c[1]*w[1]) + float64(c[2]*w[2]) + float64(c[3]*w[3]) + float64(c[4]*w[4]) + float64(c[5]*w[5])
		}
	}
}

// long is the length of a vector that is neither huge nor tiny.
func long(v vec.V3) float64 { return math.Sqrt(v.Dot(v)) }

// moment is an instant of a held team: its stand, and what of a vehicle's thrust is not for its pull, body axes.
type moment struct {
	stand
	motion share.Motion
	state  State
	own    []vec.V3
}

// moment finds one, the vehicles' accelerations by differences of the cables over nudge, (20.21).
func (h *held) moment(p *Path, leg int, s float64) moment {
	step := nudge / p.Durations[leg]
	before, _ := motion(h.m, p, leg, s-step)
	n := len(h.change)
	room := make([]vec.V3, 4*n)
	rest, back, ahead := room[:n], room[n:2*n], room[2*n:3*n]
	h.pulls(before, leg, s-step, rest, back)
	after, _ := motion(h.m, p, leg, s+step)
	h.pulls(after, leg, s+step, rest, ahead)
	v, x := motion(h.m, p, leg, s)
	m := moment{stand: h.at(v, leg, s), motion: v, state: x, own: room[3*n:]}
	down := v.Attitude.T()
	left, right := down.MulM(before.Attitude), down.MulM(after.Attitude)
	a, wind := down.Mul(v.Acceleration.Add(vec.V3{0, 0, share.Gravity})), down.Mul(h.m.Wind.Sub(v.Velocity))
	for i := range m.own {
		c := &h.m.Craft[i]
		r := c.At.Sub(h.m.Body.COM)
		turning := right.Mul(h.along(i, ahead[i])).Add(left.Mul(h.along(i, back[i]))).Sub(m.cable[i].Scale(2)).Scale(1 / (nudge * nudge))
		own := a.Add(v.SpinRate.Cross(r)).Add(v.Spin.Cross(v.Spin.Cross(r))).Add(turning) // (20.21)
		area := c.Vehicle.DragArea
		m.own[i] = own.Scale(c.Vehicle.Mass).Sub(air.Drag(h.m.Density, vec.V3{area, area, area}, wind))
	}
	return m
}

// pseudo is the inverse of a symmetric matrix on what it reaches: turned to its axes by Jacobi's rotations.
func pseudo(a [6][6]float64) (inverse [6][6]float64) {
	var q [6][6]float64
	for i := range 6 {
		q[i][i] = 1
	}
	for range 30 {
		for i := range 6 {
			for j := range i {
				if a[i][j] == 0 {
					continue
				}
				turn := math.Atan2(2*a[i][j], a[j][j]-a[i][i]) / 2
				sin, cos := math.Sincos(turn)
				for k := range 6 {
					x, y := a[k][i], a[k][j]
					a[k][i], a[k][j] = cos*x-sin*y, sin*x+cos*y
				}
				for k := range 6 {
					x, y := a[i][k], a[j][k]
					a[i][k], a[j][k] = cos*x-sin*y, sin*x+cos*y
					x, y = q[k][i], q[k][j]
					q[k][i], q[k][j] = cos*x-sin*y, sin*x+cos*y
				}
			}
		}
	}
	most := 0.0
	for k := range 6 {
		most = math.Max(most, a[k][k])
	}
	for k := range 6 {
		if a[k][k] <= 1e-10*most {
			continue
		}
		for i := range 6 {
			for j := range 6 {
				inverse[i][j] += q[i][k] * q[j][k] / a[k][k]
			}
		}
	}
	return inverse
}
