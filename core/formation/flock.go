package formation

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// flock is a team on its way to a formation.
type flock struct {
	m       *share.Model
	s       *solve.Solver
	heights bool // heights count for the separation
	apart   float64
	ease    float64 // the part of the distance that is asked for, (17.2)
	parts   []share.Part
	at      []vec.V3 // places, seen from above
	high    []float64
	goOn    func() bool
	stopped bool
}

func newFlock(m *share.Model, s *solve.Solver, heights bool) *flock {
	k := len(m.Craft)
	f := &flock{m: m, s: s, heights: heights, apart: m.Plan.Limits.Separation, at: make([]vec.V3, k), high: make([]float64, k),
		goOn: func() bool { return true }}
	cos := 1.0
	if heights {
		cos = math.Cos(m.Plan.Limits.Cone * math.Pi / 360) // half the cone, until the first answer
	}
	for i, c := range m.Craft {
		f.high[i] = c.At[2]
		if !c.Rigid {
			f.high[i] += c.Length * cos
		}
	}
	return f
}

// take makes an answer's places those of the flock.
func (f *flock) take(r solve.Result) {
	f.parts = f.m.Placed(r)
	for i, p := range f.parts {
		f.at[i], f.high[i] = flat(p.Position), p.Position[2]
	}
}

// need is how far apart two vehicles must be, seen from above, (17.1); 0 when they need not, or
// are both part of the body.
func (f *flock) need(i, j int) float64 {
	if f.m.Craft[i].Rigid && f.m.Craft[j].Rigid {
		return 0
	}
	if !f.heights {
		return f.apart
	}
	z := f.high[i] - f.high[j]
	return math.Sqrt(math.Max(0, float64(f.apart*f.apart)-float64(z*z)))
}

// kept is the part of the separation that counts as kept.
const kept = 1 - 1e-9

// keeps tells that every two vehicles are as far apart as they must be.
func (f *flock) keeps() bool {
	for i := range f.at {
		for j := range i {
			if f.at[i].Sub(f.at[j]).Norm() < f.need(i, j)*kept {
				return false
			}
		}
	}
	return true
}

// nearest are the two vehicles, not both rigid, that are nearest to each other, and their distance, m.
func (f *flock) nearest() (least float64, pair [2]int) {
	least = math.Inf(1)
	for i := range f.parts {
		for j := range i {
			if f.m.Craft[i].Rigid && f.m.Craft[j].Rigid {
				continue
			}
			if d := f.parts[i].Position.Sub(f.parts[j].Position).Norm(); d < least {
				least, pair = d, [2]int{j, i}
			}
		}
	}
	return least, pair
}

const (
	rounds   = 40   // of the convex program, from one start
	still    = 1e-7 // change of t over t after which it has settled
	aim      = 1e-6 // of the separation: the room by which it is kept
	disc     = 200  // radius of the disc that stands for a half-plane, in pulls
	patience = 12   // rounds in which a start must lead to a formation
	hope     = 0.1  // part of t that a round may still bring, falling with its square; what is further from the best is given up
)

// improve repeats the convex program between the planes of the places of the round before, (17.2), until t
// stays. As the places keep their own planes, t falls from round to round but for what the
// pulls change. It returns the best formation that it came by; nil when there is none. What does not come near
// best is given up.
func (f *flock) improve(start []vec.V3, best float64) (t float64, parts []share.Part) {
	copy(f.at, start)
	f.parts, f.ease = nil, 1
	t = math.Inf(1)
	if !f.push() {
		return t, nil
	}
	pulls := f.pulls()
	for n := range rounds {
		if n == patience && parts == nil {
			return t, nil
		}
		if f.stopped = f.stopped || !f.goOn(); f.stopped {
			return t, parts
		}
		p, ok := f.program(pulls)
		if !ok {
			return t, parts
		}
		r, found := f.solve(p)
		if math.IsNaN(found) {
			if f.ease -= 0.2; parts != nil || f.ease < 0.3 {
				return t, parts
			}
			continue // ask for less first
		}
		f.ease = math.Min(1, f.ease+0.1)
		f.take(r)
		pulls = f.pulls()
		if !f.keeps() {
			continue
		}
		if t-found < still*found {
			return t, parts
		}
		t, parts = found, f.parts
		if t > best*(1+hope/float64((n+1)*(n+1))) {
			return t, parts
		}
	}
	return t, parts
}

// solve is the smallest t of a program, with ties broken as far as they can be; NaN when there is none.
func (f *flock) solve(p *solve.Program) (solve.Result, float64) {
	r := f.s.Solve(p)
	if r.Status != solve.Optimal {
		return r, math.NaN()
	}
	t := r.T
	if r = f.s.Settle(p, t*(1+spare)); r.Status != solve.Optimal {
		r = f.s.Solve(p)
	}
	return r, t
}

// pulls are the tensions of the present answer, or what the weight in equal parts gives.
func (f *flock) pulls() []float64 {
	out := make([]float64, len(f.m.Craft))
	for i := range out {
		out[i] = f.m.Payload.Mass * share.Gravity / float64(len(out))
		if f.parts != nil && !f.m.Craft[i].Rigid {
			out[i] = f.parts[i].Tension
		}
	}
	return out
}

// program is (5.10) with every vehicle on its own side of the planes between it and the others, (17.2).
func (f *flock) program(pulls []float64) (*solve.Program, bool) {
	p := f.m.Even(0)
	n := 0
	for i := range f.m.Craft {
		c := &f.m.Craft[i]
		if c.Rigid {
			continue
		}
		q := &p.Pulls[n]
		n++
		cones := append([]solve.Cone(nil), q.Cones...)
		for j := range f.m.Craft {
			d := f.need(i, j) * (1 + aim) * f.ease
			away := f.at[i].Sub(f.at[j])
			if j == i || d == 0 || away.Norm() > d+2*c.Length+2*f.m.Craft[j].Length {
				continue
			}
			if away.Norm() == 0 {
				return nil, false
			}
			normal := away.Unit()
			edge := normal.Dot(f.at[i].Add(f.at[j]))/2 + d/2
			if f.m.Craft[j].Rigid {
				edge = normal.Dot(f.at[j]) + d
			}
			lean := (edge - normal.Dot(c.At)) / c.Length // normal · F ≥ lean |F|
			if lean < -math.Sin(f.m.Plan.Limits.Cone*math.Pi/180) {
				continue // the cone keeps it
			}
			pull := pulls[i] * c.Keep()
			radius := disc * pull
			cones = append(cones, solve.Cone{Flat: true, B: normal.Scale(-(float64(lean*pull) + radius)), C: radius})
		}
		q.Cones = cones
	}
	return p, true
}
