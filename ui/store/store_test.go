package store

import (
	"errors"
	"math"
	"strings"
	"testing"

	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/vec"
	"cohoist/ui/format"
)

// world is the ports of a test: storage and address in memory, timers that fire when asked.
type world struct {
	kept      map[string]string
	denied    error
	at        []string // the browser's history, newest last
	timers    map[string]func()
	focus     string
	copied    string
	file      string
	picked    string
	reports   []func(report.Report, error) // asked for and not yet given
	slow      bool
	requested []plan.Plan
}

func (w *world) Load(key string) (string, error) { return w.kept[key], w.denied }
func (w *world) Save(key, text string) error {
	if w.denied == nil {
		w.kept[key] = text
	}
	return w.denied
}
func (w *world) Fragment() string                  { return w.at[len(w.at)-1] }
func (w *world) Replace(f string)                  { w.at[len(w.at)-1] = f }
func (w *world) Push(f string)                     { w.at = append(w.at, f) }
func (w *world) Link(f string) string              { return "https://example.org/#" + f }
func (w *world) Later(key string, _ int, f func()) { w.timers[key] = f }
func (w *world) Focus(id string)                   { w.focus = id }
func (w *world) Copy(t string, done func(error))   { w.copied = t; done(w.denied) }
func (w *world) Print()                            {}
func (w *world) Download(name, t string)           { w.file = name + "\n" + t }
func (w *world) Pick(_ string, done func(string, string, error)) {
	done("x.liftplan.json", w.picked, nil)
}
func (w *world) Start(p plan.Plan, done func(report.Report, error)) {
	w.requested = append(w.requested, p)
	if w.slow {
		w.reports = append(w.reports, done)
		return
	}
	done(Build(p))
}

func (w *world) rest() {
	for key, f := range w.timers {
		delete(w.timers, key)
		f()
	}
}

func open(t *testing.T, w *world) *Store {
	t.Helper()
	if w.kept == nil {
		w.kept = map[string]string{}
	}
	if w.at == nil {
		w.at = []string{""}
	}
	w.timers = map[string]func(){}
	return Restored(First(), Ports{Calculator: w, Keeper: w, Address: w, Desk: w})
}

func TestTypingKeepsTheTextAndTheLastGoodPlan(t *testing.T) {
	s := open(t, &world{})
	f := SolidMass("s-mass", 0)
	before := f.Get(s.Plan())
	s.Type(f, "7,")
	s.Type(f, "7,5")
	if got := f.Get(s.Plan()); got != 7.5 {
		t.Errorf("a decimal comma gave %v", got)
	}
	s.Type(f, "7,5x")
	if got := s.Text(f); got != "7,5x" {
		t.Errorf("the text being typed became %q", got)
	}
	if s.Fault(f.ID) == "" || f.Get(s.Plan()) != 7.5 {
		t.Errorf("fault %q, plan %v", s.Fault(f.ID), f.Get(s.Plan()))
	}
	s.Leave(f.ID)
	if s.Text(f) != "7,5x" {
		t.Error("leaving lost a text with a fault")
	}
	s.Type(f, "-3")
	if fault := s.Fault(f.ID); !strings.HasPrefix(fault, "It ") || f.Get(s.Plan()) != 7.5 {
		t.Errorf("a negative mass: fault %q, plan %v", fault, f.Get(s.Plan()))
	}
	s.Type(f, "8")
	s.Leave(f.ID)
	if s.Fault(f.ID) != "" || s.Text(f) != "8" {
		t.Errorf("fault %q, text %q", s.Fault(f.ID), s.Text(f))
	}
	s.Undo()
	if got := f.Get(s.Plan()); got != 7.5 {
		t.Errorf("leaving the input did not end the step: %v", got)
	}
	s.Undo()
	if got := f.Get(s.Plan()); got != before {
		t.Errorf("a run of typing was more than one step: %v, want %v", got, before)
	}
	s.Redo()
	s.Redo()
	if got := f.Get(s.Plan()); got != 8 {
		t.Errorf("redo gave %v", got)
	}
}

func TestClearingLeavesTheNumberOut(t *testing.T) {
	s := open(t, &world{})
	f := SolidMass("s-mass", 0)
	s.Type(f, "")
	if !math.IsNaN(f.Get(s.Plan())) || s.Fault(f.ID) != "" {
		t.Errorf("got %v, fault %q", f.Get(s.Plan()), s.Fault(f.ID))
	}
}

func TestADragIsOneStep(t *testing.T) {
	s := open(t, &world{})
	before := s.Plan().Team[0].Attach
	to := func(x float64, done bool) {
		s.Drag("attach A", func(p plan.Plan) plan.Plan { p.Team[0].Attach = vec.V3{x, 0, 0}; return p }, done)
	}
	for i := range 20 {
		to(0.5+float64(i)/100, false)
	}
	to(0.7, true)
	to(0.2, true)
	s.Undo()
	if got := s.Plan().Team[0].Attach[0]; got != 0.7 {
		t.Errorf("after one undo x = %v", got)
	}
	s.Undo()
	if got := s.Plan().Team[0].Attach; got != before {
		t.Errorf("after two undos %v, want %v", got, before)
	}
	if s.CanUndo() {
		t.Error("there are more steps than drags")
	}
}

func TestLateReportsAreDropped(t *testing.T) {
	w := &world{slow: true}
	s := open(t, w)
	s.SetTeamHold(plan.Rigid)
	s.SetTeamHold(plan.Cable)
	n := len(w.reports)
	answer := func(i int, sentence string) {
		r := report.Blank()
		r.Sentence = sentence
		w.reports[i](r, nil)
	}
	answer(n-2, "second")
	if s.Report().Sentence != "second" || !s.Busy {
		t.Errorf("%q, busy %v", s.Report().Sentence, s.Busy)
	}
	answer(n-1, "third")
	answer(0, "first")
	if s.Report().Sentence != "third" || s.Busy {
		t.Errorf("%q, busy %v", s.Report().Sentence, s.Busy)
	}
}

func TestAFailedCalculationKeepsTheOldReport(t *testing.T) {
	w := &world{slow: true}
	s := open(t, w)
	w.reports[len(w.reports)-1](report.Report{Sentence: "old"}, nil)
	s.SetTeamHold(plan.Rigid)
	w.reports[len(w.reports)-1](report.Report{}, errors.New("(boom)"))
	if s.Report().Sentence != "old" || len(s.Notices()) != 1 {
		t.Errorf("report %q, notices %v", s.Report().Sentence, s.Notices())
	}
}

func TestThePlanIsKept(t *testing.T) {
	w := &world{}
	s := open(t, w)
	s.Type(SolidMass("s-mass", 0), "4.25")
	s.SetUnits(format.Units{Length: "ft", Mass: "lb", Force: "lbf"})
	w.rest()
	w.at = []string{""}
	again := open(t, w)
	if got := again.Plan().Payload.Solids[0].Mass; got != 4.25 {
		t.Errorf("after a reload the mass is %v", got)
	}
	if again.Units.Mass != "lb" {
		t.Errorf("after a reload the units are %v", again.Units)
	}
}

func TestDeniedStorageIsSaidOnce(t *testing.T) {
	w := &world{denied: errors.New("it is switched off")}
	s := open(t, w)
	s.Type(SolidMass("s-mass", 0), "4.25")
	w.rest()
	if n := s.Notices(); len(n) != 1 || n[0].Kind != "storage" {
		t.Fatalf("notices %v", n)
	}
	s.Dismiss("storage")
	s.Type(SolidMass("s-mass", 0), "4.5")
	w.rest()
	if n := s.Notices(); len(n) != 0 {
		t.Errorf("it is said again: %v", n)
	}
}

func TestABrokenKeptPlanIsSaid(t *testing.T) {
	w := &world{kept: map[string]string{planKey: `{"format": "liftplan/1", "team": 3}`}}
	s := open(t, w)
	if n := s.Notices(); len(n) != 1 || !strings.Contains(n[0].Text, "team") {
		t.Errorf("notices %v", n)
	}
	if len(s.Plan().Team) == 0 {
		t.Error("there is no plan on the screen")
	}
}
