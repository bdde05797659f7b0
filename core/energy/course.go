package energy

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/vec"
)

// Moment is a vehicle's pack at a time of a hold.
type Moment struct {
	Time    float64 // s
	Charge  float64
	Voltage float64 // V, under the load; NaN: not known
	Thrust  float64 // N, available
}

// Course is the hold of vehicle i from full to its end, in n steps of even charge; nil: its hold is not known or nothing.
func (s *Study) Course(i, n int) []Moment {
	v, p := s.Vehicles[i], s.craft[i].pack
	if !(v.Time > 0) || math.IsInf(v.Time, 1) {
		return nil
	}
	out := make([]Moment, 0, n+1)
	for k := range n + 1 {
		m := Moment{Charge: 1 - (1-v.Charge)*float64(k)/float64(n), Thrust: v.ThrustFull}
		m.Time, _ = p.Time(v.Power, 1, m.Charge)
		m.Voltage = p.Loaded(v.Power, m.Charge)
		if !math.IsNaN(v.VoltageFull) {
			m.Thrust *= (m.Voltage / v.VoltageFull) * (m.Voltage / v.VoltageFull) // (18.16)
		}
		out = append(out, m)
	}
	return out
}

// flow is what the plan's wind does at rotor j of vehicle i: along its disc, and down through it, m/s.
func (s *Study) flow(i, j int, p *share.Part) (across, through float64) {
	return flow(s.model, i, j, p, s.model.Attitude.T().Mul(s.model.Wind))
}

// flow is what a wind in body axes, and the wakes of others, do at rotor j of vehicle i of a model.
func flow(m *share.Model, i, j int, p *share.Part, wind vec.V3) (across, through float64) {
	axis := p.Thrust.Unit()
	if c := &m.Craft[i]; c.Rigid {
		axis = c.Rotors[j].Axis
	}
	along := wind.Dot(axis)
	across, through = wind.Sub(axis.Scale(along)).Norm(), -along
	if near := m.Craft[i].Near; near != nil && j < len(near.Flow) {
		through += near.Flow[j] // (22.5)
	}
	return across, through
}
