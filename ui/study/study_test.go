package study

import (
	"strings"
	"testing"

	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// page is what a page would hold: the pieces, the newest plan, and how often an answer came.
type page struct {
	*Program
	pieces, values map[string]string
	plan           *plan.Plan
	answers        int
	gen            int
	asked          plan.Plan
}

func newPage(bench string) *page {
	p := &page{pieces: map[string]string{}, values: map[string]string{}}
	p.Program = &Program{Bench: bench, Send: func(a Answer) {
		p.answers++
		for k, v := range a.Pieces {
			p.pieces[k] = v
		}
		for k, v := range a.Values {
			p.values[k] = v
		}
		if a.Plan != nil {
			p.plan = a.Plan
		}
		if a.Put != nil {
			next := p.asked.Clone()
			for path, value := range a.Put {
				plan.Put(&next, path, value)
			}
			p.plan = &next
		}
	}}
	return p
}

// ask shows a plan with some sections open.
func (p *page) ask(q plan.Plan, open ...string) {
	p.gen++
	p.asked = q
	p.Hear(Message{Ask: &talk.Ask{Gen: p.gen, Plan: q, Report: report.Build(q), Units: format.SI, Open: open}})
}

// settle answers until there is nothing left to answer.
func (p *page) settle() {
	for p.Step() {
	}
}

func named(t *testing.T, name string) plan.Plan {
	t.Helper()
	p, faults := example.Plan(name)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return p
}

// Every section of the page is a study, and every study has a section.
func TestSectionsAndStudies(t *testing.T) {
	all := All()
	for _, s := range talk.Sections {
		if all[s.ID] == nil {
			t.Errorf("nothing works out %s", s.ID)
		}
		delete(all, s.ID)
	}
	delete(all, talk.Paper)
	for id := range all {
		t.Errorf("%s has no section", id)
	}
}

// A plan that fails is advised on; its first remedy, taken, is a plan that does not fail.
func TestWhatWouldDo(t *testing.T) {
	p := newPage(talk.Live)
	p.ask(named(t, "lens-too-heavy"), talk.WouldDo, talk.Moves)
	p.settle()
	if !strings.Contains(p.pieces[talk.WouldDo], `id="remedy-0-take"`) || !strings.Contains(p.pieces[talk.WouldDo], `<ul class="why" id="why">`) {
		t.Errorf("the piece is %s", p.pieces[talk.WouldDo])
	}
	if strings.Count(p.pieces[talk.Moves], "<li id=") < 5 {
		t.Errorf("the moves are %s", p.pieces[talk.Moves])
	}
	p.Hear(Message{Do: talk.WouldDo + " take 0"})
	p.settle()
	if p.plan == nil || report.Build(*p.plan).Verdict == report.Fails {
		t.Error("the remedy is not taken, or does not do")
	}
}

// Nobody looks, nothing fails: nothing is worked out.
func TestALiftThatHolds(t *testing.T) {
	p := newPage(talk.Live)
	p.ask(named(t, "beam-pair"))
	p.settle()
	if got := p.pieces[talk.WouldDo+"-gist"]; got != "Nothing has to change." || p.pieces[talk.WouldDo] != "" || p.pieces[talk.Moves] != "" {
		t.Errorf("%v", p.pieces)
	}
	p.ask(named(t, "beam-pair"), talk.Moves)
	p.settle()
	if p.pieces[talk.Moves] == "" {
		t.Error("opened, but not worked out")
	}
}

// A newer plan ends the work on an older one.
func TestANewerPlanCounts(t *testing.T) {
	p := newPage(talk.Live)
	paused := 0
	p.Pause = func(ms int) {
		if paused++; paused == 12 {
			p.ask(named(t, "beam-pair"), talk.Moves)
		}
	}
	p.ask(named(t, "lens-too-heavy"), talk.WouldDo)
	p.settle()
	if p.pieces[talk.WouldDo] != "" || p.pieces[talk.Moves] == "" {
		t.Error("the older plan was worked out to its end")
	}
	if p.pieces[talk.WouldDo+"-gist"] != "Nothing has to change." {
		t.Errorf("the gist is %q", p.pieces[talk.WouldDo+"-gist"])
	}
}

// What is typed into a field goes into the plan in its unit, or is refused with a sentence.
func TestTypingAField(t *testing.T) {
	p := newPage(talk.Live)
	p.ask(named(t, "handrail-beam"))
	p.settle()
	p.Hear(Message{Fields: map[string]string{"payload.beam.youngs_modulus_pa": "70 GPa"}})
	p.settle()
	if p.plan == nil || p.plan.Payload.Beam.Youngs != 70e9 {
		t.Fatalf("the plan's modulus is %v", p.plan)
	}
	p.plan = nil
	p.Hear(Message{Fields: map[string]string{"payload.beam.youngs_modulus_pa": "stiff", "payload.beam.depth_m": "-1"}})
	p.settle()
	if p.plan != nil || p.pieces["fault payload.beam.youngs_modulus_pa"] == "" {
		t.Errorf("pieces %v", p.pieces)
	}
}
