package study

import (
	"slices"
	"strconv"

	"cohoist/core/patch"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
)

// left says what is left whichever vehicle is lost.
func (c *Patch) left() string {
	l, rule := c.Losses, ""
	switch {
	case c.Cables && c.Plan.Limits.Lost == plan.CutAway:
		rule = " One lost on a cable is cut away."
	case c.Cables:
		rule = " One lost on a cable hangs from it as dead weight."
	}
	switch {
	case l.All.Status == solve.Infeasible:
		return "With any one vehicle lost there is no safe place: " + l.All.Note + "." + rule
	case l.All.Status != solve.Optimal:
		return "What is left after a loss was not found: " + l.All.Note + "."
	case len(l.All.Inner) == 1:
		return "With any one vehicle lost a single place is left, " + c.places(l.All.Inner[0])[0] + "." + rule
	}
	what := "a patch of " + c.size(l.All)
	if len(l.All.Inner) == 2 {
		what = "a line of " + c.length(c.long(l.All))
	}
	return "With any one vehicle lost " + what + " is left, drawn with dots; as planned the centre of mass stands " + c.beside(l.All) + " it. The loss of " + l.Worst + " leaves it the least." + rule
}

// beside says how far inside or outside of a patch the centre of mass is planned.
func (c *Patch) beside(p patch.Patch) string {
	if p.Edge < 0 {
		return c.length(-p.Edge) + " outside"
	}
	return c.length(p.Edge) + " inside"
}

// after is what is left after the loss of any of some vehicles.
type after struct {
	who  []string
	what string
}

// without says what is left after each loss, those of which the same is to be said together.
func (c *Patch) without() []string {
	var list []after
	for i, p := range c.Losses.Each {
		what, id := "not found", c.Plan.Team[i].ID
		switch {
		case p.Status == solve.Infeasible:
			what = "held nowhere"
		case p.Status == solve.Optimal && len(p.Inner) == 1:
			what = "held in one place"
		case p.Status == solve.Optimal && len(p.Inner) == 2:
			what = "held on a line of " + c.length(c.long(p)) + ", as planned " + c.beside(p) + " it"
		case p.Status == solve.Optimal:
			what = "held in a patch of " + c.size(p) + ", as planned " + c.beside(p) + " it"
		}
		k := slices.IndexFunc(list, func(a after) bool { return a.what == what })
		if k < 0 {
			k, list = len(list), append(list, after{what: what})
		}
		list[k].who = append(list[k].who, id)
	}
	var texts []string
	for _, a := range list {
		who := share.List(a.who)
		if len(a.who) > 1 {
			who = "any one of " + who
		}
		texts = append(texts, "Without "+who+": "+a.what+".")
	}
	return texts
}

// gap says how exactly the edge is known.
func (c *Patch) gap() string {
	if len(c.Patch.Inner) < 3 {
		return ""
	}
	text := "Everything within was held; nothing beyond the edge drawn dashed can be, as the bounds of " + strconv.Itoa(c.Patch.Solves) + " programs prove. "
	if c.Patch.Gap < 1e-6 {
		return text + "The two coincide."
	}
	return text + "The two are at most " + c.length(c.Patch.Gap) + " apart."
}
