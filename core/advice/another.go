package advice

import (
	"math"
	"slices"

	"cohoist/core/pattern"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/vec"
)

const (
	grid       = 9  // places tried along each side of the payload
	halvedGrid = 4  // times that the grid about the best place is made finer
	asked      = 12 // places asked for the aim when none is clear of the others
	mostClass  = 4  // classes tried
	mostMore   = 3  // vehicles added
)

// addVehicle looks for the best place of one more vehicle, of every class of the plan: the one with
// the least effort of all, (5.10), on the payload and clear of the other vehicles. Where one more is not
// enough, the next is placed beside it.
func (d *doctor) addVehicle() {
	names := make([]string, 0, len(d.given.Vehicles))
	for name := range d.given.Vehicles {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, name := range names[:min(len(names), mostClass)] {
		d.search(func(a aim) (Remedy, bool) { return d.add(name, a) })
	}
}

// add puts more vehicles of a class into the plan, one after the other, until it reaches the aim.
func (d *doctor) add(class string, a aim) (Remedy, bool) {
	s := site{lift: d.lift, team: d.plan, class: class, like: d.like(class)}
	s.lo, s.hi = d.extent()
	var places []vec.V3
	for range mostMore {
		at, ok := s.best()
		if !ok || !a.good(s.with(s.team, at)) {
			if near, found := s.near(a); found {
				at, ok = near, true
			}
		}
		if !ok {
			return Remedy{}, false
		}
		s.team = s.with(s.team, at)
		places = append(places, at)
		if a.likely(s.team) && a.good(s.team) {
			return d.added(s, places), true
		}
	}
	return Remedy{}, false
}

// added is the remedy of one vehicle at each of the places.
func (d *doctor) added(s site, places []vec.V3) Remedy {
	n := len(places)
	p := d.given
	words := make([]string, n)
	for i, at := range places {
		p, words[i] = s.with(p, at), point(at)
	}
	hold := map[string][2]string{plan.Cable: {"on a cable", "on cables"}, plan.Rigid: {"held rigidly", "held rigidly"}}[d.plan.Team[s.like].Hold.Kind]
	thrust := func(class string) float64 {
		c := d.plan.Vehicles[class]
		return float64(c.Rotors) * c.RotorThrustMax
	}
	total := 0.0
	for _, m := range d.plan.Team {
		total += thrust(m.Vehicle)
	}
	text := "Add one more " + s.class + " " + hold[0]
	if n > 1 {
		text = "Add " + [mostMore + 1]string{2: "two", 3: "three"}[n] + " more of " + s.class + " " + hold[1]
	}
	k := float64(len(d.plan.Team))
	return Remedy{Kind: Another, Who: s.class, Unit: "1", From: k, To: k + float64(n), Size: float64(n) * thrust(s.class) / total,
		Plan: p, Sentence: text + " at " + share.List(words) + " m."}
}

// like is the vehicle whose hold one more of a class would have: the first of that class, or the first.
func (d *doctor) like(class string) int {
	for i, m := range d.plan.Team {
		if m.Vehicle == class {
			return i
		}
	}
	return 0
}

// extent is the payload seen from above, and where the team attaches beyond it.
func (d *doctor) extent() (lo, hi vec.V3) {
	lo, hi = pattern.Extent(d.plan.Payload)
	for _, m := range d.plan.Team {
		for k := range 2 {
			lo[k], hi[k] = math.Min(lo[k], m.Attach[k]), math.Max(hi[k], m.Attach[k])
		}
	}
	return lo, hi
}
