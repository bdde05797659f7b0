package formation

import (
	"fmt"

	"cohoist/core/near"
	"cohoist/core/share"
)

// Kinds of flags.
const (
	Stacked = "stacked" // rotors of one overlap those of the other, seen from above
	InWake  = "wake"    // the lower is in the wake of the upper
)

// Flag is two vehicles one of which troubles the other.
type Flag struct {
	Kind         string
	Upper, Lower string  // ids
	Across       float64 // m between their centres, seen from above
	Below        float64 // m that the lower is below the upper
	Limit        float64 // m: Across below which it is so
	Reason       string
}

// fading is how many diameters below a vehicle its wake is not looked for: common practice, no source.
const fading = 10

// Flags tells which vehicles of a formation overlap others seen from above, (17.5), and which are in another's
// wake, (17.6). Both kinds may hold for one pair. Vehicles that both hold rigidly are left out: the
// payload keeps them as they are.
func Flags(parts []share.Part, craft []share.Craft) []Flag {
	var out []Flag
	for i := range parts {
		for j := range i {
			if craft[i].Rigid && craft[j].Rigid {
				continue
			}
			up, low := i, j
			if parts[up].Position[2] < parts[low].Position[2] {
				up, low = low, up
			}
			out = append(out, pair(&parts[up], &parts[low], &craft[up], &craft[low])...)
		}
	}
	return out
}

func pair(up, low *share.Part, a, b *share.Craft) []Flag {
	d := up.Position.Sub(low.Position)
	across, below := flat(d).Norm(), d[2]
	var out []Flag
	add := func(kind string, limit float64, why string) {
		if across < limit {
			out = append(out, Flag{kind, a.ID, b.ID, across, below, limit, why})
		}
	}
	add(Stacked, a.Vehicle.Reach+b.Vehicle.Reach, fmt.Sprintf("%s flies %.2f m above %s, and seen from above their rotors overlap.", a.ID, below, b.ID))
	if wide := wake(a, below); wide > 0 {
		add(InWake, wide+b.Vehicle.Reach, fmt.Sprintf("%s is %.2f m below %s and within its wake, which is %.2f m in radius there: it loses lift and is shaken.", b.ID, below, a.ID, wide))
	}
	return out
}

// wake is the radius of a vehicle's wake at a depth below it, m, (17.6): the rotors' contracted wakes, then one jet that
// spreads; 0 above the vehicle, level with it, and where it has faded.
func wake(c *share.Craft, depth float64) float64 {
	v := &c.Vehicle
	size := 2 * v.Reach
	if !(depth > near.Full*radius(c)) || depth > fading*size { // contracted within a quarter of a radius
		return 0
	}
	return near.Width(v.Reach, radius(c), depth) // (17.6)
}

// Clear is how far apart two vehicles must be, seen from above, for the lower to be out of the wake of the upper at a depth
// below it, m, (17.6).
func Clear(upper, lower *share.Craft, depth float64) float64 {
	if r := wake(upper, depth); r > 0 {
		return r + lower.Vehicle.Reach
	}
	return 0
}

// radius is that of a vehicle's rotors, m.
func radius(c *share.Craft) float64 {
	r := c.Vehicle.Reach
	if len(c.Vehicle.Rotors) > 0 {
		r -= c.Vehicle.Rotors[0].At.Norm()
	}
	return r
}
