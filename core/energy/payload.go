package energy

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/vec"
)

// Near is what a vehicle's own wake does.
type Near struct {
	ID       string
	Depth    float64 // m: of the payload's upper side below the rotors
	Blocked  float64 // m²: of the payload's outline in the wakes of its rotors
	Download float64 // N: on the payload; NaN: outside PressureRange
	Ratio    float64 // thrust needed over that without; NaN: outside DownloadRange or PressureRange
	Outside  string  // which range was left; empty: none
}

// Wakes tells for every vehicle of a study how much of the payload stands in its wake, (18.24). Wind would carry wakes aside, and the
// outline is that of the solids as boxes turned about the vertical; both only make it too much.
func (s *Study) Wakes(parts []share.Part) []Near {
	out := make([]Near, 0, len(parts))
	for i, p := range parts {
		c := &s.model.Craft[i]
		class := s.model.Plan.Vehicles[c.Class]
		n := Near{ID: c.ID, Depth: math.Inf(1)}
		thrust := p.Effort / float64(max(len(c.Rotors), 1))
		w := WakeOf(thrust, class.RotorRadius, 2*c.Vehicle.Reach, s.Density)
		drag, rotors, jet := 0.0, s.rotors(i), false
		for _, solid := range s.model.Plan.Payload.Solids {
			a, b, top := outline(solid)
			depth := p.Position[2] - solid.At[2] - top
			if !(a > 0 && b > 0 && depth > 0) {
				continue
			}
			n.Depth = math.Min(n.Depth, depth)
			yaw := vec.Rot(vec.V3{0, 0, -solid.Turn[2] * math.Pi / 180})
			for _, r := range rotors {
				at := yaw.Mul(p.Position.Add(r).Sub(solid.At))
				area := Overlap(at[0], at[1], w.Radius, a, b)
				n.Blocked += area
				drag += flat * area
			}
			if wide := w.jet(depth, c.Vehicle.Reach, class.RotorRadius); wide > 0 {
				at := yaw.Mul(p.Position.Sub(solid.At))
				jet = jet || Overlap(at[0], at[1], wide, a, b) > 0
			}
		}
		out = append(out, n.judged(w, drag, thrust*float64(len(c.Rotors)), s.Density, jet))
	}
	return out
}

// rotors are the places of a vehicle's rotors from its centre, payload frame; on a cable as if it did not tilt.
func (s *Study) rotors(i int) []vec.V3 {
	c := &s.model.Craft[i]
	axes := c.Axes
	if !c.Rigid {
		axes = vec.Rot(vec.V3{0, 0, s.model.Plan.Team[i].Yaw * math.Pi / 180})
	}
	out := make([]vec.V3, len(c.Vehicle.Rotors))
	for j, r := range c.Vehicle.Rotors {
		out[j] = axes.Mul(r.At)
	}
	return out
}

// flat is the drag coefficient of a flat body across the flow: a square plate's, Aeronautical Engineer's Data Book (C. Matthews), fig. 5.13(b), p. 95.
const flat = 1.17

// spreading is half the opening of a round turbulent jet: 11.8°, Environmental Fluid Mechanics (B. Cushman-Roisin; from memory).
const spreading = 11.8 * math.Pi / 180

// jet is the radius of the one jet of a vehicle that reaches so far out at a depth, m, (17.6); 0: it is not one yet.
func (w Wake) jet(depth, reach, radius float64) float64 {
	if depth <= w.Merged {
		return 0
	}
	return reach - radius + w.Radius + (depth-w.Merged)*math.Tan(spreading) // (17.6)
}

// judged fills in the download of a drag area; jet: the vehicle's one jet reaches the payload.
func (n Near) judged(w Wake, drag, thrust, rho float64, jet bool) Near {
	if jet {
		n.Download, n.Ratio, n.Outside = math.NaN(), math.NaN(), PressureRange.Of
		return n
	}
	if n.Blocked == 0 {
		n.Download, n.Ratio = 0, 1
		return n
	}
	q, ok := w.Pressure(n.Depth, rho)
	n.Download, n.Ratio = q*drag, math.NaN()
	if !ok {
		n.Outside = PressureRange.Of
		return n
	}
	discs := thrust / q // T/A is the far wake's dynamic pressure
	if n.Ratio, ok = Download(drag, discs); !ok {
		n.Outside = DownloadRange.Of
	}
	return n
}

// outline is half the length and width of a solid seen from above, and how high it reaches above its own place, m.
func outline(s plan.Solid) (a, b, top float64) {
	switch s.Shape {
	case plan.Box:
		if len(s.Size) == 3 {
			return s.Size[0] / 2, s.Size[1] / 2, s.Size[2] / 2
		}
	case plan.Plate:
		if len(s.Size) == 2 {
			return s.Size[0] / 2, s.Size[1] / 2, 0
		}
	case plan.Tube:
		return s.Length / 2, s.OuterRadius, s.OuterRadius
	case plan.Cylinder:
		return s.OuterRadius, s.OuterRadius, s.Length / 2
	case plan.MeshBody:
		if s.Mesh == nil {
			break
		}
		for _, v := range s.Mesh.Vertices {
			a, b, top = math.Max(a, math.Abs(v[0])), math.Max(b, math.Abs(v[1])), math.Max(top, v[2])
		}
		return a, b, top
	}
	return 0, 0, 0
}
