package report

import (
	"math"

	"cohoist/core/agility"
	"cohoist/core/air"
	"cohoist/core/canon"
	"cohoist/core/check"
	"cohoist/core/energy"
	"cohoist/core/mass"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
	"cohoist/core/vehicle"
)

// Build answers a plan that plan.Validate accepts. It never modifies the plan; the same plan gives
// the same report. A plan that lacks a number with no honest default gets what can be computed
// without it, and needs-input.
func Build(p plan.Plan) Report {
	r := Blank()
	r.Missing = plan.Missing(p)
	r.Unknown = plan.Unknown(p)
	p, r.Assumptions = plan.Assume(p)
	r.Assumptions = append(r.Assumptions, vehicle.Assumed(p)...)
	r.Missing = append(r.Missing, energy.Lacking(p)...)
	facts := check.Facts{Plan: p, Missing: r.Missing}
	density, inRange := air.Density(p.Site)
	if inRange {
		r.Team.Density = density
	} else {
		facts.Outside = noAir(p.Site)
	}
	payload, err := mass.Of(p.Payload)
	area := air.Area(p.Payload)
	if err == nil {
		r.payload(payload, area)
	}
	for _, member := range p.Team {
		r.Vehicles = append(r.Vehicles, blankVehicle(member.ID))
	}
	if len(r.Missing) == 0 && err == nil && inRange {
		s := solve.NewSolver()
		m := share.New(p, payload, area, density)
		facts.Model, facts.Solver = m, s
		var shared string
		if facts.Answer, shared = energy.Share(m, s); shared != "" {
			r.Notes = append(r.Notes, shared)
		}
		facts.Bent = check.Bend(facts)
		facts.Held = check.Hold(facts)
		r.fill(m, facts.Answer)
		r.bend(facts)
		r.endure(m, facts.Answer)
		facts.Moves = r.moves(m, s, facts.Answer)
		largest := m.Largest(s, facts.Answer)
		r.Team.LargestPayload = largest.Mass
		if facts.Answer.Apart != nil {
			r.Notes = append(r.Notes, "The cables lean apart so that the vehicles keep their separation. Utilisation and largest payload are for that; the proven bound is for cables that hang as they like, and agility is for the first moment of a motion, without regard to separation.")
		}
		if largest.Reason != "" {
			r.Notes = append(r.Notes, "Largest payload: "+largest.Reason+".")
		}
		r.beside(m, facts.Answer)
	} else if inRange {
		r.thrustMax(p, density)
	}
	r.Checks = check.Run(facts)
	r.judge(facts, err)
	r.Cautions = cautions(p)
	return r
}

// JSON writes a report: canonical, null for what was not computed.
func JSON(r Report) []byte { return canon.Indented(r, canon.Null) }

// payload fills in the payload's mass properties.
func (r *Report) payload(p mass.Properties, area vec.V3) {
	r.Payload = Payload{Mass: p.Mass, COM: p.COM, Inertia: p.Six(), DragArea: area}
}

// fill copies an answer into the report.
func (r *Report) fill(m *share.Model, a share.Answer) {
	r.Team.Mass, r.Team.COM, r.Team.Inertia = m.Mass, m.Body.COM, m.Body.Six()
	r.NoBalance = a.None
	if m.Settled {
		r.Team.Lean = m.Lean.Scale(180 / math.Pi)
	}
	if a.Status == solve.Optimal {
		r.Team.DualBound = a.Bound
	}
	for i, c := range m.Craft {
		v := &r.Vehicles[i]
		v.ThrustMax = c.Vehicle.ThrustMax
		if len(c.Rotors) > 0 {
			v.RotorThrustMax = c.Rotors[0].Max
		}
		if a.Parts != nil {
			v.fill(a.Parts[i])
		}
	}
	if a.Parts != nil {
		r.Team.Utilisation, r.Team.Residual = a.T, a.Residual
	}
}

func (v *Vehicle) fill(p share.Part) {
	v.Force, v.Moment, v.Tension, v.CableAngle = p.Force, p.Moment, p.Tension, p.CableAngle*180/math.Pi
	v.Thrust, v.ThrustVector, v.Utilisation = p.Effort, p.Thrust, p.Utilisation
	v.Tilt, v.RotorThrust, v.Position = p.Tilt*180/math.Pi, p.Rotor, p.Position
	if v.Download = p.Download; p.Download != (vec.V3{}) {
		v.DownloadAt = p.Under
	}
}

// moves fills in the agility of the team, of one vehicle alone, and the ratio.
func (r *Report) moves(m *share.Model, s *solve.Solver, a share.Answer) agility.Moves {
	r.Agility.Solo = agility.Solo(m, s)
	r.Agility.Team = agility.Of(m, a, s)
	r.Agility.Ratio = agility.Ratio(r.Agility.Team, r.Agility.Solo)
	r.Scaling = agility.Scale(m, s, a.Even.T, r.Agility.Team)
	return r.Agility.Team
}

// endure fills in what the lift costs and how long it is held, or notes what that needs.
func (r *Report) endure(m *share.Model, a share.Answer) {
	s := energy.At(m, a)
	r.Team.Power = s.Power
	if s.First < 0 {
		if len(a.Parts) > 0 {
			r.Notes = append(r.Notes, s.Sentence())
		}
		return
	}
	r.Team.Hold, r.Team.HoldBy = s.Hold, string(s.Vehicles[s.First].By)
	for _, i := range s.Together() {
		r.Team.HoldEnds = append(r.Team.HoldEnds, s.Vehicles[i].ID)
	}
	r.Assumptions = append(r.Assumptions, s.Assumed...)
}

// thrustMax fills in what each vehicle has when the balance cannot be asked.
func (r *Report) thrustMax(p plan.Plan, density float64) {
	for i, member := range p.Team {
		c, ok := p.Vehicles[member.Vehicle]
		if !ok || math.IsNaN(c.RotorThrustMax) || c.Rotors < 1 {
			continue
		}
		v := vehicle.New(c, density)
		r.Vehicles[i].ThrustMax, r.Vehicles[i].RotorThrustMax = v.ThrustMax, v.ThrustMax/float64(c.Rotors)
	}
}
