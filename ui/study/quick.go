package study

import (
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/ui/talk"
)

// question is what a quick study asks of a team.
type question interface {
	// ask answers it, unless goOn, when it is not nil, says that it need not; it tells whether it did.
	ask(m *share.Model, s *solve.Solver, goOn func() bool) bool
	// gist is the answer in a sentence.
	gist(t *Turn) string
	// form shows the fields and settings of the section.
	form(t *Turn)
	// show shows the answer.
	show(t *Turn)
}

// quick is a study that takes milliseconds for a usual team: it follows the plan while it is open. Closed, it
// says its sentence when the plan rests and somebody looks at another study.
type quick struct {
	question
	id    string
	of    int  // generation of the plan that was asked about
	known bool // there was something to ask
}

// usual is up to how many vehicles a team is asked about while it moves.
const usual = 12

func (q *quick) See(t *Turn) {
	open, small := t.Opened(q.id), len(t.Plan.Team) <= usual
	if open {
		q.form(t)
	}
	switch {
	case q.of == t.Gen || open && small && q.find(t, nil):
		q.tell(t)
	case open:
		t.Say(q.id+"-gist", "Being worked out …")
	default:
		t.Say(q.id+"-gist", q.shut(t))
	}
}

// shut is what stands beside the title until more is worked out.
func (q *quick) shut(t *Turn) string {
	if c, ok := q.question.(interface{ closed(*Turn) string }); ok {
		return c.closed(t)
	}
	return talk.Of(q.id).Closed
}

// Rest answers for closed sections and large teams.
func (q *quick) Rest(t *Turn) {
	wanted := t.Opened(q.id) || len(t.Open) > 0 && len(t.Plan.Team) <= usual
	if q.of != t.Gen && wanted && t.Rested() && q.find(t, t.GoOn) {
		q.tell(t)
	}
}

func (q *quick) Do(t *Turn, what string) {
	if d, ok := q.question.(interface{ do(*Turn, string) }); ok {
		d.do(t, what)
	}
}

// find asks the question of the plan, and tells whether it is answered.
func (q *quick) find(t *Turn, goOn func() bool) bool {
	m := t.model()
	q.known = m != nil
	if q.known && !q.ask(m, solve.NewSolver(), goOn) {
		return false
	}
	q.of = t.Gen
	return true
}

func (q *quick) tell(t *Turn) {
	switch {
	case !q.known:
		t.Say(q.id+"-gist", "It cannot be worked out yet; the checks say what is missing.")
		t.Say(q.id, "")
		return
	case t.Opened(q.id):
		q.show(t)
	}
	t.Say(q.id+"-gist", q.gist(t))
}

// model is the plan as its studies solve it; nil when something is missing, or outside the model.
func (t *Turn) model() *share.Model {
	m, err := share.Of(t.Plan)
	if err != nil {
		return nil
	}
	return m
}
