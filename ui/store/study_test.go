package store

import (
	"testing"

	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/ui/talk"
)

// asks remembers what was asked.
type asks struct {
	list []talk.Ask
	now  bool // of the last

	moved int
}

func (a *asks) Moved(gen int) { a.moved = gen }

func (a *asks) Ask(q talk.Ask, now bool) { a.list, a.now = append(a.list, q), now }

func (a *asks) last() talk.Ask { return a.list[len(a.list)-1] }

// prompt does at once what is to be done later.
type prompt struct{ nowhere }

func (prompt) Later(_ string, _ int, f func()) { f() }

// A lift in trouble is studied at once, one that holds when somebody looks or there is time.
func TestWhenStudiesAreAsked(t *testing.T) {
	heavy, _ := example.Plan("lens-too-heavy")
	good, _ := example.Plan("beam-pair")
	a := &asks{}
	s := New(heavy, Ports{Studio: a, Desk: prompt{}})
	if len(a.list) != 1 || !a.now || !plan.Same(a.last().Plan, heavy) {
		t.Fatalf("a lift that fails was asked about %d times, at once %v", len(a.list), a.now)
	}
	a = &asks{}
	s = New(good, Ports{Studio: a, Desk: prompt{}})
	if len(a.list) != 1 || a.now {
		t.Error("a lift that holds is studied at once, before anybody looks")
	}
	s.ToggleStudy(talk.Moves)
	if len(a.list) != 2 || !a.now || !a.last().Opened(talk.Moves) || a.last().Opened(talk.WouldDo) {
		t.Fatalf("opened, asked %+v", a.list)
	}
	s.Drag("x", func(p plan.Plan) plan.Plan { p.Site.Wind = 1; return p }, true)
	if len(a.list) != 3 || a.last().Gen == a.list[0].Gen || a.last().Plan.Site.Wind != 1 {
		t.Error("the changed plan is not asked about")
	}
	if a.moved != a.last().Gen {
		t.Errorf("it is told of plan %d, and asked about %d", a.moved, a.last().Gen)
	}
}

// What a study found is one step of history, and comes too late for another plan.
func TestTake(t *testing.T) {
	heavy, _ := example.Plan("lens-too-heavy")
	good, _ := example.Plan("beam-pair")
	a := &asks{}
	s := New(heavy, Ports{Studio: a, Desk: prompt{}})
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

// Fields that studies set are one step, and do not undo what else was changed meanwhile.
func TestPut(t *testing.T) {
	good, _ := example.Plan("beam-pair")
	s := New(good, Ports{})
	s.Do(func(p *plan.Plan) { p.Title = "changed meanwhile" })
	s.Put(map[string]any{"payload.beam.material": "steel-s235", "team[0].hold.stiffness_n_m": 300.0, "team[9].yaw_deg": 5.0})
	p := s.Plan()
	if p.Title != "changed meanwhile" || p.Payload.Beam.Material != "steel-s235" || p.Team[0].Hold.Stiffness != 300 {
		t.Errorf("the plan is %+v", p)
	}
	s.Undo()
	if p := s.Plan(); p.Payload.Beam.Material != "" || p.Title != "changed meanwhile" {
		t.Error("it is not one step")
	}
}
