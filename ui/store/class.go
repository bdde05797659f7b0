package store

import (
	"errors"
	"math"
	"slices"
	"strconv"
	"strings"

	"cohoist/core/plan"
	"cohoist/core/vec"
	"cohoist/ui/format"
)

func fault(text string) error { return errors.New(text) }

// ClassNames are the plan's classes in order of name.
func ClassNames(p plan.Plan) []string {
	names := make([]string, 0, len(p.Vehicles))
	for n := range p.Vehicles {
		names = append(names, n)
	}
	slices.Sort(names)
	return names
}

// TeamClass is the class of every vehicle, or "" when there are several.
func TeamClass(p plan.Plan) string {
	if len(p.Team) == 0 {
		return ""
	}
	for _, m := range p.Team {
		if m.Vehicle != p.Team[0].Vehicle {
			return ""
		}
	}
	return p.Team[0].Vehicle
}

// SetTeamClass makes every vehicle of one class, of the plan's or the library's.
func (s *Store) SetTeamClass(name string) {
	if name == "" {
		return
	}
	before := patternOf(s.plan)
	s.Do(func(p *plan.Plan) {
		bring(p, name)
		for i := range p.Team {
			p.Team[i].Vehicle = name
		}
		tidy(p)
		again(p, before)
	})
}

// SetClass makes vehicle i of a class.
func (s *Store) SetClass(i int, name string) {
	s.Do(func(p *plan.Plan) {
		bring(p, name)
		p.Team[i].Vehicle = name
		tidy(p)
	})
}

// bring puts a class of the library into the plan.
func bring(p *plan.Plan, name string) {
	if _, ok := p.Vehicles[name]; ok {
		return
	}
	for _, l := range Library() {
		if l.Name == name {
			if p.Vehicles == nil {
				p.Vehicles = map[string]plan.Class{}
			}
			p.Vehicles[name] = l.Class
		}
	}
}

// tidy drops library classes that nobody uses and nobody changed: they are there to be had again.
func tidy(p *plan.Plan) {
	for _, l := range Library() {
		c, ok := p.Vehicles[l.Name]
		if !ok || !equal(c, l.Class) || uses(*p, l.Name) {
			continue
		}
		delete(p.Vehicles, l.Name)
	}
}

func uses(p plan.Plan, class string) bool {
	return slices.ContainsFunc(p.Team, func(m plan.Member) bool { return m.Vehicle == class })
}

// equal compares classes, with numbers left out equal to each other.
func equal(a, b plan.Class) bool {
	one := func(c plan.Class) plan.Plan { return plan.Plan{Vehicles: map[string]plan.Class{"": c}} }
	return plan.Same(one(a), one(b))
}

// NewClass adds a class like the named one, for own numbers.
func (s *Store) NewClass(like string) {
	s.Do(func(p *plan.Plan) {
		bring(p, like)
		c := p.Vehicles[like]
		c.Extra = nil
		name := "own-class"
		for n := 2; ; n++ {
			if _, taken := p.Vehicles[name]; !taken {
				break
			}
			name = "own-class-" + strconv.Itoa(n)
		}
		p.Vehicles[name] = c
		for i := range p.Team {
			if p.Team[i].Vehicle == like {
				p.Team[i].Vehicle = name
			}
		}
		tidy(p)
	})
}

// RemoveClass takes a class that no vehicle uses out of the plan.
func (s *Store) RemoveClass(name string) {
	if uses(s.plan, name) {
		s.Say("edit", "Vehicles of the team are of the class "+name+"; give them another first.")
		return
	}
	s.Do(func(p *plan.Plan) { delete(p.Vehicles, name) })
}

// ClassName is the name of the class at place i.
func ClassName(i int) Words {
	return Words{ID: "class-" + strconv.Itoa(i) + "-name", Name: "Name",
		Get: func(p plan.Plan) string { return nth(ClassNames(p), i) },
		Set: func(p *plan.Plan, t string) {}}
}

// Rename gives the class at place i another name, when the typing is done: the place follows the name.
func (s *Store) Rename(i int, to string) {
	from := nth(ClassNames(s.plan), i)
	to = strings.TrimSpace(to)
	if to == from || from == "" {
		return
	}
	if _, taken := s.plan.Vehicles[to]; taken || to == "" {
		s.Say("edit", "A class needs a name that no other class has.")
		return
	}
	s.Do(func(p *plan.Plan) {
		p.Vehicles[to] = p.Vehicles[from]
		delete(p.Vehicles, from)
		for k := range p.Team {
			if p.Team[k].Vehicle == from {
				p.Team[k].Vehicle = to
			}
		}
	})
}

// ClassFields are the numbers of the class at place i.
func ClassFields(i int) []Field {
	prefix := "class-" + strconv.Itoa(i)
	var list []Field
	one := func(id, name string, q format.Quantity, must bool, of func(*plan.Class) *float64) {
		list = append(list, Field{ID: prefix + "-" + id, Name: name, Q: q, Must: must,
			Get: func(p plan.Plan) float64 { c := p.Vehicles[nth(ClassNames(p), i)]; return *of(&c) },
			Set: func(p *plan.Plan, x float64) {
				name := nth(ClassNames(*p), i)
				c := p.Vehicles[name]
				*of(&c) = x
				p.Vehicles[name] = c
			}})
	}
	one("mass", "Mass, ready to fly", format.Mass, false, func(c *plan.Class) *float64 { return &c.Mass })
	list = append(list, Field{ID: prefix + "-rotors", Name: "Rotors", Q: format.Plain, Must: true,
		Get: func(p plan.Plan) float64 { return float64(p.Vehicles[nth(ClassNames(p), i)].Rotors) },
		Set: func(p *plan.Plan, x float64) {
			name := nth(ClassNames(*p), i)
			c := p.Vehicles[name]
			c.Rotors = int(math.Max(-1, math.Min(x, 1000)))
			p.Vehicles[name] = c
		}})
	one("arm", "Arm, centre to rotor", format.Length, false, func(c *plan.Class) *float64 { return &c.Arm })
	one("radius", "Rotor radius", format.Length, false, func(c *plan.Class) *float64 { return &c.RotorRadius })
	one("thrust", "Thrust of a rotor, at most", format.Force, false, func(c *plan.Class) *float64 { return &c.RotorThrustMax })
	one("torque", "Torque per thrust", format.Length, false, func(c *plan.Class) *float64 { return &c.TorquePerThrust })
	one("drag", "Drag area", format.Area, false, func(c *plan.Class) *float64 { return &c.DragArea })
	one("tilt", "Tilt, at most", format.Angle, false, func(c *plan.Class) *float64 { return &c.TiltMax })
	return list
}

// ClassInertia are the measured moments of inertia of the class at place i.
func ClassInertia(i int) []Field {
	var list []Field
	for k := range axes {
		list = append(list, Field{ID: "class-" + strconv.Itoa(i) + "-inertia-" + axes[k], Name: "Inertia " + axes[k], Q: format.Inertia,
			Get: func(p plan.Plan) float64 { return of(p.Vehicles[nth(ClassNames(p), i)].Inertia, k) },
			Set: func(p *plan.Plan, x float64) {
				name := nth(ClassNames(*p), i)
				c := p.Vehicles[name]
				var v vec.V3
				if c.Inertia != nil {
					v = *c.Inertia
				}
				v[k] = x
				c.Inertia = &v
				p.Vehicles[name] = c
			}})
	}
	return list
}

func nth(list []string, i int) string {
	if i < len(list) {
		return list[i]
	}
	return ""
}
