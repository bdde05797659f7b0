package study

import (
	"strings"
	"testing"

	"cohoist/core/advice"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// Three equal vehicles are one line each: the list has no two lines that differ in the name only.
func TestAlikeVehiclesAreOneLine(t *testing.T) {
	a, _ := advice.Of(named(t, "lens-too-heavy"), nil)
	c := &Movers{Advice: a}
	for i, m := range c.list() {
		if m.ID == "vehicles.mass_kg" && len(m.alike) != 2 || !strings.HasSuffix(m.sentence(), ".") {
			t.Errorf("line %d: %q", i, m.sentence())
		}
		if c.part(m) == "0" {
			t.Errorf("line %d has no bar", i)
		}
	}
	if c.part(c.list()[0]) != "100.0" {
		t.Errorf("the strongest has a bar of %s", c.part(c.list()[0]))
	}
	r := &Remedies{Advice: a, Troubled: true}
	if r.gist() != format.Together(a.Remedies[0].Sentence) {
		t.Errorf("the gist is %q", r.gist())
	}
}

// With both sections open on a lift in trouble, both are filled, though the advice is worked out once.
func TestBothHalvesOfAdviceAreShown(t *testing.T) {
	for _, name := range []string{"lens-too-heavy", "beam-pair"} {
		p := newPage(talk.Live)
		p.ask(named(t, name), talk.WouldDo, talk.Moves)
		p.settle()
		if p.pieces[talk.WouldDo] == "" || p.pieces[talk.Moves] == "" {
			t.Errorf("%s: pieces of %d and %d letters", name, len(p.pieces[talk.WouldDo]), len(p.pieces[talk.Moves]))
		}
	}
}
