package formation

import (
	"math"
	"math/rand/v2"

	"cohoist/core/vec"
)

// starts are places to begin from, (17.3): above the attachments; splayed outwards from the centre of mass
// and turned about each attachment in steps; every other vehicle to one side and the rest to the other; and at
// random, from the plan's seed.
func (f *flock) starts() [][]vec.V3 {
	k := len(f.m.Craft)
	var out [][]vec.V3
	add := func(shift func(i int) vec.V3) {
		at := make([]vec.V3, k)
		for i, c := range f.m.Craft {
			at[i] = flat(c.At)
			if !c.Rigid {
				at[i] = at[i].Add(shift(i).Scale(math.Min(f.apart/2, 0.5*f.reach(i))))
			}
		}
		out = append(out, at)
	}
	base := f.base()
	around := func(i int) float64 { return base + 2*math.Pi*float64(i)/float64(k) }
	add(func(i int) vec.V3 { return to(around(i)).Scale(1e-6) })
	turns, sides, chances := turns, sides, chances
	if k > many {
		turns, sides, chances = 1, 0, 0
	}
	for turn := range turns {
		phi := 2 * math.Pi * float64(turn) / float64(turns)
		add(func(i int) vec.V3 {
			d := flat(f.m.Craft[i].At.Sub(f.m.Payload.COM))
			return to(f.bearing(d, around(i)) + phi)
		})
	}
	for side := range sides {
		phi := math.Pi * float64(side) / float64(sides)
		add(func(i int) vec.V3 {
			return to(base + phi + math.Pi*float64(i%2)).Add(to(around(i)).Scale(1e-3))
		})
	}
	random := rand.New(rand.NewPCG(uint64(f.m.Plan.Seed), 17))
	for range chances {
		angles := make([]float64, k)
		for i := range angles {
			angles[i] = base + 2*math.Pi*random.Float64()
		}
		add(func(i int) vec.V3 { return to(angles[i]) })
	}
	return out
}

// Numbers of starts, and of vehicles above which there are two alone.
const (
	many    = 40
	turns   = 8
	sides   = 4
	chances = 4
)

// base is the bearing of the first attachment that is off the centre of mass, so that starts turn with the team.
func (f *flock) base() float64 {
	for _, c := range f.m.Craft {
		if d := flat(c.At.Sub(f.m.Payload.COM)); d.Norm() >= 1e-3*f.apart {
			return f.bearing(d, 0)
		}
	}
	return 0
}

// bearing is the direction of d seen from above, or else when d is nothing.
func (f *flock) bearing(d vec.V3, otherwise float64) float64 {
	if d.Norm() < 1e-3*f.apart {
		return otherwise
	}
	return math.Atan2(d[1], d[0])
}

func to(angle float64) vec.V3 {
	sin, cos := math.Sincos(angle)
	return vec.V3{cos, sin, 0}
}

// reach is how far, seen from above, a vehicle can be from its attachment, m.
func (f *flock) reach(i int) float64 {
	return f.m.Craft[i].Length * math.Sin(f.m.Plan.Limits.Cone*math.Pi/180)
}

// push moves the places apart, pair by pair and all at once, until all are as far apart as they must
// be; a vehicle stays within its cone, and rigid ones stay. False when there is no room.
func (f *flock) push() bool {
	k := len(f.at)
	move := make([]vec.V3, k)
	for range 2000 {
		clear := true
		clearMove(move)
		for i := range k {
			for j := range i {
				d := f.at[i].Sub(f.at[j])
				gap := f.need(i, j)*(1+1e-4) - d.Norm()
				if gap <= 0 {
					continue
				}
				clear = clear && gap <= 1e-4*f.apart
				part := 0.5
				if f.m.Craft[i].Rigid || f.m.Craft[j].Rigid {
					part = 1
				}
				d = d.Unit().Scale(part * gap)
				move[i], move[j] = move[i].Add(d), move[j].Sub(d)
			}
		}
		if clear {
			return true
		}
		for i, c := range f.m.Craft {
			if c.Rigid {
				continue
			}
			home := flat(c.At)
			out := f.at[i].Add(move[i].Scale(0.7)).Sub(home)
			if most := 0.999 * f.reach(i); out.Norm() > most {
				out = out.Unit().Scale(most)
			}
			f.at[i] = home.Add(out)
		}
	}
	return false
}

func clearMove(move []vec.V3) {
	for i := range move {
		move[i] = vec.V3{}
	}
}
