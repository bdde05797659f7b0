package study

import (
	"math"
	"strings"
	"testing"

	"cohoist/core/check"
	"cohoist/core/energy"
	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// Every example's section has the five cases and a row for every vehicle in each of its tables, with the numbers of the core, and says what is
// outside the model.
func TestNear(t *testing.T) {
	for _, ex := range example.All {
		p := named(t, ex.Name)
		g := opened(t, p, talk.Air)
		piece := letters(g.pieces[talk.Air])
		if n := strings.Count(g.pieces[talk.Air], `class="tr"`); n != 5+3*len(p.Team) {
			t.Errorf("%s: %d rows", ex.Name, n)
		}
		q := p.Clone()
		q.Near = plan.Near{Ground: plan.Counted, Download: plan.Counted, Wakes: plan.Counted, Clearance: heightUntil}
		r := report.Build(q)
		for _, v := range append(report.Build(p).Vehicles, r.Vehicles...) {
			if want := format.Share(v.Utilisation); !strings.Contains(piece, want) {
				t.Errorf("%s: the section lacks %s", ex.Name, want)
			}
		}
		for _, row := range r.Checks {
			if row.ID == "near" && row.Status == check.OutsideModel && !strings.Contains(piece, "outside the model") {
				t.Errorf("%s: %s, which is not said", ex.Name, row.Sentence)
			}
		}
		t.Logf("%s: %s\n%s", ex.Name, g.pieces[talk.Air+"-gist"], piece)
	}
}

// A button counts a term in the plan and leaves it out again; the ground is counted at the height that is shown. The sentence follows.
func TestCountIt(t *testing.T) {
	p := named(t, "beam-pair")
	p.Near = plan.Near{Clearance: math.NaN()}
	for _, c := range []struct {
		do   string
		want plan.Near
	}{
		{"download", plan.Near{Download: plan.Counted, Clearance: math.NaN()}}, {"wakes", plan.Near{Wakes: plan.Counted, Clearance: math.NaN()}},
		{"ground", plan.Near{Ground: plan.Counted, Clearance: heightUntil}},
	} {
		a, turn := &airs{}, &Turn{Question: Question{Ask: talk.Ask{Plan: p}}, program: &Program{}}
		a.do(turn, c.do)
		got := turn.answer.Plan
		if got == nil || !plan.Same(plan.Plan{Near: got.Near}, plan.Plan{Near: c.want}) {
			t.Fatalf("%s: %+v", c.do, got)
		}
		turn = &Turn{Question: Question{Ask: talk.Ask{Plan: *got}}, program: &Program{}}
		a.do(turn, c.do)
		if back := turn.answer.Plan; *airTerm(back, map[string]int{"ground": airGround, "download": airDownload, "wakes": airWakes}[c.do]) != plan.LeftOut {
			t.Errorf("%s: %+v", c.do, back.Near)
		}
	}
	bare := opened(t, p, talk.Air)
	if got := bare.pieces[talk.Air+"-gist"]; !strings.HasPrefix(got, "Wash on the payload would take 12") {
		t.Error(got)
	}
	p.Near.Download = plan.Counted
	if got := opened(t, p, talk.Air).pieces[talk.Air+"-gist"]; !strings.HasPrefix(got, "Wash on the payload takes 12") {
		t.Error(got)
	}
}

// Every example's comparison of sizes says where many beat one; with thrust over weight kept, any single size that can hover at all carries anything, and
// with tip speed kept, a heavy payload is beyond one.
func TestSizes(t *testing.T) {
	for _, ex := range example.All {
		g := opened(t, named(t, ex.Name), talk.Sizes)
		piece := g.pieces[talk.Sizes]
		if n := strings.Count(piece, `class="en-row"`); n != mostUntil {
			t.Errorf("%s: %d rows", ex.Name, n)
		}
		t.Logf("%s: %s\n%s", ex.Name, g.pieces[talk.Sizes+"-gist"], letters(piece))
	}
	g := opened(t, named(t, "beam-pair"), talk.Sizes)
	g.set(map[string]string{"sizes.payload": "60", "sizes.most": "30"}) // 3.05 kg each at most, 20 times
	if got := letters(g.pieces[talk.Sizes]); !strings.Contains(got, "No single field-quad, however large, carries 60\u202fkg; 20 can.") || !strings.Contains(got, "at most 3.05\u202fkg") {
		t.Error(got)
	}
	g.set(map[string]string{"sizes.payload": "400"})
	if got := letters(g.pieces[talk.Sizes]); !strings.Contains(got, "Not even 12 vehicles like field-quad carry 400\u202fkg") {
		t.Error(got)
	}
	g.set(map[string]string{"sizes.payload": "400", "sizes.law": string(energy.Froude)})
	if got := letters(g.pieces[talk.Sizes]); strings.Contains(got, "No single") {
		t.Error(got)
	}
}

// A plan that lacks a number has no answer, and no fault.
func TestNearOfNone(t *testing.T) {
	lacking := named(t, "beam-pair")
	lacking.Payload.Solids[0].Mass = math.NaN()
	for _, id := range []string{talk.Sizes, talk.Air, talk.Energy} {
		opened(t, lacking, id)
	}
}
