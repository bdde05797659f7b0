package agility

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vehicle"
)

// Reserve is what is left to correct attitude while hovering, at the worst place and way.
type Reserve struct {
	Where  string // id of the vehicle; "" for the rigid team as one body
	Axis   string // "roll" or "pitch"
	Moment float64
	Acc    float64 // rad/s²
}

// Hover finds the reserve: of the rigid team as one body, of every vehicle on a cable by itself,
// (7.8). For one class the moment is a concave function of the thrust, so that the vehicles with
// the least and the most thrust of their class are enough.
func Hover(m *share.Model, a share.Answer, v Moves, s *solve.Solver) Reserve {
	worst := Reserve{Acc: math.Inf(1)}
	if m.Rigid {
		for way := range 2 {
			worst = lesser(worst, Reserve{"", "roll", v.Roll[way], v.RollAcc[way]})
			worst = lesser(worst, Reserve{"", "pitch", v.Pitch[way], v.PitchAcc[way]})
		}
	}
	for i, c := range m.Craft {
		if !c.Rigid && extreme(m, a, i) {
			for _, r := range own(c, a.Parts[i].Effort, s) {
				worst = lesser(worst, r)
			}
		}
	}
	return worst
}

func lesser(a, b Reserve) Reserve {
	if math.IsNaN(a.Acc) || b.Acc >= a.Acc*(1-1e-6) { // equals: the first
		return a
	}
	return b
}

// extreme tells that vehicle i has the least or the most thrust of the cable vehicles of its class,
// the first of equals.
func extreme(m *share.Model, a share.Answer, i int) bool {
	least, most := true, true
	for j, c := range m.Craft {
		if c.Rigid || c.Class != m.Craft[i].Class || j == i {
			continue
		}
		d := (a.Parts[j].Effort - a.Parts[i].Effort) / c.Vehicle.ThrustMax
		least = least && (d > 1e-9 || d >= -1e-9 && j > i)
		most = most && (d < -1e-9 || d <= 1e-9 && j > i)
	}
	return least || most
}

// own is the reserve of one vehicle that flies with a given total thrust, about its own axes.
func own(c share.Craft, thrust float64, s *solve.Solver) []Reserve {
	if thrust > c.Vehicle.ThrustMax {
		return []Reserve{{c.ID, "roll", 0, 0}}
	}
	p := &solve.Program{Wrench: solve.Wrench{2: thrust}, Goal: -1}
	for _, r := range c.Vehicle.Rotors {
		p.Lines = append(p.Lines, solve.Line{Column: column(r), Hi: r.Max})
	}
	var out []Reserve
	for axis, name := range [2]string{"roll", "pitch"} {
		for _, sign := range [2]float64{1, -1} {
			p.WrenchT = solve.Wrench{}
			p.WrenchT[3+axis] = sign
			moment := most(s, p, thrust)
			out = append(out, Reserve{c.ID, name, moment, moment / c.Vehicle.Inertia[axis][axis]}) // (7.8)
		}
	}
	return out
}

// column is the wrench of 1 N of a rotor about its vehicle's centre, vehicle axes, (5.1).
func column(r vehicle.Rotor) solve.Wrench {
	turn := r.At.Cross(r.Axis)
	if !math.IsNaN(r.Torque) {
		turn = turn.Add(r.Axis.Scale(r.Torque))
	}
	return solve.Wrench{r.Axis[0], r.Axis[1], r.Axis[2], turn[0], turn[1], turn[2]}
}
