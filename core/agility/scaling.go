package agility

import (
	"math"

	"cohoist/core/mass"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Scaling is how the lift would scale with the number of vehicles and with size, (7.9), (7.10).
type Scaling struct {
	Number []Scaled `json:"number"` // the commonest class on a ring, the load growing with the team
	Size   []Scaled `json:"size"`   // everything larger or smaller in proportion
}

// Scaled is one point of the scaling chart.
type Scaled struct {
	Vehicles    int     `json:"vehicles"`
	Size        float64 `json:"size"` // of the plan's lengths, 1 as planned
	PayloadMass float64 `json:"payload_kg"`
	Utilisation float64 `json:"utilisation"`
	RollAcc     float64 `json:"roll_rad_s2"` // by size the weaker way, by number the + way; like the next two
	PitchAcc    float64 `json:"pitch_rad_s2"`
	YawAcc      float64 `json:"yaw_rad_s2"`
}

// numbers of vehicles in the chart.
var numbers = [...]int{1, 2, 4, 8}

// sizes in the chart, of the plan's own.
var sizes = [...]float64{0.25, 0.5, 1, 2, 4}

// Scale computes both series for a team with utilisation t and moves v.
func Scale(m *share.Model, s *solve.Solver, t float64, v Moves) Scaling {
	var out Scaling
	for _, k := range numbers {
		out.Number = append(out.Number, ringOf(m, s, k))
	}
	for _, l := range sizes { // masses and thrusts ∝ L³, inertias ∝ L⁵, moments ∝ L⁴, (7.10)
		out.Size = append(out.Size, Scaled{Vehicles: len(m.Craft), Size: l, PayloadMass: l * l * l * m.Payload.Mass,
			Utilisation: t, RollAcc: weaker(v.RollAcc) / l, PitchAcc: weaker(v.PitchAcc) / l, YawAcc: weaker(v.YawAcc) / l})
	}
	return out
}

func weaker(pair [2]float64) float64 { return math.Min(pair[0], pair[1]) }

// ringOf is the team of k vehicles of the commonest class on a ring around the centre of mass, held
// as the first of them is in the plan. The load per vehicle and the room per vehicle stay, so that
// payload mass ∝ k, ring radius ∝ k, payload inertia ∝ k³, (7.9). Still air.
func ringOf(m *share.Model, s *solve.Solver, k int) Scaled {
	class, n := Commonest(m), float64(len(m.Craft))
	grown := float64(k) / n
	p := m.Plan
	p.Site.Wind, p.Near = 0, plan.Near{} // nothing is near on the ring
	p.Team = make([]plan.Member, k)
	var first plan.Member
	radius, height := 0.0, 0.0
	for i := len(m.Plan.Team) - 1; i >= 0; i-- {
		c := m.Plan.Team[i]
		if c.Vehicle == class {
			first = c
		}
		d := c.Attach.Sub(m.Payload.COM)
		radius += math.Hypot(d[0], d[1]) / n
		height += d[2] / n
	}
	for i := range p.Team {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(k))
		r := radius * grown
		if k == 1 {
			r = 0
		}
		p.Team[i] = first
		p.Team[i].Hold.Lean = [2]float64{}
		p.Team[i].Attach = vec.V3{r * cos, r * sin, height}
	}
	body := mass.Properties{Mass: grown * m.Payload.Mass}
	for i := range 3 {
		body.Inertia[i] = m.Payload.Inertia[i].Scale(grown * grown * grown)
	}
	model := share.New(p, body, m.DragArea, m.Density)
	out := Scaled{Vehicles: k, Size: 1, PayloadMass: body.Mass, Utilisation: math.NaN(),
		RollAcc: math.NaN(), PitchAcc: math.NaN(), YawAcc: math.NaN()}
	r := s.Solve(model.Even(0))
	if r.Status != solve.Optimal {
		return out
	}
	out.Utilisation = r.T
	if r.T > 1 {
		return out
	}
	within := model.Within(1)
	for axis, to := range [3]*float64{&out.RollAcc, &out.PitchAcc, &out.YawAcc} {
		if line, hung := model.InLine(); hung && (line == vec.V3{} || axis == 0) {
			*to = 0 // nothing turns a load about the line or point that it hangs from
			continue
		}
		var e vec.V3
		e[axis] = 1
		model.Accelerate(within, vec.V3{}, e)
		*to = most(s, within, model.Weight())
	}
	return out
}
