package check

import (
	"math"
	"strings"

	"cohoist/core/agility"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
)

// Check is one question that the sheet asks of a plan.
type Check struct {
	ID, Title string
	Doc       string    // what it asks and why, in a sentence or two
	Limits    []Limit   // where the model behind it holds
	Refs      []string  // keys in core/references.bib
	Examples  []Example // worked cases that a test runs
	Run       func(Facts) Outcome
}

// Facts is what a check may look at: the assumed plan and what the chapters made of it.
type Facts struct {
	Plan    plan.Plan
	Model   *share.Model
	Answer  share.Answer
	Moves   agility.Moves // of the team
	Solver  *solve.Solver
	Missing []string // fields left out that have no honest default
	Outside string   // why nothing was computed: the air of the day is beyond the standard atmosphere
	Bent    *Bent    // the payload as a beam; nil: it is none
	Held    *Held    // the team holding places; nil: balance alone says who carries
}

// Limit is a range in which a check's model holds.
type Limit struct {
	What   string
	Lo, Hi float64
	Unit   string
	Of     func(Facts) float64 // NaN: does not apply
}

// Example is a plan of core/example with what the check must say about it.
type Example struct {
	Plan        string // name in core/example
	Utilisation float64
	Tol         float64
	Source      string
}

// Outcome is what a check found at its worst place. A Status left empty follows from demand and
// capacity: ok, thin when less than a tenth of the capacity is left, fail.
type Outcome struct {
	Status           Status
	Where            string
	Demand, Capacity float64
	Unit             string
	Sentence         string
	Steps            []Step
}

// Edge is how far above 1 a utilisation may be and still count as at its limit: the solver's own
// accuracy with room, so that a bound it leans on does not read as broken.
const Edge = 1e-6

// thin is the utilisation above which a check passes thinly.
const thin = 0.9

// Run asks every check of the list, in its order.
func Run(f Facts) []Row {
	rows := make([]Row, len(All))
	for i, c := range All {
		rows[i] = c.ask(f)
	}
	return rows
}

func (c Check) ask(f Facts) Row {
	o := c.answer(f)
	r := Row{ID: c.ID, Title: c.Title, Status: o.Status, Where: o.Where, Demand: o.Demand, Capacity: o.Capacity,
		Utilisation: math.NaN(), Unit: o.Unit, Sentence: o.Sentence, Steps: o.Steps}
	if r.Capacity != 0 {
		r.Utilisation = r.Demand / r.Capacity
	}
	if r.Status == NotRun {
		r.Status = grade(r)
	}
	if r.Status == OK || r.Status == Thin {
		if out := c.outside(f); out != "" {
			r.Status = OutsideModel
			r.Sentence = strings.TrimSpace(r.Sentence + " " + out)
		} else {
			r.Sentence += c.near(f)
		}
	}
	return r
}

// answer runs the check when there is something to run it on.
func (c Check) answer(f Facts) Outcome {
	switch {
	case f.Outside != "":
		return none(OutsideModel, f.Outside)
	case f.Model == nil:
		return none(NeedsInput, "This needs the balance, and the plan lacks numbers for it.")
	case f.Answer.Status == solve.Unsolved && f.Answer.Parts == nil:
		return none(Unsolved, "The balance was not solved, so this was not checked.")
	}
	return c.Run(f)
}

// grade is the status that demand and capacity tell.
func grade(r Row) Status {
	switch {
	case math.IsNaN(r.Demand) || math.IsNaN(r.Capacity):
		return Unsolved
	case r.Demand > r.Capacity*(1+Edge):
		return Fail
	case r.Demand > thin*r.Capacity:
		return Thin
	}
	return OK
}

// Words says a restriction as the handbook does.
func (l Limit) Words() string {
	switch {
	case math.IsInf(l.Hi, 1):
		return "for " + l.What + " of at least " + say(l.Lo, l.Unit)
	case math.IsInf(l.Lo, -1):
		return "for " + l.What + " of at most " + say(l.Hi, l.Unit)
	}
	return "for " + l.What + " from " + say(l.Lo, "") + " to " + say(l.Hi, l.Unit)
}

// outside says which restriction of the model the plan is beyond, or "".
func (c Check) outside(f Facts) string {
	for _, l := range c.Limits {
		if x := l.Of(f); x < l.Lo || x > l.Hi {
			return "Outside the model: " + l.What + " is " + say(x, l.Unit) + ", and the model holds from " +
				say(l.Lo, "") + " to " + say(l.Hi, l.Unit) + "."
		}
	}
	return ""
}

// near says which restriction of the model the plan comes near to from below, within a tenth, or "".
func (c Check) near(f Facts) string {
	for _, l := range c.Limits {
		if x := l.Of(f); x > thin*l.Hi {
			return " This is near the edge of the model: " + l.What + " is " + say(x, l.Unit) + " of " + say(l.Hi, l.Unit) + "."
		}
	}
	return ""
}

// none is an outcome without numbers.
func none(s Status, sentence string) Outcome {
	return Outcome{Status: s, Demand: math.NaN(), Capacity: math.NaN(), Sentence: sentence}
}

// noBalance is the outcome of a check that needs forces where there are none.
func noBalance() Outcome {
	return none(NotApplicable, "There is no balance, so there are no forces to ask this of.")
}

// worst is the first index at which a utilisation is the highest, to the solver's accuracy, so that equal
// vehicles are named in the order of the team on every machine. −1 when none has one.
func worst(n int, of func(i int) float64) int {
	const tie = 1e-6
	high := math.Inf(-1)
	for i := range n {
		if x := of(i); x > high {
			high = x
		}
	}
	for i := range n {
		if x := of(i); x > math.Inf(-1) && x >= high-tie*math.Max(1, math.Abs(high)) {
			return i
		}
	}
	return -1
}
