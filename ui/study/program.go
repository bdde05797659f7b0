package study

import (
	"errors"
	"fmt"
	"maps"
	"strings"

	"github.com/vugu/vugu"

	"cohoist/core/plan"
	"cohoist/ui/markup"
	"cohoist/ui/talk"
)

// Program answers the page's messages. The newest plan counts; what belongs to an older one is dropped.
type Program struct {
	Bench string       // the studies of which bench it works on
	Send  func(Answer) // to the page
	Pause func(ms int) // lets the messages in that wait
	Hire  func() []Helper

	studies map[string]Study
	now     Question
	heard   bool                // something came that is not looked at yet
	todo    []string            // buttons
	typed   []map[string]string // into fields of the plan
	env     *vugu.BuildEnv
	rested  int // generation of the plan that stood still
	crew    *crew
	desk    desk
}

// Hear takes a message; Step answers it.
func (p *Program) Hear(m Message) {
	p.heard = true
	if m.Ask != nil {
		p.now.Ask = *m.Ask
	}
	if m.Here != "" {
		p.now.Here = m.Here
	}
	if m.Set != nil {
		p.now.Set = maps.Clone(m.Set)
	}
	if m.Do != "" {
		p.todo = append(p.todo, m.Do)
	}
	if len(m.Fields) > 0 {
		p.typed = append(p.typed, m.Fields)
	}
}

// Step answers what was heard last, and tells whether there was anything.
func (p *Program) Step() bool {
	p.pause(0)
	if !p.heard {
		return false
	}
	if p.studies == nil {
		p.studies = All()
	}
	p.heard = false
	q := p.now
	typed, edited := p.typed, q
	p.typed = nil
	for _, texts := range typed {
		p.fields(&edited, texts) // the page asks about the edited plan; until then the answers are about this one
	}
	todo := p.todo
	p.todo = nil
	for _, do := range todo {
		id, what, _ := strings.Cut(do, " ")
		p.turn(q, id, func(s Study, t *Turn) { s.Do(t, what) })
	}
	p.each(q, func(s Study, t *Turn) { s.See(t) })
	p.each(q, func(s Study, t *Turn) {
		if s, ok := s.(Patient); ok {
			s.Rest(t)
		}
	})
	if p.Bench == talk.Live && !p.heard {
		p.turn(q, talk.Paper, func(s Study, t *Turn) { s.See(t) })
	}
	p.send(Answer{Gen: q.Gen})
	return true
}

// each lets every study of the bench have a turn, until another plan comes.
func (p *Program) each(q Question, f func(Study, *Turn)) {
	for _, s := range talk.Sections {
		if s.Bench == p.Bench && !(p.heard && p.now.Gen != q.Gen) {
			p.turn(q, s.ID, f)
		}
	}
}

// turn lets a study do something; a panic becomes what the study says.
func (p *Program) turn(q Question, id string, f func(Study, *Turn)) {
	s := p.studies[id]
	if s == nil {
		return
	}
	t := &Turn{Question: q, id: id, program: p}
	defer func() {
		if r := recover(); r != nil {
			t.Say(id+"-gist", "This came to grief: "+fmt.Sprint(r))
			t.Send()
		}
	}()
	f(s, t)
	if t.answer.Pieces != nil || t.answer.Values != nil || t.answer.Plan != nil || t.answer.File != nil || t.answer.Set != nil {
		t.Send()
	}
}

// void tells that a newer message makes a study's turn worthless: another plan, another choice in its own
// inputs, a button of its own, or it was closed.
func (p *Program) void(t *Turn) bool {
	if !p.heard {
		return false
	}
	for _, do := range p.todo {
		if id, _, _ := strings.Cut(do, " "); id == t.id {
			return true
		}
	}
	if len(p.typed) > 0 || p.now.Gen != t.Gen || p.now.Units != t.Units || t.Opened(t.id) && !p.now.Opened(t.id) {
		return true
	}
	return !maps.Equal(own(p.now.Set, t.id), own(t.Set, t.id))
}

// own are the settings of one study.
func own(set map[string]string, id string) map[string]string {
	out := map[string]string{}
	for k, v := range set {
		if strings.HasPrefix(k, id+".") {
			out[k] = v
		}
	}
	return out
}

// fields has the page put what was typed into its plan, in one step. The page does it, as its plan may have gone
// on meanwhile.
func (p *Program) fields(q *Question, texts map[string]string) {
	next, puts := q.Plan.Clone(), map[string]any{}
	for path, text := range texts {
		value, err := put(&next, q.Units, path, text)
		a := Answer{Gen: q.Gen, Pieces: map[string]string{"fault " + path: ""}}
		if err != nil {
			a.Pieces["fault "+path] = escape(err.Error())
		} else {
			puts[path] = value
		}
		p.send(a)
	}
	if len(puts) == 0 {
		return
	}
	if faults := plan.Validate(next); len(faults) > 0 {
		err := errors.New("It " + faults[0].Wrong + ". " + faults[0].Fix)
		p.send(Answer{Gen: q.Gen, Pieces: map[string]string{"fault " + faults[0].Path: escape(err.Error())}})
		return
	}
	q.Plan = next
	p.send(Answer{Gen: q.Gen, Put: puts})
}

func (p *Program) send(a Answer) {
	if p.Send != nil {
		p.Send(a)
	}
}

func (p *Program) pause(ms int) {
	if p.Pause != nil {
		p.Pause(ms)
	}
}

// html draws a component.
func (p *Program) html(b vugu.Builder) string {
	if p.env == nil {
		env, err := vugu.NewBuildEnv()
		if err != nil {
			panic(err)
		}
		p.env = env
	}
	return markup.Element(p.env.RunBuild(b), "")
}

func escape(s string) string { return markup.Text(s) }
