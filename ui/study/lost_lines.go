package study

import (
	"math"

	"github.com/vugu/vugu"

	"cohoist/core/lost"
	"cohoist/ui/chart"
	"cohoist/ui/format"
)

// taut is what the line of one vehicle bears at most when another one is lost.
type taut struct {
	lost.Line
	Without string // who is lost then
}

// lines are the cables in the order of the team, each at the loss with its highest peak.
func (c *Lost) lines() []taut {
	most := map[string]taut{}
	for _, e := range c.Study.Entries {
		for _, l := range e.Lines {
			if m, seen := most[l.ID]; !seen || l.Peak > m.Peak*(1+1e-6) {
				most[l.ID] = taut{l, e.Lost[0]}
			}
		}
	}
	var list []taut
	for _, e := range c.Study.Entries {
		if m, ok := most[e.Lost[0]]; ok && e.Kind == lost.Vehicle {
			list = append(list, m)
		}
	}
	return list
}

// tautest is the line that is nearest to its working load, or beyond it; false: no line has one.
func (c *Lost) tautest() (most taut, ok bool) {
	for _, l := range c.lines() {
		if l.WorkingLoad > 0 && (!ok || l.Peak/l.WorkingLoad > most.Peak/most.WorkingLoad*(1+1e-6)) {
			most, ok = l, true
		}
	}
	return most, ok
}

// linesLead says what the lines bear.
func (c *Lost) linesLead() string {
	switch most, ok := c.tautest(); {
	case len(c.lines()) == 0 && c.Study.Vehicles.Fallen == c.Study.Vehicles.Asked:
		return "No loss of a vehicle is held, so there is no rest for the lines to come to."
	case len(c.lines()) == 0:
		return "What the lines bear is not worked out, for the team does not hold the payload even before a loss."
	case !ok:
		return "No line has a working load to compare with."
	case most.Peak > most.WorkingLoad*(1+1e-6):
		return "The line of " + most.ID + " is loaded beyond its working load in the first swing after the loss of " + most.Without + "."
	default:
		return "No line is loaded beyond its working load in the first swing: that of " + most.ID + " comes nearest, with " + format.Share(most.Peak/most.WorkingLoad) + " after the loss of " + most.Without + "."
	}
}

// part is the peak beside the working load.
func (c *Lost) part(l taut) string {
	if !(l.WorkingLoad > 0) {
		return "no working load given"
	}
	text := format.Share(l.Peak / l.WorkingLoad)
	if l.Peak > l.WorkingLoad*(1+1e-6) {
		return "✕ " + text
	}
	return "✓ " + text
}

func (c *Lost) force(x float64) string { return c.Units.Show(format.Force, x) }

func (c *Lost) strain(l taut) vugu.Builder {
	part := l.Peak / l.WorkingLoad
	if !(l.WorkingLoad > 0) {
		part = math.NaN()
	}
	return &chart.Meter{Label: "peak of the line of " + l.ID + " beside its working load", Value: part, Limit: 1}
}
