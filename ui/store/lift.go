package store

import (
	"math"
	"strings"

	"cohoist/core/plan"
	"cohoist/ui/format"
)

// The fields of the sentences and of the sections on site and limits. Names are as in a label.

// Altitude is the height of the site.
func Altitude(id string) Field {
	return Field{ID: id, Name: "Altitude", Q: format.Altitude,
		Get: func(p plan.Plan) float64 { return zero(p.Site.Altitude) },
		Set: func(p *plan.Plan, x float64) { p.Site.Altitude = x }}
}

// Temperature is how much warmer than the standard the air is.
func Temperature(id string) Field {
	return Field{ID: id, Name: "Warmer than standard air", Q: format.Kelvin,
		Get: func(p plan.Plan) float64 { return zero(p.Site.TemperatureOffset) },
		Set: func(p *plan.Plan, x float64) { p.Site.TemperatureOffset = x }}
}

// Wind is the speed of the steady wind.
func Wind(id string) Field {
	return Field{ID: id, Name: "Wind", Q: format.Speed,
		Get: func(p plan.Plan) float64 { return zero(p.Site.Wind) },
		Set: func(p *plan.Plan, x float64) { p.Site.Wind = x }}
}

// WindTo is where the wind blows.
func WindTo(id string) Field {
	return Field{ID: id, Name: "Blows towards, from the payload's x axis anticlockwise", Q: format.Angle,
		Get: func(p plan.Plan) float64 { return zero(p.Site.WindTo) },
		Set: func(p *plan.Plan, x float64) { p.Site.WindTo = x }}
}

// zero is how a site's number left out reads.
func zero(x float64) float64 {
	if math.IsNaN(x) {
		return 0
	}
	return x
}

// Limit fields, left out when empty: the report then says what it assumes.

// Utilisation is the part of its thrust a vehicle may need in hover.
func Utilisation(id string) Field {
	return Field{ID: id, Name: "Thrust to use in hover, at most", Q: format.Percent,
		Get: func(p plan.Plan) float64 { return p.Limits.Utilisation },
		Set: func(p *plan.Plan, x float64) { p.Limits.Utilisation = x }}
}

// Cone is how far from the vertical a cable may lean.
func Cone(id string) Field {
	return Field{ID: id, Name: "Cable from the vertical, at most", Q: format.Angle,
		Get: func(p plan.Plan) float64 { return p.Limits.Cone },
		Set: func(p *plan.Plan, x float64) { p.Limits.Cone = x }}
}

// TensionMin is the tension that keeps a cable taut.
func TensionMin(id string) Field {
	return Field{ID: id, Name: "Tension, at least", Q: format.Force,
		Get: func(p plan.Plan) float64 { return p.Limits.TensionMin },
		Set: func(p *plan.Plan, x float64) { p.Limits.TensionMin = x }}
}

// Separation is the least distance of two vehicles.
func Separation(id string) Field {
	return Field{ID: id, Name: "Between vehicles, centre to centre, at least", Q: format.Length,
		Get: func(p plan.Plan) float64 { return p.Limits.Separation },
		Set: func(p *plan.Plan, x float64) { p.Limits.Separation = x }}
}

// COMError is how far the centre of mass may be from where the plan has it.
func COMError(id string) Field {
	return Field{ID: id, Name: "Centre of mass may be off by", Q: format.Length,
		Get: func(p plan.Plan) float64 { return p.Limits.COMError },
		Set: func(p *plan.Plan, x float64) { p.Limits.COMError = x }}
}

// TurnReserve is the turn acceleration to keep free.
func TurnReserve(id string) Field {
	return Field{ID: id, Name: "Turn acceleration kept free", Q: format.TurnRate,
		Get: func(p plan.Plan) float64 { return p.Limits.TurnReserve },
		Set: func(p *plan.Plan, x float64) { p.Limits.TurnReserve = x }}
}

// CableLength is the length of all cables, empty when they differ.
func CableLength(id string) Field {
	return Field{ID: id, Name: "Length of the cables", Q: format.Length,
		Get: func(p plan.Plan) float64 {
			return common(p, func(m plan.Member) (float64, bool) { return m.Hold.Length, m.Hold.Kind == plan.Cable })
		},
		Set: func(p *plan.Plan, x float64) {
			for i := range p.Team {
				if p.Team[i].Hold.Kind == plan.Cable {
					p.Team[i].Hold.Length = x
				}
			}
		}}
}

// common is the number that all the members asked share, else NaN.
func common(p plan.Plan, of func(plan.Member) (float64, bool)) float64 {
	got, any := math.NaN(), false
	for _, m := range p.Team {
		x, ok := of(m)
		switch {
		case !ok:
		case !any:
			got, any = x, true
		case x != got:
			return math.NaN()
		}
	}
	return got
}

// Title and Note are the plan's own words.
var (
	Title = Words{ID: "title", Name: "Title", Get: func(p plan.Plan) string { return p.Title },
		Set: func(p *plan.Plan, t string) { p.Title = strings.Join(strings.Fields(t), " ") }} // on one line
	Note = Words{ID: "note", Name: "Note", Get: func(p plan.Plan) string { return p.Note },
		Set: func(p *plan.Plan, t string) { p.Note = t }}
)
