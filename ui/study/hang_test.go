package study

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"cohoist/core/example"
	"cohoist/core/hang"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/vec"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

var tags = regexp.MustCompile(`<[^>]*>`)

// reads is a piece as it is read.
func reads(piece string) string {
	return strings.Join(strings.Fields(tags.ReplaceAllString(piece, " ")), " ")
}

// Every example says how it hangs, or why that is no question, without grief.
func TestEveryExampleHangs(t *testing.T) {
	for _, e := range example.All {
		p := newPage(talk.Live)
		q := named(t, e.Name)
		p.ask(q, talk.Hang)
		p.settle()
		gist, piece := p.pieces[talk.Hang+"-gist"], reads(p.pieces[talk.Hang])
		rigid := q.Team[0].Hold.Kind == plan.Rigid
		if rigid != strings.HasPrefix(gist, "Not applicable") || strings.Contains(gist, "grief") || piece == "" {
			t.Errorf("%s: %s", e.Name, gist)
		}
		if !rigid && (strings.Count(p.pieces[talk.Hang], `class="hg-svg"`) != 3 || !strings.Contains(piece, "chapter 12")) {
			t.Errorf("%s: the three worst cases are not drawn", e.Name)
		}
		for _, bad := range []string{"NaN", "%!", "Inf"} {
			if strings.Contains(p.pieces[talk.Hang], bad) {
				t.Errorf("%s: %s in %s", e.Name, bad, piece)
			}
		}
		if testing.Verbose() {
			t.Log(e.Name, gist, piece)
		}
	}
}

// A team of cables and rigid holds says that it is no question.
func TestAMixedTeamDoesNotHang(t *testing.T) {
	q := named(t, "beam-pair")
	m := q.Team[0]
	m.ID, m.Attach, m.Hold = "R", vec.V3{0, 0, 0.3}, plan.BlankMember().Hold
	m.Hold.Kind = plan.Rigid
	q.Team = append(q.Team, m)
	p := newPage(talk.Live)
	p.ask(q, talk.Hang)
	p.settle()
	if gist := p.pieces[talk.Hang+"-gist"]; !strings.HasPrefix(gist, "Not applicable") || !strings.Contains(gist, "partly") {
		t.Error(gist)
	}
}

// A chosen case has the tilt and the pulls of core/hang: a beam on two lines 2 m apart, one 10 cm short,
// tilts by nearly asin(0.1/2).
func TestAShortLine(t *testing.T) {
	q := named(t, "beam-pair")
	p := newPage(talk.Live)
	p.Hear(Message{Set: map[string]string{"hang.kind": shortLine, "hang.who": "B", "hang.short": "10 cm"}})
	p.ask(q, talk.Hang)
	p.settle()
	h, _ := hungOf(q, report.Build(q))
	s, err := h.rig.Short(1, 0.1).Rest(h.rest.Pose)
	if err != nil {
		t.Fatal(err)
	}
	piece := reads(p.pieces[talk.Hang])
	for _, want := range []string{"B’s line is 0.1\u202fm too short", "tilts by " + inDegrees(s.Tilt), "down towards x", format.SI.Show(format.Force, s.Tension[0])} {
		if !strings.Contains(piece, reads(want)) {
			t.Errorf("%q is missing in %s", want, piece)
		}
	}
	if by := math.Asin(0.1/2) * 180 / math.Pi; math.Abs(s.Tilt*180/math.Pi-by) > 0.01*by { // the lines lean a little then
		t.Errorf("tilt %g°, by hand %g°", s.Tilt*180/math.Pi, by)
	}
	if n := strings.Count(p.pieces[talk.Hang], `class="hg-svg"`); n != 1 {
		t.Errorf("%d pictures, want one", n)
	}
	if p.values["set-hang-short"] != "0.1" || p.values["set-hang-who"] != "B" {
		t.Errorf("values %v", p.values)
	}
}

// The periods in the table are those of the modes: the beam's sway is that of a pendulum of its cables.
func TestSwings(t *testing.T) {
	q := named(t, "beam-pair")
	h, _ := hungOf(q, report.Build(q))
	c := &Hang{Plan: q, Units: format.SI, hung: h, modes: h.rig.Modes(h.rest), rate: hang.LoopRate}
	for i, w := range c.swings() {
		if m := c.modes[i]; w.Word != m.Word || w.Period != seconds(m.Period) || w.Says != "" {
			t.Errorf("row %v of mode %v", w, m)
		}
		if c.modes[i].Word == "sway along x" && math.Abs(c.modes[i].Period-2*math.Pi*math.Sqrt(3/hang.Gravity)) > 1e-6 { // Huygens
			t.Errorf("sway in %g s", c.modes[i].Period)
		}
	}
	c.rate = 15
	if got := c.swings()[3]; got.Says == "" || !strings.Contains(c.meeting(), got.Word) {
		t.Errorf("at 15 Hz the roll at %s is not flagged: %s", got.Hertz, c.meeting())
	}
}

// What is no number is refused with a sentence, and the form keeps it; the others are looked for when asked.
func TestBadSettingsAndOthers(t *testing.T) {
	p := newPage(talk.Live)
	p.Hear(Message{Set: map[string]string{"hang.far": "wide"}})
	p.ask(named(t, "beam-pair"), talk.Hang)
	p.settle()
	if p.pieces["fault hang.far"] == "" || p.values["set-hang-far"] != "wide" {
		t.Errorf("the fault is %q", p.pieces["fault hang.far"])
	}
	p.Hear(Message{Set: map[string]string{"hang.far": "0,2"}, Do: "hang others"})
	p.settle()
	if p.pieces["fault hang.far"] != "" || !strings.Contains(reads(p.pieces[talk.Hang]), "4 equilibria, of which it stays in 1") {
		t.Error(reads(p.pieces[talk.Hang]))
	}
	p.ask(named(t, "handrail-beam"), talk.Hang)
	p.settle()
	if strings.Contains(p.pieces[talk.Hang], "hang-found") {
		t.Error("what was found for another plan still stands there")
	}
}

// A motion is drawn as seen from where it shows, and large enough to see: a beam sways along itself from the side, across
// and rolls from its end, twists from above.
func TestMotionsAreSeen(t *testing.T) {
	q := named(t, "beam-pair")
	h, _ := hungOf(q, report.Build(q))
	c := &Hang{Plan: q, Units: format.SI, hung: h, modes: h.rig.Modes(h.rest), rate: hang.LoopRate}
	want := map[string]sight{"sway along x": fromSide, "sway along y": fromEnd, "roll": fromEnd, "twist": fromTop}
	for _, mode := range c.modes {
		m := &moving{form: c.body(), rest: h.rest.Pose, at: h.rest.Pose.Place(h.model.Payload.COM),
			shift: vec.V3{mode.Shape[0], mode.Shape[1], mode.Shape[2]}, turn: vec.V3{mode.Shape[3], mode.Shape[4], mode.Shape[5]}}
		s, _ := m.facing(mode.Word == "twist")
		if w, ok := want[mode.Word]; !ok || s.right != w.right || s.up != w.up {
			t.Errorf("%s is seen with %v to the right and %v up", mode.Word, s.right, s.up)
		}
		delete(want, mode.Word)
	}
	if len(want) > 0 {
		t.Errorf("not there: %v", want)
	}
	for i, w := range c.swings() {
		if !strings.Contains(newPage(talk.Live).html(w.Picture), "hg-arrow-tip") {
			t.Errorf("nothing is seen to move in mode %d", i)
		}
	}
}
