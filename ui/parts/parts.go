// Package parts is the sections that open: everything the sentences do not say.
package parts

import (
	"strconv"

	"cohoist/core/plan"
	"cohoist/core/unit"
	"cohoist/ui/field"
	"cohoist/ui/format"
	"cohoist/ui/store"
)

var kinds = []struct{ Kind, Name string }{
	{"com", "Centre of mass"}, {"inertia", "Inertia about the centre of mass"}, {"drag", "Drag area"},
}

func shapes(now string) []field.Option {
	var list []field.Option
	for _, s := range store.Shapes {
		if s.Shape != plan.MeshBody || now == plan.MeshBody {
			list = append(list, field.Option{Value: s.Shape, Name: s.Name})
		}
	}
	return list
}

// gist is a section's line while it is closed.
func (c *Payload) gist() string {
	p, r, u := c.Store.Plan().Payload, c.Store.Report().Payload, c.Store.Units
	text := "1 part"
	if n := len(p.Solids); n != 1 {
		text = strconv.Itoa(n) + " parts"
	}
	return text + ", " + u.Show(format.Mass, r.Mass) + ", centre of mass at " +
		u.Bare(format.Length, r.COM[0]) + ", " + u.Bare(format.Length, r.COM[1]) + ", " + u.Show(format.Length, r.COM[2])
}

func (c *Payload) fields(i int) []store.Field {
	prefix := "payload-" + strconv.Itoa(i)
	list := []store.Field{store.SolidMass(prefix+"-mass", i)}
	list = append(list, store.SolidSizes(prefix+"-size", c.Store.Plan(), i)...)
	return append(list, store.SolidPlaces(prefix, i)...)
}

func (c *Payload) measured(kind string) bool {
	p := c.Store.Plan().Payload
	switch kind {
	case "com":
		return p.COM != nil
	case "drag":
		return p.DragArea != nil
	}
	return p.Inertia != nil
}

// computed is what the parts give, where nothing was measured.
func (c *Payload) computed(kind string) string {
	r, u := c.Store.Report().Payload, c.Store.Units
	switch kind {
	case "com":
		return "Computed: " + u.Bare(format.Length, r.COM[0]) + ", " + u.Bare(format.Length, r.COM[1]) + ", " + u.Show(format.Length, r.COM[2])
	case "drag":
		return "Computed, C_d A along x, y, z: " + u.Bare(format.Area, r.DragArea[0]) + ", " + u.Bare(format.Area, r.DragArea[1]) + ", " + u.Show(format.Area, r.DragArea[2])
	}
	t := "Computed, xx yy zz xy xz yz: "
	for k, x := range r.Inertia {
		if k > 0 {
			t += ", "
		}
		t += unit.Figures(x, 3)
	}
	return t + "\u202fkg m²"
}

func (c *Classes) gist() string {
	t := ""
	for i, n := range store.ClassNames(c.Store.Plan()) {
		if i > 0 {
			t += ", "
		}
		t += store.ClassLabel(n)
	}
	return t
}

func (c *Classes) note(name string) string { return store.ClassNote(name) }

func (c *Team) gist() string {
	p := c.Store.Plan()
	t := "1 vehicle"
	if n := len(p.Team); n != 1 {
		t = strconv.Itoa(n) + " vehicles"
	}
	switch store.TeamHold(p) {
	case plan.Cable:
		return t + " on cables"
	case plan.Rigid:
		return t + " in rigid holds"
	}
	return t + ", some on cables, some in rigid holds"
}

func (c *Team) holds() []field.Option {
	return []field.Option{{Value: plan.Cable, Name: "cable"}, {Value: plan.Rigid, Name: "rigid hold"}}
}

func (c *Team) classes() []field.Option { return store.ClassOptions(c.Store.Plan(), 1) }

func (c *Site) gist() string {
	p, u := c.Store.Assumed(), c.Store.Units
	return u.Show(format.Altitude, p.Site.Altitude) + ", wind " + u.Show(format.Speed, p.Site.Wind) + ", " +
		format.Share(p.Limits.Utilisation) + " of thrust, " + u.Show(format.Length, p.Limits.Separation) + " apart"
}

func (c *Site) site() []store.Field {
	return []store.Field{store.Altitude("site-altitude"), store.Temperature("site-temperature"), store.Wind("site-wind"), store.WindTo("site-wind-to")}
}

func (c *Site) limits() []store.Field {
	return []store.Field{store.Utilisation("limits-utilisation"), store.Cone("limits-cone"), store.TensionMin("limits-tension"),
		store.Separation("limits-separation"), store.COMError("limits-com-error"), store.TurnReserve("limits-turn")}
}
