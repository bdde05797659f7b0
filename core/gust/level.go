package gust

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/solve"
)

// still is slower than any wind, m/s: its drag is within the solver's tolerance of nothing.
const still = 1e-3

// level finds the wind that a team held level holds: t of its program is the square of the speed.
func (q *question) level(to float64) Side {
	force, moment, drags := q.m.Blow(to)
	p, pull := q.p, 0
	p.WrenchT = solve.Wrench{force[0], force[1], force[2], moment[0], moment[1], moment[2]}
	idle := p.WrenchT == solve.Wrench{}
	for i, c := range q.m.Craft {
		if c.Rigid {
			continue
		}
		cones := p.Pulls[pull].Cones
		d := drags[i].Scale(-c.Keep())
		cones[0].D, cones[1].D = d, d // (15.1)
		idle = idle && drags[i].Norm() == 0
		pull++
	}
	if idle { // nothing that the wind could push
		return Side{Speed: Cap}
	}
	r := q.s.Solve(p)
	switch {
	case r.Status == solve.Unbounded, r.Status == solve.Optimal && r.T >= Cap*Cap:
		return Side{Speed: Cap}
	case r.Status == solve.Infeasible: // calm is held with nothing to spare
		return q.calm
	case r.Status != solve.Optimal:
		return Side{Speed: math.NaN(), EndedBy: Unsolved}
	}
	out := Side{Speed: math.Sqrt(math.Max(0, r.T))}
	out.EndedBy, out.Who = q.ends(p, r)
	if out.Speed < still {
		out.Speed = 0
	}
	return out
}

// ends tells which limit ends the wind, from the duals: they are how much faster it could be per newton that each bound
// is let out, so the kind with the most is named, and of it the vehicles with at least half as much as the first.
func (q *question) ends(p *solve.Program, r solve.Result) (Limit, []string) {
	kinds := [...]Limit{Utilisation, Tilt, Cone, WorkingLoad, Slack}
	price := make([][len(kinds)]float64, len(q.m.Craft))
	line, pull, cone := 0, 0, 0
	for i, c := range q.m.Craft {
		if c.Rigid {
			for range c.Rotors {
				price[i][0] += r.LineHi[line]
				line++
			}
			continue
		}
		for k := range p.Pulls[pull].Cones {
			price[i][k] = r.Cones[cone].A
			cone++
		}
		price[i][4] = r.PullZ[pull]
		pull++
	}
	var sum [len(kinds)]float64
	most := 0
	for k := range kinds {
		for i := range price {
			sum[k] += price[i][k]
		}
		if sum[k] > sum[most] {
			most = k
		}
	}
	if sum[most]*q.m.Weight() <= 1e-9 {
		return NoBalance, nil // letting bounds out by the whole weight would not help
	}
	first := 0.0
	for i := range price {
		first = math.Max(first, price[i][most])
	}
	var who []string
	for i, c := range q.m.Craft {
		if price[i][most] >= first/2 {
			who = append(who, c.ID)
		}
	}
	return kinds[most], who
}

// hardest are the vehicles that work hardest in a solved program of the smallest worst utilisation.
func hardest(m *share.Model, p *solve.Program, r solve.Result) []string {
	var who []string
	line, pull := 0, 0
	for _, c := range m.Craft {
		used := 0.0
		if c.Rigid {
			for _, rotor := range c.Rotors {
				used = math.Max(used, r.U[line]/rotor.Max)
				line++
			}
		} else {
			used = r.F[pull].Add(p.Pulls[pull].Cones[0].B).Norm() / (c.Vehicle.ThrustMax * c.Keep())
			pull++
		}
		if used >= r.T*(1-1e-6) {
			who = append(who, c.ID)
		}
	}
	return who
}
