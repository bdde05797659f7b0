package share

import (
	"math"

	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Drop names a bound on the cables that a question may leave out.
type Drop uint8

// The bounds on cables that can be left out, to see which of them is in the way.
const (
	DropWorkingLoad Drop = 1 << iota
	DropTension
	DropCone
	DropTilt
)

// Wrench is what the team must give the body in hover, about its centre of mass, body axes, (5.3).
func (m *Model) Wrench() solve.Wrench { return wrench(m.Need, m.NeedTurn) }

func wrench(f, turn vec.V3) solve.Wrench {
	return solve.Wrench{f[0], f[1], f[2], turn[0], turn[1], turn[2]}
}

// Even is the program of the smallest worst utilisation t, (5.10).
func (m *Model) Even(drop Drop) *solve.Program {
	p := m.program(drop)
	n := 0
	for _, c := range m.Craft {
		if c.Rigid {
			for _, r := range c.Rotors {
				p.Lines[n].HiT = r.Max // (5.5)
				n++
			}
		}
	}
	n = 0
	for _, c := range m.Craft {
		if !c.Rigid {
			p.Pulls[n].Cones[0].T = c.Vehicle.ThrustMax * c.Keep() // (5.5)
			n++
		}
	}
	p.Goal = 1
	return p
}

// Within is the program of the largest t in direction e of wrenches, no utilisation above limit:
// balance becomes Σ wrench = hover + t e, (5.14) and (7.1).
func (m *Model) Within(limit float64) *solve.Program {
	p := m.program(0)
	n := 0
	for _, c := range m.Craft {
		if c.Rigid {
			for _, r := range c.Rotors {
				p.Lines[n].Hi = float64(limit * r.Max)
				n++
			}
		}
	}
	n = 0
	for _, c := range m.Craft {
		if !c.Rigid {
			p.Pulls[n].Cones[0].C = float64(limit * c.Vehicle.ThrustMax * c.Keep())
			n++
		}
	}
	p.Goal = -1
	return p
}

// Accelerate makes a program of Within ask for t times an acceleration: of the body's centre of
// mass, m/s², and about it, rad/s². Vehicles on cables share the acceleration of their attachment,
// (7.4), and those held rigidly are part of the body.
func (m *Model) Accelerate(p *solve.Program, linear, angular vec.V3) {
	p.WrenchT = wrench(linear.Scale(m.Body.Mass), m.Body.Inertia.Mul(angular)) // (7.2)
	n := 0
	for _, c := range m.Craft {
		if c.Rigid {
			continue
		}
		a := linear.Add(angular.Cross(c.At.Sub(m.Body.COM)))
		d := a.Scale(c.Vehicle.Mass * c.Keep())
		cones := p.Pulls[n].Cones
		cones[0].D = d // (7.4)
		cones[1].D, cones[1].T = d, float64(cones[1].Z*d[2])
		n++
		if c.Wash != 0 {
			press := wrench(m.press(&c, a.Scale(c.Vehicle.Mass))) // (22.3)
			for k := range p.WrenchT {
				p.WrenchT[k] += press[k]
			}
		}
	}
}

// Push makes a program of Within ask for t times a wrench on the body, nothing accelerated.
func (m *Model) Push(p *solve.Program, force, moment vec.V3) {
	p.WrenchT = wrench(force, moment)
	for i := range p.Pulls {
		cones := p.Pulls[i].Cones
		cones[0].D, cones[1].D, cones[1].T = vec.V3{}, vec.V3{}, 0
	}
}

// program lays out rotors and cables with every bound but the one on thrust. Cone 0 of a cable is
// its thrust, to be filled in; cone 1 its tilt, unless dropped.
func (m *Model) program(drop Drop) *solve.Program {
	lines, pulls := 0, 0
	for _, c := range m.Craft {
		if c.Rigid {
			lines += len(c.Rotors)
		} else {
			pulls++
		}
	}
	p := &solve.Program{Lines: make([]solve.Line, 0, lines), Pulls: make([]solve.Pull, 0, pulls), Wrench: m.Wrench()}
	cones := make([]solve.Cone, 0, 4*pulls)
	for i := range m.Craft {
		c := &m.Craft[i]
		r := c.Arm().Sub(m.Body.COM)
		if !c.Rigid {
			from := len(cones)
			cones = m.cones(cones, c, drop)
			minZ := m.Plan.Limits.TensionMin * c.Keep() // (5.8)
			if drop&DropTension != 0 {
				minZ = 0
			}
			p.Pulls = append(p.Pulls, solve.Pull{At: r, MinZ: minZ, Cones: cones[from:len(cones):len(cones)]})
			continue
		}
		for _, rotor := range c.Rotors {
			p.Lines = append(p.Lines, solve.Line{Column: wrench(rotor.Force, r.Cross(rotor.Force).Add(rotor.Moment))}) // (5.1), (22.2)
		}
	}
	return p
}

// cones appends the bounds of one cable.
func (m *Model) cones(to []solve.Cone, c *Craft, drop Drop) []solve.Cone {
	own := c.Own() // f = F + own, (5.4)
	to = append(to, solve.Cone{B: own})
	if drop&DropTilt == 0 {
		tan := math.Tan(c.Vehicle.TiltMax)
		to = append(to, solve.Cone{Flat: true, B: own, Z: tan, C: float64(tan * own[2])}) // (5.6)
	}
	if drop&DropCone == 0 {
		to = append(to, solve.Cone{Flat: true, Z: math.Tan(m.Plan.Limits.Cone * math.Pi / 180)}) // (5.7)
	}
	if drop&DropWorkingLoad == 0 && !math.IsNaN(c.WorkingLoad) {
		to = append(to, solve.Cone{C: c.WorkingLoad * c.Keep()}) // (5.8)
	}
	return to
}
