package rehearse

import (
	"math"

	"cohoist/core/vec"
)

// Sample is the lift at one instant.
type Sample struct {
	Time    float64
	Payload Pose   // of what moves as one
	Wanted  vec.V3 // place of its centre of mass by the score
	Places  []vec.V3
	Ups     []vec.V3  // thrust axes of the vehicles, level axes
	Used    []float64 // of each vehicle's thrust, now
	Tension []float64 // N; NaN: no cable
}

// Flight is a lift that has been flown.
type Flight struct {
	Samples []Sample
	Peaks   Peaks
}

// Peaks is the worst of a flight. After a take-off and before a set-down only.
type Peaks struct {
	Tension    []float64 // N, the most of every line; NaN: no cable
	Least      []float64 // N, the least of every line that has not been let go
	Force      []float64 // N, the most of every rigid hold on the payload, (21.19); NaN: on a cable
	Moment     []float64 // N m, the same
	Used       []float64 // the most of every vehicle's thrust; of a rigid hold its worst rotor's
	Swing      float64   // rad, the payload's z axis from the vertical
	Off        float64   // m, the payload from its score, seen from above
	Sink       float64   // m, the payload below its score
	Separation float64   // m, the least between two vehicles that fly and do not both hold rigidly; +Inf: none
	Recovery   float64   // s from the failure until the payload keeps near where it then stays; NaN: no failure, or never
	End        End       // how it ended
	Crash      float64   // s, when a vehicle that flies, or the payload outside its set-down, touches the ground, is lost or turns over; NaN: never
}

// End is how a lift ended.
type End uint8

const (
	Flown  End = iota
	Lost       // the payload is far off its score
	Down       // a vehicle that flies, or the payload, is on the ground
	Turned     // a team with rigid holds is upside down
)

var nan = math.NaN()

// samples a second.
const sampleRate = 60

// Samples of a crash that are still shown, s.
const aftermath = 1.0

// far is where the payload counts as lost, m from its score.
const far = 10

// Fly flies the whole score, or until a second after a crash.
func (r *Rehearsal) Fly() *Flight {
	for !r.Run(1) {
	}
	return r.Flight()
}

// Run flies on for a span, s. It tells that there is nothing more to fly.
func (r *Rehearsal) Run(span float64) bool {
	f := &r.flight
	if f.Samples == nil {
		f.Peaks = r.calm()
		f.Samples = append(f.Samples, r.sample())
	}
	end := int(math.Round(r.Score.Duration() * motorRate))
	for until := r.ticks + int(span*motorRate); r.ticks < min(until, end) && !(r.World.Time > f.Peaks.Crash+aftermath); {
		r.Advance()
		r.peak(&f.Peaks)
		if r.ticks%int(motorRate/sampleRate) == 0 {
			f.Samples = append(f.Samples, r.sample())
		}
	}
	return r.ticks >= end || r.World.Time > f.Peaks.Crash+aftermath
}

// Flight is what has been flown so far.
func (r *Rehearsal) Flight() *Flight {
	f := r.flight
	if len(f.Samples) > 0 {
		f.Peaks.Recovery = r.recovery(f.Samples)
	}
	return &f
}

// calm is the peaks of a lift that has not begun.
func (r *Rehearsal) calm() Peaks {
	n := len(r.crew)
	p := Peaks{Separation: math.Inf(1), Crash: math.NaN(), Recovery: math.NaN(),
		Tension: make([]float64, n), Least: make([]float64, n), Used: make([]float64, n),
		Force: make([]float64, n), Moment: make([]float64, n)}
	for i := range p.Least {
		p.Least[i] = math.Inf(1)
		if r.crew[i].holder != nil {
			p.Tension[i], p.Least[i] = nan, nan
		} else {
			p.Force[i], p.Moment[i] = nan, nan
		}
	}
	return p
}

func (r *Rehearsal) sample() Sample {
	w := r.World
	s := Sample{Time: w.Time, Payload: w.Poses[0], Wanted: r.Score.At(w.Time)}
	for i := range r.crew {
		at, up := r.centre(i)
		s.Places, s.Ups = append(s.Places, at), append(s.Ups, up)
		s.Used, s.Tension = append(s.Used, r.used(i)), append(s.Tension, r.tension(i))
	}
	return s
}

// airborne tells that the payload should be off the ground.
func (r *Rehearsal) airborne() bool {
	w := r.World
	low := 0.0
	for _, f := range w.Bodies[0].Feet {
		low = min(low, f[2])
	}
	return r.Score.At(w.Time)[2]+low > w.Ground+0.3
}

// peak keeps the worst so far.
func (r *Rehearsal) peak(p *Peaks) {
	w := r.World
	if !r.airborne() {
		return
	}
	load := &w.Poses[0]
	off := load.At.Sub(r.Score.At(w.Time))
	p.Off = max(p.Off, math.Hypot(off[0], off[1]))
	p.Sink = max(p.Sink, -off[2])
	if r.m.Rigid {
		w.slope(w.now, 0, w.rates[0]) // what moves now, for the loads of the grips
	}
	turn := &w.turns[0]
	p.Swing = max(p.Swing, math.Atan2(math.Hypot(turn[0][2], turn[1][2]), turn[2][2]))
	end := Flown
	switch {
	case r.m.Rigid && turn[2][2] <= 0:
		end = Turned
	case load.At[2] <= w.Ground:
		end = Down
	case !(off.Norm() <= far):
		end = Lost
	}
	for i := range r.crew {
		if c := &r.crew[i]; c.line >= 0 {
			r.ats[i] = w.Poses[c.body].At
		} else {
			r.ats[i], _ = r.centre(i)
		}
	}
	for i := range r.crew {
		c := &r.crew[i]
		if c.holder != nil {
			force, moment := r.joint(i)
			p.Force[i], p.Moment[i] = max(p.Force[i], force.Norm()), max(p.Moment[i], moment.Norm())
		} else {
			p.Tension[i] = max(p.Tension[i], w.Tension[c.line])
		}
		if c.failed {
			continue
		}
		if c.line >= 0 {
			p.Least[i] = min(p.Least[i], w.Tension[c.line])
		}
		p.Used[i] = max(p.Used[i], r.used(i))
		for j := range i {
			if o := &r.crew[j]; !o.failed && (c.line >= 0 || o.line >= 0) {
				p.Separation = min(p.Separation, apart(&r.ats[i], &r.ats[j]))
			}
		}
		if r.ats[i][2] <= w.Ground && end == Flown {
			end = Down
		}
	}
	if end != Flown && p.End == Flown {
		p.End, p.Crash = end, w.Time
	}
}

func apart(a, b *vec.V3) float64 {
	x, y, z := a[0]-b[0], a[1]-b[1], a[2]-b[2]
	return sqrt(float64(x*x) + float64(y*y) + float64(z*z))
}

// Near is within what the payload counts as staying where it is, m.
const Near = 0.1

// recovery is the time from the failure until the payload keeps within Near of where it is at the end, as its score
// moves. NaN when it is not yet so two seconds before the end.
func (r *Rehearsal) recovery(all []Sample) float64 {
	if r.fail == nil {
		return math.NaN()
	}
	last := all[len(all)-1]
	rest := last.Payload.At.Sub(last.Wanted)
	since := r.fail.Time
	for _, s := range all {
		if s.Time >= r.fail.Time && s.Payload.At.Sub(s.Wanted).Sub(rest).Norm() > Near {
			since = s.Time
		}
	}
	if since > last.Time-2 {
		return math.NaN()
	}
	return since - r.fail.Time
}
