package place

import (
	"fmt"
	"math"

	"cohoist/core/air"
	"cohoist/core/beam"
	"cohoist/core/mass"
	"cohoist/core/near"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// group is vehicles that are alike: they may change places without changing anything.
type group struct {
	members []int // index in the team
	fixed   bool
}

// scenario is one situation to hold in.
type scenario struct {
	name  string
	plan  plan.Plan // its site
	shift vec.V3    // of the centre of mass, m
	off   float64   // of the centre of mass in any direction, m; upright scenarios only
	lost  int       // group that loses any one of its vehicles; −1: none
	model *share.Model
	craft []share.Craft // by group: its vehicle, wherever it stands
}

// bench is a question made ready: groups, scenarios, the solver.
type bench struct {
	Question
	payload mass.Properties
	area    vec.V3
	density float64
	groups  []group // the free ones first
	free    int     // how many of the groups are free
	posts   []vec.V3
	group   []int // of each post
	scen    []scenario
	cables  bool // all are on cables
	flat    bool // all places are at one height
	across  bool // the centre of mass may be off in every direction: the places are not all in line
	beam    beam.Model
	weight  float64
	faces   []near.Face // of the payload, when the wakes on it are counted; nil: they are not
	solver  *solve.Solver
	spots   []spot
	// programs that did not come to an answer: their placements count as holding nothing, and nothing is proved
	unsolved int
}

// newBench lays out the posts: one for each vehicle, group by group, the fixed ones last. The free ones will
// stand somewhere among places, or where they stand when there are none.
func newBench(q Question, places []vec.V3) (*bench, error) {
	if len(q.Free) != len(q.Plan.Team) {
		q.Free = nil
	}
	q.Plan.Team = append([]plan.Member(nil), q.Plan.Team...)
	washed := washes(q.Plan)
	if q.Plan.Near = (plan.Near{}); washed {
		q.Plan.Near.Download = plan.Counted
	}
	for i := range q.Plan.Team {
		for axis, x := range q.Plan.Team[i].Attach {
			if math.IsNaN(x) && (q.Free == nil || q.Free[i]) {
				q.Plan.Team[i].Attach[axis] = 0 // it is to be chosen
			}
		}
	}
	if lack := plan.Missing(q.Plan); len(lack) > 0 {
		return nil, fmt.Errorf("%s is missing: give it before places are chosen", lack[0])
	}
	payload, err := mass.Of(q.Plan.Payload)
	if err != nil {
		return nil, err
	}
	rho, ok := air.Density(q.Plan.Site)
	if !ok {
		return nil, fmt.Errorf("the air's density is not known at %g m: plan below 11 000 m", q.Plan.Site.Altitude)
	}
	b := &bench{Question: q, payload: payload, area: air.Area(q.Plan.Payload), density: rho, solver: solve.NewSolver(),
		weight: payload.Mass * share.Gravity}
	if washed {
		b.faces = near.Faces(q.Plan.Payload.Solids)
	}
	for _, fixed := range [2]bool{false, true} {
		for i := range q.Plan.Team {
			if q.Free != nil && !q.Free[i] == fixed || q.Free == nil && !fixed {
				b.join(i, fixed)
			}
		}
		if !fixed {
			b.free = len(b.groups)
		}
	}
	if b.free == 0 {
		return nil, ErrNone
	}
	for g, grp := range b.groups {
		for _, i := range grp.members {
			b.posts, b.group = append(b.posts, q.Plan.Team[i].Attach), append(b.group, g)
		}
	}
	if places == nil {
		places = b.posts[:b.first(b.free)]
	}
	all := append(append([]vec.V3(nil), places...), b.posts[b.first(b.free):]...)
	b.across, b.flat = !straight(all), level(all)
	if q.Goal == Moment {
		if b.beam, ok = beam.Of(q.Plan.Payload); !ok {
			return nil, ErrNotBeam
		}
	}
	b.scenarios()
	return b, nil
}

// washes tells that wakes on the payload are counted and are a matter of each vehicle's own place: all hold rigidly and
// upright. Else what is near depends on where all fly, or on the lean, and the search leaves it out; the report of what it finds counts it.
func washes(p plan.Plan) bool {
	for _, m := range p.Team {
		if m.Hold.Kind != plan.Rigid || m.Hold.Lean[0] != 0 || m.Hold.Lean[1] != 0 {
			return false
		}
	}
	return p.Near.Download == plan.Counted
}

// standing is a vehicle of a scenario at a place.
func (b *bench) standing(c *share.Craft, at vec.V3) *share.Craft {
	if b.faces == nil {
		return c
	}
	moved := *c
	moved.Rotors = c.Moved(b.faces, at, nil)
	return &moved
}

// join adds a vehicle to the group of its like.
func (b *bench) join(i int, fixed bool) {
	m := b.Plan.Team[i]
	for g := range b.groups {
		if o := b.Plan.Team[b.groups[g].members[0]]; !fixed && o.Vehicle == m.Vehicle && o.Yaw == m.Yaw && alike(o.Hold, m.Hold) {
			b.groups[g].members = append(b.groups[g].members, i)
			return
		}
	}
	b.groups = append(b.groups, group{[]int{i}, fixed})
}

func alike(a, b plan.Hold) bool {
	same := func(x, y float64) bool { return x == y || math.IsNaN(x) && math.IsNaN(y) }
	if a.Kind != plan.Rigid {
		return a.Kind == b.Kind && same(a.Length, b.Length) && same(a.WorkingLoad, b.WorkingLoad)
	}
	return a.Kind == b.Kind && a.Lean == b.Lean
}

// offWays is how many directions the centre of mass is shifted to where forces are not upright.
const offWays = 8

// scenarios lists what must be held, (10.1), the most telling first.
func (b *bench) scenarios() {
	base := b.Plan
	if b.Cases.Winds > 0 {
		base.Site.Wind = 0
	}
	b.cables = true
	for _, m := range base.Team {
		b.cables = b.cables && m.Hold.Kind == plan.Cable
	}
	if b.Cases.Lost && len(base.Team) > 1 {
		for g, grp := range b.groups {
			name := "one " + base.Team[grp.members[0]].Vehicle + " lost"
			if len(grp.members) == 1 {
				name = base.Team[grp.members[0]].ID + " lost"
			}
			b.add(scenario{name: name, plan: base, lost: g})
		}
	}
	switch off := b.Cases.Off; {
	case !(off > 0):
		b.add(scenario{name: "hover", plan: base, lost: -1})
	case b.upright(&scenario{plan: base}):
		b.add(scenario{name: "centre of mass off", plan: base, off: off, lost: -1})
	default:
		for i := range offWays {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / offWays)
			b.add(scenario{name: "centre of mass off towards " + fmt.Sprint(360*i/offWays) + "°", plan: base,
				shift: vec.V3{off * cos, off * sin, 0}, lost: -1})
		}
	}
	for i := range b.Cases.Winds {
		to := 360 * float64(i) / float64(b.Cases.Winds)
		p := b.Plan
		p.Site.WindTo = to
		b.add(scenario{name: "wind to " + plan.Number(math.Round(to), "°"), plan: p, lost: -1})
	}
}

// add makes a scenario's model, for what does not depend on places: how the body leans, and its vehicles.
func (b *bench) add(s scenario) {
	lost := -1
	if s.lost >= 0 {
		lost = b.first(s.lost)
	}
	s.model = b.model(&s, b.posts, lost)
	s.craft = make([]share.Craft, len(b.groups))
	whole := b.model(&s, b.posts, -1) // the lost vehicle may be the only one of its group
	for g := range b.groups {
		s.craft[g] = whole.Craft[b.first(g)]
	}
	for i, post := 0, 0; post < len(b.posts); post++ {
		if post == lost {
			continue
		}
		s.craft[b.group[post]] = s.model.Craft[i]
		i++
	}
	b.scen = append(b.scen, s)
}

// first is the first post of a group.
func (b *bench) first(g int) int {
	n := 0
	for _, h := range b.groups[:g] {
		n += len(h.members)
	}
	return n
}

// model is the share of a scenario with the vehicles at posts, without the one at post lost. Its craft
// are in the order of the posts.
func (b *bench) model(s *scenario, posts []vec.V3, lost int) *share.Model {
	p := s.plan
	p.Team = make([]plan.Member, 0, len(posts))
	n := 0
	for _, grp := range b.groups {
		for _, i := range grp.members {
			if n != lost {
				m := b.Plan.Team[i]
				m.Attach = posts[n]
				p.Team = append(p.Team, m)
			}
			n++
		}
	}
	load := b.payload
	load.COM = load.COM.Add(s.shift)
	return share.New(p, load, b.area, b.density)
}
