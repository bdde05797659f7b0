package study

import (
	"math"
	"os"
	"regexp"
	"strings"
	"testing"

	"cohoist/core/place"
	"cohoist/core/plan"
	"cohoist/core/vec"
	"cohoist/ui/talk"
)

// asked is a page with the section open on a plan, with settings in turn: name, value.
func asked(p plan.Plan, set ...string) *page {
	g := newPage(talk.Long)
	m := map[string]string{}
	for i := 0; i+1 < len(set); i += 2 {
		m["where."+set[i]] = set[i+1]
	}
	g.Hear(Message{Set: m})
	g.ask(p, talk.Where)
	g.settle()
	return g
}

// press presses a button of the section.
func (p *page) press(what string) {
	p.Hear(Message{Do: talk.Where + " " + what})
	p.settle()
}

// A newcomer's question: where do the three take the handrail beam, holes every 150 mm.
func TestHandrailPlaces(t *testing.T) {
	p := named(t, "handrail-beam")
	g := asked(p)
	if got := g.pieces["where-gist"]; got != "not searched yet: 41 holes 150\u202fmm apart" {
		t.Errorf("the gist is %q", got)
	}
	if !strings.Contains(g.pieces["where-form"], `id="where-find"`) || g.values["where-pitch"] != "0.15" || g.values["where-spacing"] != "0.9" || g.values["where-off"] != "0.02" {
		t.Errorf("values %v", g.values)
	}
	g.press("find")
	q, _ := plan.Assume(p)
	ask := place.Question{Plan: q, Spacing: 0.9, Cases: place.Cases{Off: 0.02}}
	want, err := place.OnHoles(ask, place.InRow(vec.V3{-3, 0, 0.025}, vec.V3{3, 0, 0.025}, 0.15), nil)
	if err != nil {
		t.Fatal(err)
	}
	best := g.pieces["where-best"]
	if !strings.Contains(best, used(want.Value)) || !strings.Contains(best, escape(want.Proof.Words())) {
		t.Errorf("not %s, %s: %s", used(want.Value), want.Proof.Words(), best)
	}
	g.press("take")
	if g.plan == nil {
		t.Fatal("the places are not taken")
	}
	ask.Plan, _ = plan.Assume(*g.plan)
	ask.Free = nil
	if v, _, err := place.Value(ask); err != nil || math.Abs(v-want.Value) > 1e-9 {
		t.Errorf("the plan taken has %g, the best is %g, %v", v, want.Value, err)
	}
	if a := g.plan.Team; !(a[0].Attach[0] > a[1].Attach[0] && a[1].Attach[0] > a[2].Attach[0]) {
		t.Errorf("the vehicles changed places: %v %v %v", a[0].Attach, a[1].Attach, a[2].Attach)
	}
	g.ask(*g.plan, talk.Where)
	g.settle()
	if got := g.pieces["where-gist"]; !strings.HasPrefix(got, "Taken: ") {
		t.Errorf("the gist is %q", got)
	}
	p = p.Clone()
	p.Payload.Solids[0].Mass = 1.8
	g.ask(p, talk.Where)
	g.settle()
	if got := g.pieces["where-gist"]; !strings.HasPrefix(got, "Of an earlier plan: ") || !strings.Contains(g.pieces["where-best"], `id="where-take" data-do="where take" disabled`) {
		t.Errorf("the gist is %q", got)
	}
}

// Every class of the section has a rule.
func TestWhereIsStyled(t *testing.T) {
	css, err := os.ReadFile("../../public/where.css")
	if err != nil {
		t.Fatal(err)
	}
	html := ""
	for _, set := range [][]string{{"zones", "", "stay.A", "true", "kind", "list", "list", "0,0"}, {"kind", "along"}, {"goal", "1 2"}} {
		g := asked(named(t, "handrail-beam"), set...)
		g.press("find")
		g.press("many")
		for name, piece := range g.pieces {
			if strings.HasPrefix(name, talk.Where) {
				html += piece
			}
		}
	}
	seen := map[string]bool{}
	for _, m := range regexp.MustCompile(`class="([^"]*)"`).FindAllStringSubmatch(html, -1) {
		for _, c := range strings.Fields(m[1]) {
			if strings.HasPrefix(c, "wh-") && !seen[c] && !regexp.MustCompile(`\.`+c+`\b`).Match(css) {
				t.Errorf("class %s has no rule in public/where.css", c)
			}
			seen[c] = true
		}
	}
	if len(seen) < 40 {
		t.Errorf("only %d classes were seen", len(seen))
	}
}
