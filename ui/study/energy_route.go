package study

import (
	"errors"
	"math"
	"strconv"
	"strings"

	"cohoist/core/energy"
	"cohoist/core/plan"
	"cohoist/core/solve"
	"cohoist/core/unit"
	"cohoist/ui/format"
)

// routeUntil is the route until one is typed: out along x and back.
const routeUntil = "300 5 0; 300 5 180"

// mostLegs is up to how many legs a route has.
const mostLegs = 12

// legs is the route that was typed; false: it is none, which is said beside it.
func (t *Turn) legs() ([]energy.Leg, bool) {
	text := t.Setting("route", "")
	if strings.TrimSpace(text) == "" {
		if legs := legsOf(t.Plan.Way); len(legs) > 0 {
			t.Say("fault energy.route", "")
			return legs, true
		}
		text = routeUntil
	}
	legs, err := readLegs(text)
	if err != nil {
		t.Say("fault energy.route", err.Error())
		return nil, false
	}
	t.Say("fault energy.route", "")
	return legs, true
}

// speedUntil is how fast the plan's way is flown where it says nothing, m/s; common practice, no source.
const speedUntil = 5

// legsOf are the legs of a plan's way seen from above: as fast as its times say, else at its largest speed. Climbs and headings are left out, and
// of a longer way what comes after mostLegs.
func legsOf(w plan.Way) []energy.Leg {
	var out []energy.Leg
	for i := 1; i < len(w.Points) && len(out) < mostLegs; i++ {
		a, b := w.Points[i-1], w.Points[i]
		d := b.At.Sub(a.At)
		leg := energy.Leg{Distance: math.Hypot(d[0], d[1]), To: math.Atan2(d[1], d[0]) * 180 / math.Pi, Speed: speedUntil}
		if w.SpeedMax > 0 {
			leg.Speed = w.SpeedMax
		}
		if i == 1 && math.IsNaN(a.Time) {
			a.Time = 0
		}
		if t := b.Time - a.Time; t > 0 {
			leg.Speed = leg.Distance / t
		}
		if leg.Distance > 0 && leg.Speed > 0 {
			out = append(out, leg)
		}
	}
	return out
}

// routeHint stands in the empty input of the route.
func routeHint(p plan.Plan) string {
	if len(legsOf(p.Way)) > 0 {
		return "the plan’s way, seen from above"
	}
	return routeUntil
}

// readLegs reads legs parted by ; or lines, each a distance (m), a speed (m/s) and, unless it is 0, a direction (degrees from x).
func readLegs(text string) ([]energy.Leg, error) {
	var out []energy.Leg
	for _, part := range strings.FieldsFunc(text, func(r rune) bool { return r == ';' || r == '\n' }) {
		words := strings.Fields(part)
		if len(words) == 0 {
			continue
		}
		name := "Leg " + strconv.Itoa(len(out)+1)
		if len(words) > 3 || len(words) < 2 {
			return nil, errors.New(name + " is to be two or three numbers: metres, metres a second, degrees.")
		}
		var x [3]float64
		for i, w := range words {
			v, err := unit.Parse(w, [...]string{"m", "m/s", "°"}[i])
			if err != nil {
				return nil, errors.New(name + ": " + err.Error())
			}
			x[i] = v
		}
		switch {
		case !(x[0] > 0 && x[0] <= 1e5):
			return nil, errors.New(name + ": the distance must lie above 0 and up to 100 km.")
		case !(x[1] > 0 && x[1] <= 60):
			return nil, errors.New(name + ": the speed must lie above 0 and up to 60 m/s.")
		}
		out = append(out, energy.Leg{Distance: x[0], Speed: x[1], To: x[2]})
	}
	switch {
	case len(out) == 0:
		return nil, errors.New("The route has no leg.")
	case len(out) > mostLegs:
		return nil, errors.New("The route has more than " + strconv.Itoa(mostLegs) + " legs.")
	}
	return out, nil
}

// flown is a row of the table of legs.
type flown struct{ Name, Way, Air, Time, Power, Energy, Worst, Left string }

func (c *Energy) flown() []flown {
	if c.route == nil {
		return nil
	}
	var list []flown
	for i, f := range c.route.Legs {
		r := flown{Name: strconv.Itoa(i + 1), Way: amount(f.Distance, "m") + " at " + amount(f.Speed, "m/s") + " to " + c.Units.Show(format.Angle, f.To),
			Air: amount(f.Air, "m/s"), Time: format.Span(f.Time)}
		if f.Status != solve.Optimal {
			r.Worst = "no balance in that wind"
			list = append(list, r)
			continue
		}
		r.Power, r.Energy, r.Worst = watts(f.Energy/f.Time), amount(f.Energy/3600, "Wh"), format.Share(f.Utilisation)
		least := 2.0
		for k, q := range f.Charge {
			if q < least {
				least, r.Left = q, format.Share(q)+" in "+c.Study.Vehicles[k].ID
			}
		}
		list = append(list, r)
	}
	return list
}

// flownSays is the route in words.
func (c *Energy) flownSays() string {
	if c.route == nil {
		return ""
	}
	return c.route.Sentence(&c.Study)
}

// routeSteps is the route's working.
func (c *Energy) routeSteps() []energy.Step {
	if c.route == nil {
		return nil
	}
	return c.route.Working(&c.Study)
}
