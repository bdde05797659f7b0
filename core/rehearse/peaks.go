package rehearse

import (
	"math"

	"cohoist/core/vec"
)

// Sample is the lift at one instant.
type Sample struct {
	Time    float64
	Payload Pose
	Wanted  vec.V3 // place of the payload's centre of mass by the score
	Places  []vec.V3
	Ups     []vec.V3  // thrust axes of the vehicles, level axes
	Used    []float64 // of each vehicle's thrust, now
	Tension []float64 // N
}

// Flight is a lift that has been flown.
type Flight struct {
	Samples []Sample
	Peaks   Peaks
}

// Peaks is the worst of a flight. After a take-off and before a set-down only.
type Peaks struct {
	Tension    []float64 // N, the most of every line
	Least      []float64 // N, the least of every line that has not been let go
	Used       []float64 // the most of every vehicle's thrust
	Swing      float64   // rad, the payload's z axis from the vertical
	Off        float64   // m, the payload from its score, seen from above
	Sink       float64   // m, the payload below its score
	Separation float64   // m, the least between two vehicles that fly; +Inf: one alone
	Recovery   float64   // s from the failure until the payload keeps near where it then stays; NaN: no failure, or never
	Crash      float64   // s, when a vehicle that flies, or the payload outside its set-down, touches the ground or is lost; NaN: never
}

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
	n := len(r.pilots)
	p := Peaks{Separation: math.Inf(1), Crash: math.NaN(), Recovery: math.NaN(),
		Tension: make([]float64, n), Least: make([]float64, n), Used: make([]float64, n)}
	for i := range p.Least {
		p.Least[i] = math.Inf(1)
	}
	return p
}

func (r *Rehearsal) sample() Sample {
	w := r.World
	s := Sample{Time: w.Time, Payload: w.Poses[0], Wanted: r.Score.payload(w.Time), Tension: append([]float64(nil), w.Tension...)}
	for i := range r.pilots {
		turn := Matrix(w.Poses[i+1].Attitude)
		s.Places = append(s.Places, w.Poses[i+1].At)
		s.Ups = append(s.Ups, vec.V3{turn[0][2], turn[1][2], turn[2][2]})
		s.Used = append(s.Used, r.used(i))
	}
	return s
}

// used is the thrust of a vehicle over what it has.
func (r *Rehearsal) used(i int) float64 {
	return r.World.Bodies[i+1].push.Thrust / r.pilots[i].vehicle.Vehicle.ThrustMax
}

// payload is where the score has the payload at a time.
func (c *Score) payload(t float64) vec.V3 {
	n := len(c.Marks)
	k := min(max(int(t/beat), 0), n-1)
	a, b := c.Marks[k].Payload, c.Marks[min(k+1, n-1)].Payload
	return a.Add(b.Sub(a).Scale(min(t/beat-float64(k), 1)))
}

// airborne tells that the payload should be off the ground.
func (r *Rehearsal) airborne() bool {
	w := r.World
	low := 0.0
	for _, f := range w.Bodies[0].Feet {
		low = min(low, f[2])
	}
	return r.Score.payload(w.Time)[2]+low > w.Ground+0.3
}

// peak keeps the worst so far.
func (r *Rehearsal) peak(p *Peaks) {
	w := r.World
	if !r.airborne() {
		return
	}
	load := &w.Poses[0]
	off := load.At.Sub(r.Score.payload(w.Time))
	p.Off = max(p.Off, math.Hypot(off[0], off[1]))
	p.Sink = max(p.Sink, -off[2])
	turn := &w.turns[0]
	p.Swing = max(p.Swing, math.Atan2(math.Hypot(turn[0][2], turn[1][2]), turn[2][2]))
	crash := off.Norm() > far || load.At[2] <= w.Ground
	for i := range r.pilots {
		p.Tension[i] = max(p.Tension[i], w.Tension[i])
		if r.pilots[i].failed {
			continue
		}
		p.Least[i] = min(p.Least[i], w.Tension[i])
		p.Used[i] = max(p.Used[i], r.used(i))
		for j := range i {
			if !r.pilots[j].failed {
				p.Separation = min(p.Separation, apart(&w.Poses[i+1].At, &w.Poses[j+1].At))
			}
		}
		crash = crash || w.Poses[i+1].At[2] <= w.Ground
	}
	if crash && math.IsNaN(p.Crash) {
		p.Crash = w.Time
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
