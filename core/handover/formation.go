package handover

import (
	"math"

	"cohoist/core/vec"
)

// FormationCSV is a set-point for each vehicle. x, y, z are the place of its centre in the payload frame;
// level_x, level_y, level_z the same seen from the origin of the payload frame in level axes, which differ only when a
// rigid team leans; heading_deg is where its own x axis points seen from above, anticlockwise from level x. thrust_n is the sum
// of its rotors, thrust_level its direction. cable_ is the direction from the payload to the vehicle, level axes; cells about
// cables are empty for a rigid hold.
func (l Lift) FormationCSV() []byte {
	t := head("id", "hold", "x_m", "y_m", "z_m", "level_x_m", "level_y_m", "level_z_m", "heading_deg",
		"thrust_n", "thrust_level_x", "thrust_level_y", "thrust_level_z", "tension_n", "cable_x", "cable_y", "cable_z", "cable_length_m")
	level := l.Model.Attitude
	for i, c := range l.Model.Craft {
		v := l.Report.Vehicles[i]
		p, q, u := v.Position, level.Mul(v.Position), level.Mul(v.ThrustVector.Unit())
		nan := math.NaN()
		axes, cable, length := c.Axes, vec.V3{nan, nan, nan}, nan
		if !c.Rigid {
			axes, cable, length = l.yawed(i), level.Mul(v.Position.Sub(c.At).Unit()), c.Length
		}
		ahead := level.Mul(axes.Mul(vec.V3{1, 0, 0}))
		heading := math.Atan2(ahead[1], ahead[0]) * 180 / math.Pi
		t.row(append([]string{text(c.ID), l.Plan.Team[i].Hold.Kind}, numbers(p[0], p[1], p[2], q[0], q[1], q[2], heading,
			v.Thrust, u[0], u[1], u[2], v.Tension, cable[0], cable[1], cable[2], length)...)...)
	}
	return t.bytes()
}
