package advice

import (
	"cohoist/core/air"
	"cohoist/core/mass"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// lift is a plan with its mass properties, ready to be changed and solved again.
type lift struct {
	plan    plan.Plan // with its defaults filled in
	payload mass.Properties
	area    vec.V3
	solver  *solve.Solver
	going   func() bool // false: stop, nothing that is found counts any more
}

// newLift returns nil for a plan that lacks a number for its balance.
func newLift(p plan.Plan, going func() bool) *lift {
	if len(plan.Missing(p)) > 0 {
		return nil
	}
	p, _ = plan.Assume(p)
	payload, err := mass.Of(p.Payload)
	if err != nil {
		return nil
	}
	return &lift{plan: p, payload: payload, area: air.Area(p.Payload), solver: solve.NewSolver(), going: going}
}

// model places the team of an assumed plan; nil beyond the standard atmosphere, and when it is to stop. The mass properties
// are worked out again only when the payload's own part of the plan was changed: meshes are long.
func (l *lift) model(p plan.Plan, payload bool) *share.Model {
	if !l.going() {
		return nil
	}
	body := l.payload
	if payload {
		var err error
		if body, err = mass.Of(p.Payload); err != nil {
			return nil
		}
	}
	density, ok := air.Density(p.Site)
	if !ok {
		return nil
	}
	m := share.New(p, body, l.area, density)
	if !m.Settled {
		return nil
	}
	return m
}

// edit returns a copy of a plan whose solids, team and classes can be changed. Meshes are shared:
// nothing here changes one.
func edit(p plan.Plan) plan.Plan {
	p.Payload.Solids = append([]plan.Solid(nil), p.Payload.Solids...)
	p.Team = append([]plan.Member(nil), p.Team...)
	classes := make(map[string]plan.Class, len(p.Vehicles)+1)
	for name, c := range p.Vehicles {
		classes[name] = c
	}
	p.Vehicles = classes
	return p
}

// scaleMass makes the payload's mass f times what it is, its measured inertia too.
func scaleMass(p *plan.Plan, f float64) {
	for i := range p.Payload.Solids {
		p.Payload.Solids[i].Mass *= f
	}
	if p.Payload.Inertia != nil {
		j := *p.Payload.Inertia
		for i := range j {
			j[i] *= f
		}
		p.Payload.Inertia = &j
	}
}

// ownClass gives vehicle i a class of its own, changed.
func ownClass(p *plan.Plan, i int, change func(*plan.Class)) {
	m := &p.Team[i]
	c := p.Vehicles[m.Vehicle]
	change(&c)
	name := m.Vehicle + " " + m.ID
	for p.Vehicles[name].Rotors != 0 {
		name += "′"
	}
	m.Vehicle = name
	p.Vehicles[name] = c
}
