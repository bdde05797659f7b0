package way

import (
	"fmt"
	"math"

	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Formation is how the team stands at a waypoint, (20.18). The zero value is the formation of the share.
type Formation struct {
	Shape   string  // one of plan's words; empty: as planned
	Spacing float64 // m between the nearest two, seen from above (stacked: in space); NaN: the separation and a little
	Width   float64 // m, outermost rotors of a team in line; NaN: the least
	Along   float64 // radians, level axes: the direction of a team in line; NaN: the payload's x axis
}

// planned tells that a formation is that of the share.
func (f Formation) planned() bool { return f.Shape == "" || f.Shape == plan.AsPlanned }

// Formed is a formation as it was found, at rest in calm air, payload frame.
type Formed struct {
	Formation
	Pulls       []vec.V3 // of the cables on the payload, N, body axes
	Parts       []share.Part
	Utilisation float64
	Spacing     float64 // m: least distance of two vehicles, in space
	Width       float64 // m: twice the farthest that a rotor reaches from the line, or from the payload's x axis
}

// FormError tells why a formation cannot be held.
type FormError struct {
	Point int // 0 is the first
	Why   string
}

func (e *FormError) Error() string {
	return fmt.Sprintf("the formation of waypoint %d cannot be held: %s", e.Point+1, e.Why)
}

// What a formation leaves of limits, so that the team can move in it (common practice, no source).
const (
	leaves  = 0.85 // of the tangents of cone and tilt that it uses at most
	farther = 1.05 // times the separation: the nearest that a team gathers to unless a spacing is given
)

// mostFormed is the largest team that is formed: every two of it are kept apart, round by round.
const mostFormed = 24

// forms finds the formation of every waypoint; nil when none is asked for. Waypoints that ask for the same have the same.
func (r Route) forms(m *share.Model, apart *share.Apart, limits Limits, s *solve.Solver) ([]Formed, error) {
	asked := false
	for _, p := range r.Points {
		asked = asked || !p.Formation.planned()
	}
	if !asked {
		return nil, nil
	}
	if len(m.Craft) > mostFormed {
		return nil, ErrMany
	}
	for _, c := range m.Craft {
		if c.Rigid {
			return nil, ErrRigid
		}
	}
	calm := m.InWind(0, 0)
	own, ok := rest(calm, apart, limits.Utilisation, s)
	if !ok || own.Utilisation >= limits.Utilisation {
		return nil, ErrHover
	}
	out := make([]Formed, len(r.Points))
	for i, p := range r.Points {
		out[i] = own
		if p.Formation.planned() {
			continue
		}
		f, err := newFormer(calm, p, own, limits, s)
		if err == "" {
			for k := range i {
				if alike(out[k].Formation, f.ask) {
					out[i], ok = out[k], true
					f = nil
					break
				}
			}
			if f != nil {
				if i > 0 {
					f.before = out[i-1].Pulls
				}
				out[i], err = f.find()
			}
		}
		if err != "" {
			return nil, &FormError{i, err}
		}
	}
	return out, nil
}

// alike tells that two formations in body axes are the same.
func alike(a, b Formation) bool {
	same := func(x, y float64) bool { return x == y || math.IsNaN(x) && math.IsNaN(y) }
	return a.Shape == b.Shape && same(a.Spacing, b.Spacing) && same(a.Width, b.Width) && same(a.Along, b.Along)
}

// rest is the team as the share has it, at rest in calm air, its pulls those of (20.15).
func rest(calm *share.Model, apart *share.Apart, limit float64, s *solve.Solver) (Formed, bool) {
	p := calm.Even(0)
	calm.Spread(p, apart, 1)
	r := s.Solve(p)
	if r.Status != solve.Optimal {
		return Formed{}, false
	}
	f := formed(calm, Formation{}, r)
	for range rounds {
		r = s.Settle(p, eased(f.Utilisation, limit))
		if r.Status != solve.Optimal {
			break
		}
		t := f.Utilisation
		f = formed(calm, Formation{}, r)
		if apart == nil || f.Spacing >= calm.Plan.Limits.Separation {
			break
		}
		f.Utilisation = t
		p = calm.Even(0)
		calm.SpreadFor(p, apart, f.Pulls)
	}
	return f, true
}

// formed is what an answer means.
func formed(calm *share.Model, ask Formation, r solve.Result) Formed {
	f := Formed{Formation: ask, Pulls: append([]vec.V3(nil), r.F...), Parts: calm.Placed(r)}
	across := vec.V3{-math.Sin(ask.Along), math.Cos(ask.Along), 0}
	if math.IsNaN(ask.Along) {
		across = vec.V3{0, 1, 0}
	}
	places := make([]vec.V3, len(f.Parts))
	for i, p := range f.Parts {
		places[i] = p.Position
		f.Utilisation = math.Max(f.Utilisation, p.Utilisation)
		off := math.Abs(across.Dot(p.Position.Sub(calm.Body.COM))) + calm.Craft[i].Vehicle.Reach
		f.Width = math.Max(f.Width, 2*off)
	}
	f.Spacing = separation(calm, places)
	return f
}
