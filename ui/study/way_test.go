package study

import (
	"math"
	"strings"
	"testing"

	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/solve"
	"cohoist/core/vec"
	"cohoist/core/way"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// door is the example's page with the section open and its way worked out.
func door(t *testing.T, p plan.Plan) *page {
	t.Helper()
	g := newPage(talk.Long)
	g.ask(p, talk.Way)
	g.settle()
	g.Hear(Message{Do: "way find"})
	g.settle()
	return g
}

// The example's way has the numbers of the core: time, legs, a picture and a sentence for each frame, and the sentence says what limits it.
func TestAWay(t *testing.T) {
	p := named(t, "boathouse-panel")
	g := door(t, p)
	m := (&Turn{Question: Question{Ask: talk.Ask{Plan: p, Report: report.Build(p)}}}).model()
	full, _ := plan.Assume(p)
	r, limits := way.Of(full, m)
	s := solve.NewSolver()
	found, err := r.Shortest(m, m.Share(s).Apart, limits, s)
	if err != nil {
		t.Fatal(err)
	}
	piece, gist := g.pieces[talk.Way], g.pieces[talk.Way+"-gist"]
	if !strings.Contains(gist, lasts(found.Duration())) || !strings.Contains(gist, "is limited by") {
		t.Errorf("%s, found %g s", gist, found.Duration())
	}
	for _, l := range way.Legs(m, m.Share(s).Apart, found.Path, limits, s) {
		if !strings.Contains(piece, lasts(l.Duration)) || !strings.Contains(piece, amount(l.Speed, "m/s")) {
			t.Errorf("a leg of %g s at %g m/s is not shown", l.Duration, l.Speed)
		}
	}
	if n := strings.Count(piece, " data-on="); n != 3 { // words, picture, plots
		t.Errorf("%d frames are shown at first", n)
	}
	if n := strings.Count(piece, "; vehicles tilt up to "); n != mostFrames+1 {
		t.Errorf("%d sentences", n)
	}
	t.Logf("%s\n%d bytes\n%s", gist, len(piece), letters(piece))
}

// What a way keeps shows in its frames: the payload is at the waypoints, in the box on its leg, and no frame is over a limit.
func TestFramesKeepTheLimits(t *testing.T) {
	p := named(t, "boathouse-panel")
	full, _ := plan.Assume(p)
	m := (&Turn{Question: Question{Ask: talk.Ask{Plan: p, Report: report.Build(p)}}}).model()
	j := &journey{of: p, units: format.SI, model: m}
	j.route, j.limits = way.Of(full, m)
	j.work(solve.NewSolver(), func(string) bool { return true })
	if j.fault != "" || len(j.frames) != mostFrames+1 {
		t.Fatal(j.fault, len(j.frames))
	}
	for _, f := range j.frames {
		u, _ := j.hardest(f)
		if !(u <= p.Limits.Utilisation*(1+1e-3)) || !(f.State.Velocity.Norm() <= p.Way.SpeedMax*(1+1e-3)) || !(j.lean(f) <= p.Limits.Cone*math.Pi/180) { // peaks between the instants solved
			t.Errorf("%s", j.says(f))
		}
		box := p.Way.Boxes[0]
		for a := range 3 {
			if f.Leg == box.Leg-1 && !(f.State.At[a] >= box.Min[a]-1e-9 && f.State.At[a] <= box.Max[a]+1e-9) {
				t.Errorf("outside the box at %v", f.State.At)
			}
		}
		// By hand: the door is 2.3 m wide about y = 1 at x = 7, and 0.1 m is kept to its sides.
		for k, at := range f.Places {
			if r := m.Craft[k].Vehicle.Reach; math.Abs(at[0]-7) < r && !(math.Abs(at[1]-1)+r < 1.05+0.005) { // a disc leans by up to 10°
				t.Errorf("%s hits the door at %v", m.Craft[k].ID, at)
			}
		}
	}
	ends := []way.Instant{j.frames[0], j.frames[mostFrames]}
	for i, want := range []plan.Waypoint{p.Way.Points[0], p.Way.Points[len(p.Way.Points)-1]} {
		if d := ends[i].State.At.Sub(want.At).Norm(); d > 1e-9 || math.Abs(ends[i].State.Heading*180/math.Pi-want.Heading) > 1e-7 {
			t.Errorf("it is at %v, %g, not at %v", ends[i].State.At, ends[i].State.Heading, want)
		}
	}
}

// Texts of a way: units, decimal commas, dashes; what is written reads back; what is none is one sentence that names the line.
func TestWayTexts(t *testing.T) {
	feet := format.Units{Length: "ft", Mass: "kg", Force: "N"}
	points, err := readPoints("0 0 1\n\n1,5; -2 80cm 90 \n 3, 4, 5, -, 12,5\n", format.SI)
	if err != nil || len(points) != 3 || points[1].At != [3]float64{1.5, -2, 0.8} || points[1].Heading != 90 || !math.IsNaN(points[2].Heading) || points[2].Time != 12.5 || !math.IsNaN(points[0].Heading) {
		t.Fatalf("%v, %v", points, err)
	}
	again, err := readPoints(writePoints(points, feet), feet)
	if err != nil || len(again) != 3 || again[1].At.Sub(points[1].At).Norm() > 1e-8 || again[2].Time != 12.5 || !math.IsNaN(again[2].Heading) {
		t.Errorf("%q reads %v, %v", writePoints(points, feet), again, err)
	}
	const formed = "1  2  3  -  -  in-line  -  2  90\n1  2  3  90  5  gather\n"
	points, err = readPoints(formed, format.SI)
	if err != nil || points[0].Formation != plan.InLine || points[0].Width != 2 || points[0].Along != 90 || !math.IsNaN(points[0].Spacing) || points[1].Time != 5 {
		t.Errorf("%+v, %v", points, err)
	}
	if got := writePoints(points, format.SI); got != formed {
		t.Errorf("%q", got)
	}
	const stops = "0  0  1\n0  0  2  90  stop\n4  0  2  90  -  in-line  -  2  stop\n4  0  1\n"
	points, err = readPoints(stops, format.SI)
	if err != nil || len(points) != 4 || points[0].Pass != "" || points[1].Pass != plan.Stop || points[2].Pass != plan.Stop || points[2].Width != 2 {
		t.Fatalf("%v, %v", points, err)
	}
	if got := writePoints(points, format.SI); got != stops {
		t.Errorf("%q", got)
	}
	const open = "7  1  2.2  0  2.3  4.4  0.1\n"
	openings, err := readOpenings(open, format.SI)
	if got := writeOpenings(openings, format.SI); err != nil || openings[0].Height != 4.4 || got != open {
		t.Errorf("%+v, %v, %q", openings, err, got)
	}
	if _, err := readOpenings("7 1 2 - 2 3", format.SI); err == nil || !strings.Contains(err.Error(), "Opening 1 needs") {
		t.Error(err)
	}
	boxes, err := readBoxes("2 - - −1 1 0,5 2", format.SI)
	if err != nil || boxes[0].Leg != 2 || !math.IsNaN(boxes[0].Min[0]) || boxes[0].Min[1] != -1 || boxes[0].Max[2] != 2 {
		t.Errorf("%v, %v", boxes, err)
	}
	if text := writeBoxes(boxes, format.SI); text != "2  -  -  −1  1  0.5  2\n" {
		t.Errorf("%q", text)
	}
	for text, want := range map[string]string{"1 2": "Waypoint 1 is to be 3 to 8 numbers", "1 2 3\n1 2 x": "Waypoint 2: “x” is not a number", "1 2 3 4 5 6": "“6” is no formation", "1 2 3 4 5 gather 1 2 3 4": "3 to 8 numbers", "1 2 -": "needs its x, y and z", "1 2 3kg": "Waypoint 1: "} {
		if _, err := readPoints(text, format.SI); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
	for text, want := range map[string]string{"0 1 2": "begins with its leg", "1,5 1 2": "begins with its leg", "1 2 1": "ends along x before it begins"} {
		if _, err := readBoxes(text, format.SI); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
}

// What is typed becomes the plan's in one step; a text with a fault stays as it was typed, until the plan's way is another.
func TestTypingAWay(t *testing.T) {
	g := newPage(talk.Long)
	g.ask(named(t, "beam-pair"), talk.Way)
	g.settle()
	g.Hear(Message{Do: "way start"})
	g.settle()
	if g.plan == nil || len(g.plan.Way.Points) != 4 {
		t.Fatal("no way to begin with")
	}
	g.plan = nil
	const faulty = "0 0 0\n1 2"
	g.set(map[string]string{"way.points": faulty})
	if g.plan != nil || g.values["way-points"] != faulty || !strings.Contains(g.pieces["fault way.points"], "Waypoint 2") {
		t.Errorf("%q, %q", g.values["way-points"], g.pieces["fault way.points"])
	}
	g.set(map[string]string{"way.points": "0 0 0\n2 0 1e9"})
	if g.plan != nil || !strings.Contains(g.pieces["fault way.points"], "way.points[1]") {
		t.Errorf("%q", g.pieces["fault way.points"])
	}
	g.set(map[string]string{"way.points": "0 0 0\n2 0 1,5 90", "way.boxes": "1 - - -1 1"})
	if g.plan == nil || len(g.plan.Way.Points) != 2 || g.plan.Way.Points[1].At[2] != 1.5 || len(g.plan.Way.Boxes) != 1 || g.pieces["fault way.points"] != "" {
		t.Fatalf("%+v", g.plan)
	}
	// the page may refuse, as its plan went on; the next one is given the way again
	heavier := named(t, "beam-pair")
	heavier.Payload.Solids[0].Mass++
	g.set(map[string]string{"way.points": "0 0 0\n5 5 5"})
	g.plan = nil
	g.ask(heavier, talk.Way)
	g.settle()
	if g.plan == nil || len(g.plan.Way.Points) != 2 || g.plan.Payload.Solids[0].Mass != heavier.Payload.Solids[0].Mass {
		t.Errorf("what was typed is lost: %+v", g.plan)
	}
	taken := *g.plan
	g.plan = nil
	g.ask(taken, talk.Way)
	g.settle()
	if g.plan != nil || g.values["way-points"] != "0  0  0\n5  5  5\n" {
		t.Errorf("typed once, taken twice: %q", g.values["way-points"])
	}
	g.set(map[string]string{"way.points": faulty})
	g.ask(named(t, "boathouse-panel"), talk.Way)
	g.settle()
	if !strings.HasPrefix(g.values["way-points"], "0  0  0.6  90\n0.5") || g.pieces["fault way.points"] != "" {
		t.Errorf("%q, %q", g.values["way-points"], g.pieces["fault way.points"])
	}
}

// What cannot be worked out says so in a sentence; a way with times says whether it is too fast; a stopped search says that.
func TestWaysThatAreNone(t *testing.T) {
	p := named(t, "boathouse-panel")
	said := func(p plan.Plan) string { return door(t, p).pieces[talk.Way+"-gist"] }
	at := func(i int, s float64) plan.Plan {
		q := p.Clone()
		q.Way.Points[i].Time = s
		return q
	}
	if got := said(at(7, 60)); !strings.Contains(got, "In the 60\u202fs given it stays within every limit") {
		t.Error(got)
	}
	if got := said(at(7, 8)); !strings.Contains(got, "too fast: leg") && !strings.Contains(got, "cannot hold") {
		t.Error(got)
	}
	if got := said(at(6, 60)); !strings.Contains(got, "at the fastest") { // the last leg is free
		t.Error(got)
	}
	if got := said(at(6, 6)); got != "The team does not stay within its limits with the times given, however slow the rest is." {
		t.Error(got)
	}
	if got := said(at(0, 5)); got != "The times of the points must grow from zero." {
		t.Error(got)
	}
	outside := p.Clone()
	outside.Way.Boxes[0].Min[1] = 1.1
	if got := said(outside); got != "A point lies outside a box of its leg." {
		t.Error(got)
	}
	half := p.Clone()
	half.Way.Openings[0].Width = math.NaN()
	if got := said(half); got != "Opening 1 needs its middle, direction, width and height." {
		t.Error(got)
	}
	one := p.Clone()
	one.Way.Points, one.Way.Boxes = one.Way.Points[:1], nil
	if got := said(one); got != "Write at least two waypoints." {
		t.Error(got)
	}
	if got := said(named(t, "lens-too-heavy")); !strings.Contains(got, "at least two") {
		t.Error(got)
	}
	g := newPage(talk.Long)
	g.ask(p, talk.Way)
	g.settle()
	paused := 0
	g.Pause = func(int) {
		if paused++; paused == 40 {
			g.Hear(Message{Do: "way stop"})
		}
	}
	g.Hear(Message{Do: "way find"})
	g.settle()
	if got := g.pieces[talk.Way+"-gist"]; got != "Stopped before it was found." {
		t.Error(got)
	}
}

// A rigid team leans on its way; other units show other numbers of the same way.
func TestARigidTeamsWay(t *testing.T) {
	p := named(t, "lattice-panel")
	p.Way = firstWay(p)
	g := door(t, p)
	if got := g.pieces[talk.Way+"-gist"]; !strings.Contains(got, "at the fastest") {
		t.Fatal(got)
	}
	if strings.Contains(g.pieces[talk.Way], "Cable that leans") || !strings.Contains(g.pieces[talk.Way], "Vehicle that tilts most") {
		t.Error("a rigid team has no cables, and tilts")
	}
	g.gen++
	g.Hear(Message{Ask: &talk.Ask{Gen: g.gen, Plan: p, Report: report.Build(p), Units: format.Units{Length: "ft", Mass: "kg", Force: "N"}, Open: []string{talk.Way}}})
	g.settle()
	if got := letters(g.pieces[talk.Way]); !strings.Contains(got, "6.56\u202fft") || strings.HasPrefix(g.values["way-points"], "0  0  2") {
		t.Error(got)
	}
	t.Log(g.pieces[talk.Way+"-gist"])
}

// Flown in time, the way keeps near its plan; with a vehicle lost it says who and when; a rigid team is flown as well.
func TestFlown(t *testing.T) {
	p := named(t, "boathouse-panel")
	g := door(t, p)
	g.Hear(Message{Do: "way fly"})
	g.settle()
	got := letters(g.pieces["way-flight"])
	if !strings.Contains(got, "In still air: flown to its end.") || strings.Count(g.pieces["way-flight"], " data-on=") != 3 || strings.Count(got, " off its way; ") != mostFrames+1 {
		t.Error(got)
	}
	t.Log(got[:min(len(got), 1500)])
	g.set(map[string]string{"way.lost": "B", "way.lost-at": "3 s"})
	g.Hear(Message{Do: "way fly"})
	g.settle()
	if got := letters(g.pieces["way-flight"]); !strings.Contains(got, "In still air, B lost after 3\u202fs and hanging from its line: it does not keep its way.") || !strings.Contains(got, "up to 400\u202fN | ✕ not kept") {
		t.Error(got)
	} else {
		t.Log(got[:min(len(got), 900)])
	}
	q := named(t, "lattice-panel")
	q.Way = firstWay(q)
	h := door(t, q)
	h.Hear(Message{Do: "way fly"})
	h.settle()
	if got := letters(h.pieces["way-flight"]); !strings.Contains(got, "In still air: flown to its end.") || !strings.Contains(got, "Force on a grip") || !strings.Contains(got, "up to 100\u202fN | ✓ kept") || strings.Contains(got, "Pull of a cable") || strings.Contains(got, "NaN") {
		t.Error(got)
	}
	h.set(map[string]string{"way.lost": "B", "way.lost-at": "2 s"})
	h.Hear(Message{Do: "way fly"})
	h.settle()
	if got := letters(h.pieces["way-flight"]); !strings.Contains(got, "In still air, B lost after 2\u202fs and carried along: it fails after ") || !strings.Contains(got, "never: it falls | before the end | ✕ not kept") || strings.Contains(got, "NaN") {
		t.Error(got)
	} else {
		t.Log(got[:min(len(got), 900)])
	}
}

// With a ground given the flight takes off from it and sets down on it, on cables and on rigid holds; a ground too high is refused.
func TestFromTheGround(t *testing.T) {
	rigid := named(t, "lattice-panel")
	rigid.Way = firstWay(rigid)
	rigid.Site.Wind = 5
	for _, p := range []plan.Plan{named(t, "boathouse-panel"), rigid} {
		g := door(t, p)
		below := p.Way.Points[0].At[2] - 0.6
		g.set(map[string]string{"way.ground": format.SI.Bare(format.Length, below) + " m"})
		g.Hear(Message{Do: "way fly"})
		g.settle()
		got := letters(g.pieces["way-flight"])
		for _, want := range []string{"from the ground and back to it: flown to its end.", "Taking off, 9\u202fs before the way begins: 0\u202fm/s", "Setting down for "} {
			if !strings.Contains(got, want) {
				t.Errorf("%q is missing: %.700s", want, got)
			}
		}
		if !strings.Contains(g.pieces["way-flight"], "wy-ground") {
			t.Error("no ground is drawn")
		}
		g.set(map[string]string{"way.ground": format.SI.Bare(format.Length, below+0.5) + " m"})
		g.Hear(Message{Do: "way fly"})
		g.settle()
		if got := letters(g.pieces["way-flight"]); !strings.Contains(got, "From this ground it cannot be flown") {
			t.Error(got)
		}
	}
}

// Every example is flown along a way to begin with, whoever holds it, or says plainly why not; a mixed team as well.
func TestEveryExampleIsFlown(t *testing.T) {
	plans := map[string]plan.Plan{}
	for _, e := range example.All {
		plans[e.Name] = named(t, e.Name)
	}
	q := named(t, "crate-ring")
	for i := 0; i < len(q.Team); i += 2 {
		q.Team[i].Hold = plan.BlankMember().Hold
		q.Team[i].Hold.Kind = plan.Rigid
		q.Team[i].Attach = vec.V3{1.8 * q.Team[i].Attach[0], 1.8 * q.Team[i].Attach[1], q.Team[i].Attach[2] + 0.2}
	}
	plans["mixed"] = q
	for name, p := range plans {
		if len(p.Way.Points) == 0 {
			p.Way = firstWay(p)
		}
		g := door(t, p)
		g.Hear(Message{Do: "way fly"})
		g.settle()
		said, found := letters(g.pieces["way-flight"]), letters(g.pieces[talk.Way])
		if name == "lens-too-heavy" {
			if said != "" || !strings.Contains(found, "The team does not stay within its limits on this way, however slowly.") {
				t.Errorf("%s: %q, %q", name, said, found)
			}
			continue
		}
		ends := strings.Contains(said, ": flown to its end.") || name == "crate-ring" || name == "mixed-team" // at the fastest, half a metre off
		if !ends || strings.Contains(said, "it fails") || strings.Contains(said, "NaN") || !strings.Contains(said, "Payload below its way") {
			t.Errorf("%s: %.600s; %.300s", name, said, found)
		}
		if name == "mixed" && (!strings.Contains(said, "Force on a grip") || !strings.Contains(said, "Pull of a cable")) {
			t.Errorf("%.900s", said)
		}
	}
}

// The opening that a straight, slow way needs is that of the panel with its vehicles upright above it, by hand: they stand 0.75 m
// from the middle and reach 0.52 m, 2 m above the panel's top.
func TestAnOpening(t *testing.T) {
	p := named(t, "boathouse-panel")
	p.Way.Boxes = nil
	p.Way.Points = []plan.Waypoint{{At: [3]float64{0, 0, 1}, Time: math.NaN()}, {At: [3]float64{10, 0, 1}, Time: 100}}
	g := door(t, p)
	g.set(map[string]string{"way.wall": "x", "way.wall-at": "5"})
	// slow: the cables lean by less than 1e-3, which moves the vehicles by 2 mm and their discs' edges by less than 1 mm
	if got := letters(g.pieces["way-wall"]); !strings.Contains(got, "take y −1.27 to 1.27 m and z 0.96 to 3.04 m: an opening 2.54 m wide and 2.08 m high") {
		t.Error(got)
	}
	g.set(map[string]string{"way.wall": "y", "way.wall-at": "9 m"})
	if got := g.pieces["way-wall"]; got != "The team does not pass y = 9 m." {
		t.Error(got)
	}
	g.set(map[string]string{})
	if got := g.pieces["way-wall"]; got != "" {
		t.Error(got)
	}
}

// A way that does not fit its opening is given waypoints that take the team through it, with the boxes of other legs kept.
func TestPassing(t *testing.T) {
	p := named(t, "boathouse-panel")
	way := p.Way.Points
	bare := func(i int) plan.Waypoint {
		q := way[i]
		q.Formation, q.Spacing, q.Width = "", math.NaN(), math.NaN()
		return q
	}
	p.Way.Points = []plan.Waypoint{bare(0), bare(1), bare(3), bare(5), bare(7)}
	nan := math.NaN()
	p.Way.Boxes = []plan.Corridor{{Leg: 1, Min: [3]float64{-1, nan, nan}, Max: [3]float64{nan, nan, nan}}, {Leg: 3, Min: [3]float64{nan, 0, nan}, Max: [3]float64{nan, nan, nan}}}
	g := door(t, p)
	if got := g.pieces[talk.Way+"-gist"]; !strings.Contains(got, "It does not pass opening 1: it hits by") {
		t.Error(got)
	}
	if !strings.Contains(g.pieces[talk.Way+"-form"], "Put in waypoints through opening 1") {
		t.Fatal(g.pieces[talk.Way+"-form"])
	}
	g.plan = nil
	g.Hear(Message{Do: "way pass 1"})
	g.settle()
	if g.plan == nil || len(g.plan.Way.Points) < 6 {
		t.Fatalf("%q", g.pieces["fault way.openings"])
	}
	t.Log(writePoints(g.plan.Way.Points, format.SI), writeBoxes(g.plan.Way.Boxes, format.SI))
	h := door(t, *g.plan)
	if got := letters(h.pieces[talk.Way]); !strings.Contains(got, "in-line") || strings.Contains(got, "not kept") {
		t.Error(h.pieces[talk.Way+"-gist"])
	}
	narrow := p.Clone()
	narrow.Way.Openings[0].Width = 1.4
	h = door(t, narrow)
	h.Hear(Message{Do: "way pass 1"})
	h.settle()
	if got := h.pieces["fault way.openings"]; !strings.Contains(got, "The team cannot pass opening 1: ") {
		t.Error(got)
	}
}
