// Package cargo plans several payloads for one team: whether it lifts each, how each is carried, and in which order they are picked and
// set so that nothing is set before what it stands on (THEORY chapter 23).
//
// Restriction: between items every vehicle flies by itself with its cable hanging; what is carried goes straight up, over and down
// and rests at the corners. What stands anywhere at any time counts as standing all the time. Packs are not charged meanwhile.
// Geometry: the level axes of chapter 20; a place is where the origin of the payload frame stands.
// Calculation: the lift by core/report, the carrying by core/way, packs by core/energy; (23.1) to (23.9).
// Verification: all orders of up to seven items tried one by one, times and packs by hand, laws, in the tests.
// References: THEORY chapter 23.
package cargo

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// Study is a cargo worked out.
type Study struct {
	Items    []Item
	Has      Has
	Top      float64   // m: the highest of all that stands
	Best     Order     // of the items that can be set, by their indices in Items
	Found    bool      // there is such an order
	Own      Order     // the crew's: that of the list
	OwnFound bool      // it can be flown
	Broken   *Broken   // where the crew's order lacks a support; nil: nowhere
	Short    *Short    // the pack that an exact reckoning of Best finds short; nil: none
	Left     []float64 // charge left in every vehicle's pack at the lowest, by that reckoning; nil: packs are not known
	Needs    []string  // paths of fields without which there is no order
	Wants    []string  // paths of fields without which packs and energy are not known
	Assumed  []string  // what was taken for fields left out, a sentence each
	Cautions []string  // what looks wrong, a sentence each
	work     *work
	tour     *Tour
	index    []int // of the items of tour
}

// Has is what the crew has, with what was assumed.
type Has struct {
	Home       vec.V3
	Clearance  float64 // m
	Hook, Swap float64 // s; Swap NaN: not said
	Packs      int     // 0: as many as it takes
}

// Broken is where an order fails: Item comes before Needs, which it stands on or, Under, which lies on it.
type Broken struct {
	Item, Needs int
	Under       bool
}

// Short is where a pack ends before it should.
type Short struct {
	Item    int // while it is carried, or on the way to it or home from it
	Vehicle string
}

// Of works a cargo out. goOn is asked now and then, unless it is nil; false ends it, and ok is false.
func Of(p plan.Plan, goOn func() bool) (s *Study, ok bool) {
	s = &Study{}
	s.read(p)
	s.work = newWork(s, p)
	for i := range s.Items {
		if goOn != nil && !goOn() {
			return nil, false
		}
		s.work.lift(i)
	}
	s.feed()
	if len(s.Needs) == 0 {
		s.trips()
	}
	s.dependents()
	if len(s.Needs) == 0 && len(s.Items) > 0 {
		s.order()
	}
	return s, goOn == nil || goOn()
}

// order finds the best order, and looks at the crew's.
func (s *Study) order() {
	s.search()
	s.crew()
	if math.IsNaN(s.Has.Swap) && s.Found && s.Best.Packs > 1 { // it counted as nothing
		s.Needs = append(s.Needs, "cargo.swap_s")
		s.Found, s.OwnFound = false, false
	}
}

// tightest is how much more than reckoned an order's packs may be asked to keep back, and tighter by what steps.
const tightest, tighter = 1.5, 1.02

// search finds the best order whose packs last by an exact reckoning too: the search adds parts up, (23.7).
func (s *Study) search() {
	for scale := 1.0; scale < tightest; scale *= tighter {
		s.build(scale)
		best, found := s.tour.Best()
		s.Best, s.Found = s.named(best), found
		if !found {
			return
		}
		if s.Short, s.Left = s.reckon(s.Best.Stops); s.Short == nil {
			return
		}
	}
}

// trips sets every item alone, from full packs and back, and takes out those for which that is too much.
func (s *Study) trips() {
	for i := range s.Items {
		it := &s.Items[i]
		if it.Why != "" {
			continue
		}
		short, left := s.reckon([]Stop{{Item: i}})
		if it.Trip = left; short != nil {
			it.Why = "A trip for it alone, from home and back, takes more than one pack: that of " + short.Vehicle + " ends first."
		}
	}
}

// named gives the stops of an order of the tour the indices of Items.
func (s *Study) named(o Order) Order {
	stops := make([]Stop, len(o.Stops))
	for k, stop := range o.Stops {
		stops[k] = Stop{s.index[stop.Item], stop.Fresh}
	}
	o.Stops = stops
	return o
}

// crew looks at the order of the list.
func (s *Study) crew() {
	list := make([]int, len(s.index))
	for k, i := range s.index {
		list[k] = k
		for n, lists := range [][]int{s.Items[i].On, s.Items[i].Under} {
			for _, j := range lists {
				if j > i && s.Broken == nil {
					s.Broken = &Broken{i, j, n == 1}
				}
			}
		}
	}
	if s.Broken != nil {
		return
	}
	own, found := s.tour.Given(list)
	s.Own, s.OwnFound = s.named(own), found
}
