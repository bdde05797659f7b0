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
	World  *World // body 0 is the payload, then the vehicles in the order of the team
	Score  *Score
	m      *share.Model
	pilots []pilot
	fail   *Failure
	steps  int // to a motor command
	ticks  int
	others []vec.V3
	pulls  []float64 // the largest planned of every line, N
	flight Flight
}

// Reasons why a plan cannot be rehearsed.
var (
	ErrRigid = errors.New("a rehearsal needs every vehicle on a cable")
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
	switch j := m.Payload.Inertia; {
	case m.Rigid || !m.Cables:
		return nil, ErrRigid
	case len(score.Marks) == 0 || len(score.Marks[0].Places) != len(m.Craft):
		return nil, ErrScore
	case !(m.Payload.Mass > 0 && j[0][0] > 0 && j[1][1] > 0 && j[2][2] > 0):
		return nil, ErrMass
	}
	r := &Rehearsal{Score: score, steps: 1, m: m, fail: o.Fail, others: make([]vec.V3, 0, len(m.Craft))}
	factor := 1.0
	if o.Gusts {
		factor = m.Plan.Site.GustFactor
	}
	wind := newGusts(m.Wind, factor, score.Duration()+1, m.Plan.Seed)
	w := &World{Gravity: share.Gravity, Density: m.Density, Wind: wind.at, Ground: score.Ground}
	first := score.Marks[0]
	load := Body{Mass: m.Payload.Mass, Inertia: m.Payload.Inertia, DragArea: m.DragArea}
	for _, f := range o.Feet {
		load.Feet = append(load.Feet, f.Sub(m.Payload.COM))
	}
	w.Bodies = append(w.Bodies, load)
	w.Poses = append(w.Poses, Pose{At: first.Payload, Attitude: about(first.Heading)})
	for i := range m.Craft {
		r.seat(w, i)
	}
	w.Ready()
	if b := &w.Bodies[0]; len(b.Feet) > 0 {
		r.steps = min(mostSteps, max(r.steps, int(math.Ceil(sqrt(b.firm/b.light())/motorRate))))
	}
	r.World = w
	return r, nil
}

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
	line := Line{A: 0, AtA: c.At.Sub(r.m.Payload.COM), B: i + 1, Length: c.Length / (1 + pull/axial)} // (12.14)
	both := 1 / (1/c.Vehicle.Mass + 1/r.m.Payload.Mass)
	fastest := stride * mostSteps * motorRate
	line.Stiffness = math.Min(axial/line.Length, both*fastest*fastest)
	r.steps = max(r.steps, int(math.Ceil(math.Sqrt(line.Stiffness/both)/(stride*motorRate))))
	line.Damping = 2 * light * math.Sqrt(line.Stiffness*both)
	hover := Push{Thrust: first.Pulls[i].Add(vec.V3{0, 0, c.Vehicle.Mass * share.Gravity}).Norm()}
	w.Bodies = append(w.Bodies, Body{Mass: c.Vehicle.Mass, Inertia: c.Vehicle.Inertia, DragArea: vec.V3{a, a, a},
		Feet: []vec.V3{{}}, lag: motorLag, push: hover, target: hover})
	at := first.Places[i].Sub(first.Pulls[i].Unit().Scale((pull - first.Pulls[i].Norm()) / line.Stiffness))
	w.Poses = append(w.Poses, Pose{At: at, Attitude: about(first.Heading + yaw)})
	w.Lines = append(w.Lines, line)
	r.pulls = append(r.pulls, pull)
	r.pilots = append(r.pilots, pilot{vehicle: c, inertia: c.Vehicle.Inertia, yaw: yaw})
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

// Advance flies one tick of the motor commands, 1/600 s.
func (r *Rehearsal) Advance() {
	w := r.World
	if f := r.fail; f != nil && w.Time >= f.Time-1e-9 && f.Vehicle >= 0 && f.Vehicle < len(r.pilots) {
		r.pilots[f.Vehicle].failed = true
		w.Lines[f.Vehicle].Cut = f.Cut
	}
	if r.ticks%int(motorRate/placeRate) == 0 {
		for i := range r.pilots {
			r.others = r.others[:0]
			for j := range r.pilots {
				if j != i {
					r.others = append(r.others, w.Poses[j+1].At)
				}
			}
			r.pilots[i].place(&w.Poses[i+1], r.feel(i), r.others, r.aim(i), r.m.Plan.Limits.Separation)
		}
	}
	for i := range r.pilots {
		w.Bodies[i+1].target = r.pilots[i].motors(&w.Poses[i+1])
	}
	for range r.steps {
		w.Step(1 / (motorRate * float64(r.steps)))
	}
	r.ticks++
	w.Time = float64(r.ticks) / motorRate // no rounding adds up
}

// aim is what the score tells a vehicle now, its line stretched by the planned pull.
func (r *Rehearsal) aim(i int) aim {
	a := r.Score.aim(i, r.World.Time)
	short := (r.pulls[i] - a.pull.Norm()) / r.World.Lines[i].Stiffness
	a.place = a.place.Sub(a.pull.Unit().Scale(short))
	return a
}

// feel is the line's pull on a vehicle, N, level axes.
func (r *Rehearsal) feel(i int) vec.V3 {
	w := r.World
	return w.place(0, w.Lines[i].AtA).Sub(w.Poses[i+1].At).Unit().Scale(w.Tension[i])
}
