package study

import (
	"math"
	"strconv"

	"github.com/vugu/vugu"

	"cohoist/core/energy"
	"cohoist/core/unit"
	"cohoist/ui/chart"
	"cohoist/ui/format"
)

// holder is a row of the table of holds.
type holder struct {
	Place                  int
	ID, Power, Ideal, Hold string
	Ends, Needs, Can       string
	Spare                  string // of the thrust, from full and at the end
	Part                   string // length of the bar, of 100 for the longest hold
	Steps                  []energy.Step
}

// holders are the rows, in the order of the team.
func (c *Energy) holders() []holder {
	longest, rank := 0.0, c.ranks()
	for _, v := range c.Study.Vehicles {
		longest = math.Max(longest, v.Time)
	}
	var list []holder
	for i, v := range c.Study.Vehicles {
		r := holder{Place: i, ID: v.ID, Power: watts(v.Power), Ideal: watts(v.Ideal), Hold: format.Span(v.Time), Part: bar(v.Time / longest)}
		r.Needs = c.force(c.Parts[i].Effort)
		r.Steps = c.Study.Working(i, c.Parts[i])
		if n := rank[i]; n > 0 {
			r.Ends = strconv.Itoa(n) + ". " + endWords(v.By)
			r.Can = c.force(v.ThrustFull) + " → " + c.force(v.ThrustLast)
			r.Spare = format.Share(v.SpareFull) + " → " + format.Share(math.Max(v.SpareLast, 0))
			if v.By == energy.FromStart {
				r.Can, r.Spare = c.force(v.ThrustFull), ""
			}
		}
		list = append(list, r)
	}
	return list
}

// ranks tells who ends as which; those who end together have the same rank.
func (c *Energy) ranks() map[int]int {
	out, last := map[int]int{}, 0.0
	for n, i := range c.Study.Order {
		time := c.Study.Vehicles[i].Time
		out[i] = n + 1
		if n > 0 && time <= last*(1+1e-3) {
			out[i] = out[c.Study.Order[n-1]]
			continue
		}
		last = time
	}
	return out
}

// endWords is what ends a hold, by itself.
func endWords(e energy.End) string {
	switch e {
	case energy.Weak:
		return "voltage too low for the thrust"
	case energy.Collapse:
		return "more power than the battery gives"
	case energy.FromStart:
		return "can't even from full"
	}
	return "only the reserve left"
}

func (c *Energy) force(x float64) string { return c.Units.Show(format.Force, x) }

// says is the study in sentences.
func (c *Energy) says() []string { return append([]string{c.Study.Sentence()}, c.Study.Assumed...) }

func sign(s energy.Step) string {
	if s.Unit == "1" {
		return ""
	}
	return s.Unit
}

// courses are the charts of how the packs empty: the thrust of the vehicle that ends first, and voltages, one vehicle of each class.
func (c *Energy) courses() []vugu.Builder {
	first := c.Study.First
	if first < 0 {
		return nil
	}
	moments := c.Study.Course(first, courseSteps)
	if len(moments) == 0 || !figureOf(moments[0].Voltage) {
		return nil
	}
	v, need := c.Study.Vehicles[first], c.Parts[first].Effort
	scale := unit.Scale(c.Units.Force)
	can, needs := chart.Series{Name: "it can"}, chart.Series{Name: "it needs"}
	for _, m := range moments {
		can.X, can.Y = append(can.X, m.Time/60), append(can.Y, m.Thrust/scale)
		needs.X, needs.Y = append(needs.X, m.Time/60), append(needs.Y, need/scale)
	}
	can.Bare, needs.Bare = true, true
	thrust := &chart.Line{Title: "Thrust of " + v.ID + " as its battery empties", Series: []chart.Series{can, needs}, X: chart.Axis{Title: "minutes", Zero: true}, Y: chart.Axis{Title: c.Units.Force, Zero: true},
		Summary: v.ID + " can thrust with " + c.force(v.ThrustFull) + " at first and " + c.force(v.ThrustLast) + " after " + format.Span(v.Time) + "; it needs " + c.force(need) + "."}
	return []vugu.Builder{thrust, c.voltages()}
}

// courseSteps is in how many steps a hold is drawn.
const courseSteps = 24

// voltages is the chart of up to three packs, each of another class: of each the vehicle that ends first.
func (c *Energy) voltages() vugu.Builder {
	line := &chart.Line{Title: "Voltage under the load", X: chart.Axis{Title: "minutes", Zero: true}, Y: chart.Axis{Title: "V"}}
	seen := map[string]bool{}
	for _, i := range c.Study.Order {
		class := c.model.Craft[i].Class
		if seen[class] || len(line.Series) == 3 {
			continue
		}
		seen[class] = true
		s := chart.Series{Name: c.Study.Vehicles[i].ID, Bare: true}
		for _, m := range c.Study.Course(i, courseSteps) {
			s.X, s.Y = append(s.X, m.Time/60), append(s.Y, m.Voltage)
		}
		line.Series = append(line.Series, s)
		v := c.Study.Vehicles[i]
		line.Summary += v.ID + ": from " + amount(v.VoltageFull, "V") + " to " + amount(v.VoltageLast, "V") + ". "
	}
	return line
}

// evened is a row of the table of equal endurance.
type evened struct {
	Place                      int
	ID, Now, Then, Holds, Held string
	Steps                      []energy.Step
}

// gains tells that sharing for equal endurance is worth a table.
func (c *Energy) gains() bool { return c.now.Even != nil && c.now.Even.Gain > 1.005 }

// evens tells that there is something to share.
func (c *Energy) evens() bool { return c.now.Even != nil && c.Study.Hold > 0 && len(c.Parts) > 1 }

// shares are the names of the two shares of the table: what it is compared with, and that for equal endurance.
func (c *Energy) shares() [2]string {
	if c.planned {
		return [2]string{"with even effort", "the plan’s"}
	}
	return [2]string{"now", "then"}
}

// evenSays is what sharing for equal endurance gains.
func (c *Energy) evenSays() string {
	switch {
	case c.planned && !c.gains():
		return "The plan shares for the longest hold, which gains nothing worth a word over even effort."
	case c.planned:
		return "The plan shares for the longest hold: " + format.Span(c.now.Even.Hold) + ", " + strconv.Itoa(int(math.Round(100*(c.now.Even.Gain-1)))) + "\u202f% longer than with even effort. Nobody needs more of its thrust than the limit, or than with even effort where that is more."
	case !c.gains():
		return c.now.Even.Sentence()
	}
	return c.now.Even.Sentence() + " Nobody needs more of its thrust than the limit then, or than now where that is more. The sentence that states the lift offers it: sharing it for the longest hold."
}

func (c *Energy) evened() []evened {
	if !c.gains() {
		return nil
	}
	var list []evened
	for i, v := range c.now.Vehicles {
		list = append(list, evened{i, v.ID, c.force(c.before[i].Effort), c.force(c.now.Even.Parts[i].Effort), amount(math.Round(v.Time), "s"), amount(math.Round(c.now.Even.Vehicles[i].Time), "s"), c.now.EvenWorking(i)})
	}
	return list
}
