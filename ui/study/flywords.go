package study

import (
	"math"

	"cohoist/core/formation"
	"cohoist/core/unit"
)

// percent is a fraction as percent.
func percent(x float64, digits int) string { return unit.Figures(100*x, digits) + "\u202f%" }

// must is the separation that is to be kept.
func (c *Fly) must() string { return c.Units.Small(c.model.Plan.Limits.Separation) }

// gist is the section in a sentence.
func (c *Fly) gist() string {
	if c.model == nil {
		return "It cannot be worked out yet; the checks say what is missing."
	}
	switch f := c.found; f.Status {
	case formation.AsHung:
		return "As the cables hang, the nearest two are " + c.Units.Small(f.Nearest) + " apart; " + c.must() + " must be kept."
	case formation.Apart:
		return "Leant apart by up to " + inDegrees(c.lean()) + " they keep " + c.must() + "; that costs " + percent(f.Cost, 2) + " of a vehicle’s thrust."
	case formation.None:
		return "No formation was found that keeps " + c.must() + "."
	}
	return c.notAsked()
}

// notAsked says why there is no question.
func (c *Fly) notAsked() string {
	if !c.model.Cables {
		return "Not applicable: every vehicle holds rigidly and stays where it grips."
	}
	if len(c.model.Craft) < 2 {
		return "Not applicable: one vehicle flies alone."
	}
	return "The lift does not balance, wherever the vehicles fly."
}

// head says what was found.
func (c *Fly) head() string {
	f := c.found
	switch f.Status {
	case formation.NotAsked:
		return c.notAsked()
	case formation.AsHung:
		return c.gist() + " To keep apart costs nothing."
	case formation.None:
		return c.hanging() + " No way was found to lean the cables apart within their bounds. Longer cables, a wider cone or attachments farther apart would help."
	}
	return c.hanging() + " Leant apart by up to " + inDegrees(c.lean()) + " they keep it. The hardest-working vehicle then gives " + percent(f.T, 4) + " of its thrust instead of " + percent(f.Free, 4) + ": keeping apart costs " + percent(f.Cost, 2) + " of it."
}

// hanging says how near they come without regard to separation.
func (c *Fly) hanging() string {
	if !figureOf(c.free.Nearest) {
		return c.must() + " must be kept."
	}
	return "As the cables hang, the nearest two come within " + c.Units.Small(c.free.Nearest) + " of each other; " + c.must() + " must be kept."
}

// proved says how much better another formation could be.
func (c *Fly) proved() string {
	f := c.found
	if f.Status != formation.Apart {
		return ""
	}
	text := "Separation is not convex, so that a formation is searched for, not proved best: from " + several(f.Tried, "start", "starts") + ", of which " + digits(f.Held) + " led to a formation. Proved is that no formation asks for less than " + percent(f.Bound, 4) + ", which holds without any separation; another could be better by " + percent(math.Max(0, f.T-f.Bound), 2) + " at most."
	if math.Abs(c.Sheet-f.T) > 5e-4 {
		text += " The sheet above has " + percent(c.Sheet, 4) + ", by the plan’s policy and a simpler way of leaning apart."
	}
	return text
}

// lean is the largest cable angle, radians.
func (c *Fly) lean() float64 {
	most := 0.0
	for _, p := range c.found.Parts {
		if !math.IsNaN(p.CableAngle) {
			most = math.Max(most, p.CableAngle)
		}
	}
	return most
}

// flags says who flies above whom, in whose wake, and what comes near a cable.
func (c *Fly) flags() []string {
	var out []string
	u := c.Units
	for _, g := range c.found.Flags {
		switch g.Kind {
		case formation.Stacked:
			out = append(out, g.Upper+" flies "+u.Small(g.Below)+" above "+g.Lower+", and seen from above their rotors overlap: their centres are "+u.Small(g.Across)+" apart there, and "+u.Small(g.Limit)+" would be clear.")
		case formation.InWake:
			out = append(out, g.Lower+" is "+u.Small(g.Below)+" below "+g.Upper+" and in its wake: it loses lift and is shaken. Clear of it would be "+u.Small(g.Limit)+" aside; it is "+u.Small(g.Across)+".")
		case formation.Crossing:
			out = append(out, "Seen from above the cables of "+g.Upper+" and "+g.Lower+" cross; they pass "+u.Small(g.Below)+" from each other.")
		case formation.Reached:
			out = append(out, "The cable of "+g.Lower+" passes "+u.Small(g.Across)+" from the centre of "+g.Upper+", whose rotors reach "+u.Small(g.Limit)+".")
		}
	}
	return out
}

// calm says that there is nothing to flag.
func (c *Fly) calm() bool { return len(c.found.Parts) > 0 && len(c.found.Flags) == 0 }
