// Package energy tells what a lift costs: power of every vehicle at its share, how long its pack holds it, who ends first, what sharing
// by energy instead of thrust gains, and legs of a route (THEORY chapter 18).
//
// Restriction: rotors by momentum theory with a figure of merit, or by a static test of one of them; drives of one
// efficiency; packs as a straight open-circuit voltage behind a resistance. Rotors do not disturb each other; what is near, the ground,
// a payload below, has functions of its own.
// Geometry: body axes of core/share; the flow through a rotor is that of the plan's wind.
// Calculation: (18.1) to (18.33).
// Verification: static tests of open data, printed rules, a second integrator, laws, in the tests.
// References: THEORY chapter 18.
package energy

import (
	"math"
	"slices"

	"cohoist/core/momentum"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Vehicle is the energy of one vehicle. NaN: not computed, for want of what Study.Needs lists or outside a Range.
type Vehicle struct {
	ID         string
	Ideal      float64 // W: momentum theory's least for its thrusts, at rest
	Power      float64 // W: electric, avionics included
	Hold               // from full
	ThrustFull float64 // N: available at the start of the hold, (18.16)
	ThrustLast float64 // N: available at its end
	SpareFull  float64 // of the thrust available from full, at its hardest-working rotor, what it does not need
	SpareLast  float64 // the same at the end
}

// Study is what the lift costs.
type Study struct {
	Density  float64 // kg/m³, of the model
	Vehicles []Vehicle
	Power    float64  // W, of the team
	Hold     float64  // s: until the first vehicle ends
	First    int      // that vehicle; −1: not known
	Order    []int    // vehicles by when they end, the first first; those not known are left out
	Even     *Even    // sharing for equal endurance; nil: not known, or no balance
	Needs    []string // paths of fields that were left out
	Assumed  []string // what was taken for other fields left out, a sentence each
	model    *share.Model
	craft    []craft
}

// Of studies a shared load. The model's plan must be assumed (plan.Assume).
func Of(m *share.Model, s *solve.Solver, a share.Answer) Study {
	out := At(m, a)
	if out.First >= 0 {
		out.Even = out.even(s, a)
	}
	return out
}

// At is Of without the share for equal endurance, which takes solves of its own.
func At(m *share.Model, a share.Answer) Study {
	out := begin(m)
	if len(a.Parts) != len(m.Craft) {
		return out
	}
	out.Vehicles = out.vehicles(m, a.Parts)
	out.Power = 0
	for i := range out.Vehicles {
		v := &out.Vehicles[i]
		out.Power += v.Power
		if !math.IsNaN(v.Time) {
			out.Order = append(out.Order, i)
		}
	}
	slices.SortStableFunc(out.Order, func(i, j int) int { return compare(out.Vehicles[i].Time, out.Vehicles[j].Time) })
	if len(m.Craft) > 0 && len(out.Order) == len(m.Craft) {
		out.First = out.Order[0]
		out.Hold = out.Vehicles[out.First].Time
	}
	return out
}

// vehicles works out every vehicle at its part.
func (s *Study) vehicles(m *share.Model, parts []share.Part) []Vehicle {
	out := make([]Vehicle, len(parts))
	for i := range parts {
		p, k := &parts[i], &s.craft[i]
		v := Vehicle{ID: m.Craft[i].ID, Ideal: 0, ThrustFull: math.NaN(), ThrustLast: math.NaN(), SpareFull: math.NaN(), SpareLast: math.NaN()}
		for _, u := range p.Rotor {
			v.Ideal += momentum.Ideal(math.Max(u, 0), k.rotor.Area, s.Density)
		}
		v.Power = s.power(m, i, p)
		v.Hold = Hold{Time: math.NaN(), VoltageFull: math.NaN(), VoltageLast: math.NaN(), Error: math.NaN()}
		if k.known && !math.IsNaN(v.Power) {
			v.Hold = k.pack.Hold(v.Power, p.Utilisation, k.voltage, s.model.Plan.Limits.Reserve)
			most := m.Craft[i].Vehicle.ThrustMax
			v.ThrustFull, v.ThrustLast = most*v.Given, most*v.Given
			if !math.IsNaN(v.VoltageFull) {
				v.ThrustLast *= (v.VoltageLast / v.VoltageFull) * (v.VoltageLast / v.VoltageFull) // (18.16)
			}
			need := p.Utilisation * most
			v.SpareFull, v.SpareLast = 1-need/v.ThrustFull, 1-need/v.ThrustLast // (18.33)
		}
		out[i] = v
	}
	return out
}

// power is the electric power of vehicle i at its part, rotor by rotor, W.
func (s *Study) power(m *share.Model, i int, p *share.Part) float64 {
	return s.powerIn(m.Attitude.T().Mul(m.Wind), i, p, ground(m, i))
}

// powerIn is power in a wind, m/s, body axes, with so many times the thrust for it as far from the ground.
func (s *Study) powerIn(wind vec.V3, i int, p *share.Part, ground float64) float64 {
	k := &s.craft[i]
	sum := k.avionics
	for j, u := range p.Rotor {
		across, through := flow(s.model, i, j, p, wind)
		sum += k.rotor.Electric(math.Max(u, 0)/ground, s.Density, across, through)
	}
	return sum
}

// ground is the thrust of vehicle i over that far from the ground at the same power, (22.1): the same thrust takes the power of so
// much less.
func ground(m *share.Model, i int) float64 {
	if near := m.Craft[i].Near; near != nil {
		return near.Ground
	}
	return 1
}

// tied is how near two times count as the same, so that vehicles alike stay in the order of the team.
const tied = 1e-9

// compare orders times.
func compare(a, b float64) int {
	switch {
	case a < b*(1-tied):
		return -1
	case a > b*(1+tied):
		return 1
	}
	return 0
}
