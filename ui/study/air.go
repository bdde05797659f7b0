package study

import (
	"math"
	"strconv"

	"github.com/vugu/vugu"

	"cohoist/core/energy"
	"cohoist/core/formation"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/ui/chart"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// airs is what the ground, the payload below and the vehicles' wakes change.
type airs struct {
	model  *share.Model
	answer share.Answer
	found  energy.Study
}

func (a *airs) ask(m *share.Model, s *solve.Solver, _ func() bool) bool {
	a.model = m
	a.answer, _ = energy.Share(m, s)
	a.found = energy.At(m, a.answer)
	return true
}

// Places in the form of what is near.
const (
	airHeight = iota
	airGround
	airDownload
	airWakes
)

// heightUntil is how far the payload is above the ground until something is typed, m.
const heightUntil = 0.5

func airForm(t *Turn) []Choice {
	shown := []Word{{"", "shown"}, {"off", "left out"}}
	return []Choice{
		{Name: "height", Label: "Payload above the ground", Until: t.Units.Text(format.Length, heightUntil), Unit: t.Units.Length, Low: 0, High: 1000, Help: "Its lowest point, held level."},
		{Name: "ground", Label: "Ground effect", Words: shown},
		{Name: "download", Label: "Wash on the payload", Words: shown},
		{Name: "wakes", Label: "Wakes on each other", Words: shown},
	}
}

func (*airs) form(t *Turn) { t.form("What is near", airForm(t)) }

func (a *airs) show(t *Turn) {
	form := airForm(t)
	height, ok := t.number(form[airHeight], heightUntil)
	if !ok {
		return
	}
	c := &Air{Units: t.Units, study: a.found, answer: a.answer, model: a.model, height: height}
	if len(a.answer.Parts) > 0 {
		c.near, c.grounds = a.found.Wakes(a.answer.Parts), a.found.Grounded(a.answer.Parts, height)
		c.flags = formation.Flags(a.answer.Parts, a.model.Craft)
	}
	c.ground, c.download, c.wakes = t.word(form[airGround]) == "", t.word(form[airDownload]) == "", t.word(form[airWakes]) == ""
	t.Show(talk.Air, c)
}

// gist is the section in a sentence: the wash on the payload, and who flies in whose wake.
func (a *airs) gist(*Turn) string {
	if len(a.answer.Parts) == 0 {
		return "There is no balance to look at."
	}
	c := &Air{Units: format.SI, near: a.found.Wakes(a.answer.Parts)}
	text := c.washSays()
	if n := len(formation.Flags(a.answer.Parts, a.model.Craft)); n > 0 {
		text += " " + several(n, "pair flies", "pairs fly") + " over or into another's wake."
	}
	return text
}

// washSays is what the wakes do to the payload, in a sentence.
func (c *Air) washSays() string {
	sum, beyond, strong := 0.0, 0, 0
	for _, n := range c.near {
		switch {
		case n.Outside == energy.PressureRange.Of:
			beyond++
		case n.Outside == energy.DownloadRange.Of:
			strong++
			sum += n.Download
		default:
			sum += n.Download
		}
	}
	some := several(beyond, "vehicle reaches", "vehicles reach") + " the payload as one jet, farther below than the model goes"
	switch {
	case beyond == len(c.near):
		return "The wakes reach the payload as one jet each, farther below than the model goes."
	case sum == 0 && beyond == 0:
		return "The wakes miss the payload."
	case sum == 0:
		return "The wake of " + some + "; the others miss it."
	}
	text := "Wash presses on the payload with " + c.Units.Show(format.Force, sum)
	if strong > 0 {
		text += ", from " + several(strong, "vehicle", "vehicles") + " more than the model covers"
	}
	if beyond > 0 {
		text += "; the wake of " + some
	}
	return text + "."
}

// nearRow is a row of the table.
type nearRow struct {
	Place                                                   int
	ID, Height, More, Power, Below, Wash, Need, Speed, Wide string
	Merged                                                  string
	Steps                                                   []energy.Step
}

func (c *Air) rows() []nearRow {
	var list []nearRow
	for i, n := range c.near {
		g, p, w := c.grounds[i], c.answer.Parts[i], c.study.WakeAt(i, c.answer.Parts[i])
		length := func(x float64) string { return c.Units.Show(format.Length, x) }
		r := nearRow{Place: i, ID: n.ID, Height: length(g.Height) + ", " + amount(g.Height/c.radius(i), "") + " R", Speed: amount(w.Speed, "m/s"), Wide: length(w.Radius), Merged: length(w.Merged)}
		r.More, r.Power = "+"+percents(g.Ratio-1), watts(g.Power)
		if g.Outside != "" {
			r.More = "below half a radius: outside the model"
		}
		if c.model.Wind.Norm() > 0 {
			r.Power = "not said in wind"
		}
		r.Below, r.Wash, r.Need = "nothing below its rotors", c.Units.Show(format.Force, n.Download), "+"+percents(n.Ratio-1)
		if !math.IsInf(n.Depth, 1) {
			r.Below = length(n.Depth) + "; " + amount(n.Blocked, "m²")
		}
		switch n.Outside {
		case energy.PressureRange.Of:
			r.Wash, r.Need = "one jet by then: outside the model", ""
		case energy.DownloadRange.Of:
			r.Need = "above a tenth of its thrust: outside the model"
		}
		r.Steps = c.study.AirWorking(i, p, g, n)
		list = append(list, r)
	}
	return list
}

func (c *Air) radius(i int) float64 { return c.model.Plan.Vehicles[c.model.Craft[i].Class].RotorRadius }

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
		z := 0.5 + 3.5*float64(k)/40
		ratio, _ := energy.GroundEffect(z, 1)
		s.X, s.Y = append(s.X, z), append(s.Y, 100*(ratio-1))
	}
	now, who := math.NaN(), ""
	for i, g := range c.grounds {
		if z := g.Height / c.radius(i); !(z >= now) {
			now, who = z, g.ID
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
