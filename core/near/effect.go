package near

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// Flyer is a vehicle that flies among others.
type Flyer struct {
	Rotors
	Thrusts  []float64 // of its rotors, N
	Most     []float64 // the most of each, far from everything, N
	DragArea float64   // C_d A, m²
	Merit    float64   // figure of merit; NaN: not known
}

// Effect is what stands near a vehicle and what that does to it.
type Effect struct {
	Height  float64   // of its rotors above the ground, m; NaN: left out
	Ground  float64   // thrust over that far from the ground, at the same power, (22.1)
	Beyond  bool      // too near to the ground for (22.1)
	Shadows []Shadow  // of the payload in the wake of each rotor, (22.4); nil: left out
	Flow    []float64 // m/s: mean speed down through each rotor, from the wakes of others, (22.5); nil: left out
	Lift    []float64 // thrust of each rotor over that out of the wakes, at the same power, (22.7); nil: left out
	Push    vec.V3    // on the vehicle in those wakes, N, (22.8)
	Blower  int       // whose wake is strongest, by its place in the team; −1: none
}

// Share is the part of the vehicle's thrust with which its wakes press on the payload, rotors alike.
func (e *Effect) Share() float64 {
	_, whole := e.pressed()
	return whole / math.Max(1, float64(len(e.Shadows)))
}

// Under is where they press, payload frame; at when they do not.
func (e *Effect) Under(at vec.V3) vec.V3 {
	sum, whole := e.pressed()
	if whole == 0 {
		return at
	}
	return sum.Scale(1 / whole)
}

func (e *Effect) pressed() (sum vec.V3, whole float64) {
	for i := range e.Shadows {
		s := &e.Shadows[i]
		sum, whole = sum.Add(s.At.Scale(s.Share)), whole+s.Share
	}
	return sum, whole
}

// Worst is the least of Lift; 1 when nothing blows.
func (e *Effect) Worst() float64 {
	least := 1.0
	for _, x := range e.Lift {
		least = math.Min(least, x)
	}
	return least
}

// Scene is what may stand near the vehicles of a plan.
type Scene struct {
	terms plan.Near
	faces []Face
	low   float64 // of the payload's lowest point, m
	rho   float64 // kg/m³
}

// NewScene is the scene of a payload's solids in air of a density (kg/m³), with the terms that are counted; nil when none is.
func NewScene(terms plan.Near, solids []plan.Solid, rho float64) *Scene {
	s := &Scene{terms: terms, rho: rho}
	none := true
	if terms.Download == plan.Counted {
		s.faces, none = Faces(solids), false
	}
	if terms.Ground == plan.Counted {
		s.low, none = Lowest(solids), false
	}
	if none && terms.Wakes != plan.Counted {
		return nil
	}
	return s
}

// Look finds what is near every vehicle of a team.
func (s *Scene) Look(team []Flyer) []Effect {
	out := make([]Effect, len(team))
	for i := range team {
		f, e := &team[i], &out[i]
		e.Height, e.Ground, e.Blower = math.NaN(), 1, -1
		if s.terms.Ground == plan.Counted {
			e.Height = s.terms.Clearance + f.At[2] - s.low
			ratio, ok := Ground(e.Height, f.Radius)
			e.Ground, e.Beyond = ratio, !ok
		}
		if s.terms.Download == plan.Counted {
			e.Shadows = make([]Shadow, len(f.Places))
			for j := range f.Places {
				e.Shadows[j] = f.Shadow(j, s.faces)
			}
		}
		if s.terms.Wakes == plan.Counted {
			s.blown(e, team, i)
		}
	}
	return out
}

// blown finds what the wakes of the others do to vehicle i, (22.5) to (22.8).
func (s *Scene) blown(e *Effect, team []Flyer, i int) {
	f := &team[i]
	n := len(f.Places)
	e.Flow, e.Lift = make([]float64, n), make([]float64, n)
	strongest := 0.0
	for k := range team {
		up := &team[k]
		if k == i || !(up.At[2] > f.At[2]-f.Reach) {
			continue
		}
		sum, push := 0.0, 0.0
		for j := range f.Places {
			mean, square := up.Flow(up.Thrusts, f.At.Add(f.Places[j]), f.Radius, s.rho)
			e.Flow[j] += mean
			sum, push = sum+mean, push+square/float64(n)
		}
		if sum == 0 {
			continue
		}
		e.Push = e.Push.Add(up.Down.Scale(s.rho / 2 * f.DragArea * push)) // (22.8)
		if sum > strongest {
			strongest, e.Blower = sum, k
		}
	}
	for j := range e.Lift {
		e.Lift[j] = InWake(f.Most[j]*e.Ground, math.Pi*f.Radius*f.Radius, f.Merit, s.rho, e.Flow[j])
	}
}

// Onto moves where wakes press to below a line through at, or to below at when line is zero.
func (e *Effect) Onto(at, line vec.V3) {
	for j := range e.Shadows {
		s := &e.Shadows[j]
		along := line[0]*(s.At[0]-at[0]) + line[1]*(s.At[1]-at[1])
		s.At[0], s.At[1] = at[0]+along*line[0], at[1]+along*line[1]
	}
}
