package study

import (
	"fmt"
	"strconv"
	"strings"
	"time"
	"unicode"

	"cohoist/core/place"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/ui/talk"
)

// where is where to attach.
type where struct {
	best  *found
	table *counted
	cost  shifted
	slow  bool // the cost of a shift takes too long to follow a drag
}

// often is the least time between two pictures of a search.
const often = 200 * time.Millisecond

func (w *where) See(t *Turn) {
	c := choose(t)
	t.Say(talk.Where+"-gist", w.gist(t, c))
	if !t.Opened(talk.Where) {
		return
	}
	w.frame(t, c, false)
	w.best.show(t, c)
	w.table.show(t, c)
	w.shift(t, c)
}

// frame puts the form and the rooms for what is found on the page.
func (w *where) frame(t *Turn, c *choices, running bool) {
	c.show(t, running)
	t.Show(talk.Where, &Where{})
}

func (w *where) Do(t *Turn, what string) {
	c := choose(t)
	verb, rest, _ := strings.Cut(what, " ")
	i, err := strconv.Atoi(rest)
	switch {
	case verb == "find" && len(c.faults) == 0:
		w.find(t, c)
	case verb == "many" && len(c.faults) == 0 && !c.free():
		w.many(t, c)
	case verb == "take" && w.best.fresh(t):
		t.Take(w.best.plan(w.best.reply.Answer.Places), talk.Where)
	case verb == "front" && err == nil && w.best.current(t) && i >= 0 && i < len(w.best.reply.Front):
		t.Take(w.best.plan(w.best.reply.Front[i].Places), talk.Where)
	case verb == "team" && err == nil:
		if p, ok := w.table.team(t, i); ok {
			t.Take(p, talk.Where)
		}
	}
}

// find searches, and shows the best so far a few times a second.
func (w *where) find(t *Turn, c *choices) {
	w.frame(t, c, true)
	f := &found{of: t.Plan, set: chosen(t), asks: c.asks, goals: c.goals, said: c.said(), kept: c}
	f.before()
	w.best = f
	f.show(t, c)
	t.Say(talk.Where+"-gist", "Searching …")
	t.Say(talk.Where+"-said", "Searching …")
	t.Send()
	f.reply = c.request().Run(w.tell(t, func(pr place.Progress) {
		f.soFar = pr
		f.show(t, c)
	}, &f.stopped))
	f.done = true
	f.settle()
	t.Say(talk.Where+"-said", f.outcome())
}

// tell draws a search now and then, and says whether to go on.
func (w *where) tell(t *Turn, draw func(place.Progress), stopped *bool) place.Tell {
	last := time.Now()
	return func(pr place.Progress) bool {
		if *stopped = *stopped || !t.GoOn(); *stopped {
			return false
		}
		if time.Since(last) > often {
			draw(pr)
			t.Send()
			last = time.Now()
		}
		return true
	}
}

// chosen are the choices of the search as one text; who is looked at for the cost of a shift is none of them.
func chosen(t *Turn) string {
	set := own(t.Set, t.id)
	delete(set, "where.who")
	return fmt.Sprint(set)
}

// gist stands beside the title.
func (w *where) gist(t *Turn, c *choices) string {
	f := w.best
	switch {
	case len(c.faults) > 0:
		return "Not to be searched yet: " + c.faults[c.order[0]]
	case f == nil || !f.done:
		return "not searched yet: " + c.said()
	case f.reply.Fault != "":
		return f.trouble()
	}
	return f.standing(t) + f.outcome()
}

// capital begins a text with a capital letter.
func capital(s string) string {
	r := []rune(s)
	if len(r) > 0 {
		r[0] = unicode.ToUpper(r[0])
	}
	return string(r)
}

// same tells whether two plans are the same.
func same(a, b plan.Plan) bool { return plan.Same(a, b) }

// verdictClass is the page's class for a verdict.
func verdictClass(v report.Verdict) string {
	switch v {
	case report.Lifts:
		return "is-ok"
	case report.ThinLift:
		return "is-thin"
	case report.Fails:
		return "is-fail"
	}
	return "is-outside"
}
