package crosscheck

import (
	"encoding/json"
	"math"
	"os"
	"testing"

	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/vec"
)

// hung is one line of testdata/engine.
type hung struct {
	Plan        json.RawMessage `json:"plan"`
	Engine      string          `json:"engine"`
	Determinate bool            `json:"determinate"`
	Anchors     []vec.V3        `json:"anchors_m"`
	Moved       vec.V3          `json:"moved_m"`
	Turned      float64         `json:"turned_deg"`
	Tension     []float64       `json:"tension_n"`
}

// The engine's cables stretch by 1/10 000 where it finds the pose itself, which moves tensions by as
// much (testdata/engine/README.md). A tension counts as at least
// 1/100 of the weight; anchors come from second-stage forces that are good to 1e-4.
const (
	tensionTol = 5e-4
	placeTol   = 3e-4
)

// TestEngine holds tensions of the report against those of payloads at rest in a physics engine:
// MuJoCo, https://github.com/google-deepmind/mujoco, npm package mujoco-js 0.0.7.
func TestEngine(t *testing.T) {
	rows := read[hung](t, "../../testdata/engine/hung.jsonl")
	if len(rows) < 10 {
		t.Fatalf("%d hung payloads, want at least 10", len(rows))
	}
	for _, h := range rows {
		doc, faults := plan.Decode(h.Plan)
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		r := report.Build(doc)
		weight := 9.80665 * r.Payload.Mass
		worst, place := 0.0, 0.0
		for i, v := range r.Vehicles {
			worst = see(worst, math.Abs(v.Tension-h.Tension[i])/math.Max(h.Tension[i], weight/100))
			place = see(place, v.Position.Sub(h.Anchors[i]).Norm()/doc.Team[i].Hold.Length)
		}
		t.Logf("%s: tension %.1e, place %.1e, the engine moved the payload %.1e m and turned it %.1e°", doc.Title, worst, place, h.Moved.Norm(), h.Turned)
		if !(worst <= tensionTol) {
			t.Errorf("%s: a tension differs by %.3g from %s, allowed %g", doc.Title, worst, h.Engine, tensionTol)
		}
		if !(place <= placeTol) {
			t.Errorf("%s: a vehicle stands %.3g of its cable's length from where the engine had it, allowed %g", doc.Title, place, placeTol)
		}
		if h.Moved.Norm() > 1e-3 || h.Turned > 0.05 {
			t.Errorf("%s: the engine's payload did not stay: %v m, %v°", doc.Title, h.Moved, h.Turned)
		}
	}
}

// see is the larger, NaN if either is.
func see(a, b float64) float64 {
	if math.IsNaN(b) || b > a {
		return b
	}
	return a
}

// read takes a file of one JSON value a line.
func read[T any](t testing.TB, path string) []T {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var list []T
	for d := json.NewDecoder(f); d.More(); {
		var row T
		if err := d.Decode(&row); err != nil {
			t.Fatalf("%s, row %d: %v", path, len(list)+1, err)
		}
		list = append(list, row)
	}
	return list
}
