package place

import (
	"math"
	"strconv"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// Row says what so many vehicles can do.
type Row struct {
	Vehicles int
	Answer   Answer  // their best places for the question's cases
	OneLost  float64 // utilisation there with any one lost; +Inf: it does not hold
	Agility  float64 // N m, there: the Agility goal
	Passes   bool    // within the crew's limit in every case; with one lost, if that was asked, within all its thrust
	Fault    string  // why there is no placement of so many; empty: there is
}

// HowMany answers the question for 1 to most vehicles like the first free one of the team, on a hole pattern; the rest of
// the team stays out. Each number gets at most budget nodes of search (0: no limit); the proofs say
// which ended.
func HowMany(q Question, most, budget int, holes []vec.V3, tell Tell) []Row {
	like := 0
	for i, free := range q.Free {
		if free && i < len(q.Plan.Team) {
			like = i
			break
		}
	}
	if len(q.Plan.Team) == 0 {
		return nil
	}
	var rows []Row
	stopped := false
	for k := 1; k <= most && !stopped; k++ {
		p := q.Plan
		p.Team = make([]plan.Member, k)
		for i := range p.Team {
			p.Team[i] = q.Plan.Team[like]
			p.Team[i].ID = name(i)
		}
		ask := q
		ask.Plan, ask.Free = p, nil
		row := Row{Vehicles: k, OneLost: math.Inf(1), Agility: math.NaN()}
		told := func(pr Progress) bool {
			pr.Part = (float64(k-1) + pr.Part) / float64(most)
			stopped = tell != nil && !tell(pr)
			return !stopped
		}
		var err error
		row.Answer, err = onHoles(ask, holes, budget, told)
		if err == nil && row.Answer.Places == nil && ask.Cases.Lost && !stopped { // none can be spared: their best with all there
			ask.Cases.Lost = false
			row.Answer, err = onHoles(ask, holes, budget, told)
		}
		if err != nil {
			row.Fault = err.Error()
		} else if row.Answer.Places != nil {
			row.finish(ask, q.Cases.Lost)
		}
		rows = append(rows, row)
	}
	return rows
}

// finish asks the further questions of a row at its best places.
func (r *Row) finish(q Question, lost bool) {
	for i := range q.Plan.Team {
		q.Plan.Team[i].Attach = r.Answer.Places[i]
	}
	limit := q.Plan.Limits.Utilisation
	r.Passes = true
	q.Goal = Utilisation
	for _, c := range r.Answer.Cases {
		r.Passes = r.Passes && (c.Lost || c.Utilisation <= limit*(1+1e-6))
	}
	q.Cases = Cases{Lost: true}
	if _, cases, err := Value(q); err == nil {
		for _, c := range cases {
			if c.Lost {
				r.OneLost = c.Utilisation
			}
		}
	}
	r.Passes = r.Passes && (!lost || r.OneLost <= 1+1e-6)
	q.Cases, q.Goal = Cases{}, Agility
	if v, _, err := Value(q); err == nil {
		r.Agility = v
	}
}

// Smallest is the least number of vehicles that passes, or 0.
func Smallest(rows []Row) int {
	for _, r := range rows {
		if r.Passes {
			return r.Vehicles
		}
	}
	return 0
}

// name is A … Z, then A2 …
func name(i int) string {
	s := string(rune('A' + i%26))
	if i >= 26 {
		s += strconv.Itoa(i/26 + 1)
	}
	return s
}
