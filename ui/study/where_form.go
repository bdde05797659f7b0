package study

import (
	"errors"
	"math"
	"strings"

	"cohoist/core/beam"
	"cohoist/core/place"
	"cohoist/core/plan"
	"cohoist/core/unit"
	"cohoist/core/vec"
	"cohoist/ui/format"
)

// Where points may lie.
const (
	inRow   = "row"
	onEdges = "edges"
	onGrid  = "grid"
	inList  = "list"
	along   = "along"
	inside  = "inside"
)

var whereKinds = []Word{
	{inRow, "in a row of holes along the long side"},
	{onEdges, "in holes along the edges"},
	{onGrid, "in a grid of holes inside the outline"},
	{inList, "in the holes of a list"},
	{along, "anywhere along the long side"},
	{inside, "anywhere inside the outline"},
}

// whereGoals are what can be best; two of them make a front.
var whereGoals = []Word{
	{"0", "the smallest worst utilisation"},
	{"1", "the least bending moment"},
	{"2", "the strongest agility"},
	{"0 1", "a front: utilisation against bending moment"},
	{"0 2", "a front: utilisation against agility"},
	{"1 2", "a front: bending moment against agility"},
}

// choices is the form of where to attach, read.
type choices struct {
	units  format.Units
	plan   plan.Plan // assumed
	set    map[string]string
	faults map[string]string // sentences by input
	order  []string          // of the faults

	kind    string
	goals   []place.Goal
	lo, hi  vec.V3 // of the payload, m
	height  float64
	pitch   float64 // m
	margin  float64
	zones   []place.Zone
	holes   []vec.V3
	region  place.Region
	asks    place.Question
	listing string // the pasted list
}

// choose reads the form.
func choose(t *Turn) *choices {
	c := &choices{units: t.Units, set: own(t.Set, t.id), faults: map[string]string{}}
	c.plan, _ = plan.Assume(t.Plan)
	c.lie()
	c.kind = c.word("kind", c.usual())
	for _, g := range strings.Fields(c.word("goal", "0")) {
		c.goals = append(c.goals, map[string]place.Goal{"1": place.Moment, "2": place.Agility}[g])
	}
	c.asks = place.Question{Plan: c.plan, Goal: c.goals[0], Spacing: c.length("spacing", c.room()),
		Mirror: [2]bool{c.ticked("mirror-x"), c.ticked("mirror-y")}}
	c.asks.Cases.Off = c.length("off", c.plan.Limits.COMError)
	if c.ticked("winds") && c.plan.Site.Wind > 0 {
		c.asks.Cases.Winds = windSides
	}
	c.asks.Cases.Lost = c.ticked("lost")
	free := 0
	c.asks.Free = make([]bool, len(c.plan.Team))
	for i, m := range c.plan.Team {
		if c.asks.Free[i] = !c.ticked("stay." + m.ID); c.asks.Free[i] {
			free++
		}
	}
	c.points()
	c.judge(free)
	return c
}

// windSides is from how many sides the wind is tried.
const windSides = 8

// judge finds what cannot be searched.
func (c *choices) judge(free int) {
	_, bends := beam.Of(c.plan.Payload)
	for _, g := range c.goals {
		if g == place.Moment && !bends {
			c.fault("goal", place.ErrNotBeam)
		}
	}
	switch {
	case len(c.goals) > 1 && c.free():
		c.fault("goal", errors.New("A front is drawn over holes: choose a row, the edges, a grid or a list."))
	case free == 0:
		c.fault("stay", place.ErrNone)
	case len(c.faults) == 0 && !c.free() && len(c.holes) < free:
		c.fault("kind", place.ErrFew)
	}
}

// free tells that points may lie anywhere, not only in holes.
func (c *choices) free() bool { return c.kind == along || c.kind == inside }

func (c *choices) fault(name string, err error) {
	if _, twice := c.faults[name]; !twice {
		c.faults[name] = sentence(err)
		c.order = append(c.order, name)
	}
}

// sentence makes a sentence of an error of the core.
func sentence(err error) string {
	s := err.Error()
	first, _, _ := strings.Cut(s, " ")
	if s != "" && !strings.Contains(first, ".") {
		s = capital(s)
	}
	if !strings.HasSuffix(s, ".") {
		s += "."
	}
	return s
}

// word is a choice, or what stands for it until then.
func (c *choices) word(name, until string) string {
	if v := c.set["where."+name]; v != "" {
		return v
	}
	return until
}

func (c *choices) ticked(name string) bool { return c.set["where."+name] == "true" }

// written is what stands in the input of a length. It was kept with its unit, and is shown in that of the page.
func (c *choices) written(name string, until float64) string {
	text := c.word(name, "")
	if x, err := unit.Parse(text, c.units.Length); err == nil {
		return c.units.Text(format.Length, x)
	}
	if text != "" {
		return text
	}
	return c.units.Text(format.Length, until)
}

// length reads an input of a length, m.
func (c *choices) length(name string, until float64) float64 {
	x, err := until, error(nil)
	if text := c.word(name, ""); text != "" {
		x, err = unit.Parse(text, c.units.Length)
	}
	switch {
	case err != nil:
		c.fault(name, err)
	case x < 0 || x > 1000:
		c.fault(name, errors.New("It must be from 0 to "+c.units.Show(format.Length, 1000)+"."))
	case !math.IsNaN(x):
		return x
	}
	return 0
}

// room is the spacing when nobody says: the separation the plan asks for, but no more than now, for cables that
// lean apart let vehicles attach closer together.
func (c *choices) room() float64 {
	room := c.plan.Limits.Separation
	for i, a := range c.plan.Team {
		for _, b := range c.plan.Team[:i] {
			if d := a.Attach.Sub(b.Attach).Norm(); d < room {
				room = math.Floor(d*1e3+1e-6) / 1e3
			}
		}
	}
	if len(c.plan.Team) < 2 || math.IsNaN(room) {
		return 0
	}
	return room
}

// request is what is searched for.
func (c *choices) request() place.Request {
	r := place.Request{Question: c.asks, Holes: c.holes, Region: c.region}
	switch {
	case len(c.goals) > 1:
		r.Kind, r.Goals = place.Front, [2]place.Goal{c.goals[0], c.goals[1]}
	case c.free():
		r.Kind = place.BestRegion
	}
	return r
}
