package study

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"cohoist/core/place"
	"cohoist/core/plan"
	"cohoist/core/vec"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// row is the handrail's holes every 150 mm.
func row() []vec.V3 { return place.InRow(vec.V3{-3, 0, 0.025}, vec.V3{3, 0, 0.025}, 0.15) }

// A search stops when asked, when the plan changes and when a choice changes; a vehicle that stays stays.
func TestWhereStops(t *testing.T) {
	for name, m := range map[string]Message{
		"stop":   {Do: "where stop"},
		"choice": {Set: map[string]string{"where.goal": "0 2", "where.spacing": "0 m", "where.kind": "grid", "where.lost": "true"}},
	} {
		g := asked(named(t, "deck-of-eight"), "goal", "0 2", "spacing", "0 m", "kind", "grid")
		paused := 0
		g.Pause = func(int) {
			if paused++; paused == 40 { // a front over 118 million placements
				g.Hear(m)
			}
		}
		g.press("find")
		if got := g.pieces["where-best"]; strings.Contains(got, "<progress") || !strings.Contains(got, "Stopped before anything was found.") || paused > 300 {
			t.Errorf("%s: %d pauses, %s", name, paused, got)
		}
	}
	g := asked(named(t, "deck-of-eight"), "stay.B", "true")
	g.press("find")
	g.press("take")
	if g.plan == nil || g.plan.Team[1].Attach != named(t, "deck-of-eight").Team[1].Attach || g.plan.Team[0].Attach == named(t, "deck-of-eight").Team[0].Attach {
		t.Error("B does not stay, or A does")
	}
}

// The front's points are those of place.Pareto, and each can be taken.
func TestWhereFront(t *testing.T) {
	p := named(t, "handrail-beam")
	g := asked(p, "goal", "1 2")
	g.press("find")
	q, _ := plan.Assume(p)
	goals := [2]place.Goal{place.Moment, place.Agility}
	want, _, err := place.Pareto(place.Question{Plan: q, Spacing: 0.9, Cases: place.Cases{Off: 0.02}}, goals, row(), nil)
	if err != nil || len(want) < 3 || len(want) > mostPairs {
		t.Fatal(len(want), err)
	}
	html := g.pieces["where-best"]
	for i, w := range want {
		n := strconv.Itoa(i + 1)
		if !strings.Contains(html, `id="where-point-`+n+`"`) || !strings.Contains(html, `id="where-front-`+n+`"`) {
			t.Errorf("placement %d has no button", i+1)
		}
		g.press("front " + strconv.Itoa(i))
		for k, goal := range goals {
			ask := place.Question{Goal: goal}
			ask.Plan, _ = plan.Assume(*g.plan)
			if v, _, err := place.Value(ask); err != nil || math.Abs(v-w.Values[k]) > 1e-6*w.Values[k] { // places are rounded to micrometres
				t.Errorf("placement %d has %g, not %g, %v", i+1, v, w.Values[k], err)
			}
		}
		g.ask(*g.plan, talk.Where) // another can be taken after it
		g.settle()
	}
}

// The table is that of place.HowMany; a row taken is a team of so many.
func TestWhereHowMany(t *testing.T) {
	p := named(t, "handrail-beam")
	g := asked(p, "lost", "true")
	g.press("many")
	q, _ := plan.Assume(p)
	rows := place.HowMany(place.Question{Plan: q, Spacing: 0.9, Cases: place.Cases{Off: 0.02, Lost: true}}, mostVehicles, manyNodes, row(), nil)
	least := place.Smallest(rows)
	if least != 4 {
		t.Fatalf("the least is %d", least)
	}
	html := g.pieces["where-table"]
	if strings.Count(html, "the fewest that pass") != 1 || !strings.Contains(html, "survey quads that hold every case within 80\u202f%: 4, one of them lost too.") {
		t.Errorf("the table is %s", html)
	}
	for _, r := range rows {
		_, at, _ := strings.Cut(html, `id="where-team-`+strconv.Itoa(r.Vehicles)+`"`)
		at, _, _ = strings.Cut(at, `role="row"`)
		if r.Answer.Places != nil && !strings.Contains(at, used(r.OneLost)) {
			t.Errorf("%d: %s is not %s", r.Vehicles, at, used(r.OneLost))
		}
	}
	g.press("team 4")
	if g.plan == nil || len(g.plan.Team) != 4 || g.plan.Team[3].ID != "D" || g.plan.Team[3].Vehicle != "survey-quad" || len(plan.Validate(*g.plan)) > 0 {
		t.Fatalf("the team is %+v", g.plan)
	}
	ask := place.Question{Cases: place.Cases{Lost: true}}
	ask.Plan, _ = plan.Assume(*g.plan)
	if v, _, err := place.Value(ask); err != nil || math.Abs(v-rows[3].OneLost) > 1e-6 {
		t.Errorf("with one lost %g, not %g, %v", v, rows[3].OneLost, err)
	}
}

// The cost of a shift is place.Shift's; the range in words ends where the limit is.
func TestWhereCost(t *testing.T) {
	p := named(t, "handrail-beam")
	c := read(t, p, format.SI)
	s := c.cells(0, fineLine, fineMap)
	if !s.work(&Turn{program: &Program{}}, c) || len(s.values) != fineLine {
		t.Fatal(len(s.values))
	}
	var at []vec.V3
	for i := range s.values {
		at = append(at, s.at(i))
	}
	q, _ := plan.Assume(p)
	want, err := place.Shift(place.Question{Plan: q, Cases: place.Cases{Off: 0.02}}, 0, at)
	if err != nil {
		t.Fatal(err)
	}
	for i := range want {
		if want[i] != s.values[i] && math.Abs(want[i]-s.values[i]) > 1e-12 {
			t.Errorf("cell %d: %g, not %g", i, s.values[i], want[i])
		}
	}
	spans := s.spans()
	if len(spans) != 1 {
		t.Fatal(spans)
	}
	ends, err := place.Shift(place.Question{Plan: q, Cases: place.Cases{Off: 0.02}}, 0, []vec.V3{{spans[0].from, 0, 0.025}})
	if err != nil || math.Abs(ends[0]-s.limit) > 1e-4 { // by proportion between cells 50 mm apart
		t.Errorf("at the end of the range %g, the limit is %g, %v", ends, s.limit, err)
	}
	g := asked(named(t, "deck-of-eight"))
	if html := g.pieces["where-cost"]; !strings.Contains(html, "Moving A alone") || !strings.Contains(html, `class="wh-contour"`) || !strings.Contains(html, "to the limit, 80.0\u202f%") {
		t.Errorf("the map is %s", html)
	}
	g = asked(named(t, "deck-of-eight"), "who", "C")
	if html := g.pieces["where-cost"]; !strings.Contains(html, "Moving C alone") || g.values["where-who"] != "C" {
		t.Error("C is not the one that moves")
	}
}

// A plan that cannot be answered is said to be so, and nothing panics.
func TestWhereWithoutAnAnswer(t *testing.T) {
	for name, change := range map[string]func(*plan.Plan){
		"no team":  func(p *plan.Plan) { p.Team = nil },
		"no mass":  func(p *plan.Plan) { p.Payload.Solids[0].Mass = math.NaN() },
		"blank":    func(p *plan.Plan) { *p = plan.Blank() },
		"heavy":    func(p *plan.Plan) { p.Payload.Solids[0].Mass = 1e4 },
		"no place": func(p *plan.Plan) { p.Team[0].Attach = vec.V3{math.NaN(), math.NaN(), math.NaN()} },
		"no solid": func(p *plan.Plan) { p.Payload.Solids = nil },
	} {
		for _, set := range [][]string{nil, {"kind", "inside"}, {"goal", "0 2"}, {"kind", "grid", "mirror-x", "true"}} {
			p := named(t, "handrail-beam").Clone()
			change(&p)
			g := newPage(talk.Long)
			m := Message{Set: map[string]string{}, Ask: &talk.Ask{Gen: 1, Plan: p, Units: format.SI, Open: []string{talk.Where}}}
			for i := 0; i+1 < len(set); i += 2 {
				m.Set["where."+set[i]] = set[i+1]
			}
			g.Hear(m)
			g.settle()
			g.press("find")
			g.press("many")
			g.press("take")
			g.press("front 9")
			g.press("team 99")
			for k, v := range g.pieces {
				if strings.Contains(v, "came to grief") || strings.Contains(v, "NaN") {
					t.Errorf("%s %v: %s is %s", name, set, k, v)
				}
			}
		}
	}
}
