package study

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"cohoist/core/example"
	"cohoist/core/gust"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// modelOf is the model of a plan as the studies have it.
func modelOf(p plan.Plan) *share.Model {
	return (&Turn{Question: Question{Ask: talk.Ask{Plan: p, Report: report.Build(p)}}}).model()
}

// pairs are the coordinates of the first path of a class.
func pairs(t *testing.T, piece, class string) (list [][2]float64) {
	t.Helper()
	m := regexp.MustCompile(`class="` + class + `" d="([^"]*)"`).FindStringSubmatch(piece)
	if m == nil {
		t.Fatalf("there is no %s", class)
	}
	for _, p := range regexp.MustCompile(`[ML](-?[\d.]+) (-?[\d.]+)`).FindAllStringSubmatch(m[1], -1) {
		x, _ := strconv.ParseFloat(p[1], 64)
		y, _ := strconv.ParseFloat(p[2], 64)
		list = append(list, [2]float64{x, y})
	}
	return list
}

// Every example's rose has the speeds of the core, in the table, and to scale in the picture: as far from the middle, in
// units of the outermost ring, as the ring's label says, to the hundredths that the picture keeps.
func TestWinds(t *testing.T) {
	for _, ex := range example.All {
		p := named(t, ex.Name)
		g := opened(t, p, talk.Wind)
		piece := g.pieces[talk.Wind]
		rose := gust.Of(modelOf(p), solve.NewSolver(), nil)
		labels := regexp.MustCompile(`class="wr-label"[^>]*>([\d.]+)`).FindAllStringSubmatch(piece, -1)
		outer, _ := strconv.ParseFloat(labels[len(labels)-1][1], 64)
		corners := pairs(t, piece, "wr-held")
		if len(corners) != gust.Sides || strings.Count(piece, `class="wr-mark`) != gust.Sides {
			t.Fatalf("%s: %d corners", ex.Name, len(corners))
		}
		for i, s := range rose.Sides {
			if row := toward(s.To) + `</span><span role="cell" class="num">` + format.SI.Show(format.Speed, s.Speed) + `<`; !strings.Contains(piece, row) {
				t.Errorf("%s: the table does not say %s", ex.Name, row)
			}
			sin, cos := math.Sincos(s.To * math.Pi / 180)
			r := s.Speed * roseRadius / outer
			if d := math.Hypot(corners[i][0]-roseMiddle-r*cos, corners[i][1]-roseMiddle+r*sin); d > 0.01 {
				t.Errorf("%s: %g° is drawn %g units off", ex.Name, s.To, d)
			}
		}
		t.Logf("%s: %s\n%s", ex.Name, g.pieces[talk.Wind+"-gist"], letters(strings.Split(piece, "<details")[0]))
	}
}

// The site's wind is an arrow as long as its speed towards its direction, its gusts a circle: 5 m/s towards 90° times
// 1.6. They are held where the team holds as much, and the sentence counts the directions.
func TestTheSitesGusts(t *testing.T) {
	p := named(t, "mixed-team")
	p.Site.Wind, p.Site.WindTo, p.Site.GustFactor = 8, 90, 1.6
	g := opened(t, p, talk.Wind)
	piece := g.pieces[talk.Wind]
	if !strings.Contains(g.pieces[talk.Wind+"-gist"], "12.8\u202fm/s are not held") {
		t.Errorf("%s", g.pieces[talk.Wind+"-gist"])
	}
	held := 0
	for _, s := range gust.Of(modelOf(p), solve.NewSolver(), nil).Sides {
		if s.Speed >= 8*1.6 {
			held++
		}
	}
	if want := "would be held towards " + strconv.Itoa(held) + " of the 36 directions"; !strings.Contains(piece, want) || held == 0 || held == gust.Sides {
		t.Errorf("not said: %s", want)
	}
	arrow, radius := pairs(t, piece, "wr-wind"), regexp.MustCompile(`class="wr-gust"[^>]* r="([\d.]+)"`).FindStringSubmatch(piece)
	r, _ := strconv.ParseFloat(radius[1], 64)
	if long := roseMiddle - arrow[1][1]; math.Abs(arrow[1][0]-roseMiddle) > 0.01 || math.Abs(r-1.6*long) > 0.02 {
		t.Errorf("arrow %v, circle %g", arrow, r)
	}
	if g.values["f-site-gust-factor"] != "1.6" {
		t.Errorf("the form has %v", g.values)
	}
	p.Site.Wind = 2
	if got := opened(t, p, talk.Wind).pieces[talk.Wind+"-gist"]; !strings.HasSuffix(got, "the gusts of 3.2\u202fm/s are held.") {
		t.Errorf("%s", got)
	}
}

// What ends the wind: every direction stands in one run, runs go around the circle, and a team of many changes is told
// by the limit alone.
func TestRuns(t *testing.T) {
	c := &Wind{Units: format.SI}
	for i := range gust.Sides {
		s := gust.Side{To: float64(10 * i), Speed: 5, EndedBy: gust.Tilt, Who: []string{"A"}}
		if i == 3 {
			s.EndedBy, s.Speed = gust.Slack, 4
		}
		c.Rose.Sides = append(c.Rose.Sides, s)
	}
	want := []string{"Towards 40° to 20°: ■ tilt of a vehicle at its limit, A; 5\u202fm/s.", "Towards 30°: ◆ a cable that goes slack, A; 4\u202fm/s."}
	if got := c.ends(); strings.Join(got, "|") != strings.Join(want, "|") {
		t.Errorf("%q", got)
	}
	for i := range c.Rose.Sides {
		c.Rose.Sides[i].Who = []string{string(rune('A' + i%3))}
	}
	want[0] = strings.Replace(want[0], ", A", "", 1)
	want[1] = strings.Replace(want[1], ", A", "", 1)
	if got := c.ends(); strings.Join(got, "|") != strings.Join(want, "|") {
		t.Errorf("%q", got)
	}
}

// Cables in a line cannot answer wind across: it is said why. Without drag nothing ends the wind; a team too weak
// for calm holds none; a plan that lacks a number is not asked about.
func TestWindsOfOddTeams(t *testing.T) {
	still := named(t, "crate-ring")
	still.Payload.DragArea = &vec.V3{}
	for name, v := range still.Vehicles {
		v.DragArea = 0
		still.Vehicles[name] = v
	}
	lacking := named(t, "crate-ring")
	lacking.Payload.Solids[0].Mass = math.NaN()
	for _, c := range []struct {
		p          plan.Plan
		gist, says string
	}{
		{named(t, "beam-pair"), "bears no wind in 34 of 36 directions", "free attitude, chapter 12"},
		{still, "40\u202fm/s from every side, the most that is asked", "○ nothing: more was not asked"},
		{named(t, "lens-too-heavy"), "holds no wind: even calm", "in calm"},
		{lacking, "cannot be worked out yet", ""},
	} {
		g := opened(t, c.p, talk.Wind)
		if !strings.Contains(g.pieces[talk.Wind+"-gist"], c.gist) || !strings.Contains(g.pieces[talk.Wind], c.says) {
			t.Errorf("%q\n%s", g.pieces[talk.Wind+"-gist"], letters(g.pieces[talk.Wind]))
		}
	}
}
