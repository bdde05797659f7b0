package way

import (
	"fmt"
	"math"

	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// formed are the formations of a route, nil when it is as planned all the way.
func (r Route) formed() []Formed {
	if r.held == nil {
		return nil
	}
	return r.held.forms
}

// instant is the team at an instant, each vehicle's thrust with its own acceleration.
func (h *held) instant(m *share.Model, p *Path, leg int, s float64) Instant {
	at := h.moment(p, leg, s)
	i := Instant{Time: p.starts[leg] + float64(s*p.Durations[leg]), Leg: leg, State: at.state, Motion: at.motion, Status: solve.Optimal}
	moving := m.Moving(at.motion)
	i.Motion.Attitude = swung(m, at.motion.Attitude, moving.Need)
	for k := range moving.Craft {
		c := &moving.Craft[k]
		c.Drag = vec.V3{0, 0, float64(c.Vehicle.Mass * share.Gravity)}.Sub(at.own[k])
	}
	i.Parts = moving.Placed(solve.Result{F: at.pull})
	for _, part := range i.Parts {
		i.Utilisation = math.Max(i.Utilisation, part.Utilisation)
	}
	i.place(m)
	return i
}

// ChangeError tells that vehicles come too near to each other while the formation changes, however slowly.
type ChangeError struct {
	Leg      int // 0 is from the first waypoint to the second
	A, B     string
	Distance float64 // m
}

func (e *ChangeError) Error() string {
	return fmt.Sprintf("on leg %d %s and %s come within %.2f m of each other while the formation changes, however slowly: give them a waypoint as planned between", e.Leg+1, e.A, e.B, e.Distance)
}

// blends is how many formations between two are looked at.
const blends = 64

// closest is where two vehicles come nearest to each other while the team changes from one formation to another at rest.
func closest(m *share.Model, a, b []vec.V3) ChangeError {
	worst := ChangeError{Distance: math.Inf(1)}
	places := make([]vec.V3, len(a))
	for k := range blends + 1 {
		for i := range places {
			pull := a[i].Add(b[i].Sub(a[i]).Scale(float64(k) / blends))
			places[i] = m.Craft[i].At.Add(pull.Unit().Scale(m.Craft[i].Length))
			for j := range i {
				if d := places[i].Sub(places[j]).Norm(); d < worst.Distance {
					worst = ChangeError{A: m.Craft[j].ID, B: m.Craft[i].ID, Distance: d}
				}
			}
		}
	}
	return worst
}

// changes tells whether every change of formation keeps the vehicles apart at rest.
func (h *held) changes() error {
	for leg := range len(h.forms) - 1 {
		if e := closest(h.m, h.forms[leg].Pulls, h.forms[leg+1].Pulls); e.Distance < h.m.Plan.Limits.Separation {
			e.Leg = leg
			return &e
		}
	}
	return nil
}
