// Package store holds what the page shows: the plan with its history, the report, what is being
// typed, and what there is to say. Components read it and call it; it calls the browser through the
// small interfaces of ports.go and knows no physics.
package store

import (
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// Store is the state of the page. All its methods run on the page's one thread.
type Store struct {
	Units    format.Units
	Selected string // id of the vehicle that drawing and table point out
	Busy     bool   // the report is of an earlier plan; a newer one is being computed

	plan    plan.Plan
	assumed plan.Plan // the plan with what the report assumes
	report  report.Report
	past    []plan.Plan
	future  []plan.Plan
	run     string // what the newest step of the history is about, while it may still grow

	raw    map[string]string // texts being typed, by field
	faults map[string]string // what is wrong with them
	open   map[string]bool   // sections and workings that stand open
	notice []Notice

	calc    Calculator
	keeper  Keeper
	address Address
	desk    Desk
	studio  Studio

	asked, shown int    // generations of reports: asked for, on the screen
	due          bool   // a save is waiting
	link         string // the fragment that stands for the plan
	arrangement  string // the pattern chosen last
}

// Notice is something to say to the person, once for each kind.
type Notice struct{ Kind, Text string }

// New returns a store that shows p.
func New(p plan.Plan, ports Ports) *Store {
	s := fresh(p, ports)
	s.calculate()
	return s
}

// Restored returns a store that shows what an earlier visit left or what the address holds, else p.
func Restored(p plan.Plan, ports Ports) *Store {
	s := fresh(p, ports)
	s.restore()
	return s
}

func fresh(p plan.Plan, ports Ports) *Store {
	ports = ports.whole()
	s := &Store{Units: format.SI, raw: map[string]string{}, faults: map[string]string{}, open: map[string]bool{},
		calc: ports.Calculator, keeper: ports.Keeper, address: ports.Address, desk: ports.Desk, studio: ports.Studio}
	s.plan = p
	return s
}

// Plan is the plan on the screen. It is not to be modified.
func (s *Store) Plan() plan.Plan { return s.plan }

// Assumed is the plan with what the report assumes for what was left out.
func (s *Store) Assumed() plan.Plan { return s.assumed }

// Report is the newest report.
func (s *Store) Report() report.Report { return s.report }

// Reports counts up with every report that comes.
func (s *Store) Reports() int { return s.shown }

// Vehicle is the report's part about a vehicle, blank when the report is still of another team.
func (s *Store) Vehicle(id string) report.Vehicle {
	for _, v := range s.report.Vehicles {
		if v.ID == id {
			return v
		}
	}
	return blankVehicle(id)
}

// Edit changes the plan in one step of history. Steps with the same run, one after another, are
// one: a drag, a number being typed. What is wrong with the changed plan comes back as a sentence,
// and the plan stays as it was.
func (s *Store) Edit(run string, change func(*plan.Plan)) error {
	next := s.plan.Clone()
	change(&next)
	if err := valid(next); err != nil {
		return err
	}
	if same(s.plan, next) {
		return nil
	}
	if run == "" || run != s.run {
		s.remember(s.plan)
	}
	s.run = run
	s.future = nil
	s.become(next)
	return nil
}

// Do is Edit in one step, with what is wrong said in a notice.
func (s *Store) Do(change func(*plan.Plan)) bool {
	s.rest()
	if err := s.Edit("", change); err != nil {
		s.Say("edit", err.Error())
		return false
	}
	s.Dismiss("edit")
	return true
}

// Done ends a run: the next change is a step of its own.
func (s *Store) Done() { s.run = "" }

// become shows another plan.
func (s *Store) become(p plan.Plan) {
	s.plan = p
	if s.Selected != "" && member(p, s.Selected) < 0 {
		s.Selected = ""
	}
	s.calculate()
	s.later()
}

// calculate asks for the report of the plan. Reports may come late, and out of order: an older one
// than is on the screen is dropped.
func (s *Store) calculate() {
	s.assumed, _ = plan.Assume(s.plan)
	s.asked++
	mine := s.asked
	s.Busy = true
	s.calc.Start(s.plan, func(r report.Report, err error) {
		if mine <= s.shown {
			return
		}
		s.shown = mine
		s.Busy = s.shown < s.asked
		if err != nil {
			s.Say("program", "The calculation stopped with an error; the numbers are of an earlier plan. "+err.Error())
			return
		}
		s.Dismiss("program")
		s.report = r
		s.study()
	})
}

// Select points out a vehicle, or none.
func (s *Store) Select(id string) {
	if member(s.plan, id) < 0 {
		id = ""
	}
	if id != s.Selected {
		s.Selected = id
		s.study()
	}
}

// Say shows a notice, instead of an earlier one of its kind.
func (s *Store) Say(kind, text string) {
	s.Dismiss(kind)
	s.notice = append(s.notice, Notice{kind, text})
}

// Broke says that an event of the page came to grief.
func (s *Store) Broke(recovered any) {
	s.Say("program", "Something went wrong inside the page; the plan is kept. "+Fault(recovered).Error())
}

// Dismiss takes a notice away.
func (s *Store) Dismiss(kind string) {
	kept := s.notice[:0:0]
	for _, n := range s.notice {
		if n.Kind != kind {
			kept = append(kept, n)
		}
	}
	s.notice = kept
}

// Notices are what there is to say now.
func (s *Store) Notices() []Notice { return s.notice }

// Open says whether a section stands open.
func (s *Store) Open(id string) bool { return s.open[id] }

// SetOpen opens or closes a section.
func (s *Store) SetOpen(id string, open bool) { s.open[id] = open }

// Toggle opens a section that is closed, and the other way round.
func (s *Store) Toggle(id string) { s.open[id] = !s.open[id] }

// Show opens a section, and the sections around it, and moves the focus there.
func (s *Store) Show(id string) {
	for i := range id {
		if id[i] == '-' {
			s.open[id[:i]] = true
		}
	}
	s.open[id] = true
	if talk.Of(id).ID != "" {
		s.study()
	}
	s.desk.Focus(id)
}

// Jump moves the focus.
func (s *Store) Jump(id string) { s.desk.Focus(id) }

// Print prints the sheet, with the diagrams of a payload that is a beam.
func (s *Store) Print() {
	if s.report.Beam != nil && !s.Open(talk.Bent) {
		s.Toggle(talk.Bent)
	}
	s.askStudies(true)
	s.desk.Print()
}

func member(p plan.Plan, id string) int {
	for i, m := range p.Team {
		if m.ID == id {
			return i
		}
	}
	return -1
}
