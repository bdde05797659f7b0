package energy

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/solve"
)

// Leg is a straight and level part of a route, over the ground.
type Leg struct {
	To       float64 // degrees, anticlockwise from payload x
	Distance float64 // m
	Speed    float64 // m/s
}

// Flown is a leg with what it takes. NaN: not computed.
type Flown struct {
	Leg
	Air         float64   // m/s: speed through the air
	Time        float64   // s
	Power       []float64 // W, of every vehicle
	Energy      float64   // J, of the team
	Utilisation float64   // of the worst vehicle
	Charge      []float64 // left of every pack at its end
	Status      solve.Status
	effort      []float64 // thrust needed over that available, of every vehicle
	single      single    // vehicle that flies it instead
	model       *share.Model
	parts       []share.Part
}

// Route is what a route takes.
type Route struct {
	Legs     []Flown // up to the one on which it ends
	Done     bool    // every pack keeps its reserve to the end
	Ended    int     // the vehicle that ends it; −1: none, or a leg is not flown at all
	By       End
	At       float64 // m, along the route, where it ends
	Distance float64 // m
	Time     float64 // s
	Energy   float64 // J
	PerLoad  float64 // J per kilogram of payload and metre
	Single   float64 // the same for one vehicle of the team's mass, discs and drag
}

// Route flies legs one after the other from full packs, in the plan's wind, each steady: the team shares as its plan says in the wind that
// it meets, (18.25). Nothing is flown while Study.Needs lists anything. Starting, stopping and climbing are left out.
func (s *Study) Route(solver *solve.Solver, legs []Leg) Route {
	out := Route{Ended: -1, PerLoad: math.NaN(), Single: math.NaN()}
	if len(s.craft) == 0 || len(s.Needs) > 0 {
		return out
	}
	charge := make([]float64, len(s.craft))
	for i := range charge {
		charge[i] = 1
	}
	single := 0.0
	for _, leg := range legs {
		f := s.fly(solver, leg)
		single += f.single.Power * f.Time
		out.Legs = append(out.Legs, f)
		if f.Status != solve.Optimal || math.IsNaN(f.Energy) {
			out.At = out.Distance
			return out
		}
		part := s.drain(&out, charge)
		out.Distance += part * leg.Distance
		out.Time += part * f.Time
		out.Energy += part * f.Energy
		if out.Ended >= 0 {
			out.At = out.Distance
			return out
		}
	}
	out.Done = true
	out.PerLoad = out.Energy / (s.model.Payload.Mass * out.Distance) // (18.27)
	out.Single = single / (s.model.Payload.Mass * out.Distance)
	return out
}

// fly works out one leg.
func (s *Study) fly(solver *solve.Solver, leg Leg) Flown {
	m, air := s.meets(leg)
	a, _ := Share(m, solver)
	f := Flown{Leg: leg, Air: air, Time: leg.Distance / leg.Speed, Energy: math.NaN(), Utilisation: a.T, Status: a.Status, single: s.alone(m)}
	if a.Status != solve.Optimal {
		return f
	}
	f.model, f.parts = m, a.Parts
	sum := 0.0
	for i := range a.Parts {
		p := &a.Parts[i]
		f.Power = append(f.Power, s.power(m, i, p))
		f.effort = append(f.effort, p.Utilisation)
		sum += f.Power[i]
	}
	f.Energy = sum * f.Time
	return f
}

// meets is the model in the wind that the team feels on a leg, and that wind's speed.
func (s *Study) meets(leg Leg) (*share.Model, float64) {
	sin, cos := math.Sincos(leg.To * math.Pi / 180)
	x, y := s.model.Wind[0]-leg.Speed*cos, s.model.Wind[1]-leg.Speed*sin // (18.25)
	v := math.Hypot(x, y)
	return s.model.Aloft().InWind(v, math.Atan2(y, x)*180/math.Pi), v
}

// drain takes the last leg out of the packs. It returns the part of it that is flown: less than 1 when a pack reaches its end, which
// it then notes.
func (s *Study) drain(r *Route, charge []float64) float64 {
	f := &r.Legs[len(r.Legs)-1]
	part := 1.0
	for i, k := range s.craft {
		end, by := k.pack.end(f.Power[i], f.effort[i], k.voltage, s.model.Plan.Limits.Reserve)
		t := 0.0
		if end < charge[i] {
			t, _ = k.pack.Time(f.Power[i], charge[i], end)
		}
		if p := t / f.Time; p < part || math.IsNaN(p) {
			part, r.Ended, r.By = p, i, by
		}
	}
	for i, k := range s.craft {
		charge[i], _ = k.pack.After(f.Power[i], charge[i], part*f.Time)
		f.Charge = append(f.Charge, charge[i])
	}
	return part
}

// single is one vehicle in place of payload and team, (18.26).
type single struct {
	Rotor
	Weight, Drag float64 // N
	Air          float64 // m/s
	Avionics     float64 // W
	Power        float64 // W, electric
}

// alone is one vehicle with the mass, discs and drag of payload and team, its rotors and drive as good as theirs
// by disc area, one set of avionics, (18.26).
func (s *Study) alone(m *share.Model) single {
	one := single{Weight: m.Mass * share.Gravity, Drag: dragOf(m), Air: m.Wind.Norm()}
	for i, k := range s.craft {
		area := k.rotor.Area * float64(len(m.Craft[i].Rotors))
		one.Area += area
		one.FigureOfMerit += k.rotor.FigureOfMerit * area
		one.DriveEfficiency += k.rotor.DriveEfficiency * area
		one.Avionics += k.avionics / float64(len(s.craft))
	}
	one.FigureOfMerit /= one.Area
	one.DriveEfficiency /= one.Area
	thrust, across, through := one.flow()
	one.Power = one.Electric(thrust, s.Density, across, through) + one.Avionics // (18.26)
	return one
}

// flow is the thrust (N) that holds weight and drag, and the air along and down through the discs, m/s.
func (one single) flow() (thrust, across, through float64) {
	thrust = math.Hypot(one.Weight, one.Drag)
	return thrust, one.Air * one.Weight / thrust, one.Air * one.Drag / thrust
}

// dragOf is the drag of payload and vehicles along the wind, N.
func dragOf(m *share.Model) float64 {
	sum := m.Drag
	for _, c := range m.Craft {
		sum = sum.Add(c.Drag)
	}
	return sum.Norm()
}
