package study

import (
	"strings"
	"testing"

	"cohoist/core/link"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// A kept plan stands beside the changed one: the inputs that differ, and no others, and what that changes.
func TestCompare(t *testing.T) {
	p := newPage(talk.Live)
	set := map[string]string{}
	send := p.Send
	p.Send = func(a Answer) {
		for k, v := range a.Set {
			set[k] = v
		}
		send(a)
	}
	first := named(t, "beam-pair")
	p.ask(first, talk.Compare)
	p.settle()
	p.Hear(Message{Do: "compare keep"})
	p.settle()
	if set["compare.kept"] != link.Encode(first) {
		t.Fatalf("kept %q", set["compare.kept"])
	}
	changed := first.Clone()
	changed.Payload.Solids[0].Mass = 5
	p.Hear(Message{Set: set})
	p.ask(changed, talk.Compare)
	p.settle()
	piece := p.pieces[talk.Compare]
	for _, want := range []string{"payload.solids[0].mass_kg", "5\u202fkg", "4\u202fkg", "Thrust margin", `id="compare-link"`} {
		if !strings.Contains(piece, want) {
			t.Errorf("the comparison does not hold %q", want)
		}
	}
	if n := strings.Count(piece, "<code>"); n != 1 {
		t.Errorf("%d inputs differ, want 1: %s", n, piece)
	}
	p.Hear(Message{Do: "compare open 0"})
	p.settle()
	if p.plan == nil || !plan.Same(*p.plan, first) {
		t.Error("the kept plan is not opened")
	}
	p.Hear(Message{Do: "compare drop 0"})
	p.settle()
	if set["compare.kept"] != "" {
		t.Errorf("dropped, and %q is kept", set["compare.kept"])
	}
}

// A check that only one of two plans is asked still has its row, and a damaged variant is said.
func TestCompareDifferentTeams(t *testing.T) {
	a, b := named(t, "beam-pair"), named(t, "lattice-panel")
	v := &Variants{Units: format.SI}
	v.add("a", "", a, report.Build(a))
	v.add("b", "0", b, report.Build(b))
	rows := map[string]Line{}
	for _, l := range v.checks() {
		rows[l.Name] = l
	}
	if l := rows["Loads on the grips"]; len(l.Cells) != 2 || l.Cells[0].Text != "–" || !l.Cells[1].Differs {
		t.Errorf("loads on the grips: %+v", l)
	}
	p := newPage(talk.Live)
	p.Hear(Message{Set: map[string]string{"compare.kept": "p1.nonsense+" + link.Encode(b)}})
	p.ask(a, talk.Compare)
	p.settle()
	if s := p.pieces[talk.Compare]; !strings.Contains(s, "cannot be read") || !strings.Contains(s, "Lattice panel") {
		t.Errorf("the piece is %s", s)
	}
}
