package formation

import (
	"math"
	"testing"

	"cohoist/core/share"
	"cohoist/core/vec"
	"cohoist/core/vehicle"
)

// two vehicles with arms of 0.3 m and rotors of 0.15 m, one x to the side of the other and z below it.
func two(x, z float64) ([]share.Part, []share.Craft) {
	v := vehicle.Vehicle{Reach: 0.45, Rotors: []vehicle.Rotor{{At: vec.V3{0.3, 0, 0}}}}
	return []share.Part{{Position: vec.V3{x, 0, 5 - z}}, {Position: vec.V3{0, 0, 5}}},
		[]share.Craft{{ID: "low", Vehicle: v}, {ID: "up", Vehicle: v}}
}

// By hand: rotors overlap within 0.9 m; the wake is 0.3 + 0.15/√2 m in radius down to 2.5 diameters of 0.9 m, 2.25 m, and
// spreads by tan 11.8° from there to ten diameters.
func TestFlags(t *testing.T) {
	wide := 0.3 + 0.15/math.Sqrt2
	deep := wide + 2*math.Tan(11.8*math.Pi/180) // 4.25 m below
	for _, c := range []struct {
		x, z  float64
		kinds []string
		limit float64 // of the last
	}{
		{0.89, 1, []string{Stacked}, 0.9},
		{0.91, 1, nil, 0},
		{wide + 0.44, 1, []string{Stacked, InWake}, wide + 0.45},
		{wide + 0.44, 0.03, []string{Stacked}, 0.9}, // beside it
		{deep + 0.44, 4.25, []string{InWake}, deep + 0.45},
		{deep + 0.46, 4.25, nil, 0},
		{0.95, 9.1, nil, 0}, // faded
		{0.2, -1, []string{Stacked, InWake}, wide + 0.45},
	} {
		got := Flags(two(c.x, c.z))
		if len(got) != len(c.kinds) {
			t.Errorf("%v across, %v below: %+v, want %v", c.x, c.z, got, c.kinds)
			continue
		}
		for i, f := range got {
			upper := "up"
			if c.z < 0 {
				upper = "low"
			}
			if f.Kind != c.kinds[i] || f.Upper != upper || f.Upper == f.Lower || math.Abs(f.Across-c.x) > 1e-12 || math.Abs(f.Below-math.Abs(c.z)) > 1e-12 {
				t.Errorf("%v across, %v below: %+v", c.x, c.z, f)
			}
		}
		if n := len(got); n > 0 && math.Abs(got[n-1].Limit-c.limit) > 1e-12 {
			t.Errorf("%v across, %v below: limit %v, want %v", c.x, c.z, got[n-1].Limit, c.limit)
		}
	}
	parts, craft := two(0.1, 1)
	craft[0].Rigid, craft[1].Rigid = true, true
	if got := Flags(parts, craft); got != nil {
		t.Errorf("both rigid: %+v", got)
	}
}
