package study

import (
	"math"
	"strings"
	"testing"

	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/vec"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// What is typed wrong is said in a sentence at its input, and the search is disabled.
func TestWhereFormFaults(t *testing.T) {
	for _, c := range []struct {
		example     string
		set         []string
		input, says string
	}{
		{"handrail-beam", []string{"pitch", "wide"}, "pitch", "“wide” is not a number"},
		{"handrail-beam", []string{"pitch", "0 m"}, "pitch", "Holes must be some way apart."},
		{"handrail-beam", []string{"pitch", "-1 m"}, "pitch", "It must be from 0 to 1000"},
		{"handrail-beam", []string{"margin", "3,5 m"}, "margin", "This margin leaves nothing of the payload."},
		{"handrail-beam", []string{"pitch", "5 m"}, "kind", "There are fewer places than vehicles to place"},
		{"handrail-beam", []string{"zones.m", "0 0 0.3; 1.2 0"}, "zones", "Zone 2 is not x, y and a radius"},
		{"handrail-beam", []string{"zones.m", "0 0 three"}, "zones", "Zone 1 is not x, y and a radius"},
		{"handrail-beam", []string{"off", "2 kg"}, "off", "is a unit of mass, not of length"},
		{"handrail-beam", []string{"kind", "list"}, "list", "Paste a list of holes"},
		{"handrail-beam", []string{"kind", "list", "list", "x,y\n0,0\n1;oops\n"}, "list", "Line 3 of the holes: \"oops\" is no number"},
		{"handrail-beam", []string{"kind", "along", "goal", "0 2"}, "goal", "A front is drawn over holes"},
		{"handrail-beam", []string{"stay.A", "true", "stay.B", "true", "stay.C", "true"}, "stay", "No vehicle of the team may move"},
		{"lattice-panel", []string{"goal", "1"}, "goal", "needs a payload that is a beam along x"},
	} {
		g := asked(named(t, c.example), c.set...)
		got := g.pieces["where-fault-"+c.input]
		if !strings.Contains(got, escape(c.says)) || !strings.HasSuffix(got, ".") {
			t.Errorf("%v: %s says %q, want %q", c.set, c.input, got, c.says)
		}
		if !strings.Contains(g.pieces["where-form"], `id="where-find" data-do="where find" disabled`) {
			t.Errorf("%v: the search is not disabled", c.set)
		}
		g.press("find")
		if best := g.pieces["where-best"]; strings.Contains(best, "where-proof") {
			t.Errorf("%v: searched all the same", c.set)
		}
	}
}

// read is the form of an example with settings.
func read(t *testing.T, p plan.Plan, u format.Units, set ...string) *choices {
	t.Helper()
	m := map[string]string{}
	for i := 0; i+1 < len(set); i += 2 {
		m["where."+set[i]] = set[i+1]
	}
	return choose(&Turn{Question: Question{Ask: talk.Ask{Plan: p, Report: report.Build(p), Units: u}, Set: m}, id: talk.Where})
}

// Points lie where the form says, in the unit in which they were typed.
func TestWhereFormPoints(t *testing.T) {
	deck := named(t, "deck-of-eight")
	inMillimetres := format.Units{Length: "mm", Mass: "kg", Force: "N"}
	for _, c := range []struct {
		name  string
		got   *choices
		holes int
		first vec.V3
	}{
		{"a row", read(t, deck, format.SI, "kind", "row", "pitch", "0,4 m"), 11, vec.V3{-2, 0, 0.04}},
		{"a row that does not come out even stands in the middle", read(t, deck, format.SI, "kind", "row", "pitch", "0.7 m"), 6, vec.V3{-1.75, 0, 0.04}},
		{"a row with a margin", read(t, deck, format.SI, "kind", "row", "pitch", "0.4 m", "margin", "0.4 m"), 9, vec.V3{-1.6, 0, 0.04}},
		{"edges", read(t, deck, format.SI, "kind", "edges", "pitch", "0.4 m"), 28, vec.V3{-2, -0.8, 0.04}},
		{"a grid", read(t, deck, format.SI, "kind", "grid", "pitch", "0.4 m"), 55, vec.V3{-2, -0.8, 0.04}},
		{"a grid around a zone", read(t, deck, format.SI, "kind", "grid", "pitch", "0.4 m", "zones.m", "0 0 0,45"), 50, vec.V3{-2, -0.8, 0.04}},
		{"a list in mm", read(t, deck, format.SI, "kind", "list", "list-unit", "mm", "list", "x;y\n-1500;700\n1500,5;700\n", "spacing", "0 m"), 2, vec.V3{-1.5, 0.7, 0.04}},
		{"typed in m, shown in mm", read(t, deck, inMillimetres, "kind", "row", "pitch", "0.4 m"), 11, vec.V3{-2, 0, 0.04}},
		{"typed in mm", read(t, deck, inMillimetres, "kind", "row", "pitch", "400 mm", "zones.m", "0 0 0.1"), 10, vec.V3{-2, 0, 0.04}},
		{"by itself", read(t, deck, format.SI), 42, vec.V3{-2, -0.8, 0.04}},
	} {
		if len(c.got.holes) != c.holes || c.got.holes[0].Sub(c.first).Norm() > 1e-9 {
			t.Errorf("%s: %d holes, %v", c.name, len(c.got.holes), c.got.holes)
		}
	}
	c := read(t, deck, inMillimetres, "pitch", "0.4 m")
	if got := c.written("pitch", 1); got != "400" {
		t.Errorf("0.4 m is written %q in mm", got)
	}
	if c := read(t, named(t, "crate-ring"), format.SI); math.Abs(c.asks.Spacing-0.55) > 0.0015 { // its cables lean apart
		t.Errorf("a spacing of %g m", c.asks.Spacing)
	}
}
