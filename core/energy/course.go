package energy

import (
	"math"
	"strconv"
	"strings"

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
func (s *Study) flow(i, j int, p share.Part) (across, through float64) {
	return flow(s.model, i, j, p, s.model.Attitude.T().Mul(s.model.Wind))
}

// flow is what a wind in body axes does at rotor j of vehicle i of a model.
func flow(m *share.Model, i, j int, p share.Part, wind vec.V3) (across, through float64) {
	axis := p.Thrust.Unit()
	if c := &m.Craft[i]; c.Rigid {
		axis = c.Rotors[j].Axis
	}
	along := wind.Dot(axis)
	return wind.Sub(axis.Scale(along)).Norm(), -along
}

// Working is how a route's figures come about, leg by leg.
func (r Route) Working(s *Study) []Step {
	var w working
	sum, symbols := 0.0, []string{}
	for n, f := range r.Legs {
		if math.IsNaN(f.Energy) {
			break
		}
		k := strconv.Itoa(n + 1)
		sin, cos := math.Sincos(f.To * math.Pi / 180)
		w.add("v_"+k, f.Air, "m/s", "THEORY (18.25)", "hypot(%v - %v*%v, %v - %v*%v)", s.model.Wind[0], f.Speed, cos, s.model.Wind[1], f.Speed, sin)
		w.add("t_"+k, f.Time, "s", "distance over speed", "%v/%v", f.Distance, f.Speed)
		power := f.Energy / f.Time
		w.add("P_"+k, power, "W", "THEORY (18.5), every vehicle's", strings.TrimSuffix(strings.Repeat("%v + ", len(f.Power)), " + "), f.Power...)
		w.add("E_"+k, f.Energy, "J", "power over time", "P_"+k+"*t_"+k)
		sum += f.Energy
		symbols = append(symbols, "E_"+k)
	}
	if r.Done && len(symbols) > 0 {
		w.add("E", sum, "J", "the legs", strings.Join(symbols, " + "))
		w.add("e", r.PerLoad, "J/(kg m)", "THEORY (18.27)", "E/(%v*%v)", s.model.Payload.Mass, r.Distance)
		w.add("e_1", r.Single, "J/(kg m)", "THEORY (18.26): one vehicle with their mass, drag and discs", "%v", r.Single)
		w.add("ratio", r.PerLoad/r.Single, "1", "the two compared", "e/e_1")
	}
	return w
}
