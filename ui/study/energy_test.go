package study

import (
	"math"
	"slices"
	"strings"
	"testing"

	"cohoist/core/energy"
	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/solve"
	"cohoist/core/vec"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// Every example's section has the numbers of the core, a row for each vehicle with its working, and a sentence that the report agrees with.
func TestHolds(t *testing.T) {
	for _, ex := range example.All {
		p := named(t, ex.Name)
		g := opened(t, p, talk.Energy)
		r := report.Build(p)
		m := (&Turn{Question: Question{Ask: talk.Ask{Plan: p, Report: r}}}).model()
		s := solve.NewSolver()
		study := energy.Of(m, s, m.Share(s))
		piece := g.pieces[talk.Energy]
		for _, v := range study.Vehicles {
			if !strings.Contains(piece, watts(v.Power)) || !strings.Contains(piece, format.Span(v.Time)) {
				t.Errorf("%s: %s holds %g s at %g W", ex.Name, v.ID, v.Time, v.Power)
			}
		}
		list, _, _ := strings.Cut(piece, "energy-evened")
		if n := strings.Count(list, `class="en-row"`); n != len(p.Team) || strings.Count(piece, `<ol class="steps">`) < n {
			t.Errorf("%s: %d rows of %d", ex.Name, n, len(p.Team))
		}
		if gist := g.pieces[talk.Energy+"-gist"]; !strings.Contains(gist, r.Team.HoldEnds[0]) && !strings.Contains(gist, "all end together") || strings.Contains(gist, "Say what") {
			t.Errorf("%s: %s", ex.Name, gist)
		}
		t.Logf("%s: %s\n%s", ex.Name, g.pieces[talk.Energy+"-gist"], letters(piece))
	}
}

// set sets settings of a page whose plan has the section open.
func (p *page) set(settings map[string]string) {
	p.Hear(Message{Set: settings})
	p.settle()
}

// The route of the form: by hand, 600 m at 6 m/s take 1 min 40 s; what is none is said beside it.
func TestRoutes(t *testing.T) {
	g := opened(t, named(t, "beam-pair"), talk.Energy)
	g.set(map[string]string{"energy.route": "600 6 0"})
	if piece := letters(g.pieces[talk.Energy]); !strings.Contains(piece, "The route of 600 m is flown in 1 min 40 s") {
		t.Error(piece)
	}
	for text, want := range map[string]string{"600": "Leg 1 is to be two or three numbers", "600 6; 5 x": "Leg 2: “x” is not a number", "600 0": "the speed must lie", ";": "no leg",
		"-5 3": "the distance must lie", strings.Repeat("1 1;", 13): "more than 12 legs"} {
		g.set(map[string]string{"energy.route": text})
		if got := g.pieces["fault energy.route"]; !strings.Contains(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	g.set(map[string]string{"energy.route": "9000 5"})
	if piece := letters(g.pieces[talk.Energy]); !strings.Contains(piece, "ends the route after") {
		t.Error(piece)
	}
}

// Until a route is typed the plan's way is one: 30 m along x in the 10 s that it says, a climb, 40 m back at its largest speed.
func TestTheWayIsARoute(t *testing.T) {
	nan := math.NaN()
	p := named(t, "beam-pair")
	p.Way.SpeedMax = 4
	for i, at := range []vec.V3{{0, 0, 1}, {30, 0, 1}, {30, 0, 9}, {-10, 0, 9}} {
		p.Way.Points = append(p.Way.Points, plan.Waypoint{At: at, Heading: nan, Time: []float64{nan, 10, nan, nan}[i]})
	}
	legs := legsOf(p.Way)
	if want := []energy.Leg{{Distance: 30, Speed: 3}, {Distance: 40, Speed: 4, To: 180}}; !slices.Equal(legs, want) {
		t.Fatalf("%v, want %v", legs, want)
	}
	if piece := letters(opened(t, p, talk.Energy).pieces[talk.Energy]); !strings.Contains(piece, "The route of 70 m is flown in 20 s") {
		t.Error(piece)
	}
}

// What feeds a class is typed into the plan; what is missing is asked for by its path.
func TestFeeding(t *testing.T) {
	p := named(t, "beam-pair")
	c := p.Vehicles["field-quad"]
	c.Battery, c.FigureOfMerit = plan.BlankClass().Battery, math.NaN()
	p.Vehicles["field-quad"] = c
	g := opened(t, p, talk.Energy)
	if got := letters(g.pieces[talk.Energy]); !strings.Contains(got, "needs vehicles.field-quad.figure_of_merit and vehicles.field-quad.battery.energy_wh") {
		t.Error(got)
	}
	g.Hear(Message{Fields: map[string]string{"vehicles.field-quad.battery.energy_wh": "200", "vehicles.field-quad.figure_of_merit": "0,6"}})
	g.settle()
	if g.plan == nil || g.plan.Vehicles["field-quad"].Battery.Energy != 200 || g.plan.Vehicles["field-quad"].FigureOfMerit != 0.6 {
		t.Fatalf("%q, %q", g.pieces["fault vehicles.field-quad.battery.energy_wh"], g.pieces["fault vehicles.field-quad.figure_of_merit"])
	}
	if r := report.Build(*g.plan); !(r.Team.Hold > 0) {
		t.Errorf("still not held: %v", r.Notes)
	}
}

// commas is a static test as a spreadsheet of another country writes it: semicolons, decimal commas, a repeated row. Invented.
const commas = "Schub (g);Leistung (W);Gas (%)\n200;14,2;20\n500;46,5;40\n500;46,9;40\n900;103,8;60\n1400;196,5;80\n1900;311,0;100\n"

// A file without a column for power opens with words that name the columns; chosen by hand the columns do, decimal commas and the repeated row are
// said, and a button puts the rows into the plan. By hand: 1400 gf are 13.7293 N.
func TestStaticTest(t *testing.T) {
	g := opened(t, named(t, "beam-pair"), talk.Energy)
	g.set(map[string]string{"energy.sheet.field-quad": "thrust (g);amps (A)\n1,5;2\n3,5;4\n"})
	if got := g.pieces["energy-bench-0"]; !strings.Contains(got, "The file has no column for power, and none for voltage and current to compute it from. Its columns are “thrust (g)”, “amps (A)”.") {
		t.Errorf("%s", letters(got))
	}
	g.set(map[string]string{"energy.sheet.field-quad": commas})
	if got := g.pieces["energy-bench-0"]; !strings.Contains(got, "The file has no column for thrust. Its columns are “Schub (g)”, “Leistung (W)”, “Gas (%)”.") || !strings.Contains(got, `disabled`) {
		t.Errorf("%s", letters(got))
	}
	key := "energy.field-quad." + digest([]string{"Schub (g)", "Leistung (W)", "Gas (%)"}) + "."
	chosen := map[string]string{"energy.sheet.field-quad": commas, key + "col.thrust": "0", key + "col.power": "1", key + "col.throttle": "2"}
	g.set(chosen)
	got := letters(g.pieces["energy-bench-0"])
	for _, want := range []string{"Its numbers have decimal commas.", "1 row repeats a throttle", "5 rows read: thrust 1.96 to 18.6\u202fN, power 14.2 to 311\u202fW", "throttle 20 to 100\u202f%"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not said:\n%s", want, got)
		}
	}
	if g.values["energy-bench-0-unit-thrust"] != "gf" || g.values["energy-bench-0-col-speed"] != "none" {
		t.Errorf("%v", g.values)
	}
	g.Hear(Message{Do: "energy use field-quad"})
	g.settle()
	if g.plan == nil || len(g.plan.Vehicles["field-quad"].Bench) != 5 || math.Abs(g.plan.Vehicles["field-quad"].Bench[3].Thrust-13.7293) > 1e-4 || math.Abs(g.plan.Vehicles["field-quad"].Bench[1].Power-46.7) > 1e-9 {
		t.Fatalf("%+v", g.plan)
	}
	g.ask(*g.plan, talk.Energy)
	g.settle()
	if got := g.pieces["energy-bench-0"]; !strings.Contains(got, "The plan uses a static test of field-quad with 5 rows.") || !strings.Contains(got, "A works at ") {
		t.Errorf("%s", letters(got))
	}
	g.Hear(Message{Do: "energy drop field-quad"})
	g.settle()
	if len(g.plan.Vehicles["field-quad"].Bench) != 0 {
		t.Error("the test stays")
	}
}
