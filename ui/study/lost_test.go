package study

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"cohoist/core/example"
	"cohoist/core/lost"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/solve"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// opened opens a section of a plan and gives its piece.
func opened(t *testing.T, p plan.Plan, id string) *page {
	t.Helper()
	g := newPage(talk.Live)
	g.ask(p, id)
	g.settle()
	for k, v := range g.pieces {
		if strings.Contains(v, "grief") {
			t.Errorf("%s: %s", k, v)
		}
	}
	if g.pieces[id+"-gist"] == "" {
		t.Errorf("%s has no gist", id)
	}
	return g
}

// letters is what a piece says.
func letters(html string) string {
	html = regexp.MustCompile(`(?s)<svg.*?</svg>`).ReplaceAllString(html, "")
	html = regexp.MustCompile(`</(p|li|div|figcaption|h3|summary)>`).ReplaceAllString(html, "\n")
	html = regexp.MustCompile(`</span>|</b>`).ReplaceAllString(html, " | ")
	return regexp.MustCompile(`<[^>]*>`).ReplaceAllString(html, "")
}

// Every example's section has the numbers of the core: each single loss in its row and its square.
func TestLosses(t *testing.T) {
	for _, ex := range example.All {
		p := named(t, ex.Name)
		g := opened(t, p, talk.Lost)
		m := (&Turn{Question: Question{Ask: talk.Ask{Plan: p, Report: report.Build(p)}}}).model()
		study := lost.Of(m, solve.NewSolver(), nil)
		piece := g.pieces[talk.Lost]
		for _, e := range study.Entries {
			if n := need(e); e.Kind == lost.Vehicle && strings.Count(piece, n) < 2 {
				t.Errorf("%s: %s is not said of %v", ex.Name, n, e.Lost)
			}
			for _, l := range e.Lines {
				if l.Peak < l.Before || l.Peak < l.After*(1-1e-9) {
					t.Errorf("%s: %+v", ex.Name, l)
				}
			}
		}
		n := len(p.Team)
		if squares := strings.Count(piece, `class="lo-cell`); n > 1 && squares != n+n*(n-1)/2+n {
			t.Errorf("%s: %d squares of a team of %d", ex.Name, squares, n)
		}
		t.Logf("%s: %s\n%s", ex.Name, g.pieces[talk.Lost+"-gist"], letters(piece))
	}
}

// The crate's lost vehicles cut away, by hand as in core/lost: without one of six in still air four of the rest carry
// 9 kg/4 each and the opposite one idles, so that a line goes from 9 g/6 = 14.7 N to 22.1 N and swings to 29.4 N. In kgf
// these are 1.5, 2.25 and 3.
func TestCutAway(t *testing.T) {
	p := named(t, "crate-ring")
	p.Site.Wind, p.Limits.TensionMin, p.Limits.Lost = 0, 0, plan.CutAway
	g := newPage(talk.Live)
	g.gen++
	u := format.Units{Length: "cm", Mass: "kg", Force: "kgf"}
	g.Hear(Message{Ask: &talk.Ask{Gen: 1, Plan: p, Report: report.Build(p), Units: u, Open: []string{talk.Lost}}})
	g.settle()
	piece := letters(g.pieces[talk.Lost])
	if n := strings.Count(piece, "1.5\u202fkgf | 2.25\u202fkgf, "); n != 6 {
		t.Errorf("%d lines go from 1.5 to 2.25 kgf:\n%s", n, piece)
	}
	if n := strings.Count(piece, "| 3\u202fkgf | "); n != 6 || !strings.Contains(piece, "suddenly applied load") {
		t.Errorf("%d lines swing to 3 kgf:\n%s", n, piece)
	}
	if !strings.HasPrefix(g.pieces[talk.Lost+"-gist"], "Any one vehicle may be lost") || !strings.Contains(piece, "Left hanging instead: no vehicle may be lost") {
		t.Errorf("%s\n%s", g.pieces[talk.Lost+"-gist"], piece)
	}
	if g.values["f-limits-lost"] != plan.CutAway {
		t.Errorf("the form says %v", g.values)
	}
}

// A line beyond its working load in the first swing is said to be.
func TestALineTooWeak(t *testing.T) {
	p := named(t, "crate-ring")
	p.Site.Wind, p.Limits.TensionMin, p.Limits.Lost = 0, 0, plan.CutAway
	p.Team[2].Hold.WorkingLoad = 28 // the swing is to 29.4 N, the rest to 22.1 N
	g := opened(t, p, talk.Lost)
	if piece := g.pieces[talk.Lost]; !strings.Contains(piece, "The line of C is loaded beyond its working load") || !strings.Contains(piece, "✕ 105") {
		t.Errorf("%s", letters(piece))
	}
}

// One vehicle alone, a team that does not hold hover, one of forty-one, and a plan that lacks a number each say
// what there is to say.
func TestLossesOfOddTeams(t *testing.T) {
	one := named(t, "beam-pair")
	one.Team = one.Team[:1]
	many := named(t, "crate-ring")
	for i := range 35 {
		m := many.Team[i%6]
		m.ID = "X" + strconv.Itoa(i)
		many.Team = append(many.Team, m)
	}
	lacking := named(t, "crate-ring")
	lacking.Payload.Solids[0].Mass = math.NaN()
	for _, c := range []struct {
		p    plan.Plan
		gist string
		says string
	}{
		{one, "There is no other vehicle", "no pair of vehicles to lose"},
		{named(t, "lens-too-heavy"), "No vehicle may be lost", "not held"},
		{many, "Any one vehicle may be lost", "Pairs are asked up to 40 vehicles."},
		{lacking, "cannot be worked out yet", ""},
	} {
		g := opened(t, c.p, talk.Lost)
		if !strings.Contains(g.pieces[talk.Lost+"-gist"], c.gist) || !strings.Contains(g.pieces[talk.Lost], c.says) {
			t.Errorf("%q\n%s", g.pieces[talk.Lost+"-gist"], letters(g.pieces[talk.Lost]))
		}
	}
	if g := opened(t, lacking, talk.Lost); g.pieces[talk.Lost] != "" {
		t.Error("an answer without a question")
	}
}

// Closed, the section says its sentence once the plan rests and only if somebody looks at a study; open, it
// does not wait.
func TestQuickStudiesWait(t *testing.T) {
	p := named(t, "crate-ring")
	g := newPage(talk.Live)
	g.ask(p)
	g.settle()
	if got := g.pieces[talk.Lost+"-gist"]; got != talk.Of(talk.Lost).Closed {
		t.Errorf("nobody looks: %q", got)
	}
	waited := 0
	g.Pause = func(ms int) {
		if ms > 0 {
			waited++
		}
	}
	g.ask(p, talk.Bent)
	g.settle()
	if got := g.pieces[talk.Lost+"-gist"]; !strings.HasPrefix(got, "No vehicle may be lost") || waited != restSteps {
		t.Errorf("somebody looks elsewhere: %q after %d pauses", got, waited)
	}
	g.Pause = func(ms int) {
		if ms > 0 && g.pieces[talk.Lost] == "" {
			t.Error("the open section waits")
		}
	}
	g.ask(p, talk.Lost)
	g.settle()
}
