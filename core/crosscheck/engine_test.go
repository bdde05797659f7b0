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

// Payloads that a physics engine let settle on stiff lines, testdata/engine: tensions within 0.5 %
// (the lines stretch by up to a few millimetres), the load at rest and level, the anchors where the
// sheet still has the vehicles.
func TestEngine(t *testing.T) {
	text, err := os.ReadFile("../../testdata/engine/tensions.json")
	if err != nil {
		t.Fatal(err)
	}
	var cases []struct {
		Name    string          `json:"name"`
		Plan    json.RawMessage `json:"plan"`
		Anchors []vec.V3        `json:"anchors_m"`
		Tension []float64       `json:"tension_n"`
		Speed   float64         `json:"speed"`
		Tilt    float64         `json:"tilt_deg"`
	}
	if err := json.Unmarshal(text, &cases); err != nil {
		t.Fatal(err)
	}
	if len(cases) < 10 {
		t.Fatalf("%d cases, want at least 10", len(cases))
	}
	worst := 0.0
	for _, c := range cases {
		p, faults := plan.Decode(c.Plan)
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		r := report.Build(p)
		if c.Speed > 1e-4 || c.Tilt > 0.1 {
			t.Errorf("%s: the engine's load moves (%.1g) or hangs askew (%.3f°)", c.Name, c.Speed, c.Tilt)
		}
		for i, v := range r.Vehicles {
			d := math.Abs(v.Tension-c.Tension[i]) / c.Tension[i]
			worst = math.Max(worst, d)
			if !(d < 5e-3) {
				t.Errorf("%s: %s carries %.4f N, the engine says %.4f N", c.Name, v.ID, v.Tension, c.Tension[i])
			}
			if off := v.Position.Sub(c.Anchors[i]).Norm(); !(off < 1e-3) {
				t.Errorf("%s: %s is %.2g m from where the engine had its anchor", c.Name, v.ID, off)
			}
		}
	}
	t.Logf("worst difference %.2g of %d payloads", worst, len(cases))
}
