package store

import (
	"testing"

	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/ui/talk"
)

// asks remembers what was asked.
type asks struct{ list []talk.Ask }

func (a *asks) Ask(q talk.Ask) { a.list = append(a.list, q) }

func (a *asks) last() talk.Ask { return a.list[len(a.list)-1] }

// A lift in trouble is studied at once, one that holds when somebody looks.
func TestWhenStudiesAreAsked(t *testing.T) {
	heavy, _ := example.Plan("lens-too-heavy")
	good, _ := example.Plan("beam-pair")
	a := &asks{}
	s := New(heavy, Ports{Studio: a})
	if len(a.list) != 1 || !plan.Same(a.last().Plan, heavy) {
		t.Fatalf("a lift that fails was asked about %d times", len(a.list))
	}
	a = &asks{}
	s = New(good, Ports{Studio: a})
	if len(a.list) != 0 {
		t.Error("a lift that holds is studied before anybody looks")
	}
	s.ToggleStudy(talk.Moves)
	if len(a.list) != 1 || !a.last().Opened(talk.Moves) || a.last().Opened(talk.WouldDo) {
		t.Fatalf("opened, asked %+v", a.list)
	}
	s.Drag("x", func(p plan.Plan) plan.Plan { p.Site.Wind = 1; return p }, true)
	if len(a.list) != 2 || a.last().Gen == a.list[0].Gen || a.last().Plan.Site.Wind != 1 {
		t.Error("the changed plan is not asked about")
	}
}

// What a study found is one step of history, and comes too late for another plan.
func TestTake(t *testing.T) {
	heavy, _ := example.Plan("lens-too-heavy")
	good, _ := example.Plan("beam-pair")
	a := &asks{}
	s := New(heavy, Ports{Studio: a})
	s.Take(a.last().Gen-1, good, "")
	if !plan.Same(s.Plan(), heavy) {
		t.Error("a late answer became the plan")
	}
	s.Take(a.last().Gen, good, "")
	if !plan.Same(s.Plan(), good) {
		t.Error("the answer did not become the plan")
	}
	s.Undo()
	if !plan.Same(s.Plan(), heavy) || s.CanUndo() {
		t.Error("it is not one step of history")
	}
}
