package formation

import (
	"fmt"
	"math"

	"cohoist/core/share"
	"cohoist/core/vec"
)

// Kinds of flags of what comes near a cable.
const (
	Crossing = "crossing" // two cables cross, seen from above
	Reached  = "reached"  // the rotors of Upper reach the cable of Lower
)

// Cables tells which cables cross seen from above, Below the distance from one to the other in space, and which
// vehicles' rotors reach another's cable, Across the distance of the vehicle's centre from it, (17.7).
func Cables(parts []share.Part, craft []share.Craft) []Flag {
	var out []Flag
	for i := range parts {
		for j := range parts {
			if i == j || craft[j].Rigid {
				continue
			}
			foot, top := craft[j].At, parts[j].Position
			reach := craft[i].Vehicle.Reach
			if d := between(parts[i].Position, parts[i].Position, foot, top); d < reach {
				out = append(out, Flag{Reached, craft[i].ID, craft[j].ID, d, math.NaN(), reach,
					fmt.Sprintf("The cable of %s passes %.2f m from the centre of %s, whose rotors reach %.2f m.", craft[j].ID, d, craft[i].ID, reach)})
			}
			if i < j || craft[i].Rigid || !cross(craft[i].At, parts[i].Position, foot, top) {
				continue
			}
			d := between(craft[i].At, parts[i].Position, foot, top)
			out = append(out, Flag{Crossing, craft[j].ID, craft[i].ID, 0, d, 0,
				fmt.Sprintf("Seen from above the cables of %s and %s cross; they pass %.2f m from each other.", craft[j].ID, craft[i].ID, d)})
		}
	}
	return out
}

// cross tells that two segments cross seen from above; touching at an end does not count.
func cross(a, b, c, d vec.V3) bool {
	side := func(p, q, r vec.V3) float64 { return flat(q.Sub(p)).Cross(flat(r.Sub(p)))[2] }
	return side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0
}

// between is the least distance of two segments, (17.7): where both lines are nearest, each held to its segment
// and the other asked again.
func between(a, b, c, d vec.V3) float64 {
	u, v, w := b.Sub(a), d.Sub(c), a.Sub(c)
	uu, vv, uv := u.Dot(u), v.Dot(v), u.Dot(v)
	s := 0.0
	if den := uu*vv - uv*uv; den > 1e-12*uu*vv {
		s = clamp((uv*v.Dot(w) - vv*u.Dot(w)) / den)
	}
	t := 0.0
	if vv > 0 {
		t = clamp((uv*s + v.Dot(w)) / vv)
	}
	if uu > 0 {
		s = clamp((uv*t - u.Dot(w)) / uu)
	}
	return a.Add(u.Scale(s)).Sub(c.Add(v.Scale(t))).Norm()
}

func clamp(x float64) float64 { return math.Max(0, math.Min(1, x)) }
