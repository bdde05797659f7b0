package store

import (
	"math"
	"strconv"

	"cohoist/core/pattern"
	"cohoist/core/plan"
	"cohoist/core/vec"
	"cohoist/ui/format"
)

// TeamMax is the largest team the page lets a person type; a plan from a file may be larger.
const TeamMax = 100

// Count is the number of vehicles. More of them stand in the pattern chosen last.
func Count(id string) Field {
	return Field{ID: id, Name: "Number of vehicles", Q: format.Plain, Must: true,
		Get: func(p plan.Plan) float64 { return float64(len(p.Team)) },
		Set: func(p *plan.Plan, x float64) {}}
}

// TypeCount takes the number of vehicles as it is typed.
func (s *Store) TypeCount(f Field, raw string) {
	s.raw[f.ID] = raw
	x, err := s.Units.Parse(format.Plain, raw)
	if err == nil && (math.IsNaN(x) || x != math.Round(x) || x < 1 || x > TeamMax) {
		err = fault("A team is a whole number of vehicles from 1 to " + strconv.Itoa(TeamMax) + ".")
	}
	if err == nil {
		err = s.resize(f.ID, int(x))
	}
	s.judge(f.ID, err)
}

func (s *Store) resize(run string, n int) error {
	if n == len(s.plan.Team) {
		return nil
	}
	before := patternOf(s.plan)
	return s.Edit(run, func(p *plan.Plan) {
		for len(p.Team) > n {
			p.Team = p.Team[:len(p.Team)-1]
		}
		for len(p.Team) < n {
			p.Team = append(p.Team, s.another(*p))
		}
		s.arrange(p, before)
	})
}

// another is one more vehicle like the last.
func (s *Store) another(p plan.Plan) plan.Member {
	var m plan.Member
	if n := len(p.Team); n > 0 {
		m = p.Team[n-1]
		m.Extra = nil
	} else {
		m = plan.BlankMember()
		m.Attach, m.Hold.Kind, m.Hold.Length = vec.V3{}, plan.Cable, 3
		for name := range p.Vehicles {
			if m.Vehicle == "" || name < m.Vehicle {
				m.Vehicle = name
			}
		}
	}
	m.ID = freshID(p)
	return m
}

// freshID is the first of A, B, … that no vehicle has.
func freshID(p plan.Plan) string {
	for i := 0; ; i++ {
		if id := pattern.ID(i); member(p, id) < 0 {
			return id
		}
	}
}

// Add adds a vehicle like the last and arranges the team anew when a pattern was chosen.
func (s *Store) Add() {
	if len(s.plan.Team) >= TeamMax {
		s.Say("edit", "A team has at most "+strconv.Itoa(TeamMax)+" vehicles on this page.")
		return
	}
	before := patternOf(s.plan)
	s.Do(func(p *plan.Plan) {
		p.Team = append(p.Team, s.another(*p))
		s.arrange(p, before)
	})
	s.Select(s.plan.Team[len(s.plan.Team)-1].ID)
}

// Duplicate adds a vehicle like i beside it.
func (s *Store) Duplicate(i int) {
	s.Do(func(p *plan.Plan) {
		m := p.Team[i]
		m.ID = freshID(*p)
		m.Attach = m.Attach.Add(vec.V3{0.1, 0, 0})
		m.Extra = nil
		p.Team = append(p.Team[:i+1], append([]plan.Member{m}, p.Team[i+1:]...)...)
	})
}

// Remove takes vehicle i away.
func (s *Store) Remove(i int) {
	if len(s.plan.Team) == 1 {
		s.Say("edit", "The last vehicle stays: a lift needs one.")
		return
	}
	s.Do(func(p *plan.Plan) { p.Team = append(p.Team[:i], p.Team[i+1:]...) })
}

// Move swaps vehicle i with the one by places further.
func (s *Store) Move(i, by int) {
	j := i + by
	if j < 0 || j >= len(s.plan.Team) {
		return
	}
	s.Do(func(p *plan.Plan) { p.Team[i], p.Team[j] = p.Team[j], p.Team[i] })
}

// MemberID is the name of vehicle i.
func MemberID(i int) Words {
	return Words{ID: "team-" + strconv.Itoa(i) + "-id", Name: "Name",
		Get: func(p plan.Plan) string { return p.Team[i].ID },
		Set: func(p *plan.Plan, t string) { p.Team[i].ID = t }}
}

// MemberFields are the numbers of vehicle i.
func MemberFields(p plan.Plan, i int) []Field {
	prefix := "team-" + strconv.Itoa(i)
	var list []Field
	for k := range axes {
		list = append(list, Field{ID: prefix + "-attach-" + axes[k], Name: "Attached at " + axes[k], Q: format.Length,
			Get: func(p plan.Plan) float64 { return p.Team[i].Attach[k] },
			Set: func(p *plan.Plan, x float64) { p.Team[i].Attach[k] = x }})
	}
	one := func(id, name string, q format.Quantity, must bool, of func(*plan.Member) *float64) {
		list = append(list, Field{ID: prefix + "-" + id, Name: name, Q: q, Must: must,
			Get: func(p plan.Plan) float64 { return *of(&p.Team[i]) },
			Set: func(p *plan.Plan, x float64) { *of(&p.Team[i]) = x }})
	}
	one("yaw", "Yaw", format.Angle, false, func(m *plan.Member) *float64 { return &m.Yaw })
	if p.Team[i].Hold.Kind == plan.Rigid {
		one("lean-x", "Lean about x", format.Angle, false, func(m *plan.Member) *float64 { return &m.Hold.Lean[0] })
		one("lean-y", "Lean about y", format.Angle, false, func(m *plan.Member) *float64 { return &m.Hold.Lean[1] })
		one("grip-force", "Grip bears", format.Force, false, func(m *plan.Member) *float64 { return &m.Hold.GripForceMax })
		one("grip-moment", "Grip bears", format.Moment, false, func(m *plan.Member) *float64 { return &m.Hold.GripMomentMax })
	} else {
		one("length", "Cable length", format.Length, false, func(m *plan.Member) *float64 { return &m.Hold.Length })
		one("load", "Working load", format.Force, false, func(m *plan.Member) *float64 { return &m.Hold.WorkingLoad })
	}
	return list
}
