package store

import (
	"cohoist/core/plan"
	"cohoist/core/vec"
)

// Library is the classes that come with the page.
func Library() []Entry { return nil }

func estimate(c plan.Class) vec.V3 { return vec.V3{0.05, 0.05, 0.1} }

// Example is an example to open.
type Example struct{ Title, Line string }

// Examples are the examples that come with the page.
func Examples() []Example { return nil }

// OpenExample shows example i.
func (s *Store) OpenExample(i int) {}

// Patterns are the ways to arrange a team.
var Patterns = []struct{ Kind, Name string }{{"ring", "in a ring"}}

// Arrange attaches the team in a pattern.
func (s *Store) Arrange(kind string) {}

func (s *Store) arrange(p *plan.Plan) {}

// OpenMesh adds a mesh.
func (s *Store) OpenMesh() {}

// First is the plan a new visitor sees.
func First() plan.Plan {
	p := plan.Blank()
	p.Title = "A beam to the gallery"
	b := plan.BlankSolid()
	b.Shape, b.Size, b.Mass = plan.Box, []float64{2.4, 0.3, 0.05}, 6
	p.Payload.Solids = []plan.Solid{b}
	c := plan.BlankClass()
	c.Mass, c.Rotors, c.Arm, c.RotorRadius, c.RotorThrustMax, c.TorquePerThrust = 3.4, 4, 0.33, 0.19, 19, 0.016
	p.Vehicles = map[string]plan.Class{"field-quad": c}
	for i, id := range []string{"A", "B", "C", "D"} {
		m := plan.BlankMember()
		m.ID, m.Vehicle, m.Attach = id, "field-quad", vec.V3{1.1 * float64(1-2*(i/2)), 0.12 * float64(1-2*(i%2)), 0.025}
		m.Hold.Kind, m.Hold.Length = plan.Cable, 3
		p.Team = append(p.Team, m)
	}
	return p
}
