package study

import (
	"math"
	"strconv"
	"strings"

	"github.com/vugu/vugu"

	"cohoist/core/check"
	"cohoist/core/energy"
	"cohoist/core/formation"
	nearby "cohoist/core/near"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/ui/chart"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// airs is what the ground, the payload below and the vehicles' wakes change.
type airs struct {
	model *share.Model
	cases [5]airCase // nothing counted, each of the three alone, all of them
}

// airCase is the lift with some of what is near counted.
type airCase struct {
	model  *share.Model
	answer share.Answer
}

// Places in airs.cases.
const (
	airNone = iota
	airGround
	airDownload
	airWakes
	airAll
)

// heightUntil is how far the payload is above the ground until the plan says it, m.
const heightUntil = 0.5

func (a *airs) ask(m *share.Model, s *solve.Solver, goOn func() bool) bool {
	a.model = m
	for k := range a.cases {
		if goOn != nil && !goOn() {
			return false
		}
		p := m.Plan
		p.Near = plan.Near{Clearance: height(p)}
		for term := airGround; term < airAll; term++ {
			if k == term || k == airAll {
				*airTerm(&p, term) = plan.Counted
			}
		}
		n := share.New(p, m.Payload, m.DragArea, m.Density)
		answer, _ := energy.Share(n, s)
		a.cases[k] = airCase{n, answer}
	}
	return true
}

// airTerm is what a plan says of a term.
func airTerm(p *plan.Plan, term int) *string {
	return [...]*string{airGround: &p.Near.Ground, airDownload: &p.Near.Download, airWakes: &p.Near.Wakes}[term]
}

// height is how far the payload's lowest point is above the ground, m.
func height(p plan.Plan) float64 {
	if math.IsNaN(p.Near.Clearance) {
		return heightUntil
	}
	return p.Near.Clearance
}

func (*airs) form(t *Turn) {
	words := []Word{{"", "left out"}, {plan.LeftOut, "left out"}, {plan.Counted, "counted"}}
	var list []Entry
	for _, path := range [...]string{"near.ground", "near.download", "near.wakes"} {
		e := Entry{Path: path, Words: words[1:]}
		if typed(t.Plan, t.Units, path) == "" {
			e.Words = []Word{words[0], words[2]}
		}
		list = append(list, e)
	}
	list = append(list, Entry{Path: "near.clearance_m", Until: t.Units.Text(format.Length, heightUntil)})
	t.Show(t.id+"-form", &Fields{Units: t.Units, Entries: list})
	t.fill(list)
}

// do counts a term in the plan, or leaves it out. The ground is counted at the height that is shown.
func (a *airs) do(t *Turn, what string) {
	p := t.Plan.Clone()
	for term := airGround; term < airAll; term++ {
		if what != airNames[term].word {
			continue
		}
		to := airTerm(&p, term)
		if *to == plan.Counted {
			*to = plan.LeftOut
		} else {
			*to = plan.Counted
			if term == airGround {
				p.Near.Clearance = height(p)
			}
		}
		t.Take(p, "")
	}
}

func (a *airs) show(t *Turn) {
	c := &Air{Units: t.Units, plan: t.Plan, cases: a.cases[:]}
	if all := a.cases[airAll]; all.answer.Parts != nil {
		c.flags = formation.Flags(all.answer.Parts, all.model.Craft)
	}
	t.Show(talk.Air, c)
}

// airNames are the terms: what a button calls them, and a sentence.
var airNames = [...]struct{ word, name string }{airNone: {"", "Nothing near"}, airGround: {"ground", "Ground effect"},
	airDownload: {"download", "Wash on the payload"}, airWakes: {"wakes", "Wakes on each other"}, airAll: {"", "All three"}}

// gist is the section in a sentence: what is near takes, or would take if it were counted.
func (a *airs) gist(t *Turn) string {
	all := a.cases[airAll]
	if all.answer.Parts == nil {
		return "There is no balance to look at."
	}
	var list []string
	for term := airDownload; term < airAll; term++ {
		most, who := 0.005, -1
		for i := range all.model.Craft {
			n := all.model.Craft[i].Near
			x := n.Share()
			if term == airWakes {
				x = 1 - n.Worst()
			}
			if x > most*(1+1e-6) {
				most, who = x, i
			}
		}
		if who < 0 {
			continue
		}
		takes := " would take "
		if *airTerm(&t.Plan, term) == plan.Counted {
			takes = " takes "
		}
		list = append(list, airNames[term].name+takes+percents(most)+" of the thrust of "+all.model.Craft[who].ID)
	}
	if list == nil {
		return "Wash on the payload and wakes on each other take nothing worth telling."
	}
	return strings.Join(list, "; ") + "."
}

// airRow is a term in the table of what each changes.
type airRow struct {
	Word, Name, Worst, Change, Largest, Plan, Do string
}

func (c *Air) terms() []airRow {
	s := solve.NewSolver()
	var list []airRow
	for k, x := range c.cases {
		r := airRow{Word: airNames[k].word, Name: airNames[k].name, Worst: "no balance", Largest: "–", Plan: "–"}
		if x.answer.Parts != nil {
			r.Worst = format.Share(x.answer.T)
			if k != airNone {
				r.Change = signed(x.answer.T - c.cases[airNone].answer.T)
			}
			if l := x.model.Largest(s, x.answer); !math.IsNaN(l.Mass) {
				r.Largest = c.Units.Show(format.Mass, l.Mass)
			}
		}
		if k > airNone && k < airAll {
			r.Plan, r.Do = "left out", "Count it"
			if *airTerm(&c.plan, k) == plan.Counted {
				r.Plan, r.Do = "counted", "Leave it out"
			}
		}
		list = append(list, r)
	}
	return list
}

// signed is a change in percent of the thrust.
func signed(x float64) string {
	if math.Abs(x) < 5e-4 {
		return "±0"
	}
	if x < 0 {
		return "−" + percents(-x)
	}
	return "+" + percents(x)
}

// nearRow is a row of the tables of vehicles.
type nearRow struct {
	Place                                         int
	ID, Height, More, Below, Wash, Part, Air, Who string
	Lost, Speed, Merged, Without, With            string
	Steps                                         []energy.Step
}

func (c *Air) rows() []nearRow {
	all, bare := c.cases[airAll], c.cases[airNone]
	if all.answer.Parts == nil || bare.answer.Parts == nil {
		return nil
	}
	facts := check.Facts{Plan: all.model.Plan, Model: all.model, Answer: all.answer}
	var list []nearRow
	for i := range all.model.Craft {
		k, p := &all.model.Craft[i], all.answer.Parts[i]
		n, radius := k.Near, all.model.Plan.Vehicles[k.Class].RotorRadius
		length := func(x float64) string { return c.Units.Show(format.Length, x) }
		r := nearRow{Place: i, ID: k.ID, Height: length(n.Height) + ", " + amount(n.Height/radius, "") + " R", More: "+" + percents(n.Ground-1),
			Below: "nothing below its rotors", Wash: c.Units.Show(format.Force, p.Download.Norm()), Part: percents(n.Share()),
			Air: "none", Who: "–", Lost: percents(1 - n.Worst()), Speed: amount(nearby.WakeSpeed(p.Effort/float64(max(1, len(p.Rotor))), radius, all.model.Density), "m/s"),
			Merged: length(nearby.Merged(k.Vehicle.Reach)), Without: format.Share(bare.answer.Parts[i].Utilisation), With: format.Share(p.Utilisation)}
		if n.Beyond {
			r.More = "below half a radius: outside the model"
		}
		if depth, jet := below(n); !math.IsInf(depth, 1) {
			r.Below = length(depth)
			if jet {
				r.Below += ", one jet by then"
			}
		}
		if n.Share() > nearby.DownloadRange.High {
			r.Part += ", outside the model"
		}
		if n.Blower >= 0 {
			r.Who = all.model.Craft[n.Blower].ID
			fast := 0.0
			for _, w := range n.Flow {
				fast = math.Max(fast, w)
			}
			r.Air = amount(fast, "m/s")
		}
		if 1-n.Worst() > nearby.WakeRange.High {
			r.Lost += ", outside the model"
		}
		for _, s := range check.NearWorking(facts, i) {
			r.Steps = append(r.Steps, energy.Step(s))
		}
		list = append(list, r)
	}
	return list
}

// below is how far below a vehicle the payload is that its wakes meet, m, and whether as one jet.
func below(n *nearby.Effect) (depth float64, jet bool) {
	depth = math.Inf(1)
	for _, s := range n.Shadows {
		depth, jet = math.Min(depth, s.Depth), jet || s.Jet
	}
	return depth, jet
}

// percents is a small part with one decimal below ten percent.
func percents(x float64) string {
	if math.IsNaN(x) {
		return "–"
	}
	return amount(math.Round(1000*x)/10, "") + "\u202f%"
}

// rise is the chart of the ground's effect over height, with where the vehicle nearest to the ground flies.
func (c *Air) rise() vugu.Builder {
	s := chart.Series{Name: "thrust", Bare: true}
	for k := range 41 {
		z := nearby.GroundRange.Low + 3.5*float64(k)/40
		ratio, _ := nearby.Ground(z, 1)
		s.X, s.Y = append(s.X, z), append(s.Y, 100*(ratio-1))
	}
	all := c.cases[airAll].model
	now, who := math.NaN(), ""
	for i := range all.Craft {
		k := &all.Craft[i]
		if z := k.Near.Height / all.Plan.Vehicles[k.Class].RotorRadius; !(z >= now) {
			now, who = z, k.ID
		}
	}
	return &chart.Line{Title: "More thrust at the same power, near the ground", Summary: who + " is nearest: " + amount(now, "") + " radii above the ground.", Series: []chart.Series{s},
		X: chart.Axis{Title: "rotor above the ground, radii", Zero: true}, Y: chart.Axis{Title: "%", Zero: true}, Now: now, NowName: who}
}

// flagged are the pairs that disturb each other, in words.
func (c *Air) flagged() []string {
	var list []string
	for _, f := range c.flags {
		list = append(list, f.Reason)
	}
	if list == nil {
		list = []string{"No vehicle flies over another or in another's wake."}
	}
	return list
}

// detail is the id of a vehicle's working.
func (c *Air) detail(i int) string { return "air-" + strconv.Itoa(i) }
