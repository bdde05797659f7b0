package root

import (
	"math"
	"strings"
	"testing"

	"github.com/vugu/vugu"

	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/ui/format"
	"cohoist/ui/markup"
	"cohoist/ui/store"
)

// html is the page of a store as text.
func html(t *testing.T, s *store.Store) string {
	t.Helper()
	env, err := vugu.NewBuildEnv()
	if err != nil {
		t.Fatal(err)
	}
	return markup.Element(env.RunBuild(&Root{Store: s}), "app")
}

func show(t *testing.T, p plan.Plan) (*store.Store, string) {
	t.Helper()
	s := store.New(p, store.Still())
	return s, html(t, s)
}

// Every example's page says the verdict, every check and every vehicle of its report.
func TestThePageSaysWhatTheReportSays(t *testing.T) {
	for _, e := range example.All {
		p, _ := example.Plan(e.Name)
		_, page := show(t, p)
		r := report.Build(p)
		for _, c := range r.Checks {
			if !strings.Contains(page, `id="check-`+c.ID+`"`) || !strings.Contains(page, `data-status="`+string(c.Status)+`"`) {
				t.Errorf("%s: check %s, %s is not on the page", e.Name, c.ID, c.Status)
			}
		}
		for _, v := range r.Vehicles {
			if want := format.Share(v.Utilisation); !strings.Contains(page, want) {
				t.Errorf("%s: vehicle %s's %s is not on the page", e.Name, v.ID, want)
			}
		}
		if !strings.Contains(page, format.SI.Show(format.Mass, r.Payload.Mass)) {
			t.Errorf("%s: the payload's mass is not on the page", e.Name)
		}
		if n := strings.Count(page, `<section id="verdict"`); n != 1 {
			t.Errorf("%s: %d verdicts", e.Name, n)
		}
	}
}

// The policy of the page forbids inline style and script; no component may write any.
func TestNothingInline(t *testing.T) {
	s, _ := show(t, First())
	for _, id := range []string{"payload", "classes", "team", "site", "examples", "check-thrust"} {
		s.SetOpen(id, true)
	}
	page := html(t, s)
	for _, bad := range []string{" style=", "<style", "<script", " onclick=", "javascript:"} {
		if strings.Contains(page, bad) {
			t.Errorf("the page has %q: …%s", bad, page[strings.Index(page, bad):][:80])
		}
	}
}

func TestNamesAreEscaped(t *testing.T) {
	p := First().Clone()
	nasty := `<img src=x onerror=alert(1)>`
	p.Title, p.Note, p.Team[0].ID = nasty, nasty, nasty
	p.Vehicles[nasty] = p.Vehicles[p.Team[0].Vehicle]
	p.Team[0].Vehicle = nasty
	s, _ := show(t, p)
	for _, id := range []string{"payload", "classes", "team", "site"} {
		s.SetOpen(id, true)
	}
	if page := html(t, s); strings.Contains(page, "<img") {
		t.Error("a name became markup")
	}
}

// A report that is still of another team is shown without a slip.
func TestAReportOfAnotherTeam(t *testing.T) {
	s := store.New(First(), store.Ports{Calculator: never{}})
	s.SetOpen("team", true)
	if page := html(t, s); !strings.Contains(page, `id="vehicle-1"`) {
		t.Error("the table does not follow the plan")
	}
}

type never struct{}

func (never) Start(plan.Plan, func(report.Report, error)) {}

// Units change what is shown and nothing else.
func TestUnits(t *testing.T) {
	s, _ := show(t, First())
	want := s.Plan().Payload.Solids[0].Mass
	s.SetUnits(format.Units{Length: "ft", Mass: "lb", Force: "lbf"})
	page := html(t, s)
	if !strings.Contains(page, "lbf") || !strings.Contains(page, ">lb<") && !strings.Contains(page, "\u202flb") {
		t.Error("pounds are not on the page")
	}
	if got := s.Plan().Payload.Solids[0].Mass; got != want {
		t.Errorf("the mass became %v", got)
	}
}

// A plan with almost nothing in it, and one with everything left out, can be shown.
func TestBarePlans(t *testing.T) {
	p := plan.Blank()
	m := plan.BlankMember()
	m.ID, m.Vehicle = "A", "x"
	p.Vehicles = map[string]plan.Class{"x": plan.BlankClass()}
	p.Team = []plan.Member{m}
	for _, shape := range store.Shapes {
		b := plan.BlankSolid()
		b.Shape = shape.Shape
		if n := map[string]int{plan.Box: 3, plan.Plate: 2}[shape.Shape]; n > 0 {
			b.Size = []float64{math.NaN(), math.NaN(), math.NaN()}[:n]
		}
		p.Payload.Solids = []plan.Solid{b}
		s, _ := show(t, p)
		for _, id := range []string{"payload", "classes", "team", "site"} {
			s.SetOpen(id, true)
		}
		if page := html(t, s); !strings.Contains(page, "is-needs") {
			t.Errorf("%s: a plan without numbers does not ask for them", shape.Shape)
		}
	}
}
