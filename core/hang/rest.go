package hang

import (
	"math"

	"cohoist/core/vec"
)

// Rest is the equilibrium that the payload comes to from a pose when it is let go and its swing dies away by
// the steepest ways down: stable or neutral, and never with more energy than the start. Which of several
// equilibria that is depends on the start; see Equilibria.
func (r Rig) Rest(start Pose) (State, error) {
	b, err := r.body()
	if err != nil {
		return State{}, err
	}
	from := b.spot(start)
	if e := b.energy(from); math.IsNaN(e) || math.IsInf(e, 0) {
		return State{}, ErrNumber
	}
	x, ok := b.rest(from)
	s := b.state(x, len(r.Lines))
	if !ok {
		return s, ErrUnsettled
	}
	return s, nil
}

// slack is the pull below which a line counts as slack, of the weight: rounding of stiff lines is a tenth of it.
const slack = 1e-8

// state describes the rig at a spot.
func (b *body) state(x spot, lines int) State {
	s := State{Pose: b.pose(x), Tension: make([]float64, lines), Slack: make([]bool, lines), Energy: b.energy(x)}
	s.Tilt = s.Pose.Tilt()
	force, moment := b.load, vec.V3{}
	for i := range s.Slack {
		s.Slack[i] = true
	}
	for _, l := range b.springs {
		r := x.turn.Mul(l.arm)
		d := l.top.Sub(x.at).Sub(r)
		long := d.Norm()
		if long <= l.rest {
			continue
		}
		t := l.k * (long - l.rest)
		s.Tension[l.number], s.Slack[l.number] = t, t <= slack*b.weight
		f := d.Scale(t / long)
		force, moment = force.Add(f), moment.Add(r.Cross(f))
	}
	s.Residual = math.Max(force.Norm(), moment.Norm()) / b.weight // (12.8)
	var g vec6
	var h mat6
	b.slope(x, &g, &h)
	values, _ := h.eigen(6)
	s.Stable = true
	for _, v := range values {
		switch {
		case v < -b.neutral():
			s.Stable = false // (12.9)
		case v <= b.neutral():
			s.Neutral++ // (12.9)
		}
	}
	return s
}
