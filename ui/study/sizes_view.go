package study

import (
	"math"
	"strconv"

	"github.com/vugu/vugu"

	"cohoist/core/energy"
	"cohoist/core/unit"
	"cohoist/ui/chart"
)

// team is a row of the table.
type team struct {
	Vehicles                            int
	Count, Size, Each, All, Power, Turn string
	Steps                               []energy.Step
}

func (c *Sizes) teams() []team {
	var list []team
	for _, s := range c.list {
		r := team{Vehicles: s.Vehicles, Count: strconv.Itoa(s.Vehicles), Size: "no size is enough"}
		if s.Size < math.Inf(1) {
			r.Size = amount(s.Size, "") + "×, rotors " + c.Units.Small(s.Size*c.class.RotorRadius)
			r.Each, r.All = c.kilograms(s.Mass/float64(s.Vehicles)), c.kilograms(s.Mass)
			r.Power, r.Turn = watts(s.Power), amount(s.Angular, "")+"×"
			r.Steps = s.Working(c.class, c.payload, c.limit, c.rho, c.law)
		}
		list = append(list, r)
	}
	return list
}

// charts are mass, power and turning over the number of vehicles, by both laws, the chosen one first.
func (c *Sizes) charts() []vugu.Builder {
	names := []string{"tips as fast", "as strong"}
	if c.law == energy.Froude {
		names[0], names[1] = names[1], names[0]
	}
	line := func(title, sign string, scale float64, log, against bool, of func(energy.Size) float64) vugu.Builder {
		l := &chart.Line{Title: title, X: chart.Axis{Title: "vehicles", Whole: true}, Y: chart.Axis{Title: sign, Zero: !log, Log: log}, Now: float64(c.now), NowName: "the plan"}
		for i, list := range [][]energy.Size{c.list, c.others} {
			s := chart.Series{Name: names[i]}
			for _, z := range list {
				if y := of(z) / scale; figureOf(y) {
					s.X, s.Y = append(s.X, float64(z.Vehicles)), append(s.Y, y)
				}
			}
			l.Series = append(l.Series, s)
			l.Summary += summary(s, sign)
		}
		if one := of(c.list[0]) / scale; against && figureOf(one) && c.varies(of) {
			n := len(c.list)
			l.Series = append(l.Series, chart.Series{Name: "one large", Bare: true, X: []float64{1, float64(n)}, Y: []float64{one, one}})
			l.Summary += "Below " + amount(one, sign) + " they beat one large, " + names[0] + ". "
		}
		return l
	}
	return []vugu.Builder{
		line("All vehicles weigh", c.Units.Mass, unit.Scale(c.Units.Mass), false, true, func(s energy.Size) float64 { return s.Mass }),
		line("Power in hover", "W", 1, false, true, func(s energy.Size) float64 { return s.Power }),
		line("One alone turns so much faster than "+c.name, "×", 1, true, false, func(s energy.Size) float64 { return s.Angular }),
	}
}

// varies tells that a figure of the chosen law is not the same for every team.
func (c *Sizes) varies(of func(energy.Size) float64) bool {
	first := of(c.list[0])
	for _, z := range c.list {
		if math.Abs(of(z)-first) > 1e-9*first {
			return true
		}
	}
	return false
}

// summary is a series in words.
func summary(s chart.Series, sign string) string {
	n := len(s.X)
	if n == 0 {
		return "With " + s.Name + " not known. "
	}
	return "With " + s.Name + " from " + amount(s.Y[0], sign) + " at " + amount(s.X[0], "") + " to " + amount(s.Y[n-1], sign) + " at " + amount(s.X[n-1], "") + " vehicles. "
}

// ranges say where the law holds.
func (c *Sizes) ranges() string {
	text := "Every part grows alike, and the blade tips stay as fast: mass goes with the cube of size, thrust with its square, turning with its inverse square."
	if c.law == energy.Froude {
		text = "Every part grows alike, and thrust over weight stays: mass and thrust go with the cube of size, turning with its inverse."
	}
	if most := energy.Largest(c.class, c.limit, c.rho, c.law); c.law != energy.Froude {
		text += " A single one, of the best size, carries at most " + c.kilograms(most) + "."
	}
	return text + " Figure of merit, drive and avionics stay as they are, which flatters the small. Cables and grips weigh nothing. Common practice, no source: dimensional analysis. Outside it: sizes much beyond a factor of three."
}
