package way

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Instant is what the team does at one instant of a way.
type Instant struct {
	Time        float64 // s
	Leg         int
	State       State
	Motion      share.Motion // with the swing of a payload that hangs from one line or point, (20.16)
	Status      solve.Status // Optimal: the rest holds
	Utilisation float64      // of the worst vehicle, (5.10); NaN: no balance
	Parts       []share.Part // body axes, with cables level ones turned by the heading; Force and Moment of rigid holds with the inertia of the vehicle
	Places      []vec.V3     // of the vehicles, level axes of the way, m
	Separation  float64      // least distance of two vehicles that are not both rigid, m; +Inf: none
}

// Air is the velocity of the air as the team of a model meets it, m/s, in the axes of Parts.
func (i *Instant) Air(m *share.Model) vec.V3 {
	axes := i.Motion.Attitude
	if m.Cables { // without the swing
		axes = m.Upright(i.State.Heading, vec.V3{})
	}
	return axes.T().Mul(m.Wind.Sub(i.State.Velocity))
}

// Fly is the team at evenly spaced instants of every leg, the end of the last one too. The vehicles share the load of
// every instant anew, by the least Σu² + Σ|F|² within (20.15), so that cables lean with the acceleration.
func Fly(m *share.Model, apart *share.Apart, p *Path, each int, s *solve.Solver) []Instant {
	var out []Instant
	for leg := range p.Durations {
		for k := range each {
			out = append(out, instantAt(m, apart, p, leg, float64(k)/float64(each), s))
		}
	}
	return append(out, instantAt(m, apart, p, len(p.Durations)-1, 1, s))
}

// InstantAt is the team at one time, s from the start; before and after it rests.
func InstantAt(m *share.Model, apart *share.Apart, p *Path, t float64, s *solve.Solver) Instant {
	t = math.Min(math.Max(t, 0), p.Duration())
	leg := p.Leg(t)
	return instantAt(m, apart, p, leg, (t-p.starts[leg])/p.Durations[leg], s)
}

func instantAt(m *share.Model, apart *share.Apart, p *Path, leg int, at float64, s *solve.Solver) Instant {
	if p.held != nil {
		return p.held.instant(m, p, leg, at)
	}
	v, x := motion(m, p, leg, at)
	i := Instant{Time: p.starts[leg] + float64(at*p.Durations[leg]), Leg: leg, State: x, Motion: v,
		Utilisation: math.NaN(), Separation: math.NaN()}
	m = m.Aloft()
	moving := m.Moving(v)
	program := moving.Even(0)
	m.Spread(program, apart, math.Max(0, 1+v.Attitude.T().Mul(v.Acceleration)[2]/share.Gravity))
	r := s.Solve(program)
	i.Status = r.Status
	if r.Status != solve.Optimal {
		return i
	}
	i.Utilisation = r.T
	i.Motion.Attitude = swung(m, v.Attitude, moving.Need)
	pulls := append([]vec.V3(nil), r.F...)
	i.Parts = moving.Placed(r)
	for range rounds {
		settled := s.Settle(program, eased(r.T, m.Plan.Limits.Utilisation))
		if settled.Status != solve.Optimal {
			break
		}
		pulls = append(pulls[:0], settled.F...)
		i.Parts = moving.Placed(settled)
		i.place(m)
		if apart == nil || i.Separation >= m.Plan.Limits.Separation {
			break
		}
		program = moving.Even(0) // the discs were for other pulls
		m.SpreadFor(program, apart, pulls)
	}
	i.place(m)
	return i
}

// rounds of an instant whose vehicles are too near.
const rounds = 4

// place finds where the vehicles are, and how near to each other.
func (i *Instant) place(m *share.Model) {
	i.Places = i.Places[:0]
	heading := m.Upright(i.State.Heading, vec.V3{})
	for k, part := range i.Parts {
		to := i.Motion.Attitude.Mul(m.Craft[k].At.Sub(m.Body.COM))
		if !m.Craft[k].Rigid { // the pull is in level axes, the attachment swings with the payload
			to = to.Add(heading.Mul(part.Position.Sub(m.Craft[k].At)))
		}
		i.Places = append(i.Places, i.State.At.Add(to))
	}
	i.Separation = separation(m, i.Places)
}

// swung is an attitude with the swing about the line or point that the payload hangs from: so far that the force, level axes
// turned by the heading, is in line with the centre of mass, (20.16).
func swung(m *share.Model, level vec.M3, force vec.V3) vec.M3 {
	line, arm, hinged := m.Hinge()
	if !hinged || arm[2] <= 0 { // from below it would not swing but fall over
		return level
	}
	across := force.Sub(line.Scale(line.Dot(force)))
	return level.MulM(share.Align(arm.Unit(), across.Unit()))
}

// eased is the utilisation that the pulls of an instant may need: a quarter of the way from the least to the limit, so
// that they move smoothly from instant to instant, (20.15). At the least itself the smallest load may turn them.
func eased(t, limit float64) float64 { return math.Max(t+(limit-t)/4, float64(1.001*t)) }

func separation(m *share.Model, places []vec.V3) float64 {
	least := math.Inf(1)
	for a := range places {
		for b := range a {
			if !m.Craft[a].Rigid || !m.Craft[b].Rigid {
				least = math.Min(least, places[a].Sub(places[b]).Norm())
			}
		}
	}
	return least
}

// Leg is the most that happens on one leg.
type Leg struct {
	Duration     float64
	Speed        float64 // m/s
	Acceleration float64 // m/s²
	Reach        float64 // (20.10)
	At           float64 // when the reach is largest, s from the start of the way
	Limit        Limit   // what it comes closest to there
	Who          []string
}

// Legs tells for every leg how close to the limits it comes, where, and to which.
func Legs(m *share.Model, apart *share.Apart, p *Path, limits Limits, s *solve.Solver) []Leg {
	j := &judge{question: newQuestion(m, apart, limits.Utilisation), s: s, limits: limits}
	list := j.survey(p)
	j.all(list)
	out := make([]Leg, len(p.Durations))
	for k := range out {
		own := list[k*steps : (k+1)*steps+1]
		l := Leg{Duration: p.Durations[k]}
		for _, i := range own {
			l.Speed = math.Max(l.Speed, i.motion.Velocity.Norm())
			l.Acceleration = math.Max(l.Acceleration, i.motion.Acceleration.Norm())
		}
		w := j.peak(p, j.worst(own))
		l.Reach, l.At = w.reach, p.starts[w.leg]+float64(w.s*p.Durations[w.leg])
		l.Limit, l.Who = j.holds(p, w)
		out[k] = l
	}
	return out
}
