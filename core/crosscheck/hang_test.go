package crosscheck

import (
	"math"
	"sort"
	"testing"

	"gonum.org/v1/gonum/mat"

	"cohoist/core/hang"
	"cohoist/core/mass"
	"cohoist/core/vec"
)

// swung is one line of testdata/engine/hang.jsonl.
type swung struct {
	Kind    string     `json:"kind"`
	Mass    float64    `json:"mass_kg"`
	COM     vec.V3     `json:"com_m"`
	Inertia [6]float64 `json:"inertia_kg_m2"`
	Force   vec.V3     `json:"force_n"`
	Lines   []struct {
		Top       vec.V3  `json:"top_m"`
		At        vec.V3  `json:"attach_m"`
		Length    float64 `json:"length_m"`
		Stiffness float64 `json:"stiffness_n_m"`
	} `json:"lines"`
	Speed      float64      `json:"speed_m_s"`
	Origin     vec.V3       `json:"origin_m"`
	Quaternion [4]float64   `json:"quaternion"`
	Tension    []float64    `json:"tension_n"`
	Accel      [][6]float64 `json:"accel_per_move"`
}

func (s swung) rig() hang.Rig {
	r := hang.Rig{Load: hang.Load{Mass: s.Mass, COM: s.COM, Inertia: mass.FromSix(s.Inertia), Force: s.Force}}
	for _, l := range s.Lines {
		r.Lines = append(r.Lines, hang.Line{Top: l.Top, At: l.At, Length: l.Length, Stiffness: l.Stiffness})
	}
	return r
}

// What the engine leaves: it stops below 1e-9 m/s, and its accelerations are differences over 1e-5 m.
const (
	pullTol   = 1e-7 // of the weight
	tiltTol   = 1e-5 // degrees
	periodTol = 3e-6
)

// TestHang holds rests and modes against payloads that a physics engine let swing out: MuJoCo,
// https://github.com/google-deepmind/mujoco, npm package mujoco-js 0.0.7 (testdata/engine/README.md).
func TestHang(t *testing.T) {
	rows := read[swung](t, "../../testdata/engine/hang.jsonl")
	kinds, slack := map[string]int{}, 0
	pull, tilt, period := 0.0, 0.0, 0.0
	for n, s := range rows {
		rig := s.rig()
		got, err := rig.Rest(hang.Pose{Origin: vec.V3{0, 0, 0.05}, Attitude: vec.Identity}) // the engine's own start
		if err != nil {
			t.Fatalf("row %d: %v", n, err)
		}
		kinds[s.Kind]++
		weight := s.Mass * hang.Gravity
		for i, want := range s.Tension {
			pull = see(pull, math.Abs(got.Tension[i]-want)/weight)
			if want == 0 {
				slack++
			}
		}
		mine := vec.V3{got.Pose.Attitude[0][2], got.Pose.Attitude[1][2], got.Pose.Attitude[2][2]}
		tilt = see(tilt, math.Atan2(s.up().Cross(mine).Norm(), s.up().Dot(mine))*180/math.Pi)
		modes := rig.Modes(got)
		for i, want := range s.squares(t) {
			period = see(period, math.Abs(math.Sqrt(want/modes[i].Square)-1))
		}
		if pull > pullTol || tilt > tiltTol || period > periodTol {
			t.Fatalf("row %d, %s: pull %.2g of the weight, tilt %.2g°, period %.2g", n, s.Kind, pull, tilt, period)
		}
	}
	t.Logf("%d payloads %v, %d slack lines: pull within %.1e of the weight, tilt within %.1e°, periods within %.1e", len(rows), kinds, slack, pull, tilt, period)
	if len(rows) < 40 || kinds["long"]+kinds["lost"] < 10 || slack < 5 {
		t.Errorf("only %d payloads %v with %d slack lines", len(rows), kinds, slack)
	}
}

// up is the payload's z axis at the engine's rest, level axes, by its quaternion.
func (s swung) up() vec.V3 {
	w, x, y, z := s.Quaternion[0], s.Quaternion[1], s.Quaternion[2], s.Quaternion[3]
	return vec.V3{2 * (x*z + w*y), 2 * (y*z - w*x), 1 - 2*(x*x+y*y)}
}

// squares are the squares of the engine's angular frequencies, smallest first: eigenvalues of minus its accelerations.
func (s swung) squares(t *testing.T) []float64 {
	a := mat.NewDense(6, 6, nil)
	for j, column := range s.Accel {
		for i, v := range column {
			a.Set(i, j, -v)
		}
	}
	var e mat.Eigen
	if !e.Factorize(a, mat.EigenNone) {
		t.Fatal("no eigenvalues")
	}
	var out []float64
	for _, v := range e.Values(nil) {
		out = append(out, real(v))
	}
	sort.Float64s(out)
	return out
}
