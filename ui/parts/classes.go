package parts

import (
	"cohoist/core/plan"
	"cohoist/ui/field"
	"cohoist/ui/store"
)

var layouts = []field.Option{{Value: plan.Cross, Name: "between the axes (cross)"}, {Value: plan.Plus, Name: "on the axes (plus)"}}

func (c *Classes) name(i int) string {
	if names := store.ClassNames(c.Store.Plan()); i < len(names) {
		return names[i]
	}
	return ""
}

func (c *Classes) layout(i int) string {
	if l := c.Store.Plan().Vehicles[c.name(i)].Layout; l != "" {
		return l
	}
	return plan.Cross
}

func (c *Classes) measured(i int) bool { return c.Store.Plan().Vehicles[c.name(i)].Inertia != nil }

// library is what can still be added.
func (c *Classes) library() []field.Option {
	var list []field.Option
	for _, l := range store.Library() {
		if _, have := c.Store.Plan().Vehicles[l.Name]; !have {
			list = append(list, field.Option{Value: l.Name, Name: store.ClassLabel(l.Name)})
		}
	}
	return list
}
