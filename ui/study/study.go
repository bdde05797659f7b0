// Package study works out and draws the studies of a plan: what the page shows in sections that are worked
// out beside it. A study is a value in All.
//
// What is drawn is HTML that needs no program: what it asks of the page stands in attributes.
//
//	data-do     a button; its text goes back to the study, whose id it starts with
//	data-set    an input that is a setting of the study, by name; its data-unit goes with a number that names none
//	data-field  an input that is a field of the plan, by its path
//	data-show   a button that leads to a field of the page, by its id
//	data-frames its children are pictures of which one is shown: that marked data-on, or the one that the slider with the same
//	            data-scrub stands at, whose words become the slider's where data-says is its id; a button with data-play, the
//	            slider's id, moves it on every data-ms of it
package study

import (
	"github.com/vugu/vugu"

	"cohoist/core/plan"
	"cohoist/ui/talk"
)

// Study is one section of the page.
type Study interface {
	// See shows what there is to say. Long work asks GoOn now and then, and ends when it may not.
	See(t *Turn)
	// Do carries out what a button says: its data-do without the study's id.
	Do(t *Turn, what string)
}

// Patient is a study that also has work for when the plan rests. It comes after what all studies show while
// the plan moves.
type Patient interface {
	Rest(t *Turn)
}

// All are the studies by section.
func All() map[string]Study {
	advice := &counsel{}
	return map[string]Study{
		talk.Paper:   paper{},
		talk.WouldDo: &wouldDo{advice},
		talk.Moves:   &moves{advice},
		talk.Bent:    bent{},
		talk.Lost:    &quick{id: talk.Lost, question: &losses{}},
		talk.Wind:    &quick{id: talk.Wind, question: &winds{}},
		talk.Patch:   &quick{id: talk.Patch, question: &stand{}},
		talk.Where:   &where{},
		talk.Hang:    &hangs{},
		talk.Energy:  &quick{id: talk.Energy, question: &endurance{}},
		talk.Air:     &quick{id: talk.Air, question: &airs{}},
		talk.Sizes:   &quick{id: talk.Sizes, question: &scales{}},
		talk.Compare: &compare{},
		talk.HandOn:  &handOn{},
		talk.Errors:  &slips{},
		talk.Way:     &ways{},

		talk.Formation: &flies{},
		talk.Cargo:     &cargoes{},
	}
}

// Question is a plan with what was chosen in the studies' own inputs.
type Question struct {
	talk.Ask
	Here string // address of the page
	Set  map[string]string
}

// Message is what the page sends; what is nil or empty has not changed.
type Message struct {
	Here   string // address of the page, without what follows #
	Ask    *talk.Ask
	Set    map[string]string
	Do     string
	Fields map[string]string // typed into the plan's fields
}

// Answer is what goes back to the page.
type Answer struct {
	Gen    int
	Pieces map[string]string // HTML by name
	Values map[string]string // of inputs, by id
	Plan   *plan.Plan        // becomes the plan on the screen, in one step
	Put    map[string]any    // numbers and texts for fields of the plan on the screen, by path, in one step
	Jump   string            // id to which the focus goes then
	File   *File             // to be saved by the person
	Set    map[string]string // settings that change
	Busy   bool              // more will come
}

// File is a document for the person.
type File struct {
	Name, Type string
	Data       []byte
}

// Turn is one go at a question by one study.
type Turn struct {
	Question
	id      string
	program *Program
	answer  Answer
}

// Show puts a component into the piece with a name; the study's own piece has its id, and what stands
// beside its title id-gist.
func (t *Turn) Show(name string, b vugu.Builder) { t.put(name, t.program.html(b)) }

// Say is Show for a text.
func (t *Turn) Say(name, text string) { t.put(name, escape(text)) }

func (t *Turn) put(name, html string) {
	if t.answer.Pieces == nil {
		t.answer.Pieces = map[string]string{}
	}
	t.answer.Pieces[name] = html
}

// Value puts a value into an input.
func (t *Turn) Value(id, value string) {
	if t.answer.Values == nil {
		t.answer.Values = map[string]string{}
	}
	t.answer.Values[id] = value
}

// Take makes p the plan on the screen.
func (t *Turn) Take(p plan.Plan, jump string) { t.answer.Plan, t.answer.Jump = &p, jump }

// Save hands the person a document.
func (t *Turn) Save(f File) { t.answer.File = &f }

// Keep changes a setting of the study.
func (t *Turn) Keep(name, value string) {
	if t.answer.Set == nil {
		t.answer.Set = map[string]string{}
	}
	t.answer.Set[t.id+"."+name] = value
}

// Setting is what was chosen, or what stands for it until then.
func (t *Turn) Setting(name, until string) string {
	if v, ok := t.Set[t.id+"."+name]; ok {
		return v
	}
	return until
}

// Send sends what was shown so far.
func (t *Turn) Send() {
	t.answer.Busy = true
	t.flush()
}

func (t *Turn) flush() {
	t.answer.Gen = t.Gen
	t.program.send(t.answer)
	t.answer = Answer{}
}

// GoOn lets messages in and tells whether the work still counts.
func (t *Turn) GoOn() bool {
	t.program.pause(0)
	return !t.program.void(t)
}

// Rested waits a moment and tells whether nothing came in: else what came is answered first, and the study
// asked again after it.
func (t *Turn) Rested() bool {
	for i := 0; i < restSteps && t.program.rested != t.Gen; i++ {
		t.program.pause(rest / restSteps)
		if t.program.heard {
			return false
		}
	}
	t.program.rested = t.Gen
	return !t.program.void(t)
}

// rest is how long a plan stands still before long work on it begins, in milliseconds.
const rest, restSteps = 300, 6
