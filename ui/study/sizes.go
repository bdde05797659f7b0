package study

import (
	"math"
	"strconv"
	"strings"

	"cohoist/core/energy"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
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
		{Name: "law", Label: "Made larger, they stay", Help: "Tips as fast: the speed of the blade tips is kept. As strong: thrust over weight is kept.", Words: []Word{{"", "tips as fast"}, {string(energy.Froude), "as strong"}}},
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
	others              []energy.Size // by the other law
	now                 int           // vehicles in the plan
}

func (s *scales) sized(name string, payload float64, law energy.Regime, most int) sized {
	out := sized{name: name, class: s.model.Plan.Vehicles[name], payload: payload, limit: s.model.Plan.Limits.Utilisation, rho: s.model.Density, law: law}
	out.list = energy.Sizes(out.class, payload, out.limit, out.rho, most, law)
	other := energy.TipSpeed
	if law == other {
		other = energy.Froude
	}
	out.others, out.now = energy.Sizes(out.class, payload, out.limit, out.rho, most, other), len(s.model.Craft)
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
	return "Tips as fast: " + lower(of(energy.TipSpeed)) + " As strong for their weight: " + lower(of(energy.Froude))
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
