package study

import (
	"math"
	"strconv"
	"strings"

	"github.com/vugu/vugu"

	"cohoist/core/energy"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/unit"
	"cohoist/ui/chart"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// scales is teams of many small vehicles beside one large.
type scales struct{ model *share.Model }

func (s *scales) ask(m *share.Model, _ *solve.Solver, _ func() bool) bool {
	s.model = m
	return true
}

// Places in the form of sizes.
const (
	sizeClass = iota
	sizeLaw
	sizePayload
	sizeMost
)

// mostUntil is up to how many vehicles are compared until something is typed.
const mostUntil = 12

func sizeForm(t *Turn) []Choice {
	classes := []Word{}
	for _, k := range kinds(t.Plan) {
		classes = append(classes, Word{k, k})
	}
	return []Choice{
		{Name: "class", Label: "Vehicles like", Words: classes},
		{Name: "law", Label: "When made larger, they keep", Words: []Word{{"", "the speed of the blade tips"}, {string(energy.Froude), "thrust over weight"}}},
		{Name: "payload", Label: "Payload", Until: "the plan's", Unit: t.Units.Mass, Low: 1e-3, High: 1e5},
		{Name: "most", Label: "Up to so many", Until: strconv.Itoa(mostUntil), Low: 2, High: 40},
	}
}

func (s *scales) form(t *Turn) {
	if len(kinds(t.Plan)) > 0 {
		t.form("What is compared", sizeForm(t))
	}
}

// sized is what the comparison was asked of, and its answer.
type sized struct {
	class               plan.Class
	name                string
	payload, limit, rho float64
	law                 energy.Regime
	list                []energy.Size
}

func (s *scales) sized(name string, payload float64, law energy.Regime, most int) sized {
	out := sized{name: name, class: s.model.Plan.Vehicles[name], payload: payload, limit: s.model.Plan.Limits.Utilisation, rho: s.model.Density, law: law}
	out.list = energy.Sizes(out.class, payload, out.limit, out.rho, most, law)
	return out
}

func (s *scales) show(t *Turn) {
	form := sizeForm(t)
	payload, ok := t.number(form[sizePayload], s.model.Payload.Mass)
	most, fine := t.number(form[sizeMost], mostUntil)
	if !ok || !fine || !(payload > 0) {
		return
	}
	law := energy.TipSpeed
	if t.word(form[sizeLaw]) != "" {
		law = energy.Froude
	}
	t.Show(talk.Sizes, &Sizes{sized: s.sized(t.word(form[sizeClass]), payload, law, int(most)), Units: t.Units})
}

func (s *scales) gist(t *Turn) string {
	all := kinds(t.Plan)
	if len(all) == 0 || !(s.model.Payload.Mass > 0) {
		return talk.Of(talk.Sizes).Closed
	}
	of := func(law energy.Regime) string {
		c := &Sizes{sized: s.sized(all[0], s.model.Payload.Mass, law, mostUntil), Units: t.Units}
		return c.beats()
	}
	return "Blade tips as fast: " + lower(of(energy.TipSpeed)) + " Thrust over weight kept: " + lower(of(energy.Froude))
}

// lower begins a sentence within another.
func lower(text string) string { return strings.ToLower(text[:1]) + text[1:] }

// beats says where many small ones beat one large.
func (c *Sizes) beats() string {
	mass := energy.Beats(c.list, func(s energy.Size) float64 { return s.Mass })
	power := energy.Beats(c.list, func(s energy.Size) float64 { return s.Power })
	switch {
	case mass < 0:
		for _, s := range c.list {
			if s.Size < math.Inf(1) {
				return "No single " + c.name + ", however large, carries " + c.kilograms(c.payload) + "; " + strconv.Itoa(s.Vehicles) + " can."
			}
		}
		return "Not even " + strconv.Itoa(len(c.list)) + " vehicles like " + c.name + " carry " + c.kilograms(c.payload) + ", at any size."
	case mass > 0 && power > 0 && mass == power:
		return "From " + strconv.Itoa(mass) + " vehicles on small ones beat one large: lighter in all, and with less power."
	case mass > 0 && power > 0:
		return "From " + strconv.Itoa(mass) + " vehicles on they weigh less in all than one large, from " + strconv.Itoa(power) + " on they take less power."
	case mass > 0:
		return "From " + strconv.Itoa(mass) + " vehicles on they weigh less in all than one large" + c.powerless() + "."
	case power > 0:
		return "From " + strconv.Itoa(power) + " vehicles on they take less power than one large, and weigh as much."
	}
	return "One large vehicle takes less power and mass than several small ones."
}

// powerless says what is known of the power of a team that is lighter.
func (c *Sizes) powerless() string {
	if math.IsNaN(c.list[0].Power) {
		return "; power needs figure of merit, drive efficiency and avionics"
	}
	return ", but take more power"
}

func (c *Sizes) kilograms(x float64) string { return c.Units.Show(format.Mass, x) }

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

// charts are mass, power and turning over the number of vehicles.
func (c *Sizes) charts() []vugu.Builder {
	line := func(title, sign string, scale float64, log bool, of func(energy.Size) float64) vugu.Builder {
		s := chart.Series{}
		for _, z := range c.list {
			if y := of(z) / scale; figureOf(y) {
				s.X, s.Y = append(s.X, float64(z.Vehicles)), append(s.Y, y)
			}
		}
		text := "Not known."
		if n := len(s.X); n > 0 {
			text = "From " + amount(s.Y[0], sign) + " with " + amount(s.X[0], "") + " to " + amount(s.Y[n-1], sign) + " with " + amount(s.X[n-1], "") + "."
		}
		return &chart.Line{Title: title, Summary: text, Series: []chart.Series{s}, X: chart.Axis{Title: "vehicles", Whole: true}, Y: chart.Axis{Title: sign, Zero: !log, Log: log}}
	}
	return []vugu.Builder{
		line("All vehicles weigh", c.Units.Mass, unit.Scale(c.Units.Mass), false, func(s energy.Size) float64 { return s.Mass }),
		line("Power in hover", "W", 1, false, func(s energy.Size) float64 { return s.Power }),
		line("One alone turns so much faster than "+c.name, "×", 1, true, func(s energy.Size) float64 { return s.Angular }),
	}
}

// ranges say where the law holds.
func (c *Sizes) ranges() string {
	text := "Every part grows alike: mass with the cube of size, thrust with its square, turning with its inverse square."
	if c.law == energy.Froude {
		text = "Every part grows alike: mass and thrust with the cube of size, turning with its inverse."
	}
	if most := energy.Largest(c.class, c.limit, c.rho, c.law); c.law != energy.Froude {
		text += " A single one, of the best size, carries at most " + c.kilograms(most) + "."
	}
	return text + " Figure of merit, drive and avionics stay as they are, which flatters the small. Cables and grips weigh nothing. Common practice, no source: dimensional analysis. Outside it: sizes much beyond a factor of three."
}
