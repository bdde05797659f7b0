package store

import (
	"cohoist/core/link"
	"cohoist/core/plan"
)

// fragment is the plan as the text of a link, or "" when it is too large for one.
func fragment(p plan.Plan) string {
	if !link.Fits(p) {
		return ""
	}
	return link.Encode(p)
}

// follow reads the plan of a link. The error is a sentence.
func follow(fragment string) (plan.Plan, error) {
	p, err := link.Decode(fragment)
	if err == nil {
		err = valid(p)
	}
	return p, err
}
