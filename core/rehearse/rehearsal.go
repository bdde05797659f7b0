package rehearse

import (
	"errors"
	"math"

	"cohoist/core/hang"
	"cohoist/core/share"
	"cohoist/core/vec"
)

// Failure is a vehicle whose motors stop.
type Failure struct {
	Vehicle int     // of the team
	Time    float64 // s
	Cut     bool    // its line is let go at once; else it hangs on it
}

// Options of a rehearsal.
type Options struct {
	Gusts bool     // of the plan's gust factor, from its seed; without, the wind is steady
	Fail  *Failure // nil: none
	Feet  []vec.V3 // points of the payload that may stand on the ground, payload frame
}

// Rehearsal is a lift flown in time.
type Rehearsal struct {
	World  *World // body 0 is the payload with the vehicles that hold it rigidly, then those on cables in the order of the team
	Score  *Score
	m      *share.Model
	crew   []member // in the order of the team
	fail   *Failure
	steps  int // to a motor command
	ticks  int
	others []vec.V3
	ats    []vec.V3 // of the vehicles, now
	lifts  []vec.V3 // of the rigid holds together, at the marks, N, body axes
	left   float64  // of a rotor's way to what it is told after a tick
	flight Flight
}

// member is a vehicle of the team with what flies it.
type member struct {
	failed bool
	body   int     // of the world: 0 when it holds rigidly
	line   int     // −1: it holds rigidly
	most   float64 // the largest planned pull of its line, N
	pilot  pilot   // on a cable
	holder *holder // on a rigid hold
}

// Reasons why a plan cannot be rehearsed.
var (
	ErrScore = errors.New("the score is for another team")
	ErrMass  = errors.New("a rehearsal needs a payload with mass and inertia")
)

// plain is the strain under the planned pull of a line about whose stiffness the plan says nothing, and light the part of
// critical damping of every line (both common practice, no source).
const plain, light = 0.005, 0.05

// A step turns the fastest line by at most stride rad; there are at most mostSteps to a motor command, and lines too stiff
// for that are made softer.
const (
	stride    = 0.25
	mostSteps = 8
)

// New sets the team up at the beginning of a score.
func New(m *share.Model, score *Score, o Options) (*Rehearsal, error) {
	m = m.Bare()
	switch j := m.Body.Inertia; {
	case len(score.Marks) == 0 || len(score.Marks[0].Places) != len(m.Craft):
		return nil, ErrScore
	case !(m.Body.Mass > 0 && j[0][0] > 0 && j[1][1] > 0 && j[2][2] > 0):
		return nil, ErrMass
	}
	r := &Rehearsal{Score: score, steps: 1, m: m, fail: o.Fail, others: make([]vec.V3, 0, len(m.Craft)), ats: make([]vec.V3, len(m.Craft)),
		crew: make([]member, len(m.Craft)), left: math.Exp(-1 / (motorRate * motorLag))}
	factor := 1.0
	if o.Gusts {
		factor = m.Plan.Site.GustFactor
	}
	wind := newGusts(m.Wind, factor, score.Duration()+1, m.Plan.Seed)
	r.World = &World{Gravity: share.Gravity, Density: m.Density, Wind: wind.at, Ground: score.Ground}
	w, first := r.World, score.Marks[0]
	w.Bodies = append(w.Bodies, r.load(o.Feet))
	w.Poses = append(w.Poses, Pose{At: first.Payload, Attitude: about(first.Heading)})
	if m.Rigid {
		r.hold()
		s := score.stand(r.lifts, 0)
		w.Poses[0].Attitude, w.Poses[0].Spin = s.attitude, s.spin
		w.Bodies[0].push = w.Bodies[0].target
	}
	for i, c := range m.Craft {
		if !c.Rigid {
			r.seat(w, i)
		}
	}
	w.Ready()
	if b := &w.Bodies[0]; len(b.Feet) > 0 {
		r.steps = min(mostSteps, max(r.steps, int(math.Ceil(sqrt(b.firm/b.light())/motorRate))))
	}
	return r, nil
}

// load is the body of the payload and the vehicles that hold it rigidly.
func (r *Rehearsal) load(feet []vec.V3) Body {
	m := r.m
	b := Body{Mass: m.Body.Mass, Inertia: m.Body.Inertia, DragArea: m.DragArea}
	if m.Rigid {
		b.DragArea, b.lag = vec.V3{}, motorLag
		b.Sails = append(b.Sails, Sail{m.Payload.COM.Sub(m.Body.COM), m.DragArea})
	}
	for i := range m.Craft {
		if c := &m.Craft[i]; c.Rigid {
			a := c.Vehicle.DragArea
			b.Sails = append(b.Sails, Sail{c.At.Sub(m.Body.COM), vec.V3{a, a, a}})
		}
	}
	for _, f := range feet {
		b.Feet = append(b.Feet, f.Sub(m.Body.COM))
	}
	return b
}

// hold gives every rigid hold its control, its rotors as at the beginning of the score.
func (r *Rehearsal) hold() {
	r.lifts = lifts(r.m, r.Score)
	mix, first := spread(r.m), r.Score.mark(0)
	for i := range r.m.Craft {
		c := &r.m.Craft[i]
		if !c.Rigid {
			continue
		}
		h := &holder{rows: mix.rows[i], yaw: mix.yaw, most: mix.most, tilt: c.Vehicle.TiltMax, steady: r.m.Cables, mass: r.m.Body.Mass,
			inertia: r.m.Body.Inertia, target: make([]float64, len(c.Rotors)), thrust: make([]float64, len(c.Rotors))}
		for j, u := range first.Thrusts[i] {
			h.thrust[j] = u * first.Grip
		}
		r.crew[i] = member{holder: h, line: -1}
		r.World.Bodies[0].target.add(push(r.m, i, h.thrust))
	}
}

func (p *Push) add(q Push) { p.Force, p.Moment = p.Force.Add(q.Force), p.Moment.Add(q.Moment) }

// seat adds a vehicle with its line.
func (r *Rehearsal) seat(w *World, i int) {
	c, first := r.m.Craft[i], r.Score.Marks[0]
	a := c.Vehicle.DragArea
	yaw := r.m.Plan.Team[i].Yaw * math.Pi / 180
	pull := r.Score.pull(i) // under which the line is as long as the plan says
	axial := hang.Axial(r.m.Plan.Team[i].Hold)
	if math.IsInf(axial, 1) {
		axial = pull / plain
	}
	body := len(w.Bodies)
	line := Line{A: 0, AtA: c.At.Sub(r.m.Body.COM), B: body, Length: c.Length / (1 + pull/axial)} // (12.14)
	both := 1 / (1/c.Vehicle.Mass + 1/r.m.Body.Mass)
	fastest := stride * mostSteps * motorRate
	line.Stiffness = math.Min(axial/line.Length, both*fastest*fastest)
	r.steps = max(r.steps, int(math.Ceil(math.Sqrt(line.Stiffness/both)/(stride*motorRate))))
	line.Damping = 2 * light * math.Sqrt(line.Stiffness*both)
	own := pilot{vehicle: c, inertia: c.Vehicle.Inertia, yaw: yaw, wind: r.m.Wind, air: r.m.Density * a / 2}
	thrust := first.Pulls[i].Add(vec.V3{0, 0, c.Vehicle.Mass * share.Gravity}).Sub(own.drag(vec.V3{}))
	hover := Push{Force: vec.V3{0, 0, thrust.Norm()}}
	w.Bodies = append(w.Bodies, Body{Mass: c.Vehicle.Mass, Inertia: c.Vehicle.Inertia, DragArea: vec.V3{a, a, a},
		Feet: []vec.V3{{}}, lag: motorLag, push: hover, target: hover})
	at := first.Places[i].Sub(first.Pulls[i].Unit().Scale((pull - first.Pulls[i].Norm()) / line.Stiffness))
	w.Poses = append(w.Poses, Pose{At: at, Attitude: times(align(vec.V3{0, 0, 1}, thrust.Unit()), about(first.Heading+yaw))})
	r.crew[i] = member{body: body, line: len(w.Lines), most: pull, pilot: own}
	w.Lines = append(w.Lines, line)
}

// pull is the largest planned pull of a line, N.
func (c *Score) pull(i int) float64 {
	most := 0.0
	for k := range c.Marks {
		most = math.Max(most, c.Marks[k].Pulls[i].Norm())
	}
	return most
}

func about(yaw float64) [4]float64 { return [4]float64{math.Cos(yaw / 2), 0, 0, math.Sin(yaw / 2)} }
