package advice

import (
	"math"

	"cohoist/core/pattern"
	"cohoist/core/plan"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// site is a payload with its team so far, where one more vehicle is to be placed.
type site struct {
	*lift
	team   plan.Plan // with its defaults filled in
	class  string    // of the vehicle to place
	like   int       // the vehicle whose hold it has
	lo, hi vec.V3    // where it may attach, seen from above
}

// spot is a place with the utilisation that it leads to.
type spot struct {
	at vec.V3
	t  float64
}

// with is a plan with a vehicle at a place.
func (s *site) with(p plan.Plan, at vec.V3) plan.Plan {
	p = edit(p)
	m := p.Team[s.like]
	m.ID, m.Vehicle, m.Attach = freeID(p.Team), s.class, at
	p.Team = append(p.Team, m)
	return p
}

func freeID(team []plan.Member) string {
	for i := len(team); ; i++ {
		free := true
		for _, m := range team {
			free = free && m.ID != pattern.ID(i)
		}
		if free {
			return pattern.ID(i)
		}
	}
}

// value is the even-effort utilisation with a vehicle at a place; +Inf without balance.
func (s *site) value(at vec.V3) float64 {
	if m := s.model(s.with(s.team, at), false); m != nil {
		if r := s.solver.Solve(m.Even(0)); r.Status == solve.Optimal {
			return r.T
		}
	}
	return math.Inf(1)
}

// clear tells that a vehicle at a place keeps a part of its distance from the places of the others.
func (s *site) clear(at vec.V3, part float64) bool {
	reach := func(class string) float64 { return s.plan.Vehicles[class].Arm + s.plan.Vehicles[class].RotorRadius }
	rigid := s.plan.Team[s.like].Hold.Kind == plan.Rigid
	for _, m := range s.team.Team {
		need := reach(s.class) + reach(m.Vehicle)
		if !(rigid && m.Hold.Kind == plan.Rigid) {
			need = math.Max(need, s.plan.Limits.Separation)
		}
		if level(m.Attach.Sub(at)).Norm() < part*need {
			return false
		}
	}
	return true
}

// best is the clear place with the least utilisation, or, where none is clear and cables can lean
// apart, the best of the clearest: a coarse grid over the payload, made finer about the best place.
func (s *site) best() (vec.V3, bool) {
	parts := []float64{1}
	if s.plan.Team[s.like].Hold.Kind == plan.Cable {
		parts = []float64{1, 0.7, 0.4, 0.2}
	}
	for _, part := range parts {
		if top := s.finest(func(at vec.V3) bool { return s.clear(at, part) }); !math.IsInf(top.t, 1) {
			return top.at, true
		}
	}
	return vec.V3{}, false
}

func (s *site) finest(allowed func(vec.V3) bool) spot {
	top := spot{t: math.Inf(1)}
	look := func(at vec.V3) {
		if at = s.onPayload(at); allowed(at) {
			if t := s.value(at); t < top.t*(1-1e-6) || math.IsInf(top.t, 1) {
				top = spot{at, t}
			}
		}
	}
	for _, at := range s.grid() {
		look(at)
	}
	step := s.hi.Sub(s.lo).Scale(0.5 / (grid - 1))
	for range halvedGrid {
		if math.IsInf(top.t, 1) {
			break
		}
		middle := top.at
		for i := range 9 {
			if i != 4 {
				look(middle.Add(vec.V3{float64(i%3-1) * step[0], float64(i/3-1) * step[1], 0}))
			}
		}
		step = step.Scale(0.5)
	}
	return top
}

// near is a place for a vehicle on a cable that is not clear of the others' attachments, so that the
// cables must lean apart: of the places with the least utilisation the first that reaches the aim.
func (s *site) near(a aim) (vec.V3, bool) {
	if s.plan.Team[s.like].Hold.Kind != plan.Cable {
		return vec.V3{}, false
	}
	var spots []spot
	for _, at := range s.grid() {
		if at = s.onPayload(at); s.clear(at, 0.2) {
			if t := s.value(at); !math.IsInf(t, 1) {
				spots = append(spots, spot{at, t})
			}
		}
	}
	best := order(len(spots), func(i, j int) bool { return spots[i].t < spots[j].t*(1-1e-9) })
	for _, i := range best[:min(len(best), asked)] {
		x := spots[i]
		if !a.likely(s.with(s.team, x.at)) {
			break
		}
		if a.good(s.with(s.team, x.at)) {
			return x.at, true
		}
	}
	return vec.V3{}, false
}

// grid are places over the payload, seen from above, and the middles between vehicles of the team.
func (s *site) grid() []vec.V3 {
	var list []vec.V3
	for i := range grid {
		for j := range grid {
			x, y := float64(i)/(grid-1), float64(j)/(grid-1)
			list = append(list, vec.V3{s.lo[0] + x*(s.hi[0]-s.lo[0]), s.lo[1] + y*(s.hi[1]-s.lo[1]), 0})
		}
	}
	for i := range min(len(s.team.Team), grid) {
		for j := range i {
			list = append(list, s.team.Team[i].Attach.Add(s.team.Team[j].Attach).Scale(0.5))
		}
	}
	return list
}

// onPayload puts a place on the payload, on whole centimetres (millimetres for small teams), as high
// as the attachment nearest to it.
func (s *site) onPayload(at vec.V3) vec.V3 {
	step := s.lengthStep()
	for k := range 2 {
		at[k] = tidy(math.Round(math.Max(s.lo[k], math.Min(s.hi[k], at[k]))/step) * step)
	}
	nearest := math.Inf(1)
	for _, m := range s.team.Team {
		if x := level(m.Attach.Sub(at)).Norm(); x < nearest*(1-1e-9) {
			nearest, at[2] = x, m.Attach[2]
		}
	}
	return at
}
