package advice

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// knob is one number of a plan that can be changed by a little.
type knob struct {
	id, who string  // path of the number; the vehicle it belongs to
	unit    string  // of step
	step    float64 // a change that a person would make
	payload bool    // mass properties change with it
	least   float64 // the most that it can go down
	turn    func(p *plan.Plan, d float64)
}

func (k *knob) turned(p plan.Plan, d float64) plan.Plan {
	p = edit(p)
	k.turn(&p, d)
	return p
}

var axes = [3]string{"x", "y", "z"}

// knobs are all that moves the answer, in the order of the plan.
func (l *lift) knobs() []knob {
	var list []knob
	add := func(k knob) { list = append(list, k) }
	cm := l.lengthStep()
	m := l.payload.Mass
	if m > 0 {
		add(knob{"payload.mass_kg", "", "kg", tenth(m, 0.1), true, m, func(p *plan.Plan, d float64) { scaleMass(p, (m+d)/m) }})
	}
	for k := range 3 {
		add(knob{"payload.com_m." + axes[k], "", "m", cm, true, math.Inf(1), func(p *plan.Plan, d float64) { l.shift(p, unit(k).Scale(d)) }})
	}
	for i, v := range l.plan.Team {
		c := l.plan.Vehicles[v.Vehicle]
		for k := range 3 {
			add(knob{"team.attach_m." + axes[k], v.ID, "m", cm, false, math.Inf(1), func(p *plan.Plan, d float64) { p.Team[i].Attach[k] += d }})
		}
		add(knob{"vehicles.rotor_thrust_max_n", v.ID, "%", 1, false, 100, func(p *plan.Plan, d float64) {
			ownClass(p, i, func(c *plan.Class) { c.RotorThrustMax *= 1 + d/100 })
		}})
		add(knob{"vehicles.mass_kg", v.ID, "kg", tenth(c.Mass, 0.1), false, c.Mass, func(p *plan.Plan, d float64) {
			ownClass(p, i, func(c *plan.Class) { c.Mass += d })
		}})
	}
	add(knob{"site.wind_m_s", "", "m/s", 1, false, l.plan.Site.Wind, func(p *plan.Plan, d float64) { p.Site.Wind += d }})
	add(knob{"site.altitude_m", "", "m", 100, false, math.Inf(1), func(p *plan.Plan, d float64) { p.Site.Altitude += d }})
	add(knob{"site.temperature_offset_k", "", "K", 5, false, math.Inf(1), func(p *plan.Plan, d float64) { p.Site.TemperatureOffset += d }})
	return list
}

// shift moves the payload's centre of mass, its inertia about it kept.
func (l *lift) shift(p *plan.Plan, d vec.V3) {
	c := l.payload.COM.Add(d)
	p.Payload.COM = &c
}

// lengthStep is a centimetre, or a millimetre for a team that stands within half a metre.
func (l *lift) lengthStep() float64 {
	if l.reach() < 0.25 {
		return 0.001
	}
	return 0.01
}

// reach is the largest distance, seen from above, of an attachment from the centre of mass, m.
func (l *lift) reach() float64 {
	far := 0.0
	for _, m := range l.plan.Team {
		d := m.Attach.Sub(l.payload.COM)
		far = math.Max(far, math.Hypot(d[0], d[1]))
	}
	return far
}

// tenth is the largest power of ten that is no more than a tenth of x, and no more than most.
func tenth(x, most float64) float64 {
	if !(x > 0) {
		return most
	}
	return math.Min(most, math.Pow(10, math.Floor(math.Log10(x)+1e-9)-1))
}

func unit(k int) (v vec.V3) {
	v[k] = 1
	return v
}
