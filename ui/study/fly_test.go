package study

import (
	"math"
	"strings"
	"testing"

	"cohoist/core/example"
	"cohoist/core/formation"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/solve"
	"cohoist/core/vec"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// Every example says how far apart its vehicles fly, in the figures of core/formation, or why that is no question.
func TestEveryExamplesFormation(t *testing.T) {
	for _, e := range example.All {
		p, q := newPage(talk.Slow), named(t, e.Name)
		p.ask(q, talk.Formation)
		p.settle()
		turn := &Turn{Question: Question{Ask: talk.Ask{Plan: q, Report: report.Build(q)}}}
		f := formation.Find(turn.model(), solve.NewSolver(), nil)
		gist, piece := reads(p.pieces[talk.Formation+"-gist"]), reads(p.pieces[talk.Formation])
		if strings.Contains(piece, "NaN") || strings.Contains(gist, "grief") || !strings.Contains(piece, "chapter 17") {
			t.Errorf("%s: %s %s", e.Name, gist, piece)
		}
		if f.Status == formation.NotAsked {
			if !strings.HasPrefix(gist, "Not applicable") {
				t.Errorf("%s: %s", e.Name, gist)
			}
			continue
		}
		want := []string{format.SI.Small(f.Nearest)}
		if f.Status == formation.Apart {
			want = []string{percent(f.T, 4), percent(f.Free, 4), percent(f.Cost, 2)}
		}
		for _, w := range want {
			if !strings.Contains(piece, reads(w)) {
				t.Errorf("%s: %q is missing in %s", e.Name, w, piece)
			}
		}
		if n := strings.Count(p.pieces[talk.Formation], `class="fl-room"`); n != len(q.Team) {
			t.Errorf("%s: %d circles", e.Name, n)
		}
		if testing.Verbose() {
			t.Log(e.Name, "|", gist, "|", piece)
		}
	}
}

// Two on one attachment: side by side they lean; by height, the one on the longer cable flies above the other and is flagged.
func TestOneAboveTheOther(t *testing.T) {
	q := named(t, "beam-pair")
	q.Payload.Solids[0].At = vec.V3{}
	for i := range q.Team {
		q.Team[i].Attach = vec.V3{0, 0, 0.025}
	}
	q.Team[1].Hold.Length = 4.5
	q.Limits.Separation = 1.4
	p := newPage(talk.Slow)
	p.ask(q, talk.Formation)
	p.settle()
	if piece := reads(p.pieces[talk.Formation]); !strings.Contains(piece, "Leant apart") || !strings.Contains(piece, "Nobody flies above") {
		t.Error(piece)
	}
	p.Hear(Message{Set: map[string]string{"formation.way": above}})
	p.settle()
	if piece := reads(p.pieces[talk.Formation]); !strings.Contains(piece, "B flies 1.5 m above A") || !strings.Contains(piece, "A is 1.5 m below B and in its wake") || !strings.Contains(piece, "The cable of B passes") {
		t.Error(piece)
	}
}

// A mixed team of cables and rigid holds keeps the cables off the rigid ones; no room says so; a large team is asked first.
func TestFormationsOfOddTeams(t *testing.T) {
	q := named(t, "beam-pair")
	m := q.Team[0]
	m.ID, m.Attach, m.Hold = "R", vec.V3{0, 0, 0.3}, plan.BlankMember().Hold
	m.Hold.Kind = plan.Rigid
	q.Team = append(q.Team, m)
	p := newPage(talk.Slow)
	p.ask(q, talk.Formation)
	p.settle()
	if piece := reads(p.pieces[talk.Formation]); !strings.Contains(piece, "rigid") || strings.Contains(piece, "NaN") {
		t.Error(piece)
	}
	q = named(t, "beam-pair")
	q.Limits.Separation = 9
	p.ask(q, talk.Formation)
	p.settle()
	if piece := reads(p.pieces[talk.Formation]); !strings.Contains(piece, "No way was found") {
		t.Error(piece)
	}
	for i := range usual {
		m := q.Team[0]
		m.ID, m.Attach = "X"+digits(i), vec.V3{2 * float64(i), 0, 0}
		q.Team = append(q.Team, m)
	}
	q.Limits.Separation = math.NaN()
	p.ask(q, talk.Formation)
	p.settle()
	if !strings.Contains(p.pieces[talk.Formation], "formation find") {
		t.Error(p.pieces[talk.Formation])
	}
}
