package share

import (
	"math"

	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Capped is the program of the smallest t with no thrust above t times a cap, N: of vehicle i as a whole on a cable, of
// each of its rotors when rigid. Even is Capped with the thrusts available.
func (m *Model) Capped(caps []float64) *solve.Program {
	p := m.Even(0)
	m.SetCaps(p, caps)
	return p
}

// Pulls are the forces of the cables of parts, N, in the order of a program.
func (m *Model) Pulls(parts []Part) []vec.V3 {
	var out []vec.V3
	for i, p := range parts {
		if !m.Craft[i].Rigid {
			out = append(out, p.Force)
		}
	}
	return out
}

// SetCaps puts other caps into a program of Capped.
func (m *Model) SetCaps(p *solve.Program, caps []float64) {
	line, pull := 0, 0
	for i := range m.Craft {
		c := &m.Craft[i]
		if !c.Rigid {
			p.Pulls[pull].Cones[0].T = caps[i]
			pull++
			continue
		}
		for range c.Rotors {
			p.Lines[line].HiT = caps[i]
			line++
		}
	}
}

// Nearest is the least distance of two vehicles, not both rigid, m; +Inf: there are no such two.
func (m *Model) Nearest(parts []Part) float64 {
	least := math.Inf(1)
	for i := range parts {
		for j := range i {
			if !(m.Craft[i].Rigid && m.Craft[j].Rigid) {
				least = math.Min(least, parts[i].Position.Sub(parts[j].Position).Norm())
			}
		}
	}
	return least
}
