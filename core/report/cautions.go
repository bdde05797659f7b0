package report

import (
	"strings"

	"cohoist/core/plan"
)

// cautions are printed under every verdict.
func cautions(p plan.Plan) []string {
	c := []string{
		"A lift can hurt people: keep everyone out from under the load and the team.",
		"This sheet is one input to the judgement of the people responsible for the flight. Local rules, the makers' limits for the vehicles, the grips and the lines, and licensed practice come first.",
		"The numbers are for steady hover. " + leftOut(p.Near) + " and motion along a path are not in them. How long it holds is for new and full batteries.",
		"Try a new lift low and slowly, over ground that nothing can harm, and land at the first surprise.",
	}
	for _, m := range p.Team {
		if m.Hold.Kind == plan.Cable {
			return append(c, "Cables are taken as straight, weightless and without stretch, and the load as held level. A line that comes taut with a jerk bears far more than it does in hover.")
		}
	}
	return append(c, "Payload and vehicles are taken as one stiff body. A load that bends shares its weight otherwise.")
}

// leftOut names what is not in the numbers.
func leftOut(n plan.Near) string {
	s := "Gusts"
	for _, t := range [3][2]string{{n.Ground, ", ground effect"}, {n.Download, ", rotor wakes on the load"}, {n.Wakes, ", rotor wakes on each other"}} {
		if t[0] != plan.Counted {
			s += t[1]
		}
	}
	return strings.Replace(s, "load, rotor wakes on each", "load and on each", 1)
}
