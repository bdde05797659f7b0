package advice

import (
	"math"

	"cohoist/core/plan"
)

// How far the search goes. Beyond, a change is no longer the same lift.
const (
	lightest  = 0.02 // of the payload's mass
	strongest = 4    // times the thrust
	longest   = 4    // times the length of the cables
	// mostSingle is how many vehicles are asked about by themselves, of those that work hardest.
	mostSingle = 6
	// many is the team beyond which only payload, wind, the thrust of all and the utilisation are asked about:
	// every question takes many solves.
	many = 40
)

// dials are the numbers that a remedy may turn.
func (d *doctor) dials() []dial {
	if len(d.plan.Team) > many {
		return append(d.payloadDials(), append(d.thrustDials()[:1], d.limitDials()[:1]...)...)
	}
	list := append(d.payloadDials(), d.thrustDials()...)
	return append(list, d.limitDials()...)
}

func (d *doctor) payloadDials() []dial {
	m, wind := d.payload.Mass, d.plan.Site.Wind
	var list []dial
	if m > 0 {
		list = append(list, dial{kind: Payload, unit: "kg", from: m, most: lightest * m, grain: figures(3),
			size: func(to float64) float64 { return 1 - to/m },
			set:  func(p *plan.Plan, to float64) { scaleMass(p, to/m) },
			say: func(to float64) string {
				return "Bring the payload down to " + amount(to, "kg") + ", " + amount(m-to, "kg") + " less."
			}})
	}
	if wind > 0 {
		list = append(list, dial{kind: Calmer, unit: "m/s", from: wind, most: 0, grain: func(float64) float64 { return 0.1 },
			size: func(to float64) float64 { return 1 - to/wind },
			set:  func(p *plan.Plan, to float64) { p.Site.Wind = to },
			say: func(to float64) string {
				if to == 0 {
					return "Wait for calm air: there must be no wind."
				}
				return "Wait for wind of no more than " + amount(to, "m/s") + "; the plan has " + amount(wind, "m/s") + "."
			}})
	}
	return list
}

// thrustDials are the thrust of all, and of every vehicle that is at the limit.
func (d *doctor) thrustDials() []dial {
	total := 0.0
	thrust := make([]float64, len(d.plan.Team))
	for i, m := range d.plan.Team {
		c := d.plan.Vehicles[m.Vehicle]
		thrust[i] = float64(c.Rotors) * c.RotorThrustMax
		total += thrust[i]
	}
	percent := func(to float64) float64 { return 0.01 }
	list := []dial{{kind: AllStronger, unit: "×", from: 1, most: strongest, grain: percent,
		size: func(to float64) float64 { return to - 1 },
		set: func(p *plan.Plan, to float64) {
			for name, c := range p.Vehicles {
				c.RotorThrustMax *= to
				p.Vehicles[name] = c
			}
		},
		say: func(to float64) string {
			return "Take vehicles with " + short(100*(to-1)) + " % more thrust that weigh no more, all of them."
		}}}
	for i, m := range d.plan.Team {
		if !d.hardest(i) || len(list) > mostSingle {
			continue
		}
		list = append(list, dial{kind: Stronger, who: m.ID, unit: "×", from: 1, most: strongest, grain: percent,
			size: func(to float64) float64 { return (to - 1) * thrust[i] / total },
			set: func(p *plan.Plan, to float64) {
				ownClass(p, i, func(c *plan.Class) { c.RotorThrustMax *= to })
			},
			say: func(to float64) string {
				return "Give " + m.ID + " " + short(100*(to-1)) + " % more thrust at the same mass: " + short(thrust[i]*to) + " N at sea level instead of " + short(thrust[i]) + " N."
			}})
	}
	return list
}

// hardest tells that vehicle i works as hard as the hardest, or that a failing check names it.
func (d *doctor) hardest(i int) bool {
	if u := d.report.Vehicles[i].Utilisation; u >= d.report.Team.Utilisation*(1-1e-4) {
		return true
	}
	for _, row := range bad(d.report) {
		if row.Where == d.plan.Team[i].ID {
			return true
		}
	}
	return false
}

// limitDials are what the crew itself wants, relaxed: margin given away, never lift gained.
func (d *doctor) limitDials() []dial {
	lim := d.plan.Limits
	fixed := func(g float64) func(float64) float64 { return func(float64) float64 { return g } }
	relax := func(who, unit string, from, most float64, grain func(float64) float64, cures []string, set func(*plan.Plan, float64), text func(string) string, show func(float64) string) dial {
		return dial{kind: Relaxed, who: who, unit: unit, from: from, most: most, grain: grain, cures: cures, set: set,
			size: func(to float64) float64 { return math.Abs(to-from) / math.Max(math.Abs(from), 1e-9) },
			say:  func(to float64) string { return text(show(to)) + " instead of " + show(from) + "." }}
	}
	in := func(unit string) func(float64) string { return func(x float64) string { return amount(x, unit) } }
	list := []dial{
		relax("limits.utilisation", "1", lim.Utilisation, 1, fixed(0.01), []string{"thrust", "com"}, func(p *plan.Plan, to float64) { p.Limits.Utilisation = to },
			func(s string) string { return "Accept that hovering takes " + s + " of a vehicle's thrust" },
			func(x float64) string { return short(100*x) + " %" }),
		relax("limits.cone_deg", "°", lim.Cone, math.Max(lim.Cone, 60), fixed(1), []string{"balance", "cable-angle", "separation", "thrust", "com"}, func(p *plan.Plan, to float64) { p.Limits.Cone = to },
			func(s string) string { return "Let cables lean as far as " + s }, in("°")),
		relax("limits.tension_min_n", "N", lim.TensionMin, 0, figures(2), []string{"balance", "tension", "thrust", "com"}, func(p *plan.Plan, to float64) { p.Limits.TensionMin = to },
			func(s string) string { return "Call a cable taut from " + s }, in("N")),
		relax("limits.separation_m", "m", lim.Separation, 0.1*lim.Separation, fixed(0.01), []string{"separation", "thrust", "com"}, func(p *plan.Plan, to float64) { p.Limits.Separation = to },
			func(s string) string { return "Let vehicles come as near as " + s }, in("m")),
		relax("limits.com_error_m", "m", lim.COMError, 0, figures(2), []string{"com"}, func(p *plan.Plan, to float64) { p.Limits.COMError = to },
			func(s string) string { return "Know the centre of mass to within " + s }, in("m")),
		relax("limits.turn_rad_s2", "rad/s²", lim.TurnReserve, 0, figures(2), []string{"control-reserve"}, func(p *plan.Plan, to float64) { p.Limits.TurnReserve = to },
			func(s string) string { return "Keep only " + s + " of turning free" }, in("rad/s²")),
	}
	return append(list, append(d.lineDials(), d.lengthDials()...)...)
}

// lineDials are stronger lines, where the weakest one is the limit.
func (d *doctor) lineDials() []dial {
	weakest := math.Inf(1)
	for _, m := range d.plan.Team {
		if m.Hold.Kind == plan.Cable && m.Hold.WorkingLoad < weakest {
			weakest = m.Hold.WorkingLoad
		}
	}
	if math.IsInf(weakest, 1) {
		return nil
	}
	return []dial{{kind: Line, unit: "N", from: weakest, most: 20 * weakest, grain: figures(2), cures: []string{"balance", "working-load", "thrust", "com"},
		size: func(to float64) float64 { return to/weakest - 1 },
		set: func(p *plan.Plan, to float64) {
			for i := range p.Team {
				if h := &p.Team[i].Hold; h.WorkingLoad < to {
					h.WorkingLoad = to
				}
			}
		},
		say: func(to float64) string {
			return "Take lines with a working load of " + amount(to, "N") + "; the weakest has " + amount(weakest, "N") + "."
		}}}
}

// lengthDials are longer cables, all of them by as much.
func (d *doctor) lengthDials() []dial {
	shortest := math.Inf(1)
	for _, m := range d.plan.Team {
		if m.Hold.Kind == plan.Cable {
			shortest = math.Min(shortest, m.Hold.Length)
		}
	}
	if math.IsInf(shortest, 1) {
		return nil
	}
	return []dial{{kind: Longer, unit: "m", from: shortest, most: longest * shortest, grain: func(float64) float64 { return 0.1 },
		cures: []string{"separation", "cable-angle", "thrust", "com"},
		size:  func(to float64) float64 { return to/shortest - 1 },
		set: func(p *plan.Plan, to float64) {
			for i := range p.Team {
				if h := &p.Team[i].Hold; h.Kind == plan.Cable {
					h.Length *= to / shortest
				}
			}
		},
		say: func(to float64) string {
			return "Take longer cables, the shortest " + amount(to, "m") + " instead of " + amount(shortest, "m") + ", all in proportion."
		}}}
}

// figures is the grain of so many significant figures.
func figures(n int) func(float64) float64 { return func(to float64) float64 { return grainOf(to, n) } }
