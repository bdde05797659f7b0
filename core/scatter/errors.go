package scatter

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/share"
)

// Kinds of errors.
const (
	PayloadMass = "payload mass"
	COM         = "centre of mass"
	Density     = "air density"
	Wind        = "wind speed"
	WindTo      = "wind direction"
	Thrust      = "thrust"
	Attach      = "attachment"
)

// Error is one number of the plan that may be off.
type Error struct {
	Kind string
	Who  string  // id of the vehicle; empty: of the payload or the site
	Axis string  // x, y or z of the payload frame, or empty
	SD   float64 // standard deviation, (16.1)
	Unit string  // of SD: m, m/s, °, or 1 for a part of the number itself
	at   int     // in an offset
}

// Places of errors in an offset: payload mass, centre of mass x y z, density, wind speed, wind
// direction, then a thrust and an attachment x y z for every vehicle.
const (
	atMass = iota
	atCOM
	atDensity = atCOM + 3
	atWind    = atDensity + 1
	atWindTo  = atWind + 1
	atCraft   = atWindTo + 1
	perCraft  = 4
)

// offset is how far every number is off, in its own unit.
type offset []float64

func newOffset(k int) offset { return make(offset, atCraft+perCraft*k) }

// list names the errors that have a spread and can move the share, (16.1).
func list(m *share.Model, e plan.Errors) []Error {
	var out []Error
	add := func(kind, who, axis string, sd float64, unit string, at int) {
		if sd > 0 {
			out = append(out, Error{kind, who, axis, sd, unit, at})
		}
	}
	axes := [3]string{"x", "y", "z"}
	if m.Payload.Mass > 0 {
		add(PayloadMass, "", "", e.PayloadMass, "1", atMass)
		for k := range 3 {
			add(COM, "", axes[k], e.COM, "m", atCOM+k)
		}
	}
	add(Density, "", "", e.Density, "1", atDensity)
	add(Wind, "", "", e.Wind, "m/s", atWind)
	if m.Plan.Site.Wind > 0 || e.Wind > 0 {
		add(WindTo, "", "", e.WindTo, "°", atWindTo)
	}
	for i, c := range m.Craft {
		at := atCraft + perCraft*i
		add(Thrust, c.ID, "", e.Thrust, "1", at)
		for k := range 3 {
			add(Attach, c.ID, axes[k], e.Attach, "m", at+1+k)
		}
	}
	return out
}

// Defaults of standard deviations that a plan leaves out. Common practice, no source.
const (
	massRatio    = 0.02  // a spring scale on site
	thrustRatio  = 0.03  // battery, propellers and motors of one class
	attachMetres = 0.005 // tape measure and knot; no more than a hundredth of the team's reach
	densityRatio = 0.01  // pressure and temperature of the day
	windSpeed    = 0.5   // m/s
	windDegrees  = 10
	calmDegrees  = 180 / Cut // a calm has no direction: what blows may blow anywhere
)

// assume fills in the standard deviations that a plan leaves out, and says so in a sentence each.
func assume(m *share.Model) (e plan.Errors, said []string) {
	e = m.Plan.Errors
	fill := func(x *float64, value float64, unit, what string) {
		if math.IsNaN(*x) {
			*x = value
			said = append(said, "Error of "+what+" left out: standard deviation taken as "+plan.Number(value, unit)+" (common practice, no source).")
		}
	}
	fill(&e.PayloadMass, massRatio, "", "the payload's mass, over the mass,")
	fill(&e.COM, m.Plan.Limits.COMError/Cut, "m", "the centre of mass")
	fill(&e.Thrust, thrustRatio, "", "each vehicle's thrust, over the thrust,")
	fill(&e.Attach, math.Min(attachMetres, reach(m)/100), "m", "the attachments")
	fill(&e.Density, densityRatio, "", "the air's density, over the density,")
	fill(&e.Wind, windSpeed, "m/s", "the wind's speed")
	to := float64(windDegrees)
	if m.Plan.Site.Wind == 0 {
		to = calmDegrees
	}
	fill(&e.WindTo, to, "°", "the wind's direction")
	if m.Cables {
		said = append(said, "Cable lengths: the share of a payload held level does not depend on them, so that their error moves nothing here; how a payload that is not held level would tip is left out.")
	}
	return e, said
}

// reach is the largest distance of an attachment from the payload's centre of mass, m.
func reach(m *share.Model) float64 {
	far := 0.0
	for _, c := range m.Craft {
		far = math.Max(far, c.At.Sub(m.Payload.COM).Norm())
	}
	return far
}
