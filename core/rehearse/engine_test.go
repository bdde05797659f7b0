package rehearse

import (
	"bufio"
	"encoding/json"
	"math"
	"os"
	"testing"

	"cohoist/core/vec"
)

// scene is a line of testdata/engine/swing.jsonl.
type scene struct {
	Kind   string
	Bodies []struct {
		Mass                        float64
		Inertia, At, Velocity, Spin vec.V3
		Thrust                      float64 // along its own z, N
	}
	Lines []struct {
		A, B              int
		AtA               vec.V3 `json:"at_a"`
		AtB               vec.V3 `json:"at_b"`
		Length, Stiffness float64
	}
	Cut *struct {
		Line int
		Time float64
	}
	States []struct {
		Time float64
		Q, V []float64
	}
}

func scenes(t testing.TB) []scene {
	t.Helper()
	file, err := os.Open("../../testdata/engine/swing.jsonl")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	var out []scene
	lines := bufio.NewScanner(file)
	lines.Buffer(nil, 1<<20)
	for lines.Scan() {
		var s scene
		if err := json.Unmarshal(lines.Bytes(), &s); err != nil {
			t.Fatal(err)
		}
		out = append(out, s)
	}
	return out
}

func (s scene) world() *World {
	w := &World{Gravity: 9.80665, Ground: math.Inf(-1)}
	for _, b := range s.Bodies {
		w.Bodies = append(w.Bodies, Body{Mass: b.Mass, Inertia: vec.Diag(b.Inertia), push: Push{Force: vec.V3{0, 0, b.Thrust}}, target: Push{Force: vec.V3{0, 0, b.Thrust}}})
		w.Poses = append(w.Poses, Pose{At: b.At, Attitude: [4]float64{1}, Velocity: b.Velocity, Spin: b.Spin})
	}
	for _, l := range s.Lines {
		w.Lines = append(w.Lines, Line{A: l.A, B: l.B, AtA: l.AtA, AtB: l.AtB, Length: l.Length, Stiffness: l.Stiffness})
	}
	w.Ready()
	return w
}

// run steps to a time, cutting the line that is to be cut.
func (s scene) run(w *World, until, h float64) {
	for n := int(math.Round((until - w.Time) / h)); n > 0; n-- {
		if s.Cut != nil && w.Time > s.Cut.Time-h/2 {
			w.Lines[s.Cut.Line].Cut = true
		}
		w.Step(h)
	}
}

// Twenty scenes without control against MuJoCo (testdata/engine/swing.mjs, its Runge–Kutta rule at 50 µs): places within
// 1 % of the distance gone so far, and of a metre; attitudes within 0.01 rad, over 3 s.
func TestAgainstEngine(t *testing.T) {
	all := scenes(t)
	if len(all) != 20 {
		t.Fatalf("%d scenes", len(all))
	}
	worst := 0.0
	for n, s := range all {
		w := s.world()
		for _, want := range s.States {
			s.run(w, want.Time, 1.0/1200)
			for i, p := range w.Poses {
				q := want.Q[7*i : 7*i+7]
				off := p.At.Sub(vec.V3(q[:3])).Norm()
				dot := 0.0
				for a := range 4 {
					dot += p.Attitude[a] * q[3+a]
				}
				turn := 2 * math.Acos(math.Min(1, math.Abs(dot)))
				gone := math.Max(1, p.At.Sub(s.Bodies[i].At).Norm())
				worst = math.Max(worst, math.Max(off/gone, turn))
				if !(off <= 0.01*gone && turn <= 0.01) {
					t.Errorf("scene %d, %s: body %d at %g s is %g m and %g rad off", n, s.Kind, i, want.Time, off, turn)
				}
			}
		}
	}
	t.Logf("worst %.2g", worst)
}
