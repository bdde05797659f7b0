package share

import (
	"errors"

	"cohoist/core/air"
	"cohoist/core/mass"
	"cohoist/core/plan"
)

// Reasons why a plan has no model.
var (
	ErrLacks   = errors.New("the plan lacks a number that the balance needs")
	ErrOutside = errors.New("the plan is outside the model: the air's density is not known there")
)

// Of is the model of a plan that plan.Validate accepts: with its defaults filled in, payload, drag areas and air of the day worked
// out. The errors are ErrLacks, ErrOutside and those of mass.Of.
func Of(p plan.Plan) (*Model, error) {
	if len(plan.Missing(p)) > 0 {
		return nil, ErrLacks
	}
	p, _ = plan.Assume(p)
	density, ok := air.Density(p.Site)
	if !ok {
		return nil, ErrOutside
	}
	body, err := mass.Of(p.Payload)
	if err != nil {
		return nil, err
	}
	return New(p, body, air.Area(p.Payload), density), nil
}
