package study

import (
	"math"
	"strings"
	"testing"
	"time"

	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/scatter"
	"cohoist/core/vec"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// samples asks for a number of samples of a plan and runs them to the end.
func samples(p *page, q plan.Plan, n string) {
	p.Hear(Message{Set: map[string]string{"errors.count": n}})
	p.ask(q, talk.Errors)
	p.settle()
	p.Hear(Message{Do: "errors run"})
	p.settle()
}

// running is the run of a page, if there is one.
func running(p *page) *sampling {
	if s, ok := p.studies[talk.Errors].(*slips); ok {
		return s.run
	}
	return nil
}

// Every example has its worst case and its samples, in the figures of core/scatter.
func TestEveryExamplesErrors(t *testing.T) {
	for _, e := range example.All {
		p, q := newPage(talk.Dice), named(t, e.Name)
		samples(p, q, "200")
		s, why := scatter.New(q, 200)
		if why != "" {
			t.Fatal(e.Name, why)
		}
		w, seen := reads(p.pieces["errors-worst"]), reads(p.pieces["errors-seen"])
		sum := s.Summary(s.Run(0, 200))
		for _, want := range []string{format.Share(s.Worst().T) + " of its thrust", "within three standard deviations"} {
			if !strings.Contains(w, reads(want)) {
				t.Errorf("%s: %q is missing in %s", e.Name, want, w)
			}
		}
		for _, want := range []string{percentOf(sum.Limits[0].P), percentOf(sum.Limits[0].Top), percentOf(sum.Quantiles[4]), capital(sum.Kinds[0].Kind) + " , " + format.Share(sum.Kinds[0].Ratio)} {
			if !strings.Contains(seen, reads(want)) {
				t.Errorf("%s: %q is missing in %s", e.Name, want, seen)
			}
		}
		if all := p.pieces[talk.Errors] + w + seen + p.pieces[talk.Errors+"-gist"]; strings.Contains(all, "NaN") || strings.Contains(all, "grief") || !strings.Contains(all, "chapter 16") {
			t.Errorf("%s: %s", e.Name, all)
		}
		if testing.Verbose() {
			t.Log(e.Name, "|", reads(p.pieces[talk.Errors+"-gist"]), "|", w, "|", seen)
		}
	}
}

// A mixed team of cables and rigid holds is sampled, too.
func TestErrorsOfAMixedTeam(t *testing.T) {
	q := named(t, "beam-pair")
	m := q.Team[0]
	m.ID, m.Attach, m.Hold = "R", vec.V3{0, 0, 0.3}, plan.BlankMember().Hold
	m.Hold.Kind = plan.Rigid
	q.Team = append(q.Team, m)
	p := newPage(talk.Dice)
	samples(p, q, "100")
	if !strings.Contains(p.pieces["errors-seen"], "sl-hist") {
		t.Error(p.pieces)
	}
}

// Stopped and gone on with, a run gives what it gives in one go; stopped, nothing more is run.
func TestStopAndGoOn(t *testing.T) {
	q := named(t, "beam-pair")
	whole := newPage(talk.Dice)
	samples(whole, q, "3000")

	p, stops, before := newPage(talk.Dice), 0, ""
	p.Pause = func(ms int) {
		if r := running(p); r != nil && r.going && r.ran() > 200 && stops == 0 {
			stops++
			p.Hear(Message{Do: "errors stop"})
		}
	}
	samples(p, q, "3000")
	r := running(p)
	if n := r.ran(); n <= 200 || n >= 3000 || r.going {
		t.Fatalf("%d samples were run before the stop", n)
	}
	before = p.pieces["errors-seen"]
	if !strings.Contains(p.pieces["errors-run"], "Go on") || !strings.Contains(reads(p.pieces["errors-run"]), "Stopped") || !strings.Contains(before, "So far") {
		t.Error(p.pieces["errors-run"], before)
	}
	p.Hear(Message{Do: "errors on"})
	p.settle()
	if p.pieces["errors-seen"] != whole.pieces["errors-seen"] {
		t.Error("stopped and gone on with, the samples give another picture")
	}
}

// What was seen is kept when the plan changes, and says so; the same plan makes it good again.
func TestAnEarlierPlansSamples(t *testing.T) {
	q := named(t, "beam-pair")
	p := newPage(talk.Dice)
	samples(p, q, "100")
	next := q.Clone()
	next.Limits.Utilisation = 0.7
	p.ask(next, talk.Errors)
	p.settle()
	if !strings.Contains(p.pieces["errors-seen"], "sl-old") || !strings.HasPrefix(p.pieces[talk.Errors+"-gist"], "At worst, ") || !strings.Contains(p.pieces["errors-run"], "errors run") {
		t.Error(p.pieces)
	}
	q.Title = "Another title"
	p.ask(q, talk.Errors)
	p.settle()
	if strings.Contains(p.pieces["errors-seen"], "sl-old") {
		t.Error("the plan is the same but for its title")
	}
}

// A bad count is refused with a sentence and runs nothing; a plan that does not balance says so.
func TestBadCounts(t *testing.T) {
	p := newPage(talk.Dice)
	samples(p, named(t, "beam-pair"), "1")
	if p.pieces["fault errors.count"] == "" || p.pieces["errors-seen"] != "" || !strings.Contains(p.pieces["errors-run"], "disabled") {
		t.Error(p.pieces)
	}
	q := named(t, "beam-pair")
	q.Payload.Solids[0].Mass = math.NaN()
	p.ask(q, talk.Errors)
	p.settle()
	if !strings.Contains(p.pieces[talk.Errors], "lacks a number") {
		t.Error(p.pieces[talk.Errors])
	}
}

// clerk is a helper that answers at every third asking, once with nonsense when it is bad, or never.
type clerk struct {
	*Program
	jobs           [][]byte
	asked, answers int
	bad, dead      bool
}

func (c *clerk) Give(job []byte) { c.jobs = append(c.jobs, job) }

func (c *clerk) Take() []byte {
	if c.asked++; c.dead || len(c.jobs) == 0 || c.asked%3 != 0 {
		return nil
	}
	job := c.jobs[0]
	c.jobs = c.jobs[1:]
	if c.answers++; c.bad && c.answers == 2 {
		return []byte("nonsense")
	}
	return c.Work(job)
}

// However many programs run the samples, the picture is the same; what a helper fails to do is done here.
func TestHelpers(t *testing.T) {
	q := named(t, "beam-pair")
	alone := newPage(talk.Dice)
	samples(alone, q, "3000")
	good, bad, dead := &clerk{Program: &Program{}}, &clerk{Program: &Program{}, bad: true}, &clerk{dead: true}
	for _, c := range []struct {
		hired    []Helper
		patience time.Duration
	}{{[]Helper{good, bad}, time.Hour}, {[]Helper{dead}, 0}} {
		p := newPage(talk.Dice)
		p.Hire = func() []Helper { return c.hired }
		p.Pause = func(int) {
			if p.crew != nil {
				p.crew.patience = c.patience
			}
		}
		samples(p, q, "3000")
		if p.pieces["errors-seen"] != alone.pieces["errors-seen"] {
			t.Errorf("another picture:\n%s\n%s", reads(p.pieces["errors-seen"]), reads(alone.pieces["errors-seen"]))
		}
	}
	if good.answers == 0 || bad.answers < 2 {
		t.Errorf("the helpers answered %d and %d times", good.answers, bad.answers)
	}
}
