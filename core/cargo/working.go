package cargo

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"cohoist/core/energy"
	"cohoist/core/share"
	"cohoist/core/vec"
)

// working is lines of working: every expression is Go over earlier symbols and numbers, and a test evaluates it again.
type working []energy.Step

// add writes a line; every %v of the expression takes one number, which reads back exactly.
func (w *working) add(symbol string, value float64, unit, source, expression string, numbers ...float64) {
	args := make([]any, len(numbers))
	for i, x := range numbers {
		s := strconv.FormatFloat(x, 'g', -1, 64)
		if strings.HasPrefix(s, "-") {
			s = "(" + s + ")"
		}
		args[i] = s
	}
	*w = append(*w, energy.Step{Symbol: symbol, Expression: fmt.Sprintf(expression, args...), Value: value, Unit: unit, Source: source})
}

// Working is how an item's time and energy come about: the flight to it, in the best order, and what it takes itself. Nil: it is in no order.
func (s *Study) Working(i int) []energy.Step {
	from, found := -1, false
	for k, stop := range s.Best.Stops {
		if stop.Item != i {
			continue
		}
		found = true
		if k > 0 && !stop.Fresh {
			from = s.Best.Stops[k-1].Item
		}
	}
	if !found || !s.Found {
		return nil
	}
	it, w := &s.Items[i], working{}
	s.flightSteps(&w, from, i)
	w.add("z_over", s.Top+s.Has.Clearance-it.Bottom, "m", "THEORY (23.2): of the origin of its frame", "%v + %v - %v", s.Top, s.Has.Clearance, it.Bottom)
	sum := "2*t_hook"
	w.add("t_hook", s.Has.Hook, "s", "the plan", "%v", s.Has.Hook)
	energies := "2*t_hook*P_0"
	power := 0.0
	for _, c := range s.work.team {
		power += c.power
	}
	w.add("P_0", power, "W", "THEORY (18.32): every vehicle alone, hovering", "%v", power)
	for _, c := range it.Carry {
		spent := 0.0
		for _, x := range c.Spent {
			spent += x.Energy
		}
		w.add("t_"+c.Name, c.Path.Duration(), "s", "THEORY (20.13): the shortest within every limit", "%v", c.Path.Duration())
		sum += " + t_" + c.Name
		if !math.IsNaN(spent) {
			w.add("E_"+c.Name, spent, "J", "THEORY (18.30), every vehicle", "%v", spent)
			energies += " + E_" + c.Name
		}
	}
	w.add("t_own", it.Own.Time, "s", "hooked up, carried, unhooked", sum)
	w.add("t", s.Flight(from, i).Time+it.Own.Time, "s", "with the flight to it", "t_fly + t_own")
	if !math.IsNaN(it.Own.Energy) {
		w.add("E", it.Own.Energy+power*s.Flight(from, i).Time, "J", "the same in energy", energies+" + t_fly*P_0")
	}
	return w
}

// flightSteps work out the flight to an item by the vehicle that is slowest in each part.
func (s *Study) flightSteps(w *working, from, to int) {
	a, b := s.atHome(), s.Items[to].above(s.Items[to].Pick)
	if from >= 0 {
		a = s.Items[from].above(s.Items[from].Set)
	}
	f := s.flight(s.work.team, a, b)
	climb := func(symbol string, most float64, from []vec.V3) {
		slow, high := s.work.team[0], 0.0
		for v, c := range s.work.team {
			h := math.Max(math.Max(a[v][2], b[v][2]), s.Top+s.Has.Clearance+c.cable) - from[v][2]
			if v == 0 || c.up(h) >= most {
				slow, high = c, h
			}
		}
		w.add("a_"+symbol, slow.climb(), "m/s²", "THEORY (23.3): what its thrust leaves, at most half of g", "min(%v/%v - %v, %v/2)", slow.thrust, slow.mass, share.Gravity, share.Gravity)
		root := "sqrt(84/(5*sqrt(5))*%v/a_" + symbol + ")"
		if math.IsInf(slow.speed, 1) {
			w.add("t_"+symbol, most, "s", "THEORY (23.3): the slowest vehicle", root, high)
			return
		}
		w.add("t_"+symbol, most, "s", "THEORY (23.3): the slowest vehicle", "max("+root+", 35.0/16*%v/%v)", high, high, slow.speed)
	}
	climb("climb", f.Up, a)
	w.add("t_across", f.Over, "s", "THEORY (23.4): the slowest vehicle, "+share.Short(f.Far)+" m at most", "%v", f.Over)
	climb("sink", f.Down, b)
	w.add("t_fly", f.Time, "s", "THEORY (23.5)", "t_climb + t_across + t_sink")
}
