package agility

import (
	"math"

	"cohoist/core/mass"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Commonest is the class that most of the team has; of equals the one that comes first in the team.
func Commonest(m *share.Model) string {
	count, best := map[string]int{}, ""
	for _, c := range m.Craft {
		count[c.Class]++
	}
	for _, c := range m.Craft {
		if best == "" || count[c.Class] > count[best] {
			best = c.Class
		}
	}
	return best
}

// Alone is the model of one vehicle of a class without any payload, on the same day.
func Alone(m *share.Model, class string) *share.Model {
	p := m.Plan
	p.Near = plan.Near{} // nothing is near it
	p.Team = []plan.Member{{ID: class, Vehicle: class, Hold: plan.Hold{Kind: plan.Rigid}}}
	return share.New(p, mass.Properties{}, vec.V3{}, m.Density)
}

// Solo answers for one vehicle of the commonest class alone.
func Solo(m *share.Model, s *solve.Solver) Moves {
	class := Commonest(m)
	alone := Alone(m, class)
	r := s.Solve(alone.Even(0))
	v := Of(alone, share.Answer{Status: r.Status, Even: r}, s)
	if math.IsNaN(m.Plan.Vehicles[class].TorquePerThrust) {
		b := Blank()
		v.Yaw, v.YawAcc, v.TurnSmall[2], v.TurnFull[2] = b.Yaw, b.YawAcc, b.TurnSmall[2], b.TurnFull[2]
	}
	return v
}

// Ratio is a over b, number by number; NaN where either was not computed or b is nothing.
func Ratio(a, b Moves) Moves {
	over := func(x, y float64) float64 {
		if y == 0 {
			return math.NaN()
		}
		return x / y
	}
	pair := func(x, y [2]float64) [2]float64 { return [2]float64{over(x[0], y[0]), over(x[1], y[1])} }
	three := func(x, y [3]float64) [3]float64 {
		return [3]float64{over(x[0], y[0]), over(x[1], y[1]), over(x[2], y[2])}
	}
	return Moves{
		Roll: pair(a.Roll, b.Roll), RollAcc: pair(a.RollAcc, b.RollAcc),
		Pitch: pair(a.Pitch, b.Pitch), PitchAcc: pair(a.PitchAcc, b.PitchAcc),
		Yaw: pair(a.Yaw, b.Yaw), YawAcc: pair(a.YawAcc, b.YawAcc),
		Climb: over(a.Climb, b.Climb), ClimbAcc: over(a.ClimbAcc, b.ClimbAcc), SideAcc: over(a.SideAcc, b.SideAcc),
		TurnSmall: three(a.TurnSmall, b.TurnSmall), TurnFull: three(a.TurnFull, b.TurnFull),
	}
}
