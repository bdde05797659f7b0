package way

import (
	"cohoist/core/share"
	"cohoist/core/solve"
)

// Limit names what a way comes closest to.
type Limit uint8

// The limits of a way. None: nothing is needed beyond hover.
const (
	None Limit = iota
	Utilisation
	Tilt        // of a vehicle
	Cone        // lean of a cable
	WorkingLoad // of a cable
	Separation  // of the vehicles
	Slack       // a cable must stay taut
	Speed
	NoAnswer // hover itself is at a limit, or the solver has no answer
)

var limitNames = [...]string{"none", "utilisation", "tilt", "cone", "working load", "separation", "slack", "speed", "no answer"}

func (l Limit) String() string { return limitNames[l] }

// names tells which limit holds an answer of ask, from its duals: they are how much further the instant could go per
// newton that each bound is let out, so the kind with the most is named, and of it the vehicles with at least half as
// much as the first.
func (q *question) names(r solve.Result) (Limit, []string) {
	var price [NoAnswer][]float64
	for k := range price {
		price[k] = make([]float64, len(q.m.Craft))
	}
	line, pull, n := 0, 0, 0
	kinds := [4]Limit{Utilisation, Tilt, Cone, WorkingLoad}
	for i, c := range q.m.Craft {
		if c.Rigid {
			for range c.Rotors {
				price[Utilisation][i] += r.LineHi[line]
				line++
			}
			continue
		}
		price[Slack][i] = r.PullZ[pull]
		for k := range q.p.Pulls[pull].Cones {
			kind := Separation
			if k < q.fixed[pull] {
				kind = kinds[k]
			}
			price[kind][i] += r.Cones[n].A
			n++
		}
		pull++
	}
	best, most := None, 0.0
	for k := range price {
		if s := total(price[k]); s > most {
			best, most = Limit(k), s
		}
	}
	first := 0.0
	for _, p := range price[best] {
		first = max(first, p)
	}
	var who []string
	for i, p := range price[best] {
		if p > 0 && p >= first/2 {
			who = append(who, q.m.Craft[i].ID)
		}
	}
	return best, who
}

// holds tells what an instant comes closest to.
func (j *judge) holds(p *Path, i instant) (Limit, []string) {
	if i.reach <= 0 {
		return None, nil
	}
	if i.plain >= i.reach*(1-1e-9) {
		if !j.m.Cables && lean(j.m, i.motion) >= i.plain*(1-1e-9) {
			return Tilt, j.steepest(i.motion)
		}
		return Speed, nil
	}
	if p.held != nil {
		who := []string{j.m.Craft[i.most.who[0]].ID}
		if k := i.most.who[1]; k != i.most.who[0] {
			who = append(who, j.m.Craft[k].ID)
		}
		return i.most.limit, who
	}
	r := j.s.Solve(j.ask(i.load))
	if r.Status != solve.Optimal {
		return NoAnswer, nil
	}
	return j.names(r)
}

// steepest are the vehicles of a rigid team that lean most of their limits.
func (j *judge) steepest(v share.Motion) []string {
	var who []string
	for k := range j.m.Craft {
		if leanOf(j.m, v, k) >= lean(j.m, v)*(1-1e-6) {
			who = append(who, j.m.Craft[k].ID)
		}
	}
	return who
}
