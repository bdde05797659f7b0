package study

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// A plan that shares for the longest hold: the sentence and every row are those of the sheet, and the table sets it beside even effort.
func TestLongestHold(t *testing.T) {
	p := named(t, "crate-ring")
	c := p.Vehicles[p.Team[1].Vehicle]
	c.Battery.Charge *= 0.55
	c.Battery.Energy *= 0.55
	p.Vehicles["worn"] = c
	p.Team[1].Vehicle = "worn"
	before := report.Build(p)
	offered := letters(opened(t, p, talk.Energy).pieces[talk.Energy])
	if !strings.Contains(offered, "The sentence that states the lift offers it") || !strings.Contains(offered, "Thrust now") {
		t.Error(offered)
	}
	p.Policy = plan.EqualEndurance
	r := report.Build(p)
	g := opened(t, p, talk.Energy)
	piece := letters(g.pieces[talk.Energy])
	for _, want := range []string{
		"The plan shares for the longest hold: " + format.Span(r.Team.Hold) + ", " + strconv.Itoa(int(math.Round(100*(r.Team.Hold/before.Team.Hold-1)))) + "\u202f% longer than with even effort.",
		"Thrust with even effort", "the plan’s", format.SI.Show(format.Force, r.Vehicles[1].Thrust), format.SI.Show(format.Force, before.Vehicles[1].Thrust)} {
		if !strings.Contains(piece, want) {
			t.Errorf("%q is not said:\n%s", want, piece)
		}
	}
	if gist := g.pieces[talk.Energy+"-gist"]; !strings.Contains(gist, "Held for "+format.Span(r.Team.Hold)) {
		t.Error(gist)
	}
	for i := range p.Team {
		if row := letters(g.pieces[talk.Energy]); !strings.Contains(row, format.SI.Show(format.Force, r.Vehicles[i].Thrust)) {
			t.Errorf("%s: the row has not the sheet's thrust", p.Team[i].ID)
		}
	}
}

// Without packs nothing is shared for the longest hold, and the form to give them is there.
func TestLongestHoldNeedsPacks(t *testing.T) {
	p := named(t, "beam-pair")
	c := p.Vehicles["field-quad"]
	c.Battery = plan.BlankClass().Battery
	p.Vehicles["field-quad"] = c
	p.Policy = plan.EqualEndurance
	g := opened(t, p, talk.Energy)
	if form := g.pieces[talk.Energy+"-form"]; !strings.Contains(form, "vehicles.field-quad.battery.energy_wh") {
		t.Error(form)
	}
	g.Hear(Message{Fields: map[string]string{"vehicles.field-quad.battery.energy_wh": "200"}})
	g.settle()
	if g.plan == nil || report.Build(*g.plan).Team.Hold != report.Build(*g.plan).Team.Hold {
		t.Errorf("%+v", g.plan)
	}
}
