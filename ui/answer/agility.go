package answer

import (
	"math"

	"cohoist/core/unit"
	"cohoist/ui/format"
)

type move struct {
	ID, Name, Team, Solo string
	Ratio                float64
	Time                 bool
}

// factor is the ratio for reading: a part of one vehicle's for strengths, how many times as long for times.
func (m move) factor() string {
	if !m.Time {
		return format.Share(m.Ratio)
	}
	if s := unit.Figures(m.Ratio, 2); s != unit.None {
		return s + "\u202f×"
	}
	return unit.None
}

// moves are the rows of the table: accelerations, then times. Of two ways the weaker is shown, with
// the other beside it when it differs.
func (c *Agility) moves() []move {
	a, u := c.Store.Report().Agility, c.Store.Units
	t, s, r := a.Team, a.Solo, a.Ratio
	pair := func(p [2]float64) string {
		if math.Abs(p[0]-p[1]) <= 5e-3*math.Max(math.Abs(p[0]), math.Abs(p[1])) || math.IsNaN(p[0]) {
			return u.Show(format.TurnRate, p[0])
		}
		return u.Bare(format.TurnRate, p[0]) + " / " + u.Show(format.TurnRate, p[1])
	}
	least := func(p [2]float64) float64 { return math.Min(p[0], p[1]) }
	list := []move{
		{"roll", "Roll", pair(t.RollAcc), pair(s.RollAcc), least(r.RollAcc), false},
		{"pitch", "Pitch", pair(t.PitchAcc), pair(s.PitchAcc), least(r.PitchAcc), false},
		{"yaw", "Yaw", pair(t.YawAcc), pair(s.YawAcc), least(r.YawAcc), false},
		{"climb", "Climb", u.Show(format.Acceleration, t.ClimbAcc), u.Show(format.Acceleration, s.ClimbAcc), r.ClimbAcc, false},
		{"side", "Sideways", u.Show(format.Acceleration, t.SideAcc), u.Show(format.Acceleration, s.SideAcc), r.SideAcc, false},
	}
	for k, name := range [3]string{"roll", "pitch", "yaw"} {
		list = append(list, move{"turn30-" + name, "Time to " + name + " by 30°", u.Show(format.Seconds, t.TurnSmall[k]),
			u.Show(format.Seconds, s.TurnSmall[k]), r.TurnSmall[k], true})
	}
	for k, name := range [3]string{"roll", "pitch", "yaw"} {
		list = append(list, move{"turn360-" + name, "Time to " + name + " by 360°", u.Show(format.Seconds, t.TurnFull[k]),
			u.Show(format.Seconds, s.TurnFull[k]), r.TurnFull[k], true})
	}
	return list
}

// list is what a section of plain sentences shows.
func (c *Remarks) list(name string) []string {
	r := c.Store.Report()
	switch name {
	case "assumptions":
		return r.Assumptions
	case "cautions":
		return r.Cautions
	case "missing":
		return r.Missing
	case "notes":
		return r.Notes
	}
	return r.Unknown
}
