package study

import (
	"math"
	"os"
	"regexp"
	"strings"
	"testing"

	"cohoist/core/cargo"
	"cohoist/core/plan"
	"cohoist/ui/talk"
)

// loaded is a page with the cargo list open and worked out.
func loaded(p plan.Plan) *page {
	g := newPage(talk.Slow)
	g.ask(p, talk.Cargo)
	g.settle()
	return g
}

// The example's list has the numbers of the core: a row, a sentence and a picture for each item, in the order found.
func TestACargo(t *testing.T) {
	p := named(t, "landing-frame")
	g := loaded(p)
	s, _ := cargo.Of(p, nil)
	piece, gist := g.pieces[talk.Cargo], g.pieces[talk.Cargo+"-gist"]
	if want := "9 items, all of which the team lifts, in " + clock(s.Best.Time) + " with 2 packs for each vehicle."; gist != want {
		t.Errorf("%s, want %s", gist, want)
	}
	plain, from := letters(piece), 0
	for k, stop := range s.Best.Stops {
		it := s.Items[stop.Item]
		at := strings.Index(plain[from:], it.ID)
		if at < 0 || !strings.Contains(piece, lasts(it.Own.Time)) {
			t.Errorf("step %d, %s of %g s, is not in its place", k+1, it.ID, it.Own.Time)
			continue
		}
		from += at
	}
	if n := strings.Count(piece, " data-on="); n != 2 { // words and picture
		t.Errorf("%d frames are shown at first", n)
	}
	if n := strings.Count(piece, `class="cg-last"`); n != 2*len(s.Items) {
		t.Errorf("%d pictures of a last item", n)
	}
	if n := strings.Count(piece, `class="cg-carry"`); n != len(s.Items)+1 { // and the legend's
		t.Errorf("%d carryings on the timeline", n)
	}
	for _, says := range []string{"all were ruled out", "In the crew’s order", "at the lowest", "t_own"} {
		if !strings.Contains(piece, says) {
			t.Errorf("the piece does not say %q", says)
		}
	}
	g.Hear(Message{Set: map[string]string{"cargo.item": "deck"}})
	g.settle()
	if other := g.pieces[talk.Cargo]; other == piece || !strings.Contains(other, "t_own") {
		t.Error("another item has the same working")
	}
	t.Logf("%d bytes\n%s", len(piece), plain)
}

// What a list lacks, and what cannot be done, is said.
func TestCargoSays(t *testing.T) {
	for _, c := range []struct {
		name, gist, piece string
		change            func(*plan.Plan)
	}{
		{"no home", "9 items, all of which the team lifts; say where home is.", "", func(p *plan.Plan) { p.Cargo.Home[0] = math.NaN() }},
		{"a deck of lead", "9 items, 8 of which the team lifts; 8 can be set, in ", "fails", func(p *plan.Plan) { p.Cargo.Items[8].Payload.Solids[0].Mass = 30 }},
		{"a heavy column", "9 items, 5 of which the team lifts; nothing can be set.", "It stands on column NE, which is not set.", func(p *plan.Plan) { p.Cargo.Items[0].Payload.Solids[0].Mass = 30 }},
		{"one pack", "9 items, all of which the team lifts, but the packs do not suffice for any order.", "", func(p *plan.Plan) { p.Cargo.Packs = 1 }},
		{"beams first", "9 items, all", "beam N cannot be set: column NE, which it stands on, is not there yet", func(p *plan.Plan) {
			p.Cargo.Items[0], p.Cargo.Items[4] = p.Cargo.Items[4], p.Cargo.Items[0]
		}},
		{"no packs known", "9 items, all of which the team lifts, in ", "Packs and energy are left out, as the plan does not say vehicles.field-quad.battery.energy_wh", func(p *plan.Plan) {
			q := p.Vehicles["field-quad"]
			q.Battery.Charge = math.NaN()
			p.Vehicles["field-quad"] = q
		}},
		{"a gap", "9 items", "deck is to stand on beam E, but where they are set its underside does not touch it.", func(p *plan.Plan) { p.Cargo.Items[8].Set[2] = 3 }},
		{"one item", "1 item, which the team lifts, in ", "", func(p *plan.Plan) { p.Cargo.Items = p.Cargo.Items[:1] }},
	} {
		p := named(t, "landing-frame").Clone()
		c.change(&p)
		if faults := plan.Validate(p); len(faults) > 0 {
			t.Fatalf("%s: %s", c.name, faults)
		}
		g := loaded(p)
		if got := g.pieces[talk.Cargo+"-gist"]; !strings.HasPrefix(got, c.gist) || !strings.Contains(letters(g.pieces[talk.Cargo]), c.piece) {
			t.Errorf("%s: %s\n%s", c.name, got, letters(g.pieces[talk.Cargo]))
		}
	}
	if g := loaded(named(t, "beam-pair")); g.pieces[talk.Cargo+"-gist"] != talk.Of(talk.Cargo).Closed || g.pieces[talk.Cargo] != "" {
		t.Errorf("without items: %q", g.pieces[talk.Cargo+"-gist"])
	}
}

// The list is edited by buttons, and stays a plan without faults.
func TestCargoEdits(t *testing.T) {
	p := named(t, "landing-frame")
	do := func(what string) {
		t.Helper()
		g := loaded(p)
		g.Hear(Message{Do: "cargo " + what})
		g.settle()
		if g.plan == nil {
			t.Fatalf("%s: no plan", what)
		}
		if faults := plan.Validate(*g.plan); len(faults) > 0 {
			t.Errorf("%s: %s", what, faults)
		}
		p = *g.plan
	}
	names := func() string {
		var list []string
		for _, it := range p.Cargo.Items {
			list = append(list, it.ID)
		}
		return strings.Join(list, ", ")
	}
	s, _ := cargo.Of(p, nil)
	do("take")
	for k, stop := range s.Best.Stops {
		if p.Cargo.Items[k].ID != s.Items[stop.Item].ID {
			t.Errorf("taken: %s", names())
		}
	}
	if again, _ := cargo.Of(p, nil); math.Abs(again.Own.Time-s.Best.Time) > 1e-9*s.Best.Time {
		t.Errorf("the order taken needs %g s, found were %g s", again.Own.Time, s.Best.Time)
	}
	p = named(t, "landing-frame")
	do("down 0")
	do("up 3")
	if got := names(); got != "column NW, column NE, column SE, column SW, beam N, beam S, beam E, beam W, deck" {
		t.Error(got)
	}
	do("remove 1") // column NE, whose payload the other columns have
	if it := p.Cargo.Items[0]; it.ID != "column NW" || it.Like != "" || it.Payload.Solids[0].Mass != 6 || it.Attach != plan.Scaled || p.Cargo.Items[1].Like != "column NW" {
		t.Errorf("the heir is %+v", it)
	}
	if on := p.Cargo.Items[3].On; len(on) != 1 || on[0] != "column NW" {
		t.Errorf("beam N stands on %q", on)
	}
	do("add")
	if it := p.Cargo.Items[8]; it.ID != "item 9" || it.Like != "deck" || it.Set[1] != 1 {
		t.Errorf("added: %+v", it)
	}
	do("own 8")
	if it := p.Cargo.Items[8]; it.Like != "" || it.Payload.Solids[0].Mass != 9 {
		t.Errorf("with a payload of its own: %+v", it)
	}
	for _, shape := range append(itemShapes, plan.Box) {
		do("shape 0 " + shape)
	}
	if size := p.Cargo.Items[0].Payload.Solids[0].Size; len(size) != 3 || size[0] != 0.12 {
		t.Errorf("turned through all shapes: %v", size)
	}
	g := loaded(p)
	g.Hear(Message{Fields: map[string]string{"cargo.items[3].id": "north"}})
	g.settle()
	if got := g.plan.Cargo.Items[5]; got.On[0] != "north" || g.pieces["fault cargo.items[3].id"] != "" {
		t.Errorf("renamed: %q, %q", got.On, g.pieces["fault cargo.items[3].id"])
	}
	g.Hear(Message{Fields: map[string]string{"cargo.items[3].on": "column NW, deck"}})
	g.settle()
	if got := g.pieces["fault cargo.items"]; !strings.Contains(got, "wait for themselves") {
		t.Errorf("a loop: %q", got)
	}
	g.Hear(Message{Fields: map[string]string{"cargo.packs": ""}})
	g.settle()
	if g.plan.Cargo.Packs != 0 {
		t.Errorf("packs left out: %d", g.plan.Cargo.Packs)
	}
	p = named(t, "beam-pair")
	do("add")
	if it := p.Cargo.Items[0]; len(p.Cargo.Items) != 1 || it.Payload.Solids[0].Mass != 4 {
		t.Errorf("the first: %+v", it)
	}
}

// Every class of the section has a rule.
func TestCargoIsStyled(t *testing.T) {
	css, err := os.ReadFile("../../public/studies.css")
	if err != nil {
		t.Fatal(err)
	}
	p := named(t, "landing-frame").Clone()
	p.Cargo.Items[8].Payload.Solids[0].Mass = 30
	p.Cargo.Items[7].Payload.Solids = nil
	g := loaded(p)
	seen := 0
	for _, m := range regexp.MustCompile(`class="([^"]*)"`).FindAllStringSubmatch(g.pieces[talk.Cargo]+g.pieces[talk.Cargo+"-form"], -1) {
		for _, c := range strings.Fields(m[1]) {
			if strings.HasPrefix(c, "cg-") {
				seen++
				if !regexp.MustCompile(`\.` + c + `\b`).Match(css) {
					t.Errorf("class %s has no rule in public/studies.css", c)
				}
			}
		}
	}
	if seen < 100 {
		t.Errorf("only %d classes were seen", seen)
	}
}
