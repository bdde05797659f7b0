// Package answer is what the sheet says: the verdict, the checks with their working, the vehicles,
// the agility, and what was assumed. It shows the report and computes nothing.
package answer

import (
	"math"
	"strconv"
	"strings"

	"cohoist/core/check"
	"cohoist/core/report"
	"cohoist/core/unit"
	"cohoist/ui/format"
)

// word is a verdict or a check's status for reading. A mark stands before it, so that colour is
// never the only sign.
type word struct{ Mark, Text, Class string }

var verdicts = map[report.Verdict]word{
	report.Lifts:        {"✓", "Yes, it lifts", "ok"},
	report.ThinLift:     {"≈", "Yes, but only just", "thin"},
	report.Fails:        {"✕", "No, not like this", "fail"},
	report.NeedsInput:   {"?", "A number is missing", "needs"},
	report.OutsideModel: {"!", "Outside the model", "outside"},
	report.Unsolved:     {"…", "No answer", "outside"},
}

var statuses = map[check.Status]word{
	check.OK:            {"✓", "holds", "ok"},
	check.Thin:          {"≈", "thin", "thin"},
	check.Fail:          {"✕", "fails", "fail"},
	check.NotApplicable: {"·", "does not apply", "none"},
	check.NeedsInput:    {"?", "needs a number", "needs"},
	check.OutsideModel:  {"!", "outside the model", "outside"},
	check.Unsolved:      {"…", "not solved", "outside"},
	check.NotRun:        {"…", "not run", "outside"},
}

// bar is the length of a utilisation bar whose line for 100 % stands at 80 of 100.
func bar(u float64) string {
	if math.IsNaN(u) || u <= 0 {
		return "0"
	}
	return strconv.FormatFloat(math.Min(80*u, 100), 'f', 1, 64)
}

// grade is the class of a bar by itself.
func grade(u, limit float64) string {
	switch {
	case u > limit*(1+1e-6):
		return "fail"
	case u > 0.9*limit:
		return "thin"
	}
	return "ok"
}

func (c *Verdict) word() word { return verdicts[c.Store.Report().Verdict] }

// governing is the check that decides, when there is one.
func (c *Verdict) governing() (row check.Row, ok bool) {
	for _, r := range c.Store.Report().Checks {
		if r.ID == c.Store.Report().Governing {
			return r, true
		}
	}
	return check.Row{}, false
}

func (c *Verdict) link() string {
	r, ok := c.governing()
	switch {
	case !ok:
		return ""
	case !math.IsNaN(r.Utilisation):
		return r.Title + ": " + format.Share(r.Utilisation) + " of what there is"
	}
	return r.Title
}

// facts is the line of numbers under the verdict.
func (c *Verdict) facts() []fact {
	r, u := c.Store.Report(), c.Store.Units
	var list []fact
	add := func(id, name, value, to string) { list = append(list, fact{"fact-" + id, name, value, to}) }
	add("utilisation", "Hardest-working vehicle", format.Share(r.Team.Utilisation), "check-thrust")
	add("payload", "Payload", u.Show(format.Mass, r.Payload.Mass), "payload")
	add("largest", "Largest payload", u.Show(format.Mass, r.Team.LargestPayload), "")
	add("mass", "All in the air", u.Show(format.Mass, r.Team.Mass), "")
	add("hold", "Holds for", hold(r), "energy")
	return list
}

// hold is how long the team holds the lift, and who ends it.
func hold(r report.Report) string {
	h, who := r.Team, ""
	if len(h.HoldEnds) > 0 {
		who = h.HoldEnds[0]
	}
	switch {
	case who == "":
		return "not known"
	case h.Hold == 0:
		return who + " can't, even from full"
	case len(h.HoldEnds) == len(r.Vehicles):
		return format.Span(h.Hold)
	}
	return format.Span(h.Hold) + "; " + who + " ends first"
}

// fact is a number with where its working or its parts are shown, if anywhere.
type fact struct{ ID, Name, Value, To string }

func (c *Verdict) busy() string {
	if c.Store.Busy {
		return "true"
	}
	return "false"
}

// number of a check row: demand or capacity in the chosen units.
func (c *Checks) number(r check.Row, x float64) string { return c.Store.Units.In(r.Unit, x) }

func (c *Checks) status(r check.Row) word { return statuses[r.Status] }

// plain is the class of a row's status: the usual one is told by its mark, and in words only to
// those who do not see it.
func (c *Checks) plain(r check.Row) string {
	if r.Status == check.OK {
		return "unseen"
	}
	return "status"
}

func (c *Checks) where(r check.Row) string {
	if r.Where == "" {
		return ""
	}
	return " at " + strings.Join(strings.Fields(r.Where), " and ")
}

// value of a step, exact enough to follow the working by hand.
func value(s check.Step) string {
	return unit.Figures(s.Value, 6)
}

func stepUnit(s check.Step) string {
	if s.Unit == "1" {
		return ""
	}
	return s.Unit
}
