package root

import (
	"github.com/vugu/vugu"

	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/unit"
	"cohoist/ui/drawing"
)

// drawing is the drawing to scale of the plan on the screen. It is one component for the life of the
// page, as it remembers what is being dragged.
func (c *Root) drawing() vugu.Builder {
	v := &c.view
	v.Plan, v.Report, v.Selected = c.Store.Plan(), c.Store.Report(), c.Store.Selected
	v.Units = drawing.Units{
		Length: drawing.Unit{Name: c.Store.Units.Length, Size: unit.Scale(c.Store.Units.Length)},
		Force:  drawing.Unit{Name: c.Store.Units.Force, Size: unit.Scale(c.Store.Units.Force)},
	}
	if v.OnEdit == nil {
		v.OnEdit = c.edit
		v.OnKey = func() (plan.Plan, report.Report) { return c.Store.Plan(), c.Store.Report() }
		v.OnSelect = c.Store.Select
		v.OnPanic = c.Store.Broke
	}
	return v
}

// edit makes an edit of the drawing. The edits of one drag are one step.
func (c *Root) edit(e drawing.Edit, done bool) {
	c.Store.Drag(e.Kind+" "+e.ID, func(p plan.Plan) plan.Plan { return e.Apply(p) }, done)
}
