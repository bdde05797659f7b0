package cargo

import (
	"fmt"
	"math"
	"strings"

	"cohoist/core/energy"
	"cohoist/core/pattern"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/share"
	"cohoist/core/vec"
)

// Item is one item with what is known of it. What could not be worked out is NaN.
type Item struct {
	ID     string
	Plan   plan.Plan     // the lift of this item alone, as it is picked
	Report report.Report // in wind that of the heading, before or after, in which it does worse
	Pick   Spot
	Set    Spot
	On     []int     // items that it stands on, by index
	Under  []int     // items that lie on it
	Bottom float64   // m, payload frame: how low it reaches
	Peak   float64   // and how high
	Why    string    // a sentence: why it is in no order; empty: it is
	Carry  []Carry   // up, over and down; what has no length is left out
	Own    Leg       // hooking up, carrying, unhooking
	Trip   []float64 // charge left in every pack after setting it alone, home to home; nil: not known
	model  *share.Model
	answer share.Answer
	study  *energy.Study
	stands bool // its places are known
}

// Spot is a place with a heading.
type Spot struct {
	At      vec.V3
	Heading float64 // radians
}

// Point brings a point of the payload frame to the level axes.
func (s Spot) Point(p vec.V3) vec.V3 { return s.At.Add(vec.Rot(vec.V3{0, 0, s.Heading}).Mul(p)) }

// Lifts tells that the team lifts an item.
func (it *Item) Lifts() bool {
	return it.Report.Verdict == report.Lifts || it.Report.Verdict == report.ThinLift
}

// Check is the title of the check that decides the verdict.
func (it *Item) Check() string {
	for _, row := range it.Report.Checks {
		if row.ID == it.Report.Governing {
			return row.Title
		}
	}
	return ""
}

// clear is the clearance when nobody says: 1 m, common practice, no source.
const clear = 1.0

// read takes the cargo out of a plan.
func (s *Study) read(p plan.Plan) {
	c := p.Cargo
	s.Has = Has{Home: c.Home, Clearance: c.Clearance, Hook: c.Hook, Swap: c.Swap, Packs: c.Packs}
	index := map[string]int{}
	for i, it := range c.Items {
		index[it.ID] = i
	}
	named := func(ids []string) (out []int) {
		for _, id := range ids {
			if j, ok := index[id]; ok {
				out = append(out, j)
			}
		}
		return out
	}
	s.Top = math.Inf(-1)
	for i, own := range c.Items {
		source, _ := c.Source(i)
		lo, hi := pattern.Extent(source.Payload)
		it := Item{ID: own.ID, Pick: spot(own.Pick, own.PickHeading, 0), On: named(own.On), Under: named(own.Under), Bottom: lo[2], Peak: hi[2],
			Own: Leg{Time: math.NaN(), Energy: math.NaN()}}
		it.Set = spot(own.Set, own.SetHeading, it.Pick.Heading)
		it.stands = !math.IsNaN(it.Pick.At.Norm()) && !math.IsNaN(it.Set.At.Norm())
		if it.stands {
			s.Top = math.Max(s.Top, hi[2]+math.Max(it.Pick.At[2], it.Set.At[2]))
		}
		it.Plan = itemPlan(p, source)
		s.Items = append(s.Items, it)
	}
	s.assume()
	s.compare()
}

func spot(at vec.V3, degrees, until float64) Spot {
	if math.IsNaN(degrees) {
		return Spot{at, until}
	}
	return Spot{at, degrees * math.Pi / 180}
}

// assume fills in what may be left out and asks for the rest.
func (s *Study) assume() {
	if len(s.Items) == 0 {
		return
	}
	if math.IsNaN(s.Has.Clearance) {
		s.Has.Clearance = clear
		s.Assumed = append(s.Assumed, "Clearance left out: taken as 1 m.")
	}
	if s.Has.Packs == 0 {
		s.Assumed = append(s.Assumed, "Packs for each vehicle left out: taken as many as it takes.")
	}
	if math.IsNaN(s.Has.Home.Norm()) {
		s.Needs = append(s.Needs, "cargo.home_m")
	} else {
		s.Top = math.Max(s.Top, s.Has.Home[2])
	}
	if math.IsNaN(s.Has.Hook) {
		s.Needs = append(s.Needs, "cargo.hook_s")
	}
}

// itemPlan is the lift of an item by the team: its payload, and attachments of its own, stretched, or those of the plan.
func itemPlan(p plan.Plan, it plan.Item) plan.Plan {
	q := p
	q.Payload, q.Cargo, q.Way = it.Payload, plan.Cargo{}, plan.Way{SpeedMax: p.Way.SpeedMax}
	q.Team = append([]plan.Member(nil), p.Team...)
	if q.Site.Wind > 0 && math.IsNaN(q.Site.WindTo) {
		q.Site.WindTo = 0 // as plan.Assume has it, before it is turned
	}
	lo, hi := pattern.Extent(p.Payload)
	to, end := pattern.Extent(it.Payload)
	for i := range q.Team {
		m := &q.Team[i]
		if it.Attach == plan.Scaled {
			for a := range 3 {
				m.Attach[a] = stretched(m.Attach[a], lo[a], hi[a], to[a], end[a])
			}
		}
		for _, h := range it.Hooks {
			if h.ID == m.ID {
				m.Attach = h.At
			}
		}
	}
	return q
}

// stretched takes a place between two sides to the same part of the way between two others; off the sides it keeps its distance, (23.1).
func stretched(x, lo, hi, to, end float64) float64 {
	switch {
	case x <= lo:
		return to + x - lo
	case x >= hi:
		return end + x - hi
	}
	return to + (end-to)*(x-lo)/(hi-lo) // (23.1)
}

// dependents takes out what waits for an item that is not set.
func (s *Study) dependents() {
	for again := true; again; {
		again = false
		for i := range s.Items {
			it := &s.Items[i]
			say := func(list []int, text string) {
				for _, j := range list {
					if it.Why == "" && s.Items[j].Why != "" {
						it.Why, again = fmt.Sprintf(text, s.Items[j].ID), true
					}
				}
			}
			say(it.On, "It stands on %s, which is not set.")
			say(it.Under, "%s lies on it and is not taken away.")
		}
	}
}

// lacking says what is not known of an item, by the paths of the plan.
func lacking(missing []string) string {
	more := ""
	if n := len(missing); n > 3 {
		missing, more = missing[:3], fmt.Sprintf(" and %d more", n-3)
	}
	return "Not said: " + strings.Join(missing, ", ") + more + "."
}
