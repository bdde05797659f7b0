package study

import (
	"math"
	"strings"
	"testing"

	"cohoist/core/energy"
	"cohoist/core/example"
	"cohoist/core/report"
	"cohoist/core/solve"
	"cohoist/ui/talk"
)

// Every example's section has the numbers of the core, a row for every vehicle in each of its tables, and says what is outside the model.
func TestNear(t *testing.T) {
	for _, ex := range example.All {
		p := named(t, ex.Name)
		g := opened(t, p, talk.Air)
		piece := g.pieces[talk.Air]
		m := (&Turn{Question: Question{Ask: talk.Ask{Plan: p, Report: report.Build(p)}}}).model()
		a := m.Share(solve.NewSolver())
		study := energy.At(m, a)
		if n := strings.Count(piece, `class="tr"`); n != 3*len(p.Team) {
			t.Errorf("%s: %d rows", ex.Name, n)
		}
		for _, n := range study.Wakes(a.Parts) {
			if n.Outside != "" && !strings.Contains(piece, "outside the model") {
				t.Errorf("%s: %s is outside, which is not said", ex.Name, n.ID)
			}
		}
		t.Logf("%s: %s\n%s", ex.Name, g.pieces[talk.Air+"-gist"], letters(piece))
	}
}

// What is switched off goes; a plate gripped at its height, on the ground, has rotors below half a radius; no payload hovers below the ground.
func TestSwitches(t *testing.T) {
	p := named(t, "lattice-panel")
	g := opened(t, p, talk.Air)
	all := strings.Count(g.pieces[talk.Air], "<h3>")
	g.set(map[string]string{"air.ground": "off", "air.wakes": "off"})
	if n := strings.Count(g.pieces[talk.Air], "<h3>"); n != all-2 || strings.Contains(g.pieces[talk.Air], "Cheeseman") {
		t.Errorf("%d parts of %d are left", n, all)
	}
	plate := opened(t, named(t, "sensor-plate"), talk.Air)
	plate.set(map[string]string{"air.height": "0 m"})
	if !strings.Contains(letters(plate.pieces[talk.Air]), "below half a radius: outside the model") {
		t.Errorf("on the ground: %s", letters(plate.pieces[talk.Air]))
	}
	g.set(map[string]string{"air.height": "-1"})
	if g.pieces["fault air.height"] == "" {
		t.Error("below the ground")
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
