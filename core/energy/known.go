package energy

import (
	"math"

	"cohoist/core/bench"
	"cohoist/core/plan"
	"cohoist/core/share"
)

// craft is a vehicle's part of what the study computes with.
type craft struct {
	rotor    Rotor
	avionics float64
	pack     Pack
	known    bool    // pack and rotor
	voltage  float64 // at which rotor_thrust_max_n was measured; NaN: that of the full pack under the load
}

// begin collects what is known of the vehicles.
func begin(m *share.Model) Study {
	out := Study{model: m, Density: m.Density, Power: math.NaN(), Hold: math.NaN(), First: -1, craft: make([]craft, len(m.Craft))}
	kinds := map[string]craft{}
	for i, c := range m.Craft {
		kind, done := kinds[c.Class]
		if !done {
			kind = out.kind(c.Class)
			kinds[c.Class] = kind
		}
		out.craft[i] = kind
	}
	return out
}

// kind is what is known of a class. What is not is asked for, once.
func (s *Study) kind(name string) craft {
	c := s.model.Plan.Vehicles[name]
	path := plan.ClassPath(name)
	need := func(field string, missing bool) {
		if missing {
			s.Needs = append(s.Needs, path+"."+field)
		}
	}
	k := craft{avionics: c.Avionics, voltage: math.NaN(), known: true}
	k.rotor = Rotor{Area: math.Pi * c.RotorRadius * c.RotorRadius, FigureOfMerit: c.FigureOfMerit, DriveEfficiency: c.DriveEfficiency}
	before := len(s.Needs)
	if len(c.Bench) > 0 {
		table, err := bench.New(c.Bench)
		if need("bench", err != nil); err != nil {
			s.Assumed = append(s.Assumed, "Static test of "+name+" not used. "+err.Error())
		} else {
			k.rotor.table = table.Power
			_, most := table.Span()
			if v, ok := table.Voltage(most); ok {
				k.voltage = v
			}
		}
	}
	windy := s.model.Plan.Site.Wind > 0
	need("figure_of_merit", math.IsNaN(c.FigureOfMerit) && (len(c.Bench) == 0 || windy))
	need("drive_efficiency", math.IsNaN(c.DriveEfficiency) && (len(c.Bench) == 0 || windy))
	need("avionics_w", math.IsNaN(c.Avionics))
	pack, needs, assumed := NewPack(name, c.Battery)
	for _, n := range needs {
		need("battery."+n, true)
	}
	s.Assumed = append(s.Assumed, assumed...)
	k.pack, k.known = pack, len(s.Needs) == before
	return k
}
