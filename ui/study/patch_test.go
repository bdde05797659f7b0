package study

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"cohoist/core/example"
	"cohoist/core/patch"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/solve"
	"cohoist/core/vec"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// patched opens the patch of a plan with the losses asked for.
func patched(t *testing.T, p plan.Plan, u format.Units) *page {
	t.Helper()
	g := newPage(talk.Live)
	g.gen++
	g.Hear(Message{Set: map[string]string{"patch.losses": "true"}, Ask: &talk.Ask{Gen: g.gen, Plan: p, Report: report.Build(p), Units: u, Open: []string{talk.Patch}}})
	g.settle()
	for k, v := range g.pieces {
		if strings.Contains(v, "grief") {
			t.Errorf("%s: %s", k, v)
		}
	}
	return g
}

// surface of a polygon in square units of the picture.
func surface(polygon [][2]float64) (sum float64) {
	for i, b := range polygon {
		a := polygon[(i+len(polygon)-1)%len(polygon)]
		sum += (a[0]*b[1] - a[1]*b[0]) / 2
	}
	return math.Abs(sum)
}

// Every example says the core's distance to the edge, and draws the patch to scale: its area in the picture over that of
// a square on the scale's bar is its area in square metres, to the hundredths that the picture keeps.
func TestPatches(t *testing.T) {
	for _, ex := range example.All {
		p := named(t, ex.Name)
		g := patched(t, p, format.SI)
		piece, m := g.pieces[talk.Patch], modelOf(p)
		found := patch.Of(m, solve.NewSolver())
		c := &Patch{Units: format.SI}
		if found.Status == solve.Optimal && strings.Count(piece, c.length(math.Abs(found.Edge))) < 2 {
			t.Errorf("%s: %g m to the edge is not said", ex.Name, found.Edge)
		}
		if len(found.Inner) > 2 {
			bar := pairs(t, piece, "pa-bar")
			label := regexp.MustCompile(`class="pa-scale"[^>]*>([\d.]+).(m|mm)<`).FindStringSubmatch(piece)
			long, _ := strconv.ParseFloat(label[1], 64)
			if label[2] == "mm" {
				long /= 1000
			}
			scale := (bar[1][0] - bar[0][0]) / long
			if got := surface(pairs(t, piece, "pa-inner")) / scale / scale; math.Abs(got-found.Area()) > 2e-3*found.Area() {
				t.Errorf("%s: drawn %g m², is %g m²", ex.Name, got, found.Area())
			}
		}
		for _, m := range p.Team {
			if !strings.Contains(piece, ">"+m.ID+"</text>") {
				t.Errorf("%s: %s has no attachment", ex.Name, m.ID)
			}
		}
		t.Logf("%s: %s\n%s", ex.Name, g.pieces[talk.Patch+"-gist"], letters(piece))
	}
}

// The beam on two cables, by hand as in core/check: 2 g (1 + δ/1 m) + 3.4 g = 0.8 × 76 N at δ = 0.39994 m, both
// ways. In other units it is as long.
func TestALine(t *testing.T) {
	p := named(t, "beam-pair")
	g := patched(t, p, format.Units{Length: "in", Mass: "kg", Force: "N"})
	want := format.Units{Length: "in"}.Show(format.Length, 2*0.39994) // 31.49 in
	for _, says := range []string{"on a line only, " + want, "towards ", "free attitude, chapter 12", "without any one of A and B it is held nowhere"} {
		if !strings.Contains(g.pieces[talk.Patch], says) {
			t.Errorf("not said: %s\n%s", says, letters(g.pieces[talk.Patch]))
		}
	}
	if !strings.Contains(g.pieces[talk.Patch+"-gist"], "On a line of "+want) {
		t.Errorf("%s", g.pieces[talk.Patch+"-gist"])
	}
}

// What is left after losses: of the crate, whose lost vehicles are cut away, the core's own distance; nothing of it
// unless asked for.
func TestPatchAfterLosses(t *testing.T) {
	p := named(t, "crate-ring")
	p.Site.Wind, p.Limits.TensionMin, p.Limits.Lost = 0, 0, plan.CutAway
	left := patch.AnyLost(modelOf(p), solve.NewSolver(), nil).All
	if left.Status != solve.Optimal || !(left.Edge > 0) {
		t.Fatalf("%+v", left)
	}
	piece := patched(t, p, format.SI).pieces[talk.Patch]
	c := &Patch{Units: format.SI}
	for _, says := range []string{"is left, drawn with dots; as planned the centre of mass stands " + c.length(left.Edge) + " inside it", "One lost on a cable is cut away", `class="pa-lost"`} {
		if !strings.Contains(piece, says) {
			t.Errorf("not said: %s\n%s", says, letters(piece))
		}
	}
	if n := strings.Count(piece, `class="pa-each"`); n != len(p.Team) {
		t.Errorf("%d patches after a loss are drawn", n)
	}
	if piece := opened(t, p, talk.Patch).pieces[talk.Patch]; strings.Contains(piece, "vehicle lost") || strings.Contains(piece, "pa-each") {
		t.Error("losses nobody asked for")
	}
}

// One cable holds in one place; a load without weight may stand anywhere; too heavy a one nowhere; one planned
// beside its patch says so, and one wrong by more than there is room for too.
func TestOddPatches(t *testing.T) {
	one := named(t, "beam-pair")
	one.Team, one.Limits.Utilisation = one.Team[:1], 1
	aside := named(t, "crate-ring")
	aside.Payload.COM, aside.Site.Wind = &vec.V3{0.5, 0, 0}, 0
	unsure := named(t, "deck-of-eight")
	unsure.Limits.COMError = 0.06
	light := named(t, "sensor-plate")
	for i := range light.Payload.Solids {
		light.Payload.Solids[i].Mass = 0
	}
	for _, c := range []struct {
		p          plan.Plan
		gist, says string
	}{
		{one, "outside of where it may be", "in one place only, x = "},
		{light, "weighs nothing", "may stand anywhere"},
		{named(t, "lens-too-heavy"), "Nowhere:", "one would still need"},
		{aside, "outside of where it may be", " outside; the patch is towards 180°"},
		{unsure, "In a patch of", "which reaches 0.01\u202fm beyond the edge"},
		{named(t, "lattice-panel"), "In a patch of", "All of the payload lies within it"},
	} {
		g := patched(t, c.p, format.SI)
		if !strings.Contains(g.pieces[talk.Patch+"-gist"], c.gist) || !strings.Contains(g.pieces[talk.Patch], c.says) {
			t.Errorf("%q, want %q\n%s", g.pieces[talk.Patch+"-gist"], c.says, letters(g.pieces[talk.Patch]))
		}
	}
}
