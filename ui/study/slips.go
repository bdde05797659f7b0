package study

import (
	"math"
	"time"

	"cohoist/core/plan"
	"cohoist/core/scatter"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// slips is what errors in the plan's numbers do.
type slips struct {
	of    int // the plan that worst belongs to
	study *scatter.Study
	worst scatter.Worst
	run   *sampling
}

func (s *slips) See(t *Turn) {
	s.gist(t)
	if !t.Opened(talk.Errors) {
		return
	}
	count := countChoice()
	n, ok := t.number(count, samplesUntil)
	study, why := scatter.New(t.Plan, int(n))
	t.form("Samples", []Choice{count}, slipsForm(t, study))
	if study == nil {
		t.Show(talk.Errors, &Slips{Why: "Nothing to study: " + why + "."})
		return
	}
	t.Show(talk.Errors, &Slips{})
	s.show(t, int(n), ok)
	if s.of == t.Gen {
		t.Say("errors-worst", worstWords(t, s.study, s.worst))
	} else {
		t.Say("errors-worst", "The worst case is being worked out …")
	}
}

// Rest finds the worst case, and runs what samples are wanted.
func (s *slips) Rest(t *Turn) {
	if !t.Opened(talk.Errors) || s.of != t.Gen && !t.Rested() {
		return
	}
	if s.of != t.Gen {
		study, _ := scatter.New(t.Plan, 1)
		if study == nil {
			return
		}
		s.study, s.worst, s.of = study, study.Worst(), t.Gen
		t.Say("errors-worst", worstWords(t, s.study, s.worst))
		s.gist(t)
	}
	if s.run.fresh(t) && s.run.going {
		s.work(t)
	}
}

func (s *slips) Do(t *Turn, what string) {
	n, ok := countChoice().read(t.Setting("count", ""), samplesUntil)
	switch {
	case what == "run" && ok == nil:
		if study, _ := scatter.New(t.Plan, int(n)); study != nil {
			s.run = newSampling(t.Plan, study)
		}
	case what == "on" && s.run.fresh(t):
		s.run.going = true
	case what == "stop" && s.run != nil:
		s.run.going = false
	}
}

// samplesUntil is how many samples are run until a number is chosen.
const samplesUntil = 100_000

// mostSamples is a matter of minutes, and its picture one of half a second.
const mostSamples = 1_000_000

func countChoice() Choice {
	return Choice{Name: "count", Label: "How many", Until: "100000", Low: 100, High: mostSamples}
}

// work runs samples, and draws what there is a few times a second.
func (s *slips) work(t *Turn) {
	r, start, before := s.run, time.Now(), s.run.took
	draw := func() {
		r.took = before + time.Since(start)
		r.see()
		s.show(t, r.study.N, true)
		s.gist(t)
		t.Send()
	}
	draw()
	for !r.done() && t.GoOn() {
		r.step(t.program)
		if time.Since(r.drawn) > max(drawTime, drawShare*r.cost) {
			draw()
		}
	}
	r.going = r.going && !r.done()
	draw()
}

// show puts the buttons and what was seen on the page.
func (s *slips) show(t *Turn, n int, ok bool) {
	c := &SlipsRun{N: n, Faulty: !ok}
	if r := s.run; r != nil {
		c.Run, c.Fresh = r, r.fresh(t)
	}
	t.Show("errors-run", c)
	if s.run != nil && s.run.seen.N > 0 {
		t.Show("errors-seen", &SlipsSeen{Units: t.Units, Run: s.run, Fresh: c.Fresh})
	} else {
		t.Say("errors-seen", "")
	}
}

// gist is the section in a sentence. What was seen of an earlier plan does not count.
func (s *slips) gist(t *Turn) {
	gist := talk.Of(talk.Errors).Closed
	switch r := s.run; {
	case r != nil && r.seen.N > 0 && r.fresh(t):
		gist = r.outcome()
	case s.of == t.Gen && s.study != nil:
		gist = "At worst, " + worstShort(s.study, s.worst) + "."
	case s.of != 0:
		gist = "Not worked out for this plan."
	}
	t.Say(talk.Errors+"-gist", gist)
}

// slipsForm is the plan's errors; what is left out shows what is taken.
func slipsForm(t *Turn, s *scatter.Study) Group {
	g := Group{Name: "How far the numbers may be off, one standard deviation each", Open: true,
		Lead: "Errors are normal, independent of each other, and cut off at three standard deviations; the worst case takes three of each. What is left out is taken as it stands in the empty field (common practice, no source)."}
	taken := map[string]float64{}
	if s != nil {
		for _, e := range s.Errors {
			taken[e.Kind] = e.SD
		}
	}
	until := func(kind string, q format.Quantity) string {
		if x, ok := taken[kind]; ok {
			return t.Units.Bare(q, x)
		}
		return "assumed"
	}
	at := func(name, until string) Entry { return Entry{Path: "errors." + name, Until: until} }
	g.Entries = []Entry{
		at("payload_mass_ratio", until(scatter.PayloadMass, format.Plain)), at("com_m", until(scatter.COM, format.Length)),
		at("thrust_ratio", until(scatter.Thrust, format.Plain)), at("attach_m", until(scatter.Attach, format.Length)),
		at("density_ratio", until(scatter.Density, format.Plain)), at("wind_m_s", until(scatter.Wind, format.Speed)),
		at("wind_to_deg", until(scatter.WindTo, format.Angle))}
	return g
}

// untitled is a plan without what does not change an answer.
func untitled(p plan.Plan) plan.Plan {
	p = p.Clone()
	p.Title, p.Note = "", ""
	return p
}

// over tells whether a utilisation is above a limit, the solver's accuracy allowed for.
func over(t, limit float64) bool { return t > limit+1e-9 || math.IsInf(t, 1) }
