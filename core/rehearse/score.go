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
	Payload vec.V3 // its centre of mass
	Heading float64
	Places  []vec.V3 // of the vehicles
	Pulls   []vec.V3 // of their lines on the payload, N
}

// beat is the time between marks, s.
const beat = 0.05

// Duration is how long the score takes, s.
func (c *Score) Duration() float64 { return beat * float64(len(c.Marks)-1) }

// Hover is a score that stays where it is for a span, s: the parts are those of an answer.
func Hover(m *share.Model, parts []share.Part, span float64) *Score {
	one := Mark{}
	for _, p := range parts {
		one.Places = append(one.Places, p.Position.Sub(m.Body.COM))
		one.Pulls = append(one.Pulls, p.Force)
	}
	c := &Score{Ground: math.Inf(-1)}
	for range int(math.Ceil(span/beat)) + 1 {
		c.Marks = append(c.Marks, one)
	}
	return c
}

// Along is the score of a way and of a rest after it, s; false when an instant of it has no balance.
func Along(m *share.Model, apart *share.Apart, p *way.Path, rest float64, s *solve.Solver) (*Score, bool) {
	c := &Score{Ground: math.Inf(-1)}
	for k := range int(math.Ceil((p.Duration()+rest)/beat)) + 1 {
		i := way.InstantAt(m, apart, p, float64(k)*beat, s)
		if i.Status != solve.Optimal {
			return nil, false
		}
		one := Mark{Payload: i.State.At, Heading: i.State.Heading, Places: i.Places}
		for _, part := range i.Parts {
			one.Pulls = append(one.Pulls, i.Motion.Attitude.Mul(part.Force))
		}
		c.Marks = append(c.Marks, one)
	}
	return c, true
}

// Times of a take-off and of a set-down, s, and how much nearer than its length a line is held while it is slack.
const (
	tighten = 3.0
	lift    = 6.0
	slack   = 0.03
)

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

// ramp is the marks of a take-off that ends at a mark: lines drawn taut, then straight up.
func ramp(to Mark, rise float64) []Mark {
	var out []Mark
	for k := range int(tighten / beat) {
		s := smooth(float64(k) * beat / tighten)
		one := shifted(to, -rise)
		for i := range one.Places {
			line := one.Pulls[i].Unit().Scale(one.Places[i].Sub(one.Payload).Norm() * slack * (1 - s))
			one.Places[i] = one.Places[i].Sub(line)
			one.Pulls[i] = one.Pulls[i].Scale(s)
		}
		out = append(out, one)
	}
	for k := range int(lift / beat) {
		out = append(out, shifted(to, -rise*(1-smooth(float64(k)*beat/lift))))
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

// aim is what one vehicle is told for an instant.
type aim struct {
	place, velocity, acceleration, pull vec.V3
	heading                             float64
}

// aim reads the score between its marks: places by cubics through them, pulls straight.
func (c *Score) aim(i int, t float64) aim {
	n := len(c.Marks)
	k := min(max(int(t/beat), 0), n-1)
	at := func(j int) *Mark { return &c.Marks[min(max(j, 0), n-1)] }
	s := math.Min(t/beat-float64(k), 1)
	a, b, d, e := at(k - 1).Places[i], at(k).Places[i], at(k + 1).Places[i], at(k + 2).Places[i]
	out := aim{heading: at(k).Heading + s*(at(k+1).Heading-at(k).Heading)}
	for x := range 3 {
		m0, m1 := (d[x]-a[x])/2, (e[x]-b[x])/2
		c2, c3 := 3*(d[x]-b[x])-2*m0-m1, m0+m1-2*(d[x]-b[x])
		out.place[x] = b[x] + s*(m0+s*(c2+s*c3))
		out.velocity[x] = (m0 + s*(2*c2+3*s*c3)) / beat
		out.acceleration[x] = ((d[x]-2*b[x]+a[x])*(1-s) + (e[x]-2*d[x]+b[x])*s) / (beat * beat)
		p, q := at(k).Pulls[i][x], at(k + 1).Pulls[i][x]
		out.pull[x] = p + s*(q-p)
	}
	return out
}
