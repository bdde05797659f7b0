package study

import (
	"errors"
	"math"
	"strings"
	"time"

	"cohoist/core/plan"
	"cohoist/core/solve"
	"cohoist/core/vec"
	"cohoist/core/way"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// ways is where the payload goes, and how fast the team can.
type ways struct {
	typedFor string // the plan's own way when a text was typed that is not its own yet
	begun    bool
	journey  *journey
	flight   *flight
	refused  string // why an opening cannot be passed
	of       string // the way that it is of
}

// asInPlan is a text's setting while the plan's own is shown.
const asInPlan = "="

func (w *ways) See(t *Turn) {
	t.Say(talk.Way+"-gist", w.gist(t))
	if !t.Opened(talk.Way) {
		return
	}
	w.form(t, false)
	w.show(t)
}

func (w *ways) Do(t *Turn, what string) {
	if which, ok := strings.CutPrefix(what, "pass "); ok {
		w.pass(t, which)
		return
	}
	switch what {
	case "find":
		w.find(t)
	case "fly":
		w.fly(t)
	case "start":
		p := t.Plan.Clone()
		p.Way = firstWay(p)
		t.Take(p, "way-points")
	}
}

// form shows what is asked for. What was typed into its two texts becomes the plan's, or stays with a fault beside it. It
// counts until the plan's way is another than the one it was typed for: the page refuses a plan made from an older one.
func (w *ways) form(t *Turn, running bool) {
	own := wayText(t.Plan, t.Units)
	if !w.begun || w.typedFor != "" && w.typedFor != own {
		w.begun = true
		w.forget(t)
	}
	w.typedFor = ""
	next := t.Plan.Clone()
	points, wrong := w.typed(t, "points", writePoints(next.Way.Points, t.Units), func(text string) (err error) {
		next.Way.Points, err = readPoints(text, t.Units)
		return err
	})
	boxes, wrongToo := w.typed(t, "boxes", writeBoxes(next.Way.Boxes, t.Units), func(text string) (err error) {
		next.Way.Boxes, err = readBoxes(text, t.Units)
		return err
	})
	openings, wrongThere := w.typed(t, "openings", writeOpenings(next.Way.Openings, t.Units), func(text string) (err error) {
		next.Way.Openings, err = readOpenings(text, t.Units)
		return err
	})
	wrong = wrong || wrongToo || wrongThere
	if w.refused != "" && w.of == own && !wrong {
		t.Say("fault way.openings", w.refused)
	}
	faults := plan.Validate(next)
	switch {
	case wrong:
		w.typedFor = own
	case wayText(next, t.Units) == own:
		w.forget(t)
	case len(faults) > 0:
		t.Say("fault way.points", faults[0].Path+" "+faults[0].Wrong+". "+faults[0].Fix)
		w.typedFor, wrong = own, true
	default:
		w.typedFor = own
		t.Take(next, "")
	}
	entries := []Entry{{Path: "way.speed_max_m_s", Until: "no limit"}}
	t.Show(talk.Way+"-form", &WayForm{Units: t.Units, Entries: entries, Running: running, Rows: max(4, len(t.Plan.Way.Points)+1),
		Empty: len(t.Plan.Way.Points) == 0, Faulty: wrong, Boxes: max(2, len(t.Plan.Way.Boxes)+1),
		Openings: max(2, len(t.Plan.Way.Openings)+1), Passes: passes(t.Plan)})
	t.fill(entries)
	t.Value("way-points", points)
	t.Value("way-boxes", boxes)
	t.Value("way-openings", openings)
}

// wayText is a plan's way as it is typed.
func wayText(p plan.Plan, u format.Units) string {
	return writePoints(p.Way.Points, u) + "\n" + writeBoxes(p.Way.Boxes, u) + "\n" + writeOpenings(p.Way.Openings, u)
}

// typed is what stands in a text of the form, and whether it has a fault, which is said.
func (w *ways) typed(t *Turn, name, own string, read func(string) error) (text string, wrong bool) {
	text = t.Setting(name, asInPlan)
	t.Say("fault way."+name, "")
	if text == asInPlan {
		return own, false
	}
	if err := read(text); err != nil {
		t.Say("fault way."+name, err.Error())
		return text, true
	}
	return text, false
}

// forget makes the form show the plan's own texts.
func (w *ways) forget(t *Turn) {
	for _, name := range []string{"points", "boxes", "openings"} {
		if t.Setting(name, asInPlan) != asInPlan {
			t.Keep(name, asInPlan)
			delete(t.Set, t.id+"."+name)
		}
	}
}

// firstSpeed is the largest speed of a way to begin with, m/s (common practice, no source).
const firstSpeed = 1.5

// firstWay is a way to begin with: up, along and round by a quarter turn, and down, with a stop at both corners, and no faster than
// a first lift goes.
func firstWay(p plan.Plan) plan.Way {
	w := plan.Way{SpeedMax: p.Way.SpeedMax}
	if !(w.SpeedMax > 0) {
		w.SpeedMax = firstSpeed
	}
	for i, at := range []vec.V3{{0, 0, 0}, {0, 0, 2}, {6, 0, 2}, {6, 0, 0}} {
		heading, pass := 0.0, ""
		if i > 1 {
			heading = 90
		}
		if i == 1 || i == 2 {
			pass = plan.Stop
		}
		w.Points = append(w.Points, plan.Waypoint{At: at, Heading: heading, Pass: pass, Time: math.NaN(), Spacing: math.NaN(), Width: math.NaN(), Along: math.NaN()})
	}
	return w
}

// find works the way out, and says how far it is a few times a second.
func (w *ways) find(t *Turn) {
	w.form(t, true)
	j := &journey{name: planned, of: t.Plan, units: t.Units}
	w.journey, w.flight = j, nil
	defer func() { w.form(t, false) }()
	j.model = t.model()
	switch {
	case j.model == nil:
		j.fault = "It cannot be worked out yet; the checks say what is missing."
		return
	case len(t.Plan.Way.Points) < 2:
		j.fault = "Write at least two waypoints."
		return
	}
	for i, o := range t.Plan.Way.Openings {
		if math.IsNaN(o.At.Norm() + o.Normal + o.Width + o.Height) {
			j.fault = "Opening " + digits(i+1) + openingNeeds
			return
		}
	}
	s := solve.NewSolver()
	answer := j.model.Share(s)
	if answer.Status != solve.Optimal {
		j.fault = "The lift does not balance in hover, so it goes nowhere."
		return
	}
	j.apart = answer.Apart
	full, _ := plan.Assume(t.Plan)
	j.route, j.limits = way.Of(full, j.model)
	last := time.Now()
	tell := func(text string) bool {
		if time.Since(last) > often {
			last = time.Now()
			t.Show(talk.Way, &WayGoing{Says: text})
			t.Say(talk.Way+"-gist", "Searching …")
			t.Send()
		}
		return t.GoOn()
	}
	last = last.Add(-2 * often)
	j.work(s, tell)
	if j.fault == "" && !j.stopped {
		t.Value("way-at", digits(j.worst))
	}
}

// work finds the way and looks at it.
func (j *journey) work(s *solve.Solver, tell func(string) bool) {
	start := time.Now()
	j.route.GoOn = func(solved int) bool {
		return tell("Looking for the shortest time: " + several(solved, "instant", "instants") + " solved.")
	}
	found, err := j.route.Shortest(j.model, j.apart, j.limits, s)
	switch {
	case errors.Is(err, way.ErrStopped):
		j.stopped = true
		return
	case err != nil:
		j.fault = sentence(err)
		return
	}
	j.found = found
	j.legs = way.Legs(j.model, j.apart, found.Path, j.limits, s)
	for i := range j.count() + 1 {
		if !tell("Looking at the way.") {
			j.stopped = true
			return
		}
		j.frames = append(j.frames, way.InstantAt(j.model, j.apart, found.Path, found.Duration()*float64(i)/float64(j.count()), s))
	}
	for _, l := range j.legs {
		j.peaks = append(j.peaks, way.InstantAt(j.model, j.apart, found.Path, l.At, s))
	}
	watched, ok := j.route.Watch(j.model, j.apart, found.Path, formOf(j.model.Plan.Payload), s, func() bool { return tell("Watching what comes near on it.") })
	if j.watched = watched; !ok {
		j.stopped = true
		return
	}
	j.settle()
	j.took = time.Since(start)
}

// show puts what was found on the page.
func (w *ways) show(t *Turn) {
	j := w.journey
	switch {
	case j == nil || j.stopped:
		t.Show(talk.Way, &WayGoing{Idle: true, Says: w.gist(t)})
	case j.fault != "":
		t.Show(talk.Way, &WayGoing{Idle: true, Says: j.standing(t) + j.fault})
	default:
		j.units = t.Units
		t.Show(talk.Way, &Way{Journey: j, Fresh: same(j.of, t.Plan), Choices: flightChoices(t), Walls: wallChoices(t.Units)})
		w.showFlight(t)
		w.showWall(t)
	}
}

// gist is the section in a sentence.
func (w *ways) gist(t *Turn) string {
	j := w.journey
	switch {
	case len(t.Plan.Way.Points) == 0 && (j == nil || !same(j.of, t.Plan)):
		return talk.Of(talk.Way).Closed
	case j == nil:
		return several(len(t.Plan.Way.Points), "waypoint", "waypoints") + ", not worked out yet."
	case j.stopped:
		return "Stopped before it was found."
	case j.fault != "":
		return j.standing(t) + j.fault
	}
	return j.standing(t) + j.outcome()
}

// standing says that what was found belongs to an earlier plan.
func (j *journey) standing(t *Turn) string {
	if same(j.of, t.Plan) {
		return ""
	}
	return "Of an earlier plan: "
}
