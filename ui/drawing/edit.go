package drawing

import (
	"cohoist/core/plan"
	"cohoist/core/vec"
)

// Edit is what a handle asks the plan to become. All in payload axes, metres.
//
//   - attach: the member's attachment becomes To.
//   - vehicle: a vehicle on a cable was moved to To. Up and down changes the cable, which becomes
//     Length long; sideways moves the attachment, which becomes Attach. Where the vehicle then
//     flies is for the balance to say.
//   - com: the payload's measured centre of mass becomes To.
type Edit struct {
	Kind   string
	ID     string // of the member
	Index  int    // of the member in the plan's team, −1 for com
	To     vec.V3
	Attach vec.V3
	Length float64
}

// Apply returns the plan with an edit made; the plan given stays as it was.
func (e Edit) Apply(p plan.Plan) plan.Plan {
	if e.Kind == KindCOM {
		to := e.To
		p.Payload.COM = &to
		return p
	}
	if e.Index < 0 || e.Index >= len(p.Team) || p.Team[e.Index].ID != e.ID {
		return p
	}
	p.Team = append([]plan.Member(nil), p.Team...)
	m := &p.Team[e.Index]
	switch e.Kind {
	case KindAttach:
		m.Attach = e.To
	case KindVehicle:
		m.Attach = e.Attach
		m.Hold.Length = e.Length
	}
	return p
}
