package rehearse

import (
	"math"

	"cohoist/core/pattern"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
	"cohoist/core/way"
)

// Score is what every vehicle is told before the lift: where to be and how hard to pull, at even times. It is all that a
// vehicle knows of the others' part.
type Score struct {
	Marks  []Mark
	Ground float64 // height of the ground, m; −Inf: none
}

// Mark is the plan at one instant, level axes.
type Mark struct {
	Payload  vec.V3 // centre of mass of what moves as one, (5.3)
	Heading  float64
	Attitude [4]float64  // of the payload with the vehicles that hold it rigidly, body axes → level axes
	Places   []vec.V3    // of the vehicles
	Pulls    []vec.V3    // of their lines on the payload, N; nothing of a rigid hold
	Thrusts  [][]float64 // of the rotors of rigid holds, N; nil of a vehicle on a cable
	Grip     float64     // the part of those thrusts and of their control that counts: nothing at rest on the ground
}

// beat is the time between marks, s.
const beat = 0.05

// Duration is how long the score takes, s.
func (c *Score) Duration() float64 { return beat * float64(len(c.Marks)-1) }

// Hover is a score that stays where it is for a span, s: the parts are those of an answer.
func Hover(m *share.Model, parts []share.Part, span float64) *Score {
	if bare := m.Bare(); bare != m { // wakes are left out
		if a := bare.Share(solve.NewSolver()); a.Parts != nil {
			m, parts = bare, a.Parts
		}
	}
	one := Mark{Attitude: quaternion(m.Attitude), Grip: 1}
	for i, p := range parts {
		one.Places = append(one.Places, m.Attitude.Mul(p.Position.Sub(m.Body.COM)))
		one.part(&m.Craft[i], p, m.Attitude)
	}
	c := &Score{Ground: math.Inf(-1)}
	for range int(math.Ceil(span/beat)) + 1 {
		c.Marks = append(c.Marks, one)
	}
	return c
}

// Along is the score of a way and of a rest after it, s; false when an instant of it has no balance.
func Along(m *share.Model, apart *share.Apart, p *way.Path, rest float64, s *solve.Solver) (*Score, bool) {
	m = m.Bare()
	c := &Score{Ground: math.Inf(-1)}
	for k := range int(math.Ceil((p.Duration()+rest)/beat)) + 1 {
		i := way.InstantAt(m, apart, p, float64(k)*beat, s)
		if i.Status != solve.Optimal {
			return nil, false
		}
		if m.Rigid && float64(k)*beat > p.Duration() && !still(m, apart, &i, s) {
			return nil, false
		}
		one := Mark{Payload: i.State.At, Heading: i.State.Heading, Places: i.Places, Attitude: quaternion(i.Motion.Attitude), Grip: 1}
		level := vec.Rot(vec.V3{0, 0, i.State.Heading}) // pulls do not swing with the payload
		for j, part := range i.Parts {
			one.part(&m.Craft[j], part, level)
		}
		c.Marks = append(c.Marks, one)
	}
	return c, true
}

// still makes the end of a way a rest: a way ends while the body's spin still changes, and rotors of rigid holds must not go on
// with that.
func still(m *share.Model, apart *share.Apart, i *way.Instant, s *solve.Solver) bool {
	at := m.Moving(share.Motion{Attitude: i.Motion.Attitude})
	program := at.Even(0)
	m.Spread(program, apart, 1)
	r := s.Solve(program)
	if r.Status != solve.Optimal {
		return false
	}
	ease := max(r.T+(m.Plan.Limits.Utilisation-r.T)/4, 1.001*r.T) // as on the way, (20.15)
	if settled := s.Settle(program, ease); settled.Status == solve.Optimal {
		r = settled
	}
	i.Parts = at.Placed(r)
	return true
}

// part adds a vehicle's part of the load.
func (m *Mark) part(c *share.Craft, p share.Part, turn vec.M3) {
	if c.Rigid {
		m.Pulls, m.Thrusts = append(m.Pulls, vec.V3{}), append(m.Thrusts, p.Rotor)
		return
	}
	m.Pulls, m.Thrusts = append(m.Pulls, turn.Mul(p.Force)), append(m.Thrusts, nil)
}

// Times of a take-off and of a set-down, s, and how much nearer than its length a line is held while it is slack.
const (
	tighten = 3.0
	lift    = 6.0
	slack   = 0.03
)

// TakeOff is how long a take-off takes, and a set-down, s.
const TakeOff = tighten + lift

// FromGround puts a take-off before the score, from the ground that the payload's lowest point stands on, rise metres
// below the first mark; ToGround a set-down after it, likewise. Low is how far that point is below the centre of mass.
func (c *Score) FromGround(rise, low float64) {
	first := c.Marks[0]
	c.Ground = first.Payload[2] - rise - low
	up := ramp(first, rise)
	c.Marks = append(up, c.Marks...)
}

// ToGround ends a score on the ground.
func (c *Score) ToGround(rise, low float64) {
	last := c.Marks[len(c.Marks)-1]
	if math.IsInf(c.Ground, -1) {
		c.Ground = last.Payload[2] - rise - low
	} else {
		rise = last.Payload[2] - low - c.Ground
	}
	down := ramp(last, rise)
	for k := len(down) - 1; k >= 0; k-- {
		c.Marks = append(c.Marks, down[k])
	}
}

// Feet are the lower corners of the box that holds a payload: where it stands on the ground, payload frame.
func Feet(p plan.Payload) []vec.V3 {
	lo, hi := pattern.Extent(p)
	return []vec.V3{lo, {hi[0], lo[1], lo[2]}, {hi[0], hi[1], lo[2]}, {lo[0], hi[1], lo[2]}}
}

// ramp is the marks of a take-off that ends at a mark: lines drawn taut and rotors brought up level, then straight up, a rigid team
// leaning into the wind meanwhile.
func ramp(to Mark, rise float64) []Mark {
	var out []Mark
	for k := range int(tighten / beat) {
		s := smooth(float64(k) * beat / tighten)
		one := shifted(to, -rise)
		one.Attitude, one.Grip = about(to.Heading), s
		for i := range one.Places {
			line := one.Pulls[i].Unit().Scale(one.Places[i].Sub(one.Payload).Norm() * slack * (1 - s))
			one.Places[i] = one.Places[i].Sub(line)
			one.Pulls[i] = one.Pulls[i].Scale(s)
		}
		out = append(out, one)
	}
	for k := range int(lift / beat) {
		s := smooth(float64(k) * beat / lift)
		one := shifted(to, -rise*(1-s))
		one.Attitude = blend(about(to.Heading), to.Attitude, s)
		out = append(out, one)
	}
	return out
}

// smooth is the move from rest to rest of chapter 20, from 0 to 1.
func smooth(s float64) float64 { return s * s * s * s * (35 + s*(-84+s*(70-20*s))) }

// shifted is a mark, moved up.
func shifted(m Mark, up float64) Mark {
	m.Payload[2] += up
	places, pulls := make([]vec.V3, len(m.Places)), make([]vec.V3, len(m.Pulls))
	copy(pulls, m.Pulls)
	for i, p := range m.Places {
		p[2] += up
		places[i] = p
	}
	m.Places, m.Pulls = places, pulls
	return m
}
