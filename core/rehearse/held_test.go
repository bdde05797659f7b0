package rehearse

import (
	"bufio"
	"encoding/json"
	"math"
	"os"
	"testing"

	"cohoist/core/mass"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/vec"
)

// held is a line of testdata/engine/held.jsonl.
type held struct {
	Plan   json.RawMessage
	Thrust [][]float64
	Lines  []struct {
		From, To          vec.V3
		Length, Stiffness float64
	}
	Velocity, Spin vec.V3
	States         []struct {
		Time       float64
		Q, V, Held []float64
	}
}

// world is the scene by this package: one body, from the plan, with what its rotors do.
func (s held) world(t *testing.T) (*Rehearsal, *share.Model) {
	t.Helper()
	p, faults := plan.Decode(s.Plan)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	p, _ = plan.Assume(p)
	payload, err := mass.Of(p.Payload)
	if err != nil {
		t.Fatal(err)
	}
	m := share.New(p, payload, vec.V3{}, 1.225)
	b := Body{Mass: m.Body.Mass, Inertia: m.Body.Inertia}
	r := &Rehearsal{m: m, crew: make([]member, len(m.Craft))}
	for i := range m.Craft {
		r.crew[i] = member{line: -1, holder: &holder{thrust: s.Thrust[i]}}
		b.target.add(push(m, i, s.Thrust[i]))
	}
	b.push = b.target
	w := &World{Gravity: share.Gravity, Ground: math.Inf(-1), Bodies: []Body{b}}
	com := m.Body.COM // the payload's own centre moves as told
	w.Poses = []Pose{{At: com, Attitude: [4]float64{1}, Velocity: s.Velocity.Add(s.Spin.Cross(com)), Spin: s.Spin}}
	for _, l := range s.Lines {
		w.Lines = append(w.Lines, Line{A: -1, AtA: l.From, B: 0, AtB: l.To.Sub(com), Length: l.Length, Stiffness: l.Stiffness})
	}
	w.Ready()
	r.World = w
	return r, m
}

// Fifteen rigid teams without control against MuJoCo (testdata/engine/held.mjs), which welds the vehicles to the payload itself:
// places and attitudes over 1 s to 5e-4, motion to 1e-3, and what every vehicle passes to the payload at its centre, (21.19), to
// 5e-3. The engine holds for a step what rotors do, so that it comes nearer to these answers with its step: four times with a
// quarter of it.
func TestHeldAgainstEngine(t *testing.T) {
	file, err := os.Open("../../testdata/engine/held.jsonl")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	lines := bufio.NewScanner(file)
	lines.Buffer(nil, 1<<20)
	worst, motion, load, n := 0.0, 0.0, 0.0, 0
	for ; lines.Scan(); n++ {
		var s held
		if err := json.Unmarshal(lines.Bytes(), &s); err != nil {
			t.Fatal(err)
		}
		r, m := s.world(t)
		w := r.World
		for _, want := range s.States {
			for k := int(math.Round((want.Time - w.Time) * 2400)); k > 0; k-- {
				w.Step(1.0 / 2400)
			}
			w.now[0].of(&w.Poses[0])
			w.slope(w.now, 0, w.rates[0])
			p, turn := w.Poses[0], Matrix(w.Poses[0].Attitude)
			back := m.Body.COM.Scale(-1)
			at := p.At.Add(turn.Mul(back))
			off := at.Sub(vec.V3(want.Q[:3])).Norm() / max(1, at.Norm())
			dot := 0.0
			for a := range 4 {
				dot += p.Attitude[a] * want.Q[3+a]
			}
			off = max(off, 2*math.Sqrt(max(0, 2-2*math.Abs(dot))))
			speed := p.Velocity.Add(turn.Mul(p.Spin.Cross(back)))
			fast := max(speed.Sub(vec.V3(want.V[:3])).Norm()/max(1, speed.Norm()), p.Spin.Sub(vec.V3(want.V[3:])).Norm()/max(1, p.Spin.Norm()))
			worst, motion = max(worst, off), max(motion, fast)
			if !(off <= 5e-4 && fast <= 1e-3) {
				t.Errorf("scene %d at %g s: %g off, motion %g", n, want.Time, off, fast)
			}
			for i := range m.Craft {
				force, moment := r.joint(i)
				axes := m.Craft[i].Axes.T()
				// the sensor gives what the payload passes to the vehicle, in the vehicle's axes
				f, g := vec.V3(want.Held[6*i:6*i+3]).Scale(-1), vec.V3(want.Held[6*i+3:6*i+6]).Scale(-1)
				d := axes.Mul(force).Sub(f).Norm()/max(1, f.Norm()) + axes.Mul(moment).Sub(g).Norm()/max(1, g.Norm())
				load = max(load, d)
				if !(d <= 5e-3) {
					t.Errorf("scene %d at %g s: grip %d bears %v and %v, engine %v and %v", n, want.Time, i, axes.Mul(force), axes.Mul(moment), f, g)
				}
			}
		}
	}
	if n != 15 {
		t.Errorf("%d scenes", n)
	}
	t.Logf("worst %.2g, motion %.2g, loads %.2g", worst, motion, load)
}
