package rehearse

import (
	"cohoist/core/share"
	"cohoist/core/vec"
)

// joint is what a rigid hold passes to the payload at the vehicle's centre, N and N m, body axes, by Newton's law for the vehicle
// alone: its rotors and the air on it less what its own mass takes, (21.19). The world's last slope is that of now.
func (r *Rehearsal) joint(i int) (force, moment vec.V3) {
	w, c := r.World, &r.m.Craft[i]
	arm := c.At.Sub(r.m.Body.COM)
	s, change, turn := &w.now[0], &w.rates[0][0], &w.turns[0]
	spin, rate := vec.V3{s[10], s[11], s[12]}, vec.V3{change[10], change[11], change[12]}
	felt := turn.T().Mul(vec.V3{change[7], change[8], change[9] + share.Gravity}).
		Add(rate.Cross(arm)).Add(spin.Cross(spin.Cross(arm)))
	for j, u := range r.crew[i].holder.thrust {
		force = force.Add(c.Rotors[j].Axis.Scale(u))
		moment = moment.Add(c.Rotors[j].Turn.Scale(u))
	}
	force = force.Sub(felt.Scale(c.Vehicle.Mass))
	if w.Density > 0 && w.Wind != nil {
		air, a := w.Wind(w.Time), c.Vehicle.DragArea
		force = force.Add(turn.T().Mul(w.blown(0, s, &Sail{arm, vec.V3{a, a, a}}, &air, &end{})))
	}
	own := c.Axes.MulM(c.Vehicle.Inertia).MulM(c.Axes.T())
	return force, moment.Sub(own.Mul(rate)).Sub(spin.Cross(own.Mul(spin)))
}
