package energy

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/share"
)

// Grounded is a vehicle near the ground.
type Grounded struct {
	ID      string
	Height  float64 // m: of its rotors above the ground
	Ratio   float64 // thrust over that far from the ground at the same power; NaN: outside GroundRange
	Power   float64 // W: for its part at this height; NaN: not known, or a wind
	Outside string  // the range that was left; empty: none
}

// Grounded tells for every vehicle what the ground does when the payload's lowest point, held level, is so high above it, m. The same thrust takes the
// power that Thrust over Ratio takes far from the ground, (18.21).
func (s *Study) Grounded(parts []share.Part, clearance float64) []Grounded {
	low := s.lowest()
	var out []Grounded
	for i, p := range parts {
		k := &s.craft[i]
		g := Grounded{ID: s.model.Craft[i].ID, Height: clearance + p.Position[2] - low, Power: math.NaN()}
		ratio, ok := GroundEffect(g.Height, s.radius(i))
		g.Ratio = ratio
		if !ok {
			g.Outside = GroundRange.Of
		} else if s.model.Wind.Norm() == 0 {
			g.Power = k.avionics
			for _, u := range p.Rotor {
				g.Power += k.rotor.Electric(math.Max(u, 0)/ratio, s.Density, 0, 0)
			}
		}
		out = append(out, g)
	}
	return out
}

// lowest is the payload's lowest point held level, m in the payload frame; turns that tip a solid are left out.
func (s *Study) lowest() float64 {
	low := math.Inf(1)
	for _, solid := range s.model.Plan.Payload.Solids {
		_, _, top := outline(solid)
		z := solid.At[2] - top
		if solid.Shape == plan.MeshBody && solid.Mesh != nil {
			z = math.Inf(1)
			for _, v := range solid.Mesh.Vertices {
				z = math.Min(z, solid.At[2]+v[2])
			}
		}
		low = math.Min(low, z)
	}
	if math.IsInf(low, 1) {
		return 0
	}
	return low
}

// AirWorking is how what the ground and its own wake do to vehicle i comes about.
func (s *Study) AirWorking(i int, p share.Part, g Grounded, n Near) []Step {
	var w working
	c := &s.model.Craft[i]
	rotors := float64(max(len(p.Rotor), 1))
	w.add("R", s.radius(i), "m", given, "%v", s.radius(i))
	w.add("z", g.Height, "m", "its rotors above the ground", "%v", g.Height)
	if g.Outside == "" {
		w.add("r_g", g.Ratio, "1", "THEORY (18.21)", "1/(1 - R/(4*z)*(R/(4*z)))")
	}
	u := p.Effort / rotors
	w.add("u", u, "N", "thrust of a rotor, in the mean", "%v/%v", p.Effort, rotors)
	w.add("rho", s.Density, "kg/m³", "THEORY (3.3), (3.9)", "%v", s.Density)
	wake := s.WakeAt(i, p)
	w.add("w", wake.Speed, "m/s", "THEORY (18.23), twice (18.1)", "2*sqrt(u/(2*rho*pi*R*R))")
	w.add("r_w", wake.Radius, "m", "THEORY (18.23)", "R/sqrt(2)")
	w.add("h_m", wake.Merged, "m", "THEORY (18.23): one jet from here down", "2.5*2*%v", c.Vehicle.Reach)
	if n.Blocked == 0 || n.Outside == PressureRange.Of {
		return w
	}
	w.add("S", n.Blocked, "m²", "THEORY (18.24): outline of the payload in the wakes", "%v", n.Blocked)
	w.add("f", flat*n.Blocked, "m²", "THEORY (18.24), flat plate, Data Book (C. Matthews) fig. 5.13(b)", "%v*S", flat)
	w.add("D", n.Download, "N", "THEORY (18.22)", "rho/2*w*w*f")
	w.add("A", rotors*math.Pi*s.radius(i)*s.radius(i), "m²", "its discs", "%v*pi*R*R", rotors)
	if n.Outside == "" {
		w.add("r_d", n.Ratio, "1", "THEORY (18.22)", "1/(1 - f/A)")
	} else {
		w.add("f_A", flat*n.Blocked/(rotors*math.Pi*s.radius(i)*s.radius(i)), "1", "THEORY (18.22): up to 0.1 only", "f/A")
	}
	return w
}

// WakeAt is the wake of vehicle i at a part, its rotors alike.
func (s *Study) WakeAt(i int, p share.Part) Wake {
	return WakeOf(p.Effort/float64(max(len(p.Rotor), 1)), s.radius(i), 2*s.model.Craft[i].Vehicle.Reach, s.Density)
}
